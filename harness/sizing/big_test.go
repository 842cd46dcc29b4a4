package sizing
import ("testing";"time";"fmt")
func TestBig(t *testing.T){ for _,n:=range []int{40,100,200,400} { t0:=time.Now(); p,err:=Complete(opened(t,n)); if err!=nil{t.Fatal(err)}; fmt.Println(n,time.Since(t0),p.s.judgements,len(p.Choices),p.s.best.verdict.score) } }
