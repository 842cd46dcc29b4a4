package sizing

import (
	"fmt"
	"fusewright/harness/design"
	"os"
	"testing"
	"time"
)

func TestDev(t *testing.T) {
	f := os.Getenv("DEV")
	if f == "" {
		t.Skip()
	}
	src, _ := os.ReadFile(f)
	d, err := design.Read("x.yaml", src, nil)
	if err != nil {
		t.Fatal(err)
	}
	t0 := time.Now()
	p, err := Complete(d)
	if err != nil {
		t.Fatal(err)
	}
	fmt.Println(time.Since(t0), p.s.judgements, p.Proven, p.Cost, p.Cost.TotalG())
	if os.Getenv("EX") != "" {
		p.Explain()
	}
	fmt.Println(time.Since(t0), p.s.judgements)
	for _, c := range p.Choices {
		fmt.Printf("%-8s %-28s %-18s | %s | %s | %s\n", c.Kind, c.Part, c.Value, c.Decided, c.RunnerUp, c.Lost)
	}
	for _, f := range p.Remaining {
		fmt.Println("REMAINS", f.Severity, f.Rule, f.Part, f.What)
	}
	for _, o := range p.WaysOut {
		fmt.Printf("OUT %+v\n", *o)
	}
}
