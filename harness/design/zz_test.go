package design_test
import ("testing";"os";"fmt";"fusewright/harness";"fusewright/harness/design")
func TestZZ(t *testing.T){
 for _,p:=range []string{"fen-runner","reed-skiff"}{
 b,_:=os.ReadFile("../../designs/"+p+".yaml")
 d,err:=design.Read(p+".yaml",b,nil)
 if err!=nil{t.Fatal(err)}
 rv,err:=harness.Assess(d)
 if err!=nil{t.Fatal(err)}
 fmt.Println("=====",p,len(rv.Circuit.Wires),"wires")
 for _,s:=range rv.Solutions{fmt.Println(s.Situation.Name,s.Status,s.Why)}
 for _,l:=range rv.Budget.Lines{fmt.Printf("%s out %.1f veh %.1f acc %.1f spare %.1f be %.0f\n",l.Situation.Name,l.OutputA,l.VehicleA,l.AccessoryA,l.SpareA,l.BreakEvenRPM)}
 for _,f:=range rv.Findings{fmt.Println(f.Severity,f.Rule,f.Part,f.Pos.Line,f.What,"|",f.Situation)}
 }
}
