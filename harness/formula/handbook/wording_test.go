package handbook

import (
	"strings"
	"testing"

	"fusewright/library"
)

// A size that is named by its area says it once; a gauge gives it beside.
func TestSizeText(t *testing.T) {
	for _, k := range []struct {
		label string
		area  float64
		want  string
	}{{"4 mm²", 4, "4 mm²"}, {"0.75 mm²", 0.75, "0.75 mm²"}, {"16 AWG", 1.2157, "16 AWG (1.216 mm²)"}} {
		if got := sizeText(&library.WireSize{Label: k.label, AreaMm2: k.area}); got != k.want {
			t.Errorf("%q, want %q", got, k.want)
		}
	}
}

// A formula that several lines share stands above the first of them alone.
func TestFormulaOnce(t *testing.T) {
	a := newAnswer("fuse", "When a fuse opens")
	a.step("published opening at a multiple", "2 times: by 5 s")
	a.step("published opening at a multiple", "6 times: by 100 ms")
	text := a.Text()
	if strings.Count(text, "published opening") != 1 || !strings.Contains(text, "2 times") || !strings.Contains(text, "6 times") {
		t.Error(text)
	}
}
