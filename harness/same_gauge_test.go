package harness_test

import (
	"fmt"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness/design/quantity"
	"fusewright/harness/proof/mutant"
	"fusewright/library"
)

// gauges are the sizes of two invented wire types, one of which names its sizes
// by gauge and the other by the same areas.
var gauges = map[string]int{"0.35 mm²": 22, "0.5 mm²": 20, "0.75 mm²": 19, "1 mm²": 18, "1.5 mm²": 16, "2 mm²": 15,
	"2.5 mm²": 14, "3 mm²": 13, "4 mm²": 12, "6 mm²": 10, "10 mm²": 8, "16 mm²": 6, "25 mm²": 4, "35 mm²": 2}

var sizes = regexp.MustCompile(`(?i)[0-9./]+ ?(mm[²2]|awg)`)

// twoTypes is a library file with both, and how a size of the one is written in
// the other.
func twoTypes() (text string, toGauge, toArea func(string) string, asArea *strings.Replacer) {
	var b strings.Builder
	b.WriteString("fusewright library: 1\nsource: invented\ncertainty: user data\nwire types:\n")
	area := func(g int) string { return strconv.FormatFloat(quantity.GaugeAreaMm2(g), 'f', 4, 64) + " mm²" }
	sizes := slices.SortedFunc(maps.Values(gauges), func(a, b int) int { return b - a })
	var pairs []string
	for _, kind := range []struct {
		name, system string
		label        func(int) string
	}{{"made up gauge", "AWG", quantity.GaugeLabel}, {"made up areas", "metric", area}} {
		fmt.Fprintf(&b, "  - name: %s\n    standard: none\n    continuous C: 105\n    overload C: 130\n    short circuit C: 200\n"+
			"    material: XLPE\n    gauge system: %s\n    sizes:\n", kind.name, kind.system)
		for _, g := range sizes {
			a := strings.TrimSuffix(area(g), " mm²")
			mm2, _ := strconv.ParseFloat(a, 64) // just written
			fmt.Fprintf(&b, "      - {size: %s, area mm2: %s, ohm per km: %.4f, conductor mm: %.3f, outer mm: %.3f}\n",
				kind.label(g), a, 17.241/mm2, 1.3*math.Sqrt(mm2), 1.3*math.Sqrt(mm2)+1)
		}
	}
	for _, g := range sizes {
		pairs = append(pairs, quantity.GaugeLabel(g), area(g))
	}
	pairs = append(pairs, "made up gauge", "made up areas")
	return b.String(), func(s string) string { return quantity.GaugeLabel(gauges[s]) },
		func(s string) string { return area(gauges[s]) }, strings.NewReplacer(pairs...)
}

// TestGaugeIsAnArea: a wire named by its gauge is judged as one of the same
// copper that is named by its area.
func TestGaugeIsAnArea(t *testing.T) {
	text, toGauge, toArea, asArea := twoTypes()
	lib, err := library.LoadTexts(library.Text{File: "two.yaml", Data: []byte(text)})
	if err != nil {
		t.Fatal(err)
	}
	compared := 0
	for name, src := range heldDesigns(t) {
		if slices.ContainsFunc(sizes.FindAllString(string(src), -1), func(s string) bool { return gauges[s] == 0 }) {
			continue // not in the table above
		}
		var said []string
		for insulation, to := range map[string]func(string) string{"made up gauge": toGauge, "made up areas": toArea} {
			design, err := mutant.Rewired(src, lib, insulation, to)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			r, err := assess(design, lib)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			said = append(said, saying(r, asArea))
		}
		if compared++; said[0] != said[1] {
			t.Errorf("%s: %s", name, firstDifference(said[0], said[1]))
		}
	}
	t.Logf("%d designs compared", compared)
	if compared < 40 {
		t.Errorf("%d designs compared", compared)
	}
}
