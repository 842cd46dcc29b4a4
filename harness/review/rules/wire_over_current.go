package rules

import (
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/review/finding"
)

var wireOverCurrent = &Rule{
	Name:  "wire-over-current",
	Title: "a wire carries more than it is allowed to",
	Doc: "The largest current of every wire over all situations, at nominal values and in the worst case, " +
		"against what it may carry continuously at the hottest point it meets (in the worst case: hotter by the tolerance), with the wires loaded beside it and the cover of the run. The margin " +
		"to the class is taken once: in the worst case a hot place may use it up. A wire at a place as hot as " +
		"its class less the margin may carry nothing; see insulation-class too.",
	Formula: "current ≤ allowed current, the smaller of the heat balance at class less margin and " +
		"the practice's table",
	Limits:   "heat balance, or the practice's current table where it has one",
	Why:      "the conductor runs hotter than its insulation withstands and ages, softens or burns",
	Change:   "use a thicker wire or a higher insulation class, or move it to a cooler run",
	Severity: "danger",
	Source: "heat balance of one wire in still air (Churchill-Chu 1975, IEC 60287 scheme), or the " +
		"practice's table",
	Mend:  MendWire,
	InUse: true,
	Bad: `
fuses:
  winch fuse: {type: blade C, rating: 25 A, at: battery tray, fed by: keyed feed, wire: {size: 6 mm², length: 100 mm}}
loads:
  winch: {power: 195 W, behaves: motor, at: rear, fed by: winch fuse, wire: {size: 0.75 mm²}, returns to: frame, return wire: {size: 4 mm²}}
taps:
  keyed feed: {at: battery tray, hot: running, fuse: 40 A, spare: 30 A, supervised: no}
charging: {regulated: 14.3 V, output: {1300 rpm: 24 A, 3000 rpm: 30 A}, idle: 1300 rpm, cruise: 3000 rpm}
accepted:
  - {rule: fuse-over-wire, part: winch, severity: danger, figure: 25 A of 12.8 A, reason: "shown for the wire's current only"}
  - {rule: fuse-wire-curve, part: winch, severity: danger, figure: 10 min of 7.02 s, reason: "shown for the wire's current only"}
  - {rule: voltage-drop, part: winch, figure: 12.6 % of 10 %, reason: "shown for the wire's current only"}
`,
	Good: `
fuses:
  winch fuse: {type: blade C, rating: 25 A, at: battery tray, fed by: keyed feed, wire: {size: 6 mm², length: 100 mm}}
loads:
  winch: {power: 195 W, behaves: motor, at: rear, fed by: winch fuse, wire: {size: 4 mm²}, returns to: frame, return wire: {size: 4 mm²}}
taps:
  keyed feed: {at: battery tray, hot: running, fuse: 40 A, spare: 30 A, supervised: no}
charging: {regulated: 14.3 V, output: {1300 rpm: 24 A, 3000 rpm: 30 A}, idle: 1300 rpm, cruise: 3000 rpm}
`,
	Run: func(p *Pass) {
		for _, w := range p.c.Wires {
			p.judgeWireCurrent(w)
		}
	},
}

// overCurrent tells whether a wire carries more than it may: at nominal against
// the allowed current at the design's ambient, at the corner against the corner's.
func (f *facts) overCurrent(w *circuit.Wire) bool {
	return f.allowedHot(w).below(f.cornerAmps(w.Branch).Corner) || f.allowed(w).below(f.wireWorst[w.Index].A)
}

func (p *Pass) judgeWireCurrent(w *circuit.Wire) {
	if !p.overCurrent(w) {
		return
	}
	i, a, limit := p.cornerAmps(w.Branch), p.allowed(w), p.allowedHot(w)
	if !limit.below(i.Corner) { // over at nominal alone
		most := p.wireWorst[w.Index]
		i, limit = cornered{corner.Value{Nominal: most.A, Corner: most.A}, most.in.Situation}, a
	}
	fin := ofWire(finding.Danger, w)
	fin.Change = a.change()
	i.decides(&fin, "current", figure.Larger, 1, limit.AllowedA, "A")
	fin.Numbers = append(fin.Numbers,
		finding.Number{Name: "limit nominal", Value: a.AllowedA, Unit: "A"})
	fin.Numbers = append(fin.Numbers, limit.numbers()...)
	fin.Situation = i.in.Name
	fin.Source = limit.Source
	p.say(fin, "%s carries %s and may carry %s %s",
		w.Text(), i.split(against(limit.AllowedA, quantity.Current)), limit.textFor(i.Corner), limit.where())
}
