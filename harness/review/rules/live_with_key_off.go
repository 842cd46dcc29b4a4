package rules

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
)

var liveWithKeyOff = &Rule{
	Name:  "live-with-key-off",
	Title: "a load is live with the key off",
	Says:  "live with the key off",
	Doc: "With the key off, what can the battery still feed? Contacts of taps that follow the key or the " +
		"engine are open; a relay's make contact counts as closed when its coil can be energised without " +
		"the key; break contacts count as closed. A load reached with every hand switch open is on " +
		"whenever the battery is connected. A load reached only through a hand switch, its own included, " +
		"can be left on; such loads are reported once, at the first switch. What only a held momentary switch feeds goes off by itself and is not reported. A load with a standby draw is " +
		"live all the time, whether or not it is in use, and no switch of its own is taken unless the " +
		"design says `own switch`. A tap that is live with a condition counts as a hand switch where a situation has the condition with the key off. A relay that latches counts as a hand switch: one whose coil is dead with the key off is a fault whatever it feeds, since nothing opens it then. What an off delay keeps on for its time is not reported. A battery switch is there to be opened on leaving, unless it is a vehicle's switch for one load, and a switch worked by a key goes with the key: neither is reported; " +
		"but a boat's fuel pump that runs behind closed battery switches alone is, unless `petrol vapour: no` tells that it pumps none. " +
		"What a further battery feeds is left out: it is there for that. `stays live: \"reason\"` on the load, or on any part its current passes, says that it is meant. " +
		"Loads behind a relay that nothing can release belong to relay-never-released.",
	Formula:  "what is live is a question of topology; how soon a full battery no longer starts the engine, of its drain alone, is as in standby-drain",
	Limits:   "of lamps left on by hand 12 h, the time until somebody sees them; of other loads `limits: days to no start`, 14 days when the design gives none",
	Why:      "a load the key does not switch off drains the battery while nobody is there",
	Change:   "feed it behind a key-controlled relay or tap, or give the reason as `stays live`",
	Severity: "fault; advice when a float switch, a momentary one whose relay holds, or a condition of the vehicle, puts it on, of what is left on by hand where a full battery starts the engine longer than the limit, of a battery switch for one load, of a switch before a fuse block of which only the rating is given, which may be the key, and of a fuel pump while nothing says that petrol vapour can gather",
	Source:   "common practice, no source, the 12 h too; fuel pumps of boats: 33 CFR 183.524(b), only while the engine runs or is started (from memory)",
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
`,
	Good: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}, stays live: "parking lamp, required by the road rules"}
limits: {standby: 2 A, days to no start: 8 h}
`,
	Run: func(p *Pass) {
		k := p.keyless()
		for _, part := range k.always {
			p.reportAlwaysOn(part)
		}
		for _, g := range k.byHand {
			p.reportByHand(g)
		}
		p.judgeFuelPumps(k)
	},
}

// judgeFuelPumps reports fuel pumps of a boat that run with the engine stopped and the key
// off as long as somebody is aboard, unless the places say that no petrol is near.
func (p *Pass) judgeFuelPumps(k *keylessLoads) {
	vapour := p.d.PetrolVapour()
	if !p.practice.Afloat || !vapour && slices.ContainsFunc(p.d.Places, vapourSaid) {
		return
	}
	severity := finding.Advice
	if vapour {
		severity = finding.Fault
	}
	aboard := p.live(conditions{aboard: true}, nil)
	for _, part := range p.partsOf(circuit.Load) {
		b, l := loadBranch(part), accessory(part)
		if b == nil || l.Type == nil || !l.Type.StopsWithEngine || !p.drawsKeyless(b, aboard) || slices.Contains(k.always, part) {
			continue
		}
		fin := ofPart(severity, part)
		fin.Why = "where a line leaks or a carburettor overflows, it goes on pumping petrol into the boat after the engine has stopped"
		fin.Change = "feed it behind the key and a contact that opens when the engine stops, such as an oil pressure switch or the engine's own control unit"
		decidedBy(&fin, "drain", p.c.DrawA(b), "A", figure.Larger)
		p.say(fin, "%s runs with the engine stopped and the key off: nothing but battery switches parts it from the battery", part.Name)
	}
}

