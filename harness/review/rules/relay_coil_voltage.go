package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

var relayCoilVoltage = &Rule{
	Name:  "relay-coil-voltage",
	Title: "a relay's coil gets the wrong voltage",
	Says:  "wrong voltage at the coil",
	Doc: "The coil's nominal voltage against the system's, and in each situation in which the coil is " +
		"supplied: its voltage against the pull-in voltage of a coil as warm as the relay's place, at nominal " +
		"and in its worst case (battery down to its reserve for starting); the worst case decides. With the engine at rest what the relay's own contact draws through the battery's inner resistance is " +
		"added back, and while the engine is started what the starter draws: the coil pulls in before that, and holds at far less. Which relays let go at a start is in the study. A " +
		"coil that is not supplied at all is not judged.",
	Formula: "coil nominal = system nominal; V coil ≥ V pull-in at 20 °C × (1 + 0.00393·(T − 20))",
	Limits:  "pull-in voltage and coil voltage of the relay form",
	Why: "a coil below its pull-in voltage closes late, weakly or not at all; one above its " +
		"voltage burns",
	Change:   "use the form for the system's voltage, a thicker coil feed, or a cooler place",
	Severity: "fault; danger of a coil for less than the system's voltage, which burns",
	Source: "makers' data sheets, mini and micro relays: pull-in 8 V of 12 V, coil resistance " +
		"against temperature (two sources)",
	Mend: MendWire,
	Bad: `
relays:
  lamp relay: {form: mini make 24 V, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"make 24 V", "make 12 V"},
	Run: func(p *Pass) {
		for part, r := range each[*design.Relay](p.facts) {
			if r.Form == nil || p.coilOf[part.Index] == nil {
				continue
			}
			if r.Form.CoilV > 0 && r.Form.CoilV != p.d.CoilV(r) {
				p.reportCoilNominal(part, r.Form, p.d.CoilV(r))
			} else if !r.Form.Senses {
				p.judgePullIn(part, r.Form)
			}
		}
	},
}

func (p *Pass) reportCoilNominal(part *circuit.Part, form *library.RelayForm, fedV float64) {
	fin := ofPart(graver(over(fedV, form.CoilV), finding.Fault, finding.Danger), part)
	fin.Numbers = []finding.Number{{Name: "coil voltage", Value: form.CoilV, Unit: "V"},
		{Name: "limit", Value: fedV, Unit: "V"}}
	p.say(fin, "%s has a %s coil in a %s system",
		part.Name, volts(form.CoilV), volts(fedV))
}

// suppliedV is the voltage below which a coil counts as not supplied: what
// leaks through other coils and open loads is no supply.
const suppliedV = 1

func (p *Pass) judgePullIn(part *circuit.Part, form *library.RelayForm) {
	v := p.pullIn(part, form)
	if v.severity == 0 {
		return
	}
	fin := ofPart(v.severity, part)
	v.decides(&fin, "coil voltage", figure.Smaller, 1, v.limit, "V")
	against := func(x float64) string { value, _ := quantity.Against(x, v.limit, quantity.Voltage); return value }
	p.say(fin, "voltage at the coil of %s: %s; it needs %s to pull in at its place", part.Name, v.split(against), volts(v.limit))
}

// pullIn holds the least voltage of a supplied coil against its pull-in voltage where
// it stands. Where another relay leaves it without supply in a worst case, that one is
// at fault.
func (p *Pass) pullIn(part *circuit.Part, form *library.RelayForm) verdict {
	coil := p.coilOf[part.Index]
	supplied := func(s *solve.Solution) float64 {
		if v := math.Abs(s.Volts(coil)); v > suppliedV {
			return v + p.ownDipV(s, coil)
		}
		return math.Inf(1)
	}
	in := func(s *solve.Solution) bool { return !math.IsInf(supplied(s), 1) }
	return p.held("pull-in voltage", p.figureOf(-1, in, supplied), figure.Smaller,
		p.pullInV(part, form, p.decidedBy("pull-in voltage")), p.pullInV(part, form, corner.AtWorst), always(finding.Fault))
}

// ownDipV is what the loads of a coil's own make contacts, and a starter, pull the battery down by through its inner
// resistance, with the engine at rest: the coil pulls in before they draw.
// What they lose in wires that the coil shares is left in.
func (p *Pass) ownDipV(s *solve.Solution, coil *circuit.Branch) float64 {
	if p.battery == nil || circuit.Running(s.Situation) || !(s.Given(p.battery) > 0) {
		return 0
	}
	own := 0.0
	for _, b := range p.c.ContactsOf(coil) {
		if b.Closer.Coil == coil && !math.IsNaN(s.Amps(b)) {
			own = math.Max(own, math.Abs(s.Amps(b)))
		}
	}
	if s.Situation.Cranks() {
		own = math.Max(own, startingA(s))
	}
	return math.Min(own, s.Given(p.battery)) * s.Ohm[p.battery.Index]
}

// startingA is what the design's starters draw.
func startingA(s *solve.Solution) (sum float64) {
	for _, b := range s.Circuit.Branches {
		if l := b.Load; l != nil && l.Load != nil && !l.Standby && l.Load.Starts() && s.LoadOn[b.Index] {
			sum += math.Abs(s.Amps(b))
		}
	}
	return sum
}

// pullInV is what a coil as warm as the relay's place needs; in the worst case the
// place is hotter where the design does not give it.
func (p *Pass) pullInV(part *circuit.Part, form *library.RelayForm, by corner.Kind) float64 {
	hot := part.AmbientC()
	if by == corner.AtWorst && !part.AmbientKnown() {
		hot += p.ambientRiseK()
	}
	return form.PullInV * conductor.AtTemperature(1, math.Max(20, hot))
}
