package schematic

import (
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
)

// nameOf is the wording of a part: its label, else its name.
func nameOf(p *circuit.Part) string {
	if p.Label != "" {
		return p.Label
	}
	return p.Name
}

// captionOf wraps a part's text, its sign before it, to a width in mm.
func (d *drawing) captionOf(p *circuit.Part, widthMM float64, most int) caption {
	return d.worded(d.head(p), p, widthMM, most)
}

// captionAtop is captionOf for a caption over an outline.
func (d *drawing) captionAtop(p *circuit.Part, widthMM float64) caption {
	c := d.head(p)
	if d.flags.atop {
		c = caption{ref: p.Ref}
	}
	return d.worded(c, p, widthMM, 4)
}

func (d *drawing) worded(c caption, p *circuit.Part, widthMM float64, most int) caption {
	words, details := d.wordsOf(p)
	return c.fit(words, details, widthMM, most).solved(widthMM, d.study.part(p)...)
}

// wordsOf is a part's name and its figures.
func (d *drawing) wordsOf(p *circuit.Part) (words, details string) {
	words = nameOf(p)
	switch src := p.Source.(type) {
	case *design.Fuse:
		return words, fuseWords(src)
	case *design.Relay:
		return words, relayWords(src)
	case *design.Block:
		return words, blockWords(src)
	case *design.Switch:
		return words, wording.Present([]string{switchWords(src), d.plugWords(p)}, ", ")
	case *design.Load:
		return words, wording.Present([]string{loadWords(src), d.plugWords(p)}, ", ")
	case *design.Tap:
		return words, tapWords(src)
	}
	switch p.Kind {
	case circuit.Battery:
		return d.batteryWords()
	case circuit.Generator:
		return d.generatorWords()
	case circuit.VehicleLoads:
		return "vehicle's own", d.vehicleWords()
	}
	return words, ""
}

func fuseWords(f *design.Fuse) string {
	var parts []string
	if f.Rating != nil {
		parts = append(parts, number(f.Rating.RatingA)+" A")
	}
	if f.Type != nil {
		parts = append(parts, f.Type.Name)
	}
	return wording.Present(parts, " ")
}

func relayWords(r *design.Relay) string {
	var parts []string
	if r.Form != nil {
		parts = append(parts, r.Form.Name)
	}
	if s := r.Coil.Suppressed; s != "" && s != "none" {
		parts = append(parts, "with "+s)
	}
	return wording.Present(parts, ", ")
}

func blockWords(b *design.Block) string {
	switch {
	case b.TotalA.Given():
		return number(b.TotalA.Value) + " A"
	case b.Type != nil && b.Type.TotalA > 0:
		return number(b.Type.TotalA) + " A"
	}
	return ""
}

func switchWords(s *design.Switch) string {
	switch {
	case s.RatingA.Given():
		return number(s.RatingA.Value) + " A"
	case s.Type != nil && s.Type.ResistiveA > 0:
		return number(s.Type.ResistiveA) + " A"
	}
	return ""
}

func loadWords(l *design.Load) string {
	var parts []string
	if l.PowerW > 0 {
		parts = append(parts, number(l.PowerW)+" W")
	}
	if l.OwnSwitch {
		parts = append(parts, "own switch")
	}
	return wording.Present(parts, ", ")
}

func tapWords(t *design.Tap) string {
	parts := []string{map[design.When]string{
		design.WhenKey: "live with key", design.WhenRunning: "live with engine", design.WhenAlways: "always live",
	}[t.Hot]}
	if t.FuseA.Given() {
		parts = append(parts, "fuse "+number(t.FuseA.Value)+" A")
	}
	if t.SpareA.Given() {
		parts = append(parts, "spare "+number(t.SpareA.Value)+" A")
	}
	return wording.Present(parts, ", ")
}

func (d *drawing) batteryWords() (words, details string) {
	b := d.design().Battery
	parts := []string{}
	if d.design().SystemV.Given() {
		parts = append(parts, number(d.design().SystemV.Value)+" V")
	}
	if b.Chemistry != nil && d.study == nil { // a study needs the room
		parts = append(parts, b.Chemistry.Name)
	}
	words = wording.Present(parts, " ")
	if words == "" {
		words = "battery"
	}
	if d.study != nil {
		return words, ""
	}
	var figures []string
	if b.CapacityAh.Given() {
		figures = append(figures, number(b.CapacityAh.Value)+" Ah")
	}
	if b.ResistanceOhm.Given() {
		figures = append(figures, number(b.ResistanceOhm.Value*1000)+" mΩ")
	}
	return words, strings.Join(figures, ", ")
}

func (d *drawing) generatorWords() (words, details string) {
	c := d.design().Charging
	if c.RegulatedV.Given() {
		words = number(c.RegulatedV.Value) + " V"
	}
	if n := len(c.Output); n > 0 {
		details = number(c.Output[0].CurrentA.Value) + "–" + number(c.Output[n-1].CurrentA.Value) + " A"
	}
	return words, details
}

// vehicleWords is the sum of the vehicle's own loads, duties left out.
func (d *drawing) vehicleWords() string {
	sum := 0.0
	for _, v := range d.design().VehicleLoads {
		sum += d.design().VehicleW(v)
	}
	if sum <= 0 {
		return ""
	}
	return number(sum) + " W"
}
