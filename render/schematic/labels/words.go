package labels

import (
	"cmp"
	"fmt"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/parts"
)

// WordsOf is a part's name and its figures, and that it is already there.
func (l *Labels) WordsOf(p *circuit.Part) (words, details string) {
	words, details = l.wordsOf(p)
	if p.Fitted {
		details = wording.Present([]string{details, "fitted"}, ", ")
	}
	return words, details
}

func (l *Labels) wordsOf(p *circuit.Part) (words, details string) {
	words = parts.NameOf(p)
	switch src := p.Source.(type) {
	case *design.Bank:
		return words, wording.Present([]string{l.storeWords(&src.Store), linkWords(p)}, ", ")
	case *design.Fuse:
		return words, fuseWords(src)
	case *design.Relay:
		return words, relayWords(src)
	case *design.Block:
		return words, blockWords(src)
	case *design.Switch:
		return words, wording.Present([]string{switchWords(src), marks(p), l.plugWords(p), idle(src)}, ", ")
	case *design.Charger:
		return words, chargerWords(src)
	case *design.Diode:
		return words, src.Type.Name
	case *design.DroppingResistor:
		return words, resistorWords(src)
	case *design.Load:
		return words, wording.Present([]string{loadWords(src), l.plugWords(p)}, ", ")
	case *design.Tap:
		return words, tapWords(src)
	}
	switch p.Kind {
	case circuit.Splice:
		return words, jointWords(p)
	case circuit.Battery:
		return l.batteryWords(p)
	case circuit.Generator:
		return l.generatorWords()
	case circuit.VehicleLoads:
		return l.Circuit.Design.Spoken().Noun + "'s own", l.vehicleWords()
	}
	return words, ""
}

func resistorWords(x *design.DroppingResistor) string {
	text := quantity.Plain(x.Ohm.Value, quantity.Resistance)
	if x.RatingW.Given() {
		text += ", " + quantity.Plain(x.RatingW.Value, quantity.Power)
	}
	if x.Cutout {
		text += ", thermal fuse"
	}
	return text
}

func fuseWords(f *design.Fuse) string {
	var rating, family string
	if f.Rating != nil {
		rating = quantity.Plain(f.Rating.RatingA, quantity.Current)
	}
	if f.Type != nil {
		family = f.Type.Name
	}
	if f.Post != nil {
		family += ", on post of " + f.Post.PartName()
	}
	return wording.Present([]string{rating, family}, " ")
}

// relayWords leave out what is drawn at the coil.
func relayWords(r *design.Relay) string {
	var parts []string
	switch {
	case r.Half != nil:
		parts = append(parts, "in one case with "+r.Half.Name)
	case r.Form != nil:
		parts = append(parts, r.Form.Name)
	}
	parts = append(parts, given("on delay", r.OnDelayS, quantity.Duration), given("off delay", r.OffDelayS, quantity.Duration))
	return wording.Present(parts, ", ")
}

// given is a value of the design with a word before it; "" when the design does
// not say it.
func given(word string, q design.Quantity, dim quantity.Dimension) string {
	if !q.Given() {
		return ""
	}
	return wording.Present([]string{word, quantity.Plain(q.Value, dim)}, " ")
}

// atMost is a current that the design gives, or else the part's type.
func atMost(own design.Quantity, ofTypeA float64) string {
	if !own.Given() && ofTypeA > 0 {
		return quantity.Plain(ofTypeA, quantity.Current)
	}
	return given("", own, quantity.Current)
}

func blockWords(b *design.Block) string {
	if b.Type == nil {
		return given("", b.TotalA, quantity.Current)
	}
	return atMost(b.TotalA, b.Type.TotalA)
}

func switchWords(s *design.Switch) string {
	if s.Pole != nil {
		return "pole of " + s.Pole.Name
	}
	if s.Type == nil {
		return given("", s.RatingA, quantity.Current)
	}
	return atMost(s.RatingA, s.Type.ResistiveA)
}

