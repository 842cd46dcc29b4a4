package document_test
import ("testing";"os";"fusewright/harness";"fusewright/harness/bench";"fusewright/harness/design";"fusewright/library";"fusewright/render/document";"fusewright/render/pdf";"fusewright/render/scene")
func TestDbg(t *testing.T){
 f:=os.Getenv("DBG"); if f=="" {t.Skip()}; src,_:=os.ReadFile(f)
 d,err:=design.Read("x",src,library.Default()); if err!=nil{t.Fatal(err)}
 r,err:=harness.Assess(d); if err!=nil{t.Fatal(err)}
 w:=func(n string,s []*scene.Sheet,err error){ if err!=nil{t.Fatal(err)}; o,_:=os.Create("/tmp/fwbench/"+n+".pdf"); if err:=pdf.Write(o,&scene.Document{Title:n,Sheets:s});err!=nil{t.Fatal(err)}; o.Close()}
 w("bench",document.Bench(r,bench.Make(r.Circuit)),nil)
 s,err:=document.Loading(r); w("loading",s,err)
 s,err=document.Profiles(r); w("profile",s,err)
}
