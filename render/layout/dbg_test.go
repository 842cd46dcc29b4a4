package layout
import ("testing";"os";"fmt";"fusewright/harness/design";"fusewright/harness/circuit";"fusewright/harness/formboard";"fusewright/library";"fusewright/render/frame")
func TestDbg(t *testing.T){
 text,_:=os.ReadFile("../../designs/reed-skiff.yaml")
 d,_:=design.Read("x",text,library.Default()); c,_:=circuit.Build(d); b:=formboard.Lay(c)
 for _,s:=range b.Sections{ w,h:=s.Size(); fmt.Println(w,h,s.Even,len(s.Limbs))
  p,_:=frame.PaperOf(""); fmt.Println(p.Field())
  for _,sc:=range scales{ for lv:=detail(0);lv<3;lv++{ if sc<10 {continue}; q:=newPicture(s,sc,lv); q.draw(); fmt.Println(sc,lv,q.lost,q.sheet.Bounds())}}
 }
}
