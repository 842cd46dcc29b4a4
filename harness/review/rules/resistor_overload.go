package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var resistorOverload = &Rule{
	Name:  "resistor-overload",
	Title: "a resistor makes more heat than it is rated for",
	Says:  "over its rating",
	Doc: "The heat of every dropping resistor (`resistors`) in the situation and in the position of its switch in which it is most. Behind it a load draws " +
		"as it behaves; a motor alone is taken as a fan or pump, whose torque follows the square of its speed, so that it draws less as it turns slower: the least that it can be. " +
		"Above the rating it is a danger. From half the rating on it is advised on, as it is where a motor that draws its rated current at any speed, one that is held fast, or a short behind it that no fuse " +
		"clears would take it above its rating; a resistor with a `thermal fuse` is spared the last two.",
	Formula:  "P = I²·R ≤ rating; of a motor I from (R + Ra)·I + E·√(I/I rated) = V, with Ra = V rated / stall current and E = V rated − Ra·I rated",
	Limits:   "`rating` of the resistor; half of it, as advice",
	Why:      "it glows: what it is screwed to, the sleeve over it and the wires at its ends catch fire, behind a fuse that carries on",
	Change:   "use a resistor of a higher rating, in the air that the blower moves or on metal, clear of wires and anything that burns",
	Severity: "danger; advice from half its rating on, and of what a motor may make of it",
	Source:   "P = I²·R; half the rating: common practice, no source; torque of fans and the laws of a direct-current motor: from memory",
	Bad: `
resistors:
  dropper: {resistance: 5 Ω, rating: 5 W, thermal fuse: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
loads:
  work lamp: {resistance: 7 Ω, at: rear, fed by: dropper, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"rating: 5 W", "rating: 20 W"},
	Run: func(p *Pass) {
		for part, x := range each[*design.DroppingResistor](p.facts) {
			p.judgeResistor(part, x)
		}
	},
}

func (p *Pass) judgeResistor(part *circuit.Part, x *design.DroppingResistor) {
	h := heat{part.Branches[0], corner.TolerancesOf(p.d), p.c}
	least := p.figureOf(1, nil, func(s *solve.Solution) float64 { return h.at(s, slows) })
	nominal := least(corner.AtNominal)
	if nominal.in == nil || nominal.Nominal == 0 {
		return
	}
	if !x.RatingW.Given() {
		p.say(ofPart(finding.Advice, part), "the rating of %s is not given: in %q it makes %s, and one of %s is usual for that", part.Name, nominal.in.Name,
			watts(nominal.Nominal), watts(circuit.ResistorSpare*nominal.Nominal))
		return
	}
	rating := x.RatingW.Value
	v := p.held("resistor rating", least, figure.Larger, rating, rating, always(finding.Danger))
	if v.severity == 0 && over(nominal.Nominal, rating/circuit.ResistorSpare) {
		v = verdict{nominal, rating / circuit.ResistorSpare, finding.Advice}
	}
	if v.severity != 0 {
		fin := ofPart(v.severity, part)
		v.decides(&fin, "heat", figure.Larger, 1, v.limit, "W")
		what := "it is rated " + quantity.Plain(rating, quantity.Power)
		if v.limit < rating {
			what += ", and half of that is usual"
		}
		p.say(fin, "%s makes %s in %q; %s", part.Name, v.split(watts), v.in.Name, what)
	}
	if v.severity == finding.Danger {
		return
	}
	for _, may := range []struct {
		as   taken
		when string
		off  bool
	}{{steady, "with a motor behind it that draws its rated current at any speed", false}, {stalls, "with the motor behind it held fast", x.Cutout},
		{shorted, "with what is behind it shorted", x.Cutout || p.opensAt(h)}} {
		most := p.figureOf(1, nil, func(s *solve.Solution) float64 { return h.at(s, may.as) })(corner.AtNominal)
		if may.off || !over(most.Nominal, rating) {
			continue
		}
		fin := ofPart(finding.Advice, part)
		fin.Situation, fin.Leave = most.in.Name, true
		fin.Change = "take one with a thermal fuse (`thermal fuse: yes`), or of a higher rating"
		if x.Cutout { // it is there, and opens in use
			fin.Change = "take one of a higher rating, or measure the motor's current in that position and give it"
		}
		p.say(fin, "%s, %s makes %s; it is rated %s, and no fuse of the wires sees that", may.when, part.Name, watts(most.Nominal), quantity.Plain(rating, quantity.Power))
		return
	}
}

func watts(v float64) string { return quantity.Format(v, quantity.Power) }

// opensAt tells whether the smallest fuse before what is behind a resistor opens at what flows when
// that is shorted.
func (p *Pass) opensAt(h heat) bool {
	for _, x := range h.behind() {
		var least *circuit.Branch
		for _, up := range p.nearest.Upstream(x) {
			if r := fuseRating(up); r > 0 && (least == nil || r < fuseRating(least)) {
				least = up
			}
		}
		if least == nil || math.IsInf(least.Device(0).Open(p.c.NominalAt(x.A)/h.b.Ohm).SlowS, 1) {
			return false
		}
	}
	return true
}

// taken is how what is behind a resistor is taken.
type taken int

const (
	slows  taken = iota // a motor as a fan: less current at less speed
	steady              // a motor at its rated current at any speed
	stalls              // a motor that stands
	shorted
)

// heat is that of a resistor.
type heat struct {
	b          *circuit.Branch
	tolerances *corner.Tolerances
	c          *circuit.Circuit
}

// at is the heat in watts at an operating point.
func (h heat) at(s *solve.Solution, as taken) float64 {
	a := math.Abs(s.Amps(h.b))
	if math.IsNaN(a) {
		return 0
	}
	behind := h.behind()
	if as == shorted && a > 0 && len(behind) > 0 {
		return math.Pow(s.PostsV(behind[0]), 2) / h.b.Ohm
	}
	if m := h.motor(s); m.ratedA > 0 {
		across := m.nowV + a*h.b.Ohm
		switch as {
		case slows:
			a = math.Min(a, m.fanA(across, h.b.Ohm))
		case stalls:
			a = math.Max(a, across/(h.b.Ohm+m.ohm))
		}
	}
	return a * a * h.b.Ohm
}

// motor is what turns behind a resistor, several taken as one: currents and volts as rated, volts
// now, and the resistance of the winding. ratedA is 0 where anything else draws there too.
type motor struct{ ratedA, ratedV, nowV, ohm float64 }

// behind are the loads whose current may flow through it.
func (h heat) behind() []*circuit.Branch {
	if h.b.Feeds() {
		return h.c.BelowBranch(h.b).Loads
	}
	return h.c.DrawsBack(h.b)
}

func (h heat) motor(s *solve.Solution) (m motor) {
	siemens := 0.0
	for _, x := range h.behind() {
		if !s.LoadOn[x.Index] || s.Amps(x) == 0 {
			continue
		}
		if x.Load == nil || x.Load.Load == nil || x.Load.Behaves != design.Motor || len(x.String) > 0 {
			return motor{}
		}
		m.ratedA, m.ratedV, m.nowV = m.ratedA+x.Load.RatedA(), x.Load.RatedV, s.LoadV(x)
		siemens += h.tolerances.StallRatio(x.Load.Load) * x.Load.RatedA() / x.Load.RatedV
	}
	m.ohm = 1 / siemens
	return m
}

// fanA is the current of a fan behind some ohms at some volts: (R + Ra)·I + E·√(I/I rated) = V.
func (m motor) fanA(acrossV, ohm float64) float64 {
	a, e := (ohm+m.ohm)*m.ratedA, m.ratedV-m.ohm*m.ratedA
	y := (math.Sqrt(e*e+4*a*acrossV) - e) / (2 * a)
	return m.ratedA * y * y
}
