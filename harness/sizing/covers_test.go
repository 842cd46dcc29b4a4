package sizing

import (
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
			"{from: b, to: c, length: 1 m, pinches: yes, cover: auto}", "spiral wrap, spiral wrap"},
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
