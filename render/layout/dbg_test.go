package layout
import ("testing";"os";"fmt";"fusewright/harness/design";"fusewright/harness/circuit";"fusewright/harness/formboard";"fusewright/library";"fusewright/render/frame";"time")
func TestDbg(t *testing.T){
 text,_:=os.ReadFile("/tmp/s300.yaml")
 d,_:=design.Read("x",text,library.Default()); c,_:=circuit.Build(d); t0:=time.Now(); b:=formboard.Lay(c); fmt.Println("lay",time.Since(t0))
 for _,s:=range b.Sections{ w,h:=s.Size(); fmt.Println("section",s.Number,w,h,s.Even,len(s.Limbs))
  p,_:=frame.PaperOf(""); _=p
  for _,sc:=range scales{ for lv:=detail(0);lv<3;lv++{ if w/float64(sc)>270||h/float64(sc)>150 {continue}; t0=time.Now(); q:=newPicture(s,sc,lv); q.draw(); bb:=q.sheet.Bounds(); fmt.Println(sc,lv,q.lost,int(bb.W),int(bb.H),time.Since(t0))}}
 }
}