func (p *Pass) reportAlwaysOn(part *circuit.Part) {
	fin := ofPart(finding.Fault, part)
	drain := p.c.DrawA(loadBranch(part))
	decidedBy(&fin, "drain", drain, "A", figure.Larger)
	fin.Change = p.offBy(loadBranch(part))
	p.say(fin, "%s: on whenever the battery is connected, drawing about %s",
		part.Name, amps(drain))
}

// reportStandby is about a load that no switch parts from the battery and that
// draws little until it is used.
func (p *Pass) reportStandby(part *circuit.Part, l *design.Load) {
	fin := ofPart(finding.Fault, part)
	use := p.c.DrawA(loadBranch(part))
	decidedBy(&fin, "drain at rest", l.StandbyA.Value, "A", figure.Larger)
	fin.Numbers = append(fin.Numbers, finding.Number{Name: "in use", Value: use, Unit: "A"})
	fin.Change = p.offBy(loadBranch(part))
	p.say(fin, "%s: live whenever the battery is connected, %s at rest, about %s in use",
		part.Name, amps(l.StandbyA.Value), amps(use))
}

// floats tells whether a contact is closed by rising water, by its library type.
func floats(b *circuit.Branch) bool {
	s, ok := b.Part.Source.(*design.Switch)
	return ok && s.Type != nil && s.Type.Float
}

// keyed tells whether a contact is worked by the ignition key: what is on behind
// it is on with the key.
func keyed(b *circuit.Branch) bool {
	if b.Part == nil {
		return false
	}
	s, ok := b.Part.Source.(*design.Switch)
	return ok && s.KeyOperated
}

// isolates tells whether a contact is a battery switch, by its library type.
func isolates(b *circuit.Branch) bool {
	if b.Part == nil {
		return false
	}
	s, ok := b.Part.Source.(*design.Switch)
	return ok && s.Type != nil && s.Type.Isolates
}

func (p *Pass) reportByHand(g handGroup) {
	isolated := p.isolated(g.gate)
	alone := isolated && !p.practice.Afloat && len(g.loads) == 1
	if isolated && !alone || keyed(g.gate) {
		return
	}
	if l := g.gate.Closer.OwnSwitch; l != nil && !l.OwnSwitch {
		p.reportStandby(g.gate.Part, l)
		return
	}
	g.loads = slices.DeleteFunc(slices.Clone(g.loads), func(b *circuit.Branch) bool { return !p.stays(b) }) // a button springs back
	if len(g.loads) == 0 {
		return
	}
	severity := finding.Fault
	keyed, asked := p.hasKey(), p.mayBeKey(g.gate)
	sum := 0.0
	for _, b := range g.loads {
		if !b.Follows() {
			sum += p.c.DrawA(b)
		}
	}
	days, leftDays := budget.StandbyDays(p.d, sum), p.leftOnDays(g.loads)
	if g.gate.Momentary() || g.gate.Closer.KeyOff || floats(g.gate) || !(days < leftDays) || !keyed || asked || alone {
		severity = finding.Advice
	}
	fin := ofPart(severity, g.gate.Part)
	fin.Live = true
	trapped := latches(g.gate.Part) && !p.live(keyOff, nil).coils[p.coilOf[g.gate.Part.Index]]
	if trapped {
		fin.Severity = finding.Fault
	}
	subject := fmt.Sprintf("%s can leave %s on", g.gate.Part.Name, wording.Few(names(g.loads), 4))
	if g.gate.Closer.OwnSwitch != nil {
		subject = g.gate.Part.Name + " can be left on by its own switch"
	}
	decidedBy(&fin, "drain", sum, "A", figure.Larger)
	if fin.Change = p.offBy(g.loads...); !keyed {
		if fin.Change == "" {
			fin.Change = "say why as `stays live`, or give what follows the key: a tap, a vehicle load, or a switch whose type is a key"
		}
		p.say(fin, "%s, drawing about %s; nothing in the design follows a key", subject, amps(sum))
		return
	}
	if asked {
		fin.Change = "if it is the ignition key, say `key operated: yes`; else feed it behind a key-controlled relay or tap, or give the reason as `stays live`"
	}
	if trapped {
		fin.Change = "feed its coil from what is live with the key off, or the relay's contacts from what follows the key"
		subject += ", and nothing opens it,"
	}
	soon := ""
	if !math.IsNaN(days) {
		fin.Short = fmt.Sprintf("drain %s; no start after %s", amps(sum), duration(days*daySeconds))
		soon = "; a full battery no longer starts the engine after " + duration(days*daySeconds)
	}
	p.say(fin, "%s with the key off, drawing about %s%s", subject, amps(sum), soon)
}

