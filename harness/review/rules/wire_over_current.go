package rules

import (
	"fmt"
	"math"

	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var wireOverCurrent = &Rule{
	Name:  "wire-over-current",
	Title: "a wire carries more than it is allowed to",
	Says:  "more current than it may carry",
	Doc: "The largest current of every wire over all situations, at nominal values and in the worst case, " +
		"against what it may carry continuously at the hottest point it meets (in the worst case: hotter by the tolerance), with the wires loaded beside it and the cover of the run. A wire of loads that are on for a time (`on for`, `every`) " +
		"may carry what brings it to the limit at the hottest moment of its settled cycles; what flows continuously counts as that. The margin " +
		"to the class is taken once: in the worst case a hot place may use it up. A wire at a place as hot as " +
		"its class less the margin may carry nothing; see insulation-class too.",
	Formula: "current ≤ allowed current, the smaller of the heat balance at class less margin and " +
		"the practice's table",
	Limits: "heat balance, or the practice's current table where it has one",
	Why:    "the conductor runs hotter than its insulation allows and ages, softens or burns",
	Change: "use a thicker wire or a higher insulation class, or move it to a cooler run",
	Severity: "fault; danger when the conductor passes its class as is likely, or its overload limit in the worst case; " +
		"advice when only the worst case exceeds the limit",
	Source: "heat balance of one wire in still air (Churchill-Chu 1975, IEC 60287 scheme), or the " +
		"practice's table",
	Mend:  MendWire,
	InUse: true,
	Bad: `
fuses:
  winch fuse: {type: blade C, rating: 25 A, at: battery tray, fed by: keyed feed, wire: {size: 6 mm², length: 100 mm}}
loads:
  winch: {power: 185 W, behaves: motor, inrush: {peak: 1.5, time: 50 ms}, at: rear, fed by: winch fuse, wire: {size: 0.75 mm²}, returns to: frame, return wire: {size: 4 mm²}}
taps:
  keyed feed: {at: battery tray, hot: running, fuse: 40 A, spare: 30 A, supervised: no}
charging: {regulated: 14.3 V, output: {1300 rpm: 27 A, 3000 rpm: 30 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
accepted:
  - {rule: fuse-over-wire, part: winch, severity: danger, figure: 25 A of 14.1 A, reason: "shown for the wire's current only"}
  - {rule: fuse-wire-curve, part: winch, severity: danger, figure: 30 min of 7.31 s, reason: "shown for the wire's current only"}
`,
	Good: `
fuses:
  winch fuse: {type: blade C, rating: 25 A, at: battery tray, fed by: keyed feed, wire: {size: 6 mm², length: 100 mm}}
loads:
  winch: {power: 185 W, behaves: motor, inrush: {peak: 1.5, time: 50 ms}, at: rear, fed by: winch fuse, wire: {size: 4 mm²}, returns to: frame, return wire: {size: 4 mm²}}
taps:
  keyed feed: {at: battery tray, hot: running, fuse: 40 A, spare: 30 A, supervised: no}
charging: {regulated: 14.3 V, output: {1300 rpm: 27 A, 3000 rpm: 30 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
`,
	Run: func(p *Pass) {
		for _, w := range p.c.Wires {
			p.judgeWireCurrent(w)
		}
	},
}

// judgeWireCurrent holds a wire's current against what it may carry, and its
// temperature against its class and overload limit.
func (p *Pass) judgeWireCurrent(w *circuit.Wire) {
	a, hot := p.allowed(w), p.allowedHot(w)
	if !a.known() || p.idle(w) {
		return
	}
	v := p.held("allowed current", p.cornerAmps(w.Branch), figure.Larger, math.Max(a.AllowedA, traceA),
		math.Max(hot.AllowedA, traceA), always(finding.Fault))
	burns := p.tooHot(w)
	if v.severity == 0 && burns.severity == 0 {
		return
	}
	if v.severity == 0 { // hotter than its class where every current is as allowed
		v = verdict{p.cornerAmps(w.Branch)(burns.by), a.AllowedA, burns.severity}
	}
	if v.by == corner.AtWorst {
		a = hot
	}
	v.severity = max(v.severity, burns.severity)
	fin := ofWire(v.severity, w)
	fin.What = fmt.Sprintf("%s carries %s but may carry %s %s",
		w.Text(), v.split(against(a.AllowedA, quantity.Current)), a.textFor(v.decisive()), a.where()) + a.leftOn(v.decisive())
	if burns.severity != 0 {
		reaches, bears := temperature(burns.decisive()), celsius(burns.limit)
		if reaches == bears {
			reaches, bears = quantity.Against(burns.decisive(), burns.limit, quantity.Temperature)
		}
		fin.What += fmt.Sprintf("; its conductor reaches %s, where the limit is %s", reaches, bears)
	}
	fin.Change, fin.LimitSays = a.change(), a.limitSays()
	v.decides(&fin, "current", figure.Larger, 1, a.AllowedA, "A")
	fin.Numbers = append(fin.Numbers, a.numbers()...)
	fin.Source, fin.Unsourced = a.Source, p.unsourced(a, v.decisive())
	p.report(fin)
	if a.Nothing() && burns.severity == 0 { // the place is too hot, whatever it carries
		p.standsAside(w, insulationClass)
	}
}

// tooHot is the danger of a wire that its current takes past its class, or in the
// worst case past its overload limit.
func (p *Pass) tooHot(w *circuit.Wire) verdict {
	classC, overloadC := w.Spec.Type.ClassC, w.Spec.Type.OverloadC
	if overloadC < classC {
		overloadC = classC
	}
	v := p.held("class temperature", p.conductorC(w), figure.Larger, classC, overloadC, always(finding.Danger))
	if v.severity != 0 {
		v.severity = finding.Danger
	}
	return v
}

// conductorC is the temperature of a wire in the situations in which it carries
// current.
func (f *facts) conductorC(w *circuit.Wire) measure {
	return func(by corner.Kind) cornered {
		a := f.allowed(w)
		carries := func(s *solve.Solution) bool { return math.Abs(s.Amps(w.Branch)) > traceA }
		heat := func(s *solve.Solution) float64 {
			return a.ConductorIn(f.laid.SituationOf(s.Situation), s.Amps(w.Branch))
		}
		return f.worstCorner(by, 1, carries, heat,
			func(c *corner.Set, i int) corner.Value { return c.WireC(i, w) })
	}
}
