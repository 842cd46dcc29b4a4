package schematic

import (
	"os"
	"strings"
	"testing"
)

// What is said of the batteries and of what charges them is shortened, not cut: the link is named with its size, and
// the capacity stands before the chemistry.
func TestSourceIsNotCut(t *testing.T) {
	text, err := os.ReadFile("../../testdata/rules/ok/batteries-in-series.yaml")
	if err != nil {
		t.Fatal(err)
	}
	src := strings.NewReplacer("chemistry: AGM, capacity: 60 Ah", "chemistry: flooded, capacity: 170 Ah", "size: 35 mm²", "size: 70 mm²",
		"regulated: 28.4 V,", "kind: alternator, regulated: 28.4 V,", "2500 rpm: 60 A", "2500 rpm: 120 A").Replace(string(text))
	found := words(planned(t, "series.yaml", []byte(src), Options{}).Paint())
	for word := range found {
		if strings.HasSuffix(word, "…") {
			t.Errorf("%q is cut", word)
		}
	}
	for _, want := range []string{"170 Ah", "W10 70 mm²", "30–120 A"} {
		if found[want] != 1 {
			t.Errorf("%q stands %d times", want, found[want])
		}
	}
}