// litHours is for how long lamps that were left on may burn before somebody sees them.
const litHours = 12.0

// leftOnDays is within what time loads that were left on are not missed: lamps are seen when
// it gets dark, anything else when the machine is to start again.
func (p *Pass) leftOnDays(loads []*circuit.Branch) float64 {
	if lampsAlone(loads) {
		return litHours / 24
	}
	return p.d.Limits.StandbyDays.Or(standbyDays)
}

// isolated tells whether a contact is a battery switch, or of a relay whose coil nothing
// but battery switches can energise.
func (p *Pass) isolated(gate *circuit.Branch) bool {
	coil := gate.Closer.Coil
	if coil == nil || gate.Closer.Latch != nil {
		return isolates(gate)
	}
	if p.offBoard == nil {
		p.offBoard = p.live(keyOff, func(b *circuit.Branch) bool { return p.excused(b) || isolates(b) })
	}
	return !p.offBoard.coils[coil]
}

// mayBeKey tells whether a contact stands before a fuse block and nothing says what kind of
// switch it is: it may be the ignition key.
func (p *Pass) mayBeKey(gate *circuit.Branch) bool {
	s, ok := gate.Part.Source.(*design.Switch)
	if !ok || s.Type != nil || gate.Returns() {
		return false
	}
	before := false
	p.below(gate.B, func(b *circuit.Branch) bool {
		before = before || b.Part != nil && b.Part.Kind == circuit.Block
		return !before
	})
	return before
}

// hasKey tells whether anything in the design goes off with a key: a tap, a switch that is
// one, or what the vehicle itself draws.
func (f *facts) hasKey() bool {
	return slices.ContainsFunc(f.c.Branches, func(b *circuit.Branch) bool {
		return b.Closer != nil && b.Closer.Key != "" && b.Closer.Key != design.WhenAlways || keyed(b)
	}) || slices.ContainsFunc(f.d.VehicleLoads, func(l *design.VehicleLoad) bool {
		return l.When == design.WhenKey || l.When == design.WhenRunning
	})
}

// lampsAlone tells whether draws are lamps, by their sign.
func lampsAlone(draws []*circuit.Branch) bool {
	return !slices.ContainsFunc(draws, func(b *circuit.Branch) bool { return !isLamp(b) })
}

func isLamp(b *circuit.Branch) bool {
	return b.Load != nil && b.Load.Load != nil && b.Load.Load.IsLamp()
}

// offBy is what to do on a boat, where a battery switch is opened on leaving and bilge pumps
// must stay live; "" = what the rule says.
func (p *Pass) offBy(draws ...*circuit.Branch) string {
	if !p.practice.Afloat {
		return ""
	}
	if slices.ContainsFunc(draws, func(b *circuit.Branch) bool { return b.Part == nil || !isBilgePump(accessory(b.Part)) }) {
		return "feed it behind the battery switch, or give the reason as `stays live`"
	}
	return "say why as `stays live`: a bilge pump must run on an unattended boat, on a fuse of its own and a float switch"
}
