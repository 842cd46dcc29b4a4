package rules

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/overload"
)

var motorNeverOpensFuse = &Rule{
	Name:  "motor-never-opens-fuse",
	Title: "a stalled motor never opens its fuse",
	Says:  "if stalled, never opens its fuse",
	Doc: "Each motor that runs unattended, against the smallest fuse on its way, one in the only return included: its stall current is its starting " +
		"current (`inrush`) from twice its running current on, or the library's multiple of its running current; of the ways it is fed by, the one on which resistors let through least counts. A fuse that carries that for hours protects " +
		"the wire and not the motor; up to four times the running current it is taken as chosen for the start. Left out: `protected motor: yes`, of the load or its library row; horns; what is on only " +
		"while a momentary switch is held; what is on for at most five minutes by its own `on for`, with somebody beside it.",
	Formula:  "stall current ≤ what the fuse carries continuously, and rating > 4 × running current",
	Limits:   "the fuse's curve: ISO 8820 blade fuses carry 1.1 times their rating for 100 h",
	Why:      "a jammed fan or a frozen pump cooks its winding behind an intact fuse, and may set fire to what it is mounted on",
	Change:   "fit the smallest fuse that carries its running current and its start, or say `protected motor: yes` if it has a thermal switch",
	Severity: "fault",
	Source:   "stall current: article on DC motors' starting current (one source); five minutes and four times: common practice, no source",
	Bad: `
fuses:
  fan fuse: {type: blade C, rating: 15 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
relays:
  fan relay: {form: mini make, at: battery tray, fed by: fan fuse, wire: {size: 4 mm², length: 100 mm}, coil: {fed by: keyed feed, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  fan: {current: 3 A, rated at: 12 V, behaves: motor, inrush: {peak: 4, time: 200 ms}, at: rear, fed by: fan relay, wire: {size: 4 mm²}, returns to: frame, return wire: {size: 4 mm²}}
`,
	Mended: []string{"rating: 15 A", "rating: 7.5 A"},
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			l, b := accessory(part), loadBranch(part)
			if b == nil || l.Behaves != design.Motor || p.attended(l, b) {
				continue
			}
			stalledA := p.c.StalledA(b)
			leastA := stalledA
			for _, s := range p.allSolutions() {
				if s.On(b) {
					leastA = math.Min(leastA, overload.HeldBackA(s, b, stalledA))
				}
			}
			p.judgeBlocked(part, b, leastA)
		}
	},
}

// attendedS is how long a motor is on at once with somebody beside it (common
// practice, no source).
const attendedS = 300.0

// attended tells whether a motor needs no fuse against being blocked: it protects
// itself, cannot be, or somebody is beside it.
func (p *Pass) attended(l *design.Load, b *circuit.Branch) bool {
	stated := l.OnForS.Pos.Line > 0 || l.Type != nil && l.Type.OnForS > 0
	return l.ProtectedMotor() || l.Sign == design.SignHorn || stated && l.LongestS() <= attendedS || p.letGo(b)
}

// startShare is up to how many times a motor's running current its fuse is chosen for
// its start (common practice, no source).
const startShare = 4.0

func (p *Pass) judgeBlocked(part *circuit.Part, b *circuit.Branch, blockedA float64) {
	var least *circuit.Branch
	way := slices.AppendSeq(p.nearest.Upstream(b), p.c.WaysHome(b.A, b.B))
	for _, up := range way {
		if r := fuseRating(up); r > 0 && (least == nil || r < fuseRating(least)) {
			least = up
		}
	}
	if least == nil || !over(fuseRating(least), startShare*p.c.DrawA(b)) {
		return
	}
	if o := least.Device(0).Open(blockedA); !o.FastKnown || !math.IsInf(o.FastS, 1) {
		return
	}
	fin := ofPart(finding.Fault, part)
	atLeast(&fin, "stall current", blockedA, fuseRating(least), "A")
	p.say(fin, "stalled, %s draws %s, which %s carries without opening", part.Name, amps(blockedA), fuseText(least))
}