// idle are the positions of a switch in which nothing is live; the others stand at its
// outputs.
func idle(s *design.Switch) string {
	var names []string
	for _, at := range s.Positions {
		if len(at.Outputs) == 0 {
			names = append(names, at.Name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return wording.And(names) + ": all open"
}

// marks are what stands at a switch's terminals, from its feed on: "C–NO". Those of one
// with positions are its maker's.
func marks(p *circuit.Part) string {
	in, out := p.Terminal("in"), p.Terminal("out")
	if in == nil || out == nil || in.Mark == "" || p.Plug != nil {
		return ""
	}
	return in.Mark + "–" + out.Mark
}

// jointWords is the one crimp part of a splice.
func jointWords(p *circuit.Part) string {
	if crimp := p.Terminals[0].Joint; crimp != nil {
		return crimp.Name
	}
	return ""
}

func loadWords(l *design.Load) string {
	var parts []string
	if ohm := l.SaidOhm(); ohm > 0 && len(l.InSeries()) > 1 {
		parts = append(parts, quantity.Plain(ohm, quantity.Resistance))
	} else if l.PowerW > 0 {
		parts = append(parts, quantity.Plain(l.PowerW, quantity.Power))
	}
	if l.OwnSwitch {
		parts = append(parts, "own switch")
	}
	if lead := l.Lead.AreaMm2; lead.Pos.Line > 0 {
		parts = append(parts, given("own lead", lead, quantity.Area))
	}
	return wording.Present(parts, ", ")
}

func tapWords(t *design.Tap) string {
	live := map[design.When]string{
		design.WhenKey: "live with key", design.WhenRunning: "live with engine", design.WhenAlways: "always live",
	}[t.Hot]
	if t.Hot.Condition() {
		live = "live with " + string(t.Hot)
	}
	return wording.Present([]string{live, given("fuse", t.FuseA, quantity.Current), given("spare", t.SpareA, quantity.Current)}, ", ")
}

func (l *Labels) batteryWords(p *circuit.Part) (words, details string) {
	b := l.Design.Battery
	chemistry := ""
	if b.Chemistry != nil && l.Study == nil { // a study needs the room
		chemistry = b.Chemistry.Name
	}
	words = cmp.Or(wording.Present([]string{l.voltsOf(&b), chemistry}, " "), "battery")
	links := linkWords(p)
	if l.Study != nil {
		return words, links
	}
	return words, wording.Present([]string{given("", b.CapacityAh, quantity.Charge),
		given("", b.ResistanceOhm, quantity.Resistance), links}, ", ")
}

// voltsOf is a battery's nominal voltage, of batteries in series that of each: "2 × 12 V".
func (l *Labels) voltsOf(b *design.Battery) string {
	if b.InSeries == 0 {
		return given("", l.Design.SystemV, quantity.Voltage)
	}
	return fmt.Sprintf("%d × %s", b.InSeries, quantity.Plain(b.EachV(l.Design.NominalV()), quantity.Voltage))
}

// linkWords name the links between batteries in series; "" = there are none.
func linkWords(p *circuit.Part) string {
	links := p.LinkWires()
	if len(links) == 0 {
		return ""
	}
	numbers := make([]string, len(links))
	for i, w := range links {
		numbers[i] = w.Number
	}
	return wording.Span(numbers) + " " + links[0].Spec.Size.Label
}

// storeWords are what is said of a further battery.
func (l *Labels) storeWords(b *design.Battery) string {
	return wording.Present([]string{l.voltsOf(b), b.Chemistry.Name, given("", b.CapacityAh, quantity.Charge)}, " ")
}

func (l *Labels) generatorWords() (words, details string) {
	c := l.Design.Charging
	if details = l.outputWords(); c.Kind != nil {
		details = wording.Present([]string{c.Kind.Name, details}, ", ")
	}
	return given("", c.RegulatedV, quantity.Voltage), details
}

// outputWords are the least and the most that charging gives.
func (l *Labels) outputWords() string {
	c := l.Design.Charging
	n := len(c.Output)
	if n == 0 {
		return ""
	}
	first, last := quantity.Plain(c.Output[0].CurrentA.Value, quantity.Current), quantity.Plain(c.Output[n-1].CurrentA.Value, quantity.Current)
	return strings.TrimSuffix(first, " A") + "–" + last
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
	return quantity.Format(sum, quantity.Power)
}

func chargerWords(x *design.Charger) string {
	return wording.Present([]string{x.Type.Name, given("panel", x.PanelW, quantity.Power), given("set to", x.OutputV, quantity.Voltage)}, ", ")
}
