package rules

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var resistorOverload = &Rule{
	Name:  "resistor-overload",
	Title: "a resistor makes more heat than it is rated for",
	Says:  "over its rating",
	Doc: "The heat of every dropping resistor (`resistors`) in the situation and in the position of its switch in which it is most, with a switch or relay that bypasses it open too. Behind it a load draws " +
		"as it behaves; a motor is taken as a fan or pump, whose torque follows the square of its speed, so that it draws less as it turns slower: the least that it can be; one that runs either way, is `on for` a time or starts an engine draws its rated current at any speed. " +
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
	b := part.Branches[0]
	heat := func(s *solve.Solution) float64 {
		if a := s.Amps(b); !math.IsNaN(a) {
			return a * a * b.Ohm
		}
		return 0
	}
	makes := p.figureOf(1, nil, heat)
	nominal := makes(corner.AtNominal)
	if nominal.in == nil || nominal.Nominal == 0 {
		return
	}
	if !x.RatingW.Given() {
		p.say(ofPart(finding.Advice, part), "the rating of %s is not given: in %q it makes %s, and one of %s is usual for that", part.Name, nominal.in.Name,
			watts(nominal.Nominal), watts(circuit.ResistorSpare*nominal.Nominal))
		return
	}
	rating := x.RatingW.Value
	v := p.held("resistor rating", makes, figure.Larger, rating, rating, always(finding.Danger))
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
	draws := behind(p.c, b)
	shorted := func(s *solve.Solution) float64 {
		if len(draws) == 0 || heat(s) == 0 {
			return 0
		}
		return math.Pow(s.PostsV(draws[0]), 2) / b.Ohm
	}
	for _, may := range []struct {
		when string
		off  bool
		as   solve.Fans
		heat func(*solve.Solution) float64
	}{{"", false, solve.Steady, heat}, {"with the motor behind it held fast", x.Cutout, solve.Stand, heat},
		{"with what is behind it shorted", x.Cutout || p.opensAt(b, draws), solve.Slow, shorted}} {
		if may.off {
			continue
		}
		most, in := 0.0, (*design.Situation)(nil)
		for _, s := range p.turning(may.as) {
			if w := may.heat(s); s.Status == solve.Converged && w > most {
				most, in = w, s.Situation
			}
		}
		if !over(most, rating) {
			continue
		}
		fin := ofPart(finding.Advice, part)
		fin.Situation, fin.Leave = in.Name, true
		fin.Change = "take one with a thermal fuse (`thermal fuse: yes`), or of a higher rating"
		if x.Cutout { // it is there, and opens in use
			fin.Change = "take one of a higher rating, or measure the motor's current in that position and give it"
		}
		if may.as == solve.Steady {
			p.say(fin, "%s is taken as a fan or pump, with which %s makes %s; a hoist or the like, which draws its rated current at any speed, would make it %s. It is rated %s, and no fuse of the wires sees that",
				wording.And(names(slices.DeleteFunc(draws, func(b *circuit.Branch) bool { return b.Load == nil || b.Load.FanStall == 0 }))), part.Name,
				watts(nominal.Nominal), watts(most), quantity.Plain(rating, quantity.Power))
			return
		}
		p.say(fin, "%s, %s makes %s; it is rated %s, and no fuse of the wires sees that", may.when, part.Name, watts(most), quantity.Plain(rating, quantity.Power))
		return
	}
}

func watts(v float64) string { return quantity.Format(v, quantity.Power) }

// turning are the operating points at nominal with motors behind resistors turning in some way.
func (p *Pass) turning(as solve.Fans) []*solve.Solution {
	now := p.allSolutions()
	if as == solve.Slow || !p.c.HasFans() {
		return now
	}
	plan, list := solve.Prepare(p.c), make([]*solve.Solution, len(now))
	for i, s := range now {
		var opt solve.Options
		if set := p.in.Corners; set != nil {
			opt = set.Options(i, corner.Nominal)
		}
		opt.Fans = as
		list[i] = plan.Network(s.Situation, opt).Solution()
	}
	return list
}

// behind are the loads whose current may flow through a resistor.
func behind(c *circuit.Circuit, b *circuit.Branch) []*circuit.Branch {
	if b.Feeds() {
		return c.BelowBranch(b).Loads
	}
	return c.DrawsBack(b)
}

// opensAt tells whether the smallest fuse before what is behind a resistor opens at what flows when
// that is shorted.
func (p *Pass) opensAt(b *circuit.Branch, draws []*circuit.Branch) bool {
	for _, x := range draws {
		var least *circuit.Branch
		for _, up := range p.nearest.Upstream(x) {
			if r := fuseRating(up); r > 0 && (least == nil || r < fuseRating(least)) {
				least = up
			}
		}
		if least == nil || math.IsInf(least.Device(0).Open(p.c.NominalAt(x.A)/b.Ohm).SlowS, 1) {
			return false
		}
	}
	return true
}
