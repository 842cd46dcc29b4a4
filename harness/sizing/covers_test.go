package sizing

import (
	"slices"
	"strings"
	"testing"
)

// TestFewCovers: of covers that cost the same current the one that serves most
// runs is taken, so that fewer kinds are bought.
func TestFewCovers(t *testing.T) {
	for _, c := range []struct {
		name, runs, want string
	}{
		{"each its own", "{from: a, to: b, length: 1 m, chafes: yes, cover: auto}", "braided sleeve"},
		{"one also pinches", "{from: a, to: b, length: 1 m, chafes: yes, cover: auto}, " +
			"{from: b, to: c, length: 1 m, pinches: yes, cover: auto}", "braided sleeve, corrugated conduit"},
		{"one is given", "{from: a, to: b, length: 1 m, chafes: yes, cover: auto}, " +
			"{from: b, to: c, length: 1 m, cover: cloth loom tape}", "cloth loom tape"},
		{"none is needed", "{from: a, to: b, length: 1 m, cover: auto}, " +
			"{from: b, to: c, length: 1 m, chafes: yes, cover: auto}", "none, braided sleeve"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := Complete(read(t, bench(`
places: {tray: {ambient: 30 °C}, a: {ambient: 30 °C}, b: {ambient: 30 °C}, c: {ambient: 30 °C}}
runs: [`+c.runs+`]
fuses: {f: {type: blade C, rating: 5 A, at: tray, fed by: battery, wire: {length: 200 mm, size: 1.5 mm²}, stays live: "test"}}
loads: {x: {power: 20 W, behaves: resistor, at: tray, fed by: f, wire: {size: 1.5 mm²}, returns to: battery negative, return wire: {size: 1.5 mm²}}}
`)))
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			for _, x := range p.Choices {
				got = append(got, x.Value)
			}
			if s := strings.Join(got, ", "); s != c.want {
				t.Errorf("%s, want %s", s, c.want)
			}
		})
	}
}

// TestCovers: what a run needs where it lies. Spiral wrap bears no pinching and
// nothing hot, what takes up water has no place in the wet, and the loom that
// leaves the battery is never bare (all common practice, no source). A cover is
// made for leastMarginC more than the air: 85 °C is enough at 55 °C, not at 56 °C.
func TestCovers(t *testing.T) {
	for _, c := range []struct {
		name, places, run, first string
		has, hasNot              string
	}{
		{"neither", "a: {ambient: 40 °C}", "", "", "", "braided sleeve"},
		{"leaves the battery", "a: {ambient: 40 °C}", "from: tray", "braided sleeve", "spiral wrap", ""},
		{"comes to the battery", "a: {ambient: 40 °C}", "to: tray", "braided sleeve", "spiral wrap", ""},
		{"chafes at the margin", "a: {ambient: 55 °C}", "chafes: yes", "braided sleeve", "spiral wrap", ""},
		{"chafes above it", "a: {ambient: 56 °C}", "chafes: yes", "braided sleeve", "", "spiral wrap"},
		{"pinched", "a: {ambient: 40 °C}", "pinches: yes", "corrugated conduit", "", "spiral wrap"},
		{"dry beside heat", "a: {ambient: 40 °C}", "near: {what: exhaust, ambient: 120 °C}", "braided glass sleeve", "silicone-coated glass sleeve", "spiral wrap"},
		{"wet beside heat", "a: {ambient: 40 °C, wet: yes}", "near: {what: exhaust, ambient: 120 °C}", "silicone-coated glass sleeve", "silicone fire sleeve", "braided glass sleeve"},
		{"wet and hotter than the margin leaves", "a: {ambient: 40 °C, wet: yes}", "near: {what: exhaust, ambient: 151 °C}", "heat sleeve", "", "silicone-coated glass sleeve"},
		{"wet and chafing", "a: {ambient: 40 °C, wet: yes}", "chafes: yes", "braided sleeve", "", "cloth loom tape"},
		{"hotter than any with a margin", "a: {ambient: 240 °C}", "chafes: yes", "braided glass sleeve", "", "braided sleeve"},
	} {
		t.Run(c.name, func(t *testing.T) {
			run := "{from: a, to: b, length: 1 m, cover: auto, " + c.run + "}"
			if end, _, ok := strings.Cut(c.run, ": tray"); ok {
				run = strings.Replace("{from: a, to: b, length: 1 m, cover: auto}", end+": "+map[string]string{"from": "a", "to": "b"}[end], c.run, 1)
			}
			d := read(t, bench(`
places: {tray: {ambient: 30 °C}, `+c.places+`, b: {ambient: 30 °C}}
runs: [`+run+`]
fuses: {f: {type: blade C, rating: 5 A, at: tray, fed by: battery, wire: {length: 200 mm, size: 1.5 mm²}, stays live: "test"}}
loads: {x: {power: 20 W, behaves: resistor, at: tray, fed by: f, wire: {size: 1.5 mm²}, returns to: battery negative, return wire: {size: 1.5 mm²}}}
`))
			names := []string{}
			for _, x := range covers(d, d.Runs[0]) {
				if x != nil {
					names = append(names, x.Name)
				}
			}
			if c.first == "" != (len(names) == 0) || c.first != "" && names[0] != c.first {
				t.Errorf("%q, want %q first", names, c.first)
			}
			if c.has != "" && !slices.Contains(names, c.has) || slices.Contains(names, c.hasNot) {
				t.Errorf("%q, want %q and not %q", names, c.has, c.hasNot)
			}
		})
	}
}
