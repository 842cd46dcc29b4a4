package rules

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/fault"
)

var fuseBreakingCapacity = &Rule{
	Name:  "fuse-breaking-capacity",
	Title: "a short at the fuse can exceed its breaking capacity",
	Says:  "cannot break the short",
	Doc: "The prospective current of a bolted short just behind each fuse that has no other fuse above " +
		"it, by the fault study: full battery, charging system at its limit, wires at 20 °C, the return " +
		"bare metal at the battery. A fuse behind another is left out: the first one limits the fault. On boats the " +
		"standard's table by the battery's cold-cranking current says what is enough, for devices that feed others " +
		"and for branches. On vehicles it is advice for fuse-links up to four times their capacity: every factory builds blade fuses behind its battery. None builds a PTC or a breaker there, " +
		"nor anything behind a lithium house pack: its cells give several kiloamperes until the board opens, and the fuse is there for " +
		"the board that does not; a pack is one by the resistance that the design gives, else by its capacity.",
	Formula:  "I = (Voc + I charging · R battery) / (R battery + R wires to the fuse + R fuse)",
	Limits:   "the fuse type's breaking capacity at the system's voltage, of the lowest voltage published that is not below it; what it must break is at most what the table asks of boats",
	Why:      "a fuse that must break more than it can may burst and go on arcing",
	Change:   "fit a type with a higher breaking capacity as the first fuse",
	Severity: "danger afloat and for PTCs; on vehicles fault for breakers, at lithium house packs and from four times the capacity, advice below; no more than a tenth above the limit, half of devices of 30 A and less, it is advice, and nothing of fuse-links of vehicles: the short is the strongest that there may be, and a battery's resistance is not known better",
	Source: "Ohm's law, fault-current articles (two sources); breaking capacity of ISO 8820 " +
		"types: makers' data sheets (two sources); ABYC E-11 asks a main device of a large bank for the battery maker's " +
		"short-circuit current, or 20 kA at 125 V dc (two discussions quote it); that factories' habit does not hold for lithium: common practice, no source",
	Mend:  MendBreaking,
	Named: true,
	Bad: `
battery: {chemistry: LiFePO4, capacity: 28 Ah, rate: 20 h, resistance: 2 mΩ, at: battery tray}
fuses:
  main fuse: {type: strip SF30, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: main fuse, wire: {size: 6 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "marks the parked machine", own switch: true}
`,
	Good: `
fuses:
  main fuse: {type: strip SF30, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: main fuse, wire: {size: 6 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "marks the parked machine", own switch: true}
`,
	Run: func(p *Pass) {
		for _, b := range p.fuses() {
			if p.above(b) == nil {
				p.judgeBreaking(b)
			}
		}
	},
}

// behindA is the prospective current of a short just behind a fuse, by the
// fault study, or estimated when there is none; zero when it cannot be told.
func (p *Pass) behindA(b *circuit.Branch) float64 {
	if p.in.Protection != nil {
		if f := p.in.Protection.Find(b); f != nil && f.FaultA > 0 {
			return f.FaultA
		}
	}
	ohm := p.pathOhm(b.A)
	if p.battery == nil || p.battery.Ohm <= 0 || ohm < 0 {
		return 0
	}
	return p.openCircuitV() / (p.battery.Ohm + ohm + b.Ohm)
}

// The kinds of fuse types that a small current above their own destroys, and that have contacts, which weld.
const ptc, breaker = "ptc", "breaker"

// habitual is up to how many times their capacity factories put fuse-links behind a
// starter battery; a lithium house pack is none.
const habitual = 4.0

func (p *Pass) judgeBreaking(b *circuit.Branch) {
	short, breaks := p.behindA(b), fault.BreaksA(p.c, b)
	if short <= fault.TrustedA(p.c, b) {
		return
	}
	severity, kind, near, pack := finding.Advice, b.Fuse.Type.Kind, fault.Near(b), fault.HousePack(p.c, b)
	switch {
	case (p.practice.Afloat || kind == ptc) && short > breaks*near:
		severity = finding.Danger
	case (kind == breaker || pack) && short > breaks*near, short > breaks*habitual:
		severity = finding.Fault
	}
	fin := ofFuse(severity, b)
	fin.Leave = severity == finding.Advice
	atMost(&fin, "prospective current", short, breaks, "A")
	fin.Source = b.Fuse.Type.Source.String()
	if pack {
		fin.Change = "make a class T the first fuse behind a lithium house pack"
	}
	p.say(fin, "a short behind %s draws about %s; a %s can break %s",
		fuseText(b), ampsOver(short, breaks), b.Fuse.Type.Name, rated(breaks))
}

// openCircuitV is the resting voltage of the full battery.
func (f *facts) openCircuitV() float64 {
	scale := f.d.NominalV() / 12
	if ch := f.d.Battery.Chemistry; ch != nil && len(ch.OpenCircuit) > 0 {
		return ch.OpenCircuit[len(ch.OpenCircuit)-1].Volts * scale
	}
	return 12.8 * scale
}

// pathOhm is the resistance from the battery's post to a node by the way with
// the fewest branches; -1 when there is none.
func (f *facts) pathOhm(to *circuit.Node) float64 {
	if f.positive == nil {
		return -1
	}
	ohm, queue := map[*circuit.Node]float64{}, slices.Clone(f.c.Posts())
	for _, post := range queue {
		ohm[post] = 0
	}
	for len(queue) > 0 {
		n := queue[0]
		queue = queue[1:]
		if n == to {
			return ohm[n]
		}
		for _, b := range n.Branches {
			if b.A != n || !b.Feeds() || b.Kind == circuit.FuseBranch {
				continue
			}
			if _, ok := ohm[b.B]; !ok {
				ohm[b.B] = ohm[n] + b.Ohm
				queue = append(queue, b.B)
			}
		}
	}
	return -1
}
