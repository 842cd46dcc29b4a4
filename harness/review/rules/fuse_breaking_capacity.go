package rules

import (
	"slices"

	"fusewright/harness/design"
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
	Severity: "danger afloat and for PTCs; on vehicles fault for breakers, at lithium house packs and from four times the capacity, advice below; advice up to a tenth above the limit, up to half of devices of 30 A and less: a battery's resistance is not known better",
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

// ptc is the kind of fuse type that a small current above its own destroys.
const ptc = "ptc"

// breaker is the kind with contacts, which weld.
const breaker = "breaker"

// roughly is the ratio within which a fault current is not known better: the
// battery's resistance decides it, and differs by more between two of a type. A
// small device's own resistance and contacts limit the current more than the
// study's new ones do (common practice, no source).
const (
	roughly      = 1.1
	smallRoughly = 1.5
	smallA       = 30.0 // up to which a device is small
	// habitual is up to how many times their capacity factories put fuse-links behind a
	// starter battery; a lithium house pack is none.
	habitual = 4.0
)

func (p *Pass) judgeBreaking(b *circuit.Branch) {
	short, breaks, near := p.behindA(b), fault.BreaksA(p.c, b), nearBreaking(b)
	if short <= breaks {
		return
	}
	severity, kind := finding.Advice, b.Fuse.Type.Kind
	switch {
	case (p.practice.Afloat || kind == ptc) && short > breaks*near:
		severity = finding.Danger
	case (kind == breaker || p.housePack(b)) && short > breaks*near, short > breaks*habitual:
		severity = finding.Fault
	}
	fin := ofFuse(severity, b)
	fin.Leave = severity == finding.Advice
	atMost(&fin, "prospective current", short, breaks, "A")
	fin.Source = b.Fuse.Type.Source.String()
	if p.housePack(b) {
		fin.Change = "make a class T the first fuse behind a lithium house pack"
	}
	p.say(fin, "a short behind %s draws about %s; a %s can break %s",
		fuseText(b), ampsOver(short, breaks), b.Fuse.Type.Name, rated(breaks))
}

// housePack tells whether the battery at an end of a fuse drives a short as a house pack does: by its
// resistance where the design gives it, which is then no more than the least pack's, else
// by its capacity.
func (p *Pass) housePack(fuse *circuit.Branch) bool {
	if p.isPack(p.storeOf(fuse.A)) {
		return true
	}
	return p.c.IsPost(fuse.B) && p.isPack(p.storeOf(fuse.B)) || slices.ContainsFunc(fuse.B.FeedsOn(), func(b *circuit.Branch) bool {
		return p.c.IsPost(b.B) && p.isPack(p.storeOf(b.B))
	})
}

// storeOf is the battery that feeds a node.
func (f *facts) storeOf(n *circuit.Node) *design.Battery {
	plus, _ := f.c.Supply(n)
	for _, t := range plus.Terminals {
		if bank, ok := t.Part.Source.(*design.Bank); ok {
			return &bank.Store
		}
	}
	return &f.d.Battery
}

func (p *Pass) isPack(b *design.Battery) bool {
	if b.Chemistry == nil || b.Chemistry.HouseAh <= 0 {
		return false
	}
	if b.ResistanceOhm.Given() {
		return !over(b.GivenOhm(), b.Chemistry.Ohm(b.Chemistry.HouseAh)*p.d.NominalV()/12)
	}
	return b.Chemistry.House(b.CapacityAh.Value)
}

// nearBreaking is how far above its capacity a short is still near it.
func nearBreaking(b *circuit.Branch) float64 {
	if fuseRating(b) <= smallA {
		return smallRoughly
	}
	return roughly
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
