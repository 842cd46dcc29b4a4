package schematic

import (
	"os"
	"strings"
	"testing"
)

// The legend names the dot of joined wires and the plug where they are drawn.
func TestLegendNamesWhatIsDrawn(t *testing.T) {
	text, err := os.ReadFile("testdata/orchard.yaml")
	if err != nil {
		t.Fatal(err)
	}
	found := words(planned(t, "orchard.yaml", text, Options{}).Paint())
	for _, name := range []string{"joined wires", "plug connection"} {
		if found[name] != 1 {
			t.Errorf("%q stands %d times on the sheets, want once", name, found[name])
		}
	}
}

// Every plug is named once, over its link or in the caption, in every way of
// drawing.
func TestPlugsAreNamed(t *testing.T) {
	text, err := os.ReadFile("testdata/orchard.yaml")
	if err != nil {
		t.Fatal(err)
	}
	review := assessed(t, "orchard.yaml", text)
	for _, v := range variants(review) {
		found := words(laidOut(t, review, v).Paint())
		for _, family := range []string{"sealed 1.5", "open 6.3"} {
			if found[family] != 1 {
				t.Errorf("drawing%s: plug %q is named %d times, want once", v.name, family, found[family])
			}
		}
	}
	for _, p := range review.Circuit.Parts {
		if p.Name == "left lamp" {
			family := *p.Plug.Family // the library's own stays as it is
			family.Name = "a family with a name that is much longer than the lamp"
			p.Plug.Family = &family
		}
	}
	for s := range words(laidOut(t, review, variant{}).Paint()) {
		if strings.Contains(s, "plug a family") {
			return
		}
	}
	t.Error("a plug with a long name is not named in the caption")
}

// What cannot be told by colour is named where the drawing says how to read it.
func TestLegendNamesSharedColours(t *testing.T) {
	review := demo(t, "fen-runner")
	says := func(w bool) bool {
		review.Circuit.Wires[4].ColourShared = w
		d, err := plan(review, Options{})
		if err != nil {
			t.Fatal(err)
		}
		all := ""
		for s := range words(append(d.Paint(), d.Legend()...)) {
			all += s + "\n"
		}
		return strings.Contains(all, "More circuits than")
	}
	if says(false) || !says(true) {
		t.Errorf("said when none is shared: %v, when one is: %v", says(false), says(true))
	}
}
