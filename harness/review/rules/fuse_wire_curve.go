package rules

import (
	"math"
	"slices"

	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/protection"
)

var fuseWireCurve = &Rule{
	Name:  "fuse-wire-curve",
	Title: "an overload damages a wire before its fuse must open",
	Says:  "fuse too slow for the wire",
	Doc: "Each device against each wire that it protects, at every current from its rating to the bolted " +
		"short just behind the wire's near end for which the device's latest opening is published. One finding a " +
		"wire, those of one device printed together. Left out: pairs that fuse-over-wire, return-below-fuse or " +
		"short-overheats-wire report, and currents for which no latest opening is published (for blade " +
		"fuses below 135 % of the rating), wires for which a smaller fuse further up opens in time, and overloads of a minute and more where the device is " +
		"rated no higher than the wire carries continuously and is certain to open at 1.45 times that, or that last longer than the wire is on; the protection table shows those too.",
	Formula: "latest opening at I < time the wire withstands I, from full service",
	Limits:  "the device's time band; short-circuit limit of the insulation up to 5 s, overload limit beyond",
	Why:     "a stalled motor or a half short heats the wire past its insulation while the device waits",
	Change:  "fit a smaller rating or a faster type, or a thicker wire",
	Severity: "danger; advice when the wire withstands every such current for a minute or longer, which takes an overload that the circuit does not make, " +
		"or for more than 5 s where the device is so rated and no bolted short drives such a current, " +
		"but fault where it carries its fuse only for as long as its loads are on, and the fuse is more than twice what they draw",
	Source: "ISO 8820 and maker's data sheets, time-current tables (one source); rated no higher than the wire carries and opening at 1.45 times: IEC form of overload protection (one source); heating of the wire: IEC 60949, " +
		"ISO 6722-1 thermal overload (from memory)",
	Mend: MendWire,
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 15 A, at: battery tray, fed by: battery, wire: {size: 2.5 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: battery tray, fed by: lamp fuse, wire: {insulation: JASO AVSSX, size: 0.75 mm², length: 300 mm}, returns to: frame, return wire: {size: 2.5 mm², length: 300 mm}, stays live: "marks the parked machine", own switch: true}
`,
	Mended: []string{"rating: 15 A", "rating: 7.5 A"},
	Run: func(p *Pass) {
		if p.in.Protection == nil {
			return
		}
		for _, f := range p.in.Protection.Fuses {
			for i := range f.Wires {
				if w := &f.Wires[i]; p.overtaken(w) && !p.settled(f, w) && !p.endedAbove(f, w) {
					p.reportCurve(f, w)
				}
			}
		}
	},
}

// longOverloadS is how long a wire must stand a current for the finding to be
// advice: what flows that long is an overload of the loads, not a short, and those
// that the circuit can make are rule overload-hurts-wire's.
const longOverloadS = 60.0

// overtaken tells whether a wire is damaged before the latest opening where that
// is published.
func (p *Pass) overtaken(w *protection.Wire) bool {
	return w.KnownRatio <= 1 && w.KnownWorstA != 0 && p.allowed(w.Wire).known() && !p.c.Tail(w.Wire)
}

// settled tells whether only overloads that last come too late for a device: that is
// what a coordinated one is for, and a wire that is on for a time is not left on for so long.
func (p *Pass) settled(f *protection.Fuse, w *protection.Wire) bool {
	if w.HurtS < longOverloadS {
		return false
	}
	on := w.Wire.Branch.TimeOn
	return p.coordinated(f.Device, w.Wire) || on.Timed() && w.HurtS > on.OnS && !p.cycles(f.Branch) && !p.leansOnTime(w.Wire, fuseRating(f.Branch))
}

// cycles tells whether how long at once something behind a fuse is on is but assumed and
// no hand at it ends it: a pump that a float switch works runs for as long as water comes in.
func (p *Pass) cycles(fuse *circuit.Branch) bool {
	return slices.ContainsFunc(p.drawsOf(fuse), func(b *circuit.Branch) bool {
		return b.Load != nil && b.Load.Load != nil && b.Load.Load.Cycles && !b.Load.Load.OwnSwitch
	})
}

// endedAbove tells whether a smaller fuse before the device, or in the return behind the
// wire, through which the same current flows, opens in time.
func (p *Pass) endedAbove(f *protection.Fuse, w *protection.Wire) bool {
	stands := p.in.Faults.Wires.Stands(w.Wire)
	if back := p.guardOf(w.Wire).fuse; back != nil && back != f.Branch && back.Returns() {
		device, _ := p.in.Faults.Device(back)
		return fusing.ProtectsWire(device, stands, f.FaultA).KnownRatio > 1
	}
	for up := p.above(f.Branch); up != nil && len(p.nearest[f.Branch.Index].Fuses) == 1; up = p.above(up) {
		if fuseRating(up) >= fuseRating(f.Branch) {
			continue
		}
		device, _ := p.in.Faults.Device(up)
		if fusing.ProtectsWire(device, stands, f.FaultA).KnownRatio > 1 {
			return true
		}
	}
	return false
}

// leansOnTime tells whether a wire bears its fuse only because its loads are on for a
// time: for good it bears less than the practice's share of it, and less than to its
// class. That is usual for a winch whose fuse is no larger than its motor needs. A larger
// one has no such excuse: a half short does not end with the load.
func (f *facts) leansOnTime(w *circuit.Wire, ratingA float64) bool {
	a, most := f.allowed(w), f.practice.MostFuseWireShare
	ratingA = w.Branch.ShareA(ratingA)
	return a.timeOn() != "" && over(ratingA, motorFuseShare*w.Branch.TimeOn.UsedA) &&
		over(ratingA, math.Max(most*a.Pulse.ForGoodA(a.AllowedA), a.Pulse.ForGoodA(a.ToClassA)))
}

// motorFuseShare is the most that a motor's fuse needs of its current: one and a half
// times, or the next rating above (NFPA 70 Table 430.52, from memory).
const motorFuseShare = 2.0

// mostOpening is how far above what a wire carries the current may lie at which its device
// is sure to open.
const mostOpening = 1.45

// coordinated tells whether a device is one that practice takes as protecting the wire
// from overload: rated no higher than the wire carries, and sure to open at 1.45 times that.
func (f *facts) coordinated(dev fusing.Device, w *circuit.Wire) bool {
	a, opensA := f.allowed(w), w.Branch.ShareA(dev.SureA())
	forGoodA := a.Pulse.ForGoodA(a.AllowedA)
	return opensA > 0 && !over(w.Branch.ShareA(dev.Rating.RatingA), forGoodA) && !over(opensA, mostOpening*forGoodA)
}

// burns tells whether a device comes too late for a wire at a current that damages it in less
// time than an overload by loads takes; of a coordinated one, that a bolted short drives, or
// that does it in the time of a short.
func (p *Pass) burns(f *protection.Fuse, w *protection.Wire) bool {
	if w.HurtS >= longOverloadS || w.HurtS <= conductor.ShortS || !p.coordinated(f.Device, w.Wire) {
		return w.HurtS < longOverloadS
	}
	stands, leastA := p.in.Faults.Wires.Stands(w.Wire), p.in.Faults.LeastA(w.Wire)
	return fusing.DamagedIn(f.Device, stands, leastA, f.FaultA) < longOverloadS
}

func (p *Pass) reportCurve(f *protection.Fuse, w *protection.Wire) {
	at, severity := w.KnownWorstA, graver(p.leansOnTime(w.Wire, fuseRating(f.Branch)), finding.Advice, finding.Fault)
	stands := p.in.Faults.Wires.Stands(w.Wire)
	if p.burns(f, w) {
		severity = finding.Danger
	}
	if severity == finding.Danger && stands(at) >= longOverloadS {
		at = w.HurtA
	}
	open, most := f.Device.Open(at).SlowS, stands(at)
	fin := ofWire(severity, w.Wire)
	fin.Cause, fin.Pos = fusePlace(f.Branch), f.Branch.Fuse.Pos
	value, stood := quantity.Against(open, most, quantity.Duration)
	atMost(&fin, "latest opening", open, most, "s")
	if !math.IsInf(w.KnownRatio, 1) {
		fin.Numbers = append(fin.Numbers, finding.Number{Name: "time withstood over latest opening", Value: w.KnownRatio})
	}
	fin.Leave = severity == finding.Advice && w.HurtS >= longOverloadS
	p.say(fin, "%s may take %s to open at %s; %s is damaged after %s",
		fuseText(f.Branch), value, amps(at), w.Wire.Text(), stood)
	p.standsAside(w.Wire, overloadHurtsWire, fuseOverWire, returnBelowFuse, shortOverheatsWire)
}
