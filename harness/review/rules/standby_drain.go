package rules

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
)

// standbyDays is the time a parked machine must still start when the design
// gives no limit.
const standbyDays = 14

var standbyDrain = &Rule{
	Name:  "standby-drain",
	Title: "the battery runs flat too soon with the key off",
	Says:  "flat too soon with the key off",
	Doc: "What the battery loses with the key off, nothing switched on and every switch open: standby " +
		"draws, loads that stay live for a reason, the vehicle's own permanent loads. Loads reported as " +
		"live-with-key-off and coils reported as relay-never-released are left out: fixing those fixes " +
		"their drain. Self-discharge is counted in the days. A DC-DC charger that the resting battery keeps on is named alone.",
	Formula: "days = ln((1 + i/k)/(reserve + i/k))/k for a drain of i and a self-discharge of k capacities a day; without " +
		"self-discharge (1 − reserve)/i. i = 24 h × drain × w / capacity, with w = (drain × rate / capacity)^(Peukert " +
		"exponent − 1) above the current that the capacity is rated at, and 1 below it",
	Limits: "`limits: days to no start` of the design, 14 days when it gives none; `limits: standby`, " +
		"current, when given",
	Why:      "after that time the battery no longer starts the engine",
	Change:   "feed standing draws behind the key, fit a battery switch, or keep a charger on",
	Severity: "fault; advice when the design does not say how long it may be left; a charger that runs on is a fault",
	Source: "days and start reserve: car maker's service bulletin (one source); Peukert's law, battery monitor manuals (two " +
		"sources); 14 days: common practice, no source",
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  tracker fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  tracker: {power: 1 W, standby: 33 mA, at: rear, fed by: tracker fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "must report when the machine is moved"}
`,
	Mended: []string{"standby: 33 mA", "standby: 5 mA"},
	Run: func(p *Pass) {
		if p.in.Budget == nil {
			return
		}
		if p.chargerRunsOn() {
			return
		}
		reported := p.reportedDrainA()
		drain := p.in.Budget.StandbyA - reported
		days := budget.StandbyDays(p.d, drain)
		limitA, limitDays := p.d.Limits.StandbyA, p.d.Limits.StandbyDays.Or(standbyDays)
		switch {
		case limitA.Given() && over(drain, limitA.Value):
			value, most := quantity.Against(drain, limitA.Value, quantity.Current)
			f := p.ofDrain(value, duration(days*daySeconds), "the design allows "+most)
			f.What += p.besideReported(reported)
			atMost(&f, "drain", drain, limitA.Value, "A")
			p.report(f)
		case drain > 0 && days < limitDays:
			value, _ := quantity.Against(days*daySeconds, limitDays*daySeconds, quantity.Duration)
			f := p.ofDrain(amps(drain), value, "it must start after "+quantity.Plain(limitDays*daySeconds, quantity.Duration))
			f.What += p.besideReported(reported)
			if !p.d.Limits.StandbyDays.Given() {
				f.Severity = finding.Advice // nobody said how long it is to stand
			}
			atLeast(&f, "days to no start", days, limitDays, "days")
			f.Numbers = append(f.Numbers, finding.Number{Name: "drain", Value: drain, Unit: "A"})
			p.report(f)
		}
	},
}

// chargerRunsOn reports each charger that the resting battery keeps on in the parked machine.
func (p *Pass) chargerRunsOn() (any bool) {
	parked := budget.Parked(p.c, p.in.Solutions)
	if parked == nil {
		return false
	}
	for part, x := range each[*design.Charger](p.facts) {
		in := part.Converts()
		if in == nil || x.Converts() || !(parked.Amps(in) > leastChargeA) || p.in.Budget.StandbyA < parked.Amps(in)/2 {
			continue
		}
		any = true
		f := ofPart(finding.Fault, part)
		f.Why = "it empties the battery that starts the engine into the one that it charges"
		f.Change = "fit one with an ignition signal, or one that starts at more volts than the battery rests at"
		atMost(&f, "current with the key off", parked.Amps(in), leastChargeA, "A")
		f.Numbers = append(f.Numbers, finding.Number{Name: "input", Value: parked.Volts(in), Unit: "V"})
		p.say(f, "%s runs on with the key off: its input rests at %s, and it starts at %s; it takes %s, and the engine no longer starts after %s",
			part.Name, volts(parked.Volts(in)), volts(x.Type.StartsV), amps(parked.Amps(in)),
			duration(budget.StandbyDays(p.d, p.in.Budget.StandbyA)*daySeconds))
	}
	return any
}

const daySeconds = 86400

// ofDrain starts the finding of a parked machine's drain.
func (p *Pass) ofDrain(drain, days, against string) finding.Finding {
	f := finding.Finding{Severity: finding.Fault, Part: "battery", Ref: "battery", Pos: p.d.Battery.Pos}
	f.What = fmt.Sprintf("%s drawn with the key off; the engine no longer starts after %s %s; %s",
		drain, days, p.d.Spoken().Parked, against)
	return f
}

// besideReported says that the parked machine loses more than is judged here.
func (p *Pass) besideReported(reportedA float64) string {
	if !(reportedA > 0) {
		return ""
	}
	return fmt.Sprintf("; this leaves out %s that other findings say must not be live, %s in all",
		amps(reportedA), amps(p.in.Budget.StandbyA))
}

// reportedDrainA is the part of the parked machine's drain that other rules
// report: loads that are on without an excuse, and relays that nothing
// releases with what they feed.
func (p *Pass) reportedDrainA() float64 {
	parked := budget.Parked(p.c, p.in.Solutions)
	if parked == nil {
		return 0
	}
	sum := 0.0
	for _, b := range p.reportedDraws() {
		sum += budget.DrawA(parked, b)
	}
	return sum
}

// reportedDraws lists the loads and coils whose drain belongs to a finding of
// live-with-key-off or relay-never-released.
func (p *Pass) reportedDraws() []*circuit.Branch {
	stuck := func(b *circuit.Branch) bool {
		return b.Part != nil && b.Part.Kind == circuit.Relay && p.stuckOn[b.Part.Index] && !staysLive(b.Part)
	}
	unexcused, free := p.keyless().rest, p.live(untouched, stuck).nodes
	var list []*circuit.Branch
	for _, b := range p.c.Branches {
		switch {
		case p.coils[b] != nil && stuck(b):
			list = append(list, b)
		case b.Load != nil && b.Load.Load != nil && !b.Load.Standby &&
			(p.drawsKeyless(b, unexcused) || !free[b.A.Index]):
			list = append(list, b)
		}
	}
	return list
}
