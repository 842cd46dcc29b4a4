package rules

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var switchedInReturn = &Rule{
	Name:  "switched-in-return",
	Title: "a load is switched only in its return",
	Says:  "switched only in its return",
	Doc: "A load or coil that nothing but a switch or relay contact between it and the ground turns off, while its feed stays " +
		"live: with the key off, with the key on alone, or with the battery switch closed. One whose feed has a switch of its own as well is not reported, " +
		"nor one that a break contact leaves on, nor what a battery switch in the negative isolates, nor a warning lamp or buzzer behind the key that " +
		"pressure or level alone switches to ground, where such a sender sits, nor a lamp, buzzer or coil that a door, the gear lever or a brake (`machine operated`) does.",
	Formula: "none: it is a question of topology",
	Limits:  "none",
	Why: "it is live though it is off: whoever changes the lamp meets the full voltage, and a return that chafes on the " +
		"frame turns it on",
	Change: "put the switch or contact into the feed and run the return to ground",
	Severity: "fault where the feed is live with the key off; advice behind the key or a battery switch, as factories switch horns and coils, " +
		"by a momentary switch, or where `stays live` says why",
	Source: "common practice, no source",
	Bad: `
switches:
  lamp switch: {rating: 5 A, at: rear, returns to: frame, return wire: {size: 1 mm²}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: lamp switch, return wire: {size: 1 mm², length: 200 mm}}
`,
	Good: `
switches:
  lamp switch: {rating: 5 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp switch, wire: {size: 1 mm², length: 200 mm}, returns to: frame, return wire: {size: 1 mm²}}
`,
	Run: func(p *Pass) {
		if !p.c.SwitchedBack() {
			return
		}
		j := coldSwitched{p, p.live(untouched, p.excused), p.live(untouched, nil), p.live(conditions{key: true}, nil), p.live(conditions{key: true, aboard: true}, nil)}
		for _, b := range p.c.Branches {
			if p.coils[b] != nil || b.Load != nil && b.Load.Load != nil && !b.Load.Standby {
				j.judge(b)
			}
		}
	},
}

// coldSwitched is what is live, and what has a way back, with no hand at a switch: with the
// key off, parts that the design excuses left out or not, and with the key on.
type coldSwitched struct {
	*Pass
	unexcused, off, on, aboard *liveness
}

func (j *coldSwitched) judge(b *circuit.Branch) {
	asleep, awake := j.off.opensBack(b), j.on.opensBack(b)
	gates := j.gatesOf(b)
	if !asleep && !awake && !j.aboard.opensBack(b) || !j.cold[b.B.Index] || slices.ContainsFunc(gates, isolates) {
		return
	}
	if byAll(gates, (*design.Switch).WorksAlone) && warns(b) && !asleep || len(gates) > 0 && byAll(gates, byMachine) && (warns(b) || j.coils[b] != nil) {
		return
	}
	held := !slices.ContainsFunc(gates, func(x *circuit.Branch) bool { return !x.Momentary() })
	excused := staysLive(b.Part) || slices.ContainsFunc(gates, j.excused)
	fin, state := ofPart(finding.Advice, b.Part), "with the key on"
	if !asleep && !awake {
		state = "with the battery switch closed"
	}
	if asleep {
		state = "with the key off"
		if j.unexcused.nodes[b.A.Index] && !held && !excused {
			fin.Severity = finding.Fault
		}
	}
	of := b.Part.Name
	if j.coils[b] != nil {
		of = "the coil of " + of
	}
	switch {
	case j.coils[b] != nil:
		fin.Why = "its coil is live though it is off: a return that chafes on the frame pulls it in"
	case !isLamp(b):
		fin.Why = "it is live though it is off: whoever works on it meets the full voltage, and a return that chafes on the frame turns it on"
	}
	if asked := j.conditionOf(b); asked != "" && !asleep {
		state = "with " + asked
	}
	fin.Leave = true
	j.say(fin, "%s is switched only in its return, by %s: it is live %s while it is off", of, wording.Or(names(gates)), state)
}

// conditionOf is the vehicle's condition, such as main beam, under which alone what draws is fed; "" = it is
// fed otherwise too.
func (j *coldSwitched) conditionOf(b *circuit.Branch) string {
	condition := ""
	for _, x := range j.c.MainFeed(b.A).Branches {
		if x.Closer != nil && x.Closer.Key != "" && x.Closer.Key != design.WhenAlways && x.Closer.Key != design.WhenKey && x.Closer.Key != design.WhenRunning {
			condition = string(x.Closer.Key)
		}
	}
	return condition
}

// warns tells of a lamp, buzzer or instrument.
func warns(b *circuit.Branch) bool {
	return b.Load != nil && b.Load.Load != nil && slices.Contains([]design.Sign{design.SignLamp, design.SignLED, design.SignHorn, design.SignSensor}, b.Load.Load.Sign)
}

// byMachine tells of a switch that is grounded where what works it moves.
func byMachine(x *design.Switch) bool { return x.MachineOperated }

// byAll tells whether all contacts are of switches that something other than a hand works.
func byAll(gates []*circuit.Branch, works func(*design.Switch) bool) bool {
	return !slices.ContainsFunc(gates, func(x *circuit.Branch) bool { return x.Closer.Switch == nil || !works(x.Closer.Switch) })
}

// opensBack tells whether what draws is live and has no way back.
func (l *liveness) opensBack(b *circuit.Branch) bool {
	return l.nodes[b.A.Index] && !l.cold[b.B.Index]
}

// gatesOf are the contacts on the ways back from what draws.
func (j *coldSwitched) gatesOf(b *circuit.Branch) (gates []*circuit.Branch) {
	for _, x := range j.c.NeededBy(b) {
		if x.Returns() && slices.ContainsFunc(j.c.DrawsBack(x), func(d *circuit.Branch) bool { return d == b || d.InSeries(b) }) {
			gates = append(gates, x)
		}
	}
	return gates
}
