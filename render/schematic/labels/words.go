package labels

import (
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
)

// WordsOf is a part's name and its figures.
func (l *Labels) WordsOf(p *circuit.Part) (words, details string) {
	words = parts.NameOf(p)
	switch src := p.Source.(type) {
	case *design.Fuse:
		return words, fuseWords(src)
	case *design.Relay:
		return words, relayWords(src)
	case *design.Block:
		return words, blockWords(src)
	case *design.Switch:
		return words, wording.Present([]string{switchWords(src), l.plugWords(p)}, ", ")
	case *design.Load:
		return words, wording.Present([]string{loadWords(src), l.plugWords(p)}, ", ")
	case *design.Tap:
		return words, tapWords(src)
	}
	switch p.Kind {
	case circuit.Battery:
		return l.batteryWords()
	case circuit.Generator:
		return l.generatorWords()
	case circuit.VehicleLoads:
		return "vehicle's own", l.vehicleWords()
	}
	return words, ""
}

func fuseWords(f *design.Fuse) string {
	var parts []string
	if f.Rating != nil {
		parts = append(parts, lettering.Number(f.Rating.RatingA)+" A")
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
		return lettering.Number(b.TotalA.Value) + " A"
	case b.Type != nil && b.Type.TotalA > 0:
		return lettering.Number(b.Type.TotalA) + " A"
	}
	return ""
}

func switchWords(s *design.Switch) string {
	switch {
	case s.RatingA.Given():
		return lettering.Number(s.RatingA.Value) + " A"
	case s.Type != nil && s.Type.ResistiveA > 0:
		return lettering.Number(s.Type.ResistiveA) + " A"
	}
	return ""
}

func loadWords(l *design.Load) string {
	var parts []string
	if l.PowerW > 0 {
		parts = append(parts, lettering.Number(l.PowerW)+" W")
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
		parts = append(parts, "fuse "+lettering.Number(t.FuseA.Value)+" A")
	}
	if t.SpareA.Given() {
		parts = append(parts, "spare "+lettering.Number(t.SpareA.Value)+" A")
	}
	return wording.Present(parts, ", ")
}

func (l *Labels) batteryWords() (words, details string) {
	b := l.Design.Battery
	parts := []string{}
	if l.Design.SystemV.Given() {
		parts = append(parts, lettering.Number(l.Design.SystemV.Value)+" V")
	}
	if b.Chemistry != nil && l.Study == nil { // a study needs the room
		parts = append(parts, b.Chemistry.Name)
	}
	words = wording.Present(parts, " ")
	if words == "" {
		words = "battery"
	}
	if l.Study != nil {
		return words, ""
	}
	var figures []string
	if b.CapacityAh.Given() {
		figures = append(figures, lettering.Number(b.CapacityAh.Value)+" Ah")
	}
	if b.ResistanceOhm.Given() {
		figures = append(figures, lettering.Number(b.ResistanceOhm.Value*1000)+" mΩ")
	}
	return words, strings.Join(figures, ", ")
}

func (l *Labels) generatorWords() (words, details string) {
	c := l.Design.Charging
	if c.RegulatedV.Given() {
		words = lettering.Number(c.RegulatedV.Value) + " V"
	}
	if n := len(c.Output); n > 0 {
		details = lettering.Number(c.Output[0].CurrentA.Value) + "–" + lettering.Number(c.Output[n-1].CurrentA.Value) + " A"
	}
	return words, details
}

// vehicleWords is the sum of the vehicle's own loads, duties left out.
func (l *Labels) vehicleWords() string {
	sum := 0.0
	for _, v := range l.Design.VehicleLoads {
		sum += l.Design.VehicleW(v)
	}
	if sum <= 0 {
		return ""
	}
	return lettering.Number(sum) + " W"
}
