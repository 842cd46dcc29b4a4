package rules

import (
	"math"

	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/ride"
)

var rideEmptiesBattery = &Rule{
	Name:  "ride-empties-battery",
	Title: "a battery gives no more in the middle of a ride",
	Says:  "a battery gives no more",
	Doc: "Every ride of the design, leg by leg: charging by the output curve less what everything draws, the " +
		"battery by Peukert's law and its charge efficiency at the leg's temperature. A charge below the " +
		"start reserve is battery-flattened's, where the engine is started on it. Further batteries likewise: one that is " +
		"empty, or whose protection opens, gives no more, and the ride goes on; with the first one it ends.",
	Formula: "the ride's simulation, see `fusewright ride`",
	Limits:  "the battery still gives current at the end of the ride",
	Why:     "ignition, injection and lamps fail together, under way",
	Change:  "run fewer loads, run the engine faster, or fit a larger battery",
	// What a ride draws is the design's own word, hence no danger.
	Severity: "fault",
	Source:   "arithmetic on the design's output curve; Peukert's law, battery monitor manuals (two sources)",
	Bad: `
vehicle loads:
  machine: {power: 190 W, when: running}
rides:
  queue: {start charge: 80 %, legs: [{lasts: 20 h, engine: idle, on: none, ambient: 10 °C}]}
situations:
  cruising: {engine: cruise, on: all}
`,
	Mended: []string{"engine: idle", "engine: cruise"},
	Run: func(p *Pass) {
		for _, r := range p.ridden() {
			if r.GivenUp {
				p.reportGivenUp(r)
			}
			if !math.IsNaN(r.EmptyS) {
				p.reportEmpty(r)
			}
			for _, b := range r.Banks {
				if !math.IsNaN(b.EmptyS) {
					p.reportBankEmpty(r, &b)
				}
			}
		}
	},
}

// ride follows the rides of the design, those that can be followed. It goes on beside the other rules.
func (f *facts) ride() (list []*ride.Result) {
	if f.in.Budget == nil {
		return nil
	}
	for _, r := range f.d.Rides {
		if result, err := ride.Simulate(f.c, r, ride.Options{Tolerance: ride.Coarse}); err == nil {
			list = append(list, result)
			f.in.RideEffort += result.Effort
		}
	}
	return list
}

func (p *Pass) reportEmpty(r *ride.Result) {
	f := finding.Finding{Severity: finding.Fault, Part: r.Ride.Name, Ref: r.Ride.Name, Pos: r.Ride.Pos}
	decidedBy(&f, "empty after", r.EmptyS, "s", figure.Smaller)
	if !r.Legs[len(r.Legs)-1].Runs() {
		f.Why = "all that is on fails together, and the engine does not start"
		f.Change = "run fewer loads or for a shorter time, charge in between, or fit a larger battery"
	}
	f.Numbers = append(f.Numbers, finding.Number{Name: "below start reserve after", Value: r.ReserveS, Unit: "s"})
	f.Short = "flat after " + quantity.Format(r.EmptyS, quantity.Duration)
	if r.Cause != ride.Empty {
		f.Why, f.Change = afterBank(r.Cause)
		f.Short = "battery off after " + quantity.Format(r.EmptyS, quantity.Duration)
	}
	switch {
	case r.ReserveS == 0:
		f.Short += ", start unsure from the outset"
	case r.ReserveS < r.EmptyS:
		f.Short += ", start unsure after " + quantity.Format(r.ReserveS, quantity.Duration)
	}
	p.say(f, "ride %s: the battery %s after %s, in leg %d",
		r.Ride.Name, r.Why, quantity.Format(r.EmptyS, quantity.Duration), len(r.Legs))
}

// reportGivenUp says that nothing is known of the rest of a ride.
func (p *Pass) reportGivenUp(r *ride.Result) {
	l := r.Legs[len(r.Legs)-1]
	p.say(finding.Finding{Severity: finding.Advice, Part: r.Ride.Name, Ref: r.Ride.Name, Pos: r.Ride.Pos, Short: "not followed to its end",
		Why:    "whether a battery runs flat later is not known",
		Change: "look at what links the batteries, and at their resistance"},
		"ride %s: followed for %s only, into leg %d; %s", r.Ride.Name, quantity.Format(l.ToS, quantity.Duration), len(r.Legs), l.Trouble)
}

// reportBankEmpty is of a further battery that gives no more.
func (p *Pass) reportBankEmpty(r *ride.Result, b *ride.BankRide) {
	f := finding.Finding{Severity: finding.Fault, Part: r.Ride.Name, Ref: r.Ride.Name, Pos: r.Ride.Pos}
	f.Why, f.Change = afterBank(b.Cause)
	decidedBy(&f, b.Bank.Name+" gives no more after", b.EmptyS, "s", figure.Smaller)
	f.Short = "after " + quantity.Format(b.EmptyS, quantity.Duration) + " " + b.Bank.Name + " " + b.Why
	p.say(f, "ride %s: %s", r.Ride.Name, f.Short)
}

// afterBank is what comes of a further battery that gives no more, and what helps.
func afterBank(cause ride.Cause) (why, change string) {
	why, change = "all that it feeds fails together, and a lead battery left flat is soon spoilt",
		"run fewer loads or for a shorter time, charge in between, or fit a larger battery"
	switch cause {
	case ride.Overcharged:
		return "its protection opens: what it feeds hangs on the charger alone, at the charger's volts, or fails",
			"set the charger lower, to what the battery's maker gives"
	case ride.Overloaded:
		return boardOverloaded.Why, "run fewer loads at once, or fit a battery whose protection bears it"
	case ride.TooLow:
		return boardOverloaded.Why, change
	}
	return why, change
}
