package sizing

import (
	"fmt"
	"strings"
	"testing"
)

// TestSharedReturnMet: what four fuses let through together is met by the return that
// their loads share, also where its own current in the worst case, which the trade leaves
// so, speaks for it.
func TestSharedReturnMet(t *testing.T) {
	src := strings.Replace(single("off-road", "7 A", "constant power", 1), "returns to: battery negative", "returns to: bar", 1)
	src = strings.ReplaceAll(src, "ambient: 35", "ambient: 40")
	at := strings.Index(src, "loads:")
	src = src[:at] + "grounds:\n  bar: {kind: ground block, at: far, limit: 100 A, returns to: battery negative}\n" + src[at:]
	for i := range 3 {
		src = strings.Replace(src, "fuses:\n", fmt.Sprintf("fuses:\n  f%d: {at: tray, fed by: battery, stays live: \"test\", wire: {length: 120 mm}}\n", i), 1)
		src += fmt.Sprintf("  l%d: {current: 7 A, behaves: constant power, at: far, own switch: yes, stays live: \"test\", fed by: f%d, returns to: bar}\n", i, i)
	}
	d := read(t, src)
	p, err := Complete(d)
	if err != nil {
		t.Fatal(err)
	}
	fusesA := 0.0
	for _, f := range d.Fuses {
		fusesA += f.Rating.RatingA
	}
	w := p.s.look(p.s.best.verdict)
	for _, x := range w.v.c.Wires {
		if x.From.Part.Name == "bar" {
			if a := w.allowedA(x, x.Spec.Size); a < fusesA {
				t.Errorf("%s may carry %.1f A, fuses of %g A return over it", x.Text(), a, fusesA)
			}
		}
	}
}
