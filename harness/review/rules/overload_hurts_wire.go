package rules

import (
	"cmp"
	"fmt"
	"slices"

	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/overload"
)

var overloadHurtsWire = &Rule{
	Name:  "overload-hurts-wire",
	Title: "the circuit's own loads can overheat a wire before a fuse opens",
	Says:  "overheats before a fuse opens",
	Doc: "Every overload that has a source in the circuit: each motor stalled while the rest runs on, and all loads " +
		"behind a wire at once, each for as long as it is on, whether a situation has them together or not. The first fuse on the way that must have " +
		"opened is held against what the wire withstands, from full service; what no fuse is certain to end is held against the " +
		"class. A path without any fuse is unfused-conductor's. A stalled motor draws its starting current (`inrush`), or the library's multiple of its running current where that is less than twice, as with a soft start, or not given.",
	Formula: "latest opening at I < time the wire withstands I",
	Limits:  "overload limit of the insulation; its class where no fuse is certain to open",
	Why:     "a frozen pump or a jammed fan holds its starting current for minutes",
	Change:  "fit a smaller fuse or a thicker wire, or a motor protector that opens in time",
	Severity: "fault; danger when the wire withstands it for less than a minute, or passes its overload limit while no fuse is certain to open; " +
		"advice where a stalled motor that runs only while a button is held is let go of, by its `on for`, before it harms the wire, and its fuse opens in the end",
	Source: "article on DC motors' starting current (one source); ISO 8820 and maker's data sheets, time-current tables " +
		"(one source); heating of the wire: IEC 60949, ISO 6722-1 thermal overload (from memory)",
	Mend: MendWire,
	Bad: `
fuses:
  fan fuse: {type: blade C, rating: 25 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
loads:
  fan: {power: 96 W, behaves: motor, inrush: {peak: 3.5, time: 100 ms}, at: rear, fed by: fan fuse, wire: {size: 1.5 mm²}, returns to: frame, return wire: {size: 4 mm²}, stays live: "cools the parked machine", own switch: true}
charging: {regulated: 14.3 V, output: {1300 rpm: 24 A, 3000 rpm: 30 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
accepted:
  - {rule: fuse-wire-curve, part: fan, severity: danger, figure: 47.4 s of 38.1 s, reason: "shown for the stalled fan only"}
`,
	Good: `
fuses:
  fan fuse: {type: blade C, rating: 15 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
loads:
  fan: {power: 96 W, behaves: motor, inrush: {peak: 3.5, time: 100 ms}, at: rear, fed by: fan fuse, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 4 mm²}, stays live: "cools the parked machine", own switch: true}
charging: {regulated: 14.3 V, output: {1300 rpm: 24 A, 3000 rpm: 30 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
`,
	Run: func(p *Pass) {
		if p.in.Overloads == nil {
			return
		}
		for _, w := range p.c.Wires {
			if !p.allowed(w).known() {
				continue
			}
			if o := p.gravest(p.in.Overloads.Hurting(w)); o != nil {
				p.reportOverload(w, o)
			}
		}
	},
}

// gravest is the overload of a wire to report; nil where there is none behind a fuse.
func (p *Pass) gravest(list []*overload.Overload) *overload.Overload {
	list = slices.DeleteFunc(slices.Clone(list), func(o *overload.Overload) bool { return o.Bare })
	if len(list) == 0 {
		return nil
	}
	return slices.MinFunc(list, func(a, b *overload.Overload) int {
		return cmp.Or(cmp.Compare(p.overloadSeverity(b), p.overloadSeverity(a)), overload.Compare(a, b))
	})
}

// overloadSeverity is advice where whoever runs the motor lets go of it long before: one
// that runs only while a button is held, and for a time, which the wire stands for longer, and
// whose fuse opens in the end.
func (p *Pass) overloadSeverity(o *overload.Overload) finding.Severity {
	if o.Ruins || o.StandsS < longOverloadS {
		return finding.Danger
	}
	if b := o.Blocked; b != nil && o.Device != nil && p.letGo(b) && b.Load.Load.OnForS.Given() && o.StandsS > b.Load.Load.OnForS.Value {
		return finding.Advice
	}
	return finding.Fault
}

func (p *Pass) reportOverload(w *circuit.Wire, o *overload.Overload) {
	fin := ofWire(p.overloadSeverity(o), w)
	what := "all its loads on at once"
	if o.Blocked != nil {
		what = o.Blocked.Part.Name + " stalled"
		fin.Cause = o.Blocked.Part.Name
	}
	fin.What = fmt.Sprintf("with %s, %s flows through %s, which is damaged after %s; ", what, amps(o.Amps), w.Text(), duration(o.StandsS))
	if o.Device == nil {
		fin.What += "no fuse upstream is certain to open"
		decidedBy(&fin, "overload", o.Amps, "A", figure.Larger)
	} else {
		value, _ := quantity.Against(o.OpensS, o.StandsS, quantity.Duration)
		fin.What += fmt.Sprintf("%s may take %s to open", fuseText(o.Device), value)
		atMost(&fin, "latest opening", o.OpensS, o.StandsS, "s")
	}
	p.report(fin)
}
