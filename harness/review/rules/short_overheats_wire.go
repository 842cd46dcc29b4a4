package rules

import (
	"cmp"
	"math"
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/fault"
)

var shortOverheatsWire = &Rule{
	Name:  "short-overheats-wire",
	Title: "a wire is damaged before its fuse clears a short",
	Says:  "damaged before its fuse clears a short",
	Doc: "A bolted short at every place of every wire and inside every load and coil, with the most and " +
		"with the least current the source can give. The latest opening of the fuse that clears it is " +
		"held against what each wire on the way withstands, from full service; where several fuses feed it, as in a ring, they open one after " +
		"another, the rest carrying more each time, with all of them in and with each out from the start. One finding per wire, for the " +
		"short that leaves the least margin. A wire to fuses of its own no further than the practice lets a fuse be from its " +
		"source may be thinner than the fuse upstream protects: there it is advice. A fuse too large by its rating " +
		"is fuse-over-wire or return-below-fuse.",
	Formula: "latest opening < t; up to 1 s t = k²S²/I² to the insulation's short-circuit limit, then one " +
		"thermal node of copper and insulation; beyond 5 s the overload limit counts",
	Limits:   "short-circuit and overload limits of the insulation",
	Why:      "the insulation melts, the wire is bare and sets the rest of the loom alight",
	Change:   "fit a faster or smaller fuse, or a thicker wire",
	Severity: "danger; advice for a wire that leads to fuses of its own within the allowed distance",
	Source:   "IEC 60949 and IEC 60364-4-43 (adiabatic heating, two sources); IEC 60724 (limits, one source)",
	Mend:     MendWire,
	Bad: `
fuses:
  lamp fuse: {type: breaker type III, rating: 10 A, at: battery tray, fed by: battery, wire: {insulation: ISO 6722 thin wall class A, size: 1 mm², length: 100 mm}, stays live: "marks the parked machine"}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {insulation: ISO 6722 thin wall class A, size: 1 mm²}, returns to: frame, stays live: "marks the parked machine", own switch: true}
`,
	Good: `
fuses:
  lamp fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: battery, wire: {insulation: ISO 6722 thin wall class A, size: 1 mm², length: 100 mm}, stays live: "marks the parked machine"}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {insulation: ISO 6722 thin wall class A, size: 1 mm²}, returns to: frame, stays live: "marks the parked machine", own switch: true}
`,
	Run: func(p *Pass) {
		for i, w := range p.worstShorts() {
			if w.short != nil {
				p.reportOverheated(p.c.Wires[i], w)
			}
		}
	},
}

// worstShort is the short that leaves a wire least.
type worstShort struct {
	short *fault.Short
	state int
	heat  *fault.Heat
	tail  bool // in a tail, before the fuses at its far end
}

// before tells whether a short counts before another of the same wire.
func (a worstShort) before(b worstShort) bool {
	if b.short == nil || a.tail != b.tail {
		return b.short == nil || !a.tail
	}
	return a.heat.Margin() < b.heat.Margin()
}

// worstShorts finds, by wire index, the short that hurts each wire most.
func (p *Pass) worstShorts() []worstShort {
	out := make([]worstShort, len(p.c.Wires))
	for _, sh := range p.shorts() {
		for state := range sh.Results {
			r := &sh.Results[state]
			if !sh.Fed || !p.hurts(r) {
				continue
			}
			for _, h := range append(r.Others[:len(r.Others):len(r.Others)], r.Worst) {
				was, now := &out[h.Wire.Index], worstShort{sh, state, h, p.allowedInTail(h, r.Device)}
				if now.before(*was) {
					*was = now
				}
			}
		}
	}
	return out
}

// allowedInTail tells whether a short hurts a tail that lies before the fuses which
// protect it, as the allowed distance to a fuse takes it.
func (p *Pass) allowedInTail(h *fault.Heat, opens *circuit.Branch) bool {
	return p.c.Tail(h.Wire) && !slices.Contains(p.firstFuses(h.Wire), cmp.Or(h.Until, opens))
}

// tailBurnsC is from where the insulation of a tail burns, so that sizing chooses a thicker
// one: polyethylene and soft PVC catch fire from about 350 °C (from memory).
const tailBurnsC = 350.0

func (p *Pass) reportOverheated(w *circuit.Wire, worst worstShort) {
	r := &worst.short.Results[worst.state]
	h, out := worst.heat, ""
	if r.Out != nil {
		out = "with " + fuseText(r.Out) + " out, "
	}
	fin := ofWire(graver(!worst.tail, finding.Advice, finding.Danger), w)
	fin.Leave = worst.tail && !over(h.EndC, tailBurnsC)
	atMost(&fin, "latest opening", h.Seconds, h.DamageS, "s")
	if !math.IsInf(h.EndC, 1) {
		fin.Numbers = append(fin.Numbers, finding.Number{Name: "end temperature", Value: h.EndC, Unit: "°C"})
	}
	if worst.tail {
		fin.Change = "keep it short and covered, or make it as thick as the wire upstream"
	}
	p.say(fin, "%sa short %s drives %s through %s for up to %s, until %s opens; the wire reaches %s, where the limit is %s",
		out, where(worst.short), amps(h.Amps), w.Text(), duration(h.Seconds), fuseText(cmp.Or(h.Until, r.Device)),
		temperature(h.EndC), temperature(h.LimitC))
	p.standsAside(w, fuseOverWire, returnBelowFuse)
}
