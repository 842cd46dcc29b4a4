package starter
import ("testing";"os";"strings";"fusewright/library")
func TestDump(t *testing.T){ v:=os.Getenv("V"); if v=="" {t.Skip()}
 src,err:=Write(Answers{Vehicle:v,Accessories:strings.Split(os.Getenv("A"),",")},library.Default()); if err!=nil{t.Fatal(err)}
 os.WriteFile("/tmp/dump.yaml",src,0644)}
