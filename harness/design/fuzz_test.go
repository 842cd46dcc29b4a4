package design

import (
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness/design/problem"
	"fusewright/harness/proof/fuzztest"
)

// FuzzRead: whatever the bytes, Read gives a design or problems with a place in
// the file, never a panic, and the same answer twice.
func FuzzRead(f *testing.F) {
	for _, pattern := range []string{corpus + "ok/*.yaml", corpus + "err/*.yaml", "../../designs/*.yaml"} {
		files, err := filepath.Glob(pattern)
		if err != nil || len(files) == 0 {
			f.Fatalf("no seeds in %s: %v", pattern, err)
		}
		for _, file := range files {
			f.Add(load(f, file))
		}
	}
	for _, s := range format() {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		fuzztest.Within(t, func() {
			d, err := Read("fuzz.yaml", src, nil)
			if (d == nil) == (err == nil) {
				t.Fatalf("design %v and error %v", d, err)
			}
			_, again := Read("fuzz.yaml", src, nil)
			if err == nil {
				checkComplete(t, d)
				return
			}
			if again == nil || again.Error() != err.Error() {
				t.Fatalf("first %v\nthen %v", err, again)
			}
			checkProblems(t, err, lineBreaks(src)+1)
		})
	})
}

// lineBreaks counts all that YAML 1.1 takes for the end of a line.
func lineBreaks(src []byte) int {
	n := 0
	for _, c := range string(src) {
		if strings.ContainsRune("\n\r\u0085\u2028\u2029", c) {
			n++
		}
	}
	return n
}

// checkProblems: each has its text and a place within the file.
func checkProblems(t *testing.T, err error, lines int) {
	list, ok := err.(problem.List)
	if !ok {
		t.Fatalf("%T is no list of problems", err)
	}
	for _, p := range list {
		if p.What == "" || p.Pos.File != "fuzz.yaml" || p.Pos.Line > lines || p.Pos.Line > 0 && p.Pos.Col < 1 {
			t.Fatalf("bad problem %+v", p)
		}
		if strings.ContainsAny(p.String(), "\n\x1b") {
			t.Fatalf("problem with a control character: %q", p)
		}
	}
}

// checkComplete: a design that read holds what its model promises.
func checkComplete(t *testing.T, d *Design) {
	if d.Practice == nil || d.Battery.Chemistry == nil || d.SystemV.Value == 0 || len(d.Situations) == 0 {
		t.Fatal("heading, battery or situations are not complete")
	}
	feeds := func(list []Feed) {
		for _, f := range list {
			if f.From.Part == nil || f.Wire.Type == nil || f.Wire.Size == nil || f.Wire.Colour.Base == nil ||
				f.Wire.Pos.Line == 0 {
				t.Fatalf("feed %q is not complete", f.From.Text)
			}
		}
	}
	for _, x := range d.Fuses {
		feeds(x.FedBy)
		if x.Type == nil || x.Rating == nil {
			t.Fatalf("fuse %q is not complete", x.Name)
		}
	}
	for _, x := range d.Relays {
		feeds(x.FedBy)
		feeds(x.Coil.FedBy)
		feeds(x.Coil.Returns)
		if x.Form == nil {
			t.Fatalf("relay %q has no form", x.Name)
		}
	}
	for _, x := range d.Loads {
		feeds(x.FedBy)
		feeds(x.Returns)
		if x.Behaves == "" || x.Sign == "" || x.RatedV <= 0 || x.PowerW < 0 || x.Inrush.PeakRatio < 1 {
			t.Fatalf("load %q is not complete: %+v", x.Name, x)
		}
	}
	for _, x := range d.Grounds {
		feeds(x.Returns)
		if x.Kind == "" {
			t.Fatalf("ground %q has no kind", x.Name)
		}
	}
}

// format gives the example of each section as a seed.
func format() []string {
	var list []string
	for _, s := range Format() {
		list = append(list, "fusewright: 1\n"+s.Example)
	}
	return list
}
