package rules

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/ride"
)

var batteryFlattened = &Rule{
	Name:  "battery-flattened",
	Title: "the loads on with the engine stopped leave no charge to start it",
	Says:  "flattens the battery",
	Doc: "Situations that the design gives with the engine stopped and something on: how long a full battery gives their " +
		"average current down to its start reserve. And rides: the charge with which each leg that starts the engine begins; where none does, the lowest charge. " +
		"How long a situation lasts is not known, but a start lasts seconds and is not judged; what is on for a while at a time counts once in the hours of the limit. A ride on which the battery runs flat is ride-empties-battery. " +
		"Of further batteries, that a ride takes none below what its kind outlives.",
	Formula: "hours = capacity × (1 − start reserve) at the average current, by Peukert's law; on a ride, charge ≥ start " +
		"reserve at each start, and at its end where the engine ran before; without the engine, lowest charge ≥ what its kind outlives",
	Limits:   "with the key off 8 h where the practice is afloat, a night at anchor, and 1 h elsewhere; with the key on half an hour",
	Why:      "the engine that would charge the battery no longer starts",
	Change:   "run fewer loads, fit lamps that draw less, start the engine in time, or give the loads a battery of their own",
	Severity: "advice: the reserve is what most engines start on",
	Source: "Peukert's law, battery monitor manuals (two sources); start reserve: car maker's service bulletin (one source); the " +
		"hours: common practice, no source",
	Bad: `
loads:
  tail lamp: {power: 78 W, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: battery, wire: {size: 2.5 mm², length: 100 mm}, stays live: "lights the camp"}
situations:
  camp: {key: off, on: [tail lamp]}
  ride: {engine: cruise, on: [tail lamp]}
`,
	Mended: []string{"power: 78 W", "power: 36 W"},
	Run: func(p *Pass) {
		if p.in.Budget == nil {
			return
		}
		for _, l := range slices.Concat(p.in.Budget.Lines, p.in.Budget.KeyOff) {
			if s := l.Situation; l.Usable && (!s.Derived || s.LastsS > 0) && s.EngineRPM == 0 && !s.Cranks() && len(s.On) > 0 && l.BatteryHours < budget.LastsS(p.d, s)/3600 {
				p.reportFlattened(l, budget.LastsS(p.d, s)/3600)
			}
		}
		for _, r := range p.ridden() {
			if math.IsNaN(r.EmptyS) {
				p.judgeRestarts(r)
			}
			p.judgeBanks(r)
		}
	},
}

func (p *Pass) reportFlattened(l *budget.Line, least float64) {
	f := p.ofSituation(finding.Advice, l)
	f.Leave = true
	value, most := quantity.Against(l.BatteryHours*3600, least*3600, quantity.Duration)
	atLeast(&f, "hours to the start reserve", l.BatteryHours, least, "h")
	f.Short = fmt.Sprintf("%s out of the battery: after %s the engine may not start; it should last %s", amps(l.BatteryA), value, most)
	p.say(f, "%s: the loads take %s out of the battery; a full one may not start the engine after %s, and should last %s", l.Situation.Name,
		amps(l.BatteryA), value, most)
}

// judgeRestarts reports the first leg of a ride that starts the engine on less than
// the start reserve.
func (p *Pass) judgeRestarts(r *ride.Result) {
	ran := false
	for i, l := range r.Legs {
		runs := l.Leg.EngineRPM > 0
		if runs && !ran && l.FromCharge < l.FromReserve {
			f := finding.Finding{Severity: finding.Advice, Leave: true, Part: r.Ride.Name, Ref: r.Ride.Name, Pos: r.Ride.Pos}
			value, most := quantity.Against(l.FromCharge, l.FromReserve, quantity.Share)
			atLeast(&f, "charge", 100*l.FromCharge, 100*l.FromReserve, "%")
			p.say(f, "ride %s: leg %d starts the engine on %s of the charge; below %s a start is not certain",
				r.Ride.Name, i+1, value, most)
			return
		}
		ran = runs
	}
	p.judgeNextStart(r)
}

// judgeBanks reports further batteries that a ride takes below what their kind outlives for long.
func (p *Pass) judgeBanks(r *ride.Result) {
	for _, b := range r.Banks {
		if math.IsNaN(b.EmptyS) && over(budget.Reserve(b.Bank), b.LowestCharge) {
			p.reportDeep(r, b.Bank.Name, budget.Reserve(b.Bank), b.LowestCharge)
		}
	}
}

// judgeNextStart reports a ride with the engine that ends with it stopped and less than
// the start reserve in the battery.
func (p *Pass) judgeNextStart(r *ride.Result) {
	last := r.Legs[len(r.Legs)-1]
	if r.Starts() == 0 {
		p.judgeDeep(r)
		return
	}
	if r.GivenUp || last.Leg.EngineRPM > 0 || !over(r.EndReserve(), r.EndCharge) {
		return
	}
	f := finding.Finding{Severity: finding.Advice, Leave: true, Part: r.Ride.Name, Ref: r.Ride.Name, Pos: r.Ride.Pos}
	value, most := quantity.Against(r.EndCharge, r.EndReserve(), quantity.Share)
	atLeast(&f, "charge at the end", 100*r.EndCharge, 100*r.EndReserve(), "%")
	p.say(f, "ride %s: it ends on %s of the charge; below %s the next start is not certain", r.Ride.Name, value, most)
}

// judgeDeep reports a ride without the engine that takes more out of the battery than its
// kind outlives for long.
func (p *Pass) judgeDeep(r *ride.Result) {
	if c := p.d.Battery.Chemistry; c != nil && over(c.DeepBelow, r.LowestCharge) {
		p.reportDeep(r, "the battery", c.DeepBelow, r.LowestCharge)
	}
}

func (p *Pass) reportDeep(r *ride.Result, which string, least, lowest float64) {
	f := finding.Finding{Severity: finding.Advice, Leave: true, Part: r.Ride.Name, Ref: r.Ride.Name, Pos: r.Ride.Pos,
		Change: "run fewer loads, charge in between, or fit a larger battery", Why: "each so deep discharge takes a part of its capacity for good"}
	value, most := quantity.Against(lowest, least, quantity.Share)
	atLeast(&f, "lowest charge", 100*lowest, 100*least, "%")
	p.say(f, "ride %s: %s goes down to %s of the charge; below %s one of its kind suffers", r.Ride.Name, which, value, most)
}
