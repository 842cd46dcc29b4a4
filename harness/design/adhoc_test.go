package design
import ("testing";"strings";"time";"fmt")
func TestAdhoc(t *testing.T){
 H:="fusewright: 1\n"
 n:=maxFileBytes-100
 full:="fusewright: 1\ntitle: t\nsystem: 12 V\npractice: motorcycle\nbattery: {chemistry: AGM, capacity: 12 Ah, at: p}\nplaces: {p: }\n"
 rep:=func(p string)string{return strings.Repeat(p,n/len(p))}
 gen:=func(f func(i int)string)string{var b strings.Builder;for i:=0;b.Len()<n-200;i++{b.WriteString(f(i))};return b.String()}
 for name,s:=range map[string]string{
 "brackets":H+"a: "+rep("["), "braces":H+"a: "+rep("{"), "dashes":H+rep("- "), "questions":H+rep("? "), "comments":H+rep("#\n"),
 "keys":H+gen(func(i int)string{return fmt.Sprintf("k%d: 1\n",i)}), "list":H+"a: ["+rep("x,")+"]",
 "anchors":H+gen(func(i int)string{return fmt.Sprintf("k%d: &a%d 1\n",i,i)}), "quote":H+"a: \""+rep("\\x41"), "plain":H+"a: "+rep("x "), "plainlines":H+"a: "+rep("x\n "), "newlines":H+rep("\n")+"a: b", "docs":rep("---\n"), "colons":H+rep("a:"), "commentcols":H+gen(func(i int)string{return fmt.Sprintf("k%d: 1 # %d\n # x\n",i,i)}), "indent":gen(func(i int)string{ if i>3000{return "x\n"};return strings.Repeat(" ",i%1400)+"a:\n"}),
 "literal":H+"a: |\n"+rep("  x\n"), "flowkeys": H+"a: {"+rep("x: y, ")+"}",
 "loads":full+"loads:\n"+gen(func(i int)string{return fmt.Sprintf("  l%d: {power: 5 W, at: p, fed by: l%d}\n",i,i+1)}),
 "splices":full+"splices:\n"+gen(func(i int)string{return fmt.Sprintf("  l%d: {at: p, fed by: l%d}\n",i,i+1)}),
 "fan":full+"splices:\n"+gen(func(i int)string{if i<400{return fmt.Sprintf("  l%d: {at: p, fed by: battery}\n",i)};var l []string;for k:=0;k<400;k++{l=append(l,fmt.Sprintf("l%d",k))};return fmt.Sprintf("  m%d: {at: p, fed by: [%s]}\n",i,strings.Join(l,","))}),
 "situations":full+"splices: {a: {at: p}}\nsituations:\n"+gen(func(i int)string{return fmt.Sprintf("  s%d: {on: [x%d]}\n",i,i)}),
 "runs":full+"runs:\n"+gen(func(i int)string{return "  - {from: p, to: q, length: 1 m}\n"}),
 "ways":full+"blocks: {b: {at: p, ways: {"+gen(func(i int)string{return fmt.Sprintf("%d: 5 A, ",i)})+"}}}\n",
 "waysrefs":full+"blocks: {b: {at: p, ways: {"+strings.Join(func()[]string{var l []string;for i:=0;i<100000;i++{l=append(l,fmt.Sprintf("%d: 5 A",i))};return l}(),", ")+"}}}\nloads:\n"+strings.Join(func()[]string{var l []string;for i:=0;i<40000;i++{l=append(l,fmt.Sprintf("  l%d: {power: 5 W, at: p, fed by: b %d}",i,99999-i))};return l}(),"\n"),
 "same":full+"loads:\n"+gen(func(i int)string{return "  a: {power: 5 W}\n"}),
 "rpm":full+"charging: {regulated: 14 V, idle: 1 rpm, cruise: 2 rpm, output: {"+gen(func(i int)string{return fmt.Sprintf("%d.%d rpm: 5 A, ",i%3000,i)})+"}}\n",
 "allon":full+"loads:\n"+strings.Join(func()[]string{var l []string;for i:=0;i<20000;i++{l=append(l,fmt.Sprintf("  l%d: {power: 5 W, at: p}",i))};return l}(),"\n")+"\nsituations:\n"+strings.Join(func()[]string{var l []string;for i:=0;i<40000;i++{l=append(l,fmt.Sprintf("  s%d: {on: all}",i))};return l}(),"\n"),
 }{
  st:=time.Now(); _,err:=Read("f",[]byte(s),nil); e:=""; if err!=nil{e=strings.SplitN(err.Error(),"\n",2)[0]; if len(e)>90{e=e[:90]}}
  if d:=time.Since(st); d>300*time.Millisecond||true {fmt.Printf("%-12s %8d %8v %s\n",name,len(s),d.Round(time.Millisecond),e)}
 }
}
