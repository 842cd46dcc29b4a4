package rules

import (
	"math"
	"sync"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/ride"
)

// apartHours is how long a start battery should last with the link closed by mistake. Every
// link does harm in the end; below this it does before anybody looks: our choice.
const apartHours = 4

var linkLeftClosed = &Rule{
	Name:  "link-left-closed",
	Title: "with its link stuck or left closed, the start battery runs flat in hours",
	Says:  "runs the start battery flat when stuck",
	Doc: "Each contact in a link to a further battery, in every situation with the engine stopped in which it should be open and something draws: all contacts of " +
		"the link are held closed, and both batteries are followed as they run down together, each by what it gives on average, until " +
		"the first one no longer starts the engine. A sensing relay welds when it closes on a flat battery.",
	Formula:  "hours until the charge that still starts the engine ≥ 4 h",
	Limits:   "4 h: our choice",
	Why:      "nothing shows that a link has stuck before the engine does not start",
	Change:   "carry a start aid or a switch that parts the batteries by hand; or fit a DC-DC charger, which cannot pass current back",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad:      linkRuleBad,
	Mended:   []string{"power: 100 W", "power: 5 W", "rating: 15 A", "rating: 5 A"},
	Run: func(p *Pass) {
		for part, b := range p.links() {
			p.judgeStuck(part, b)
		}
	},
}

func (p *Pass) judgeStuck(part *circuit.Part, b *circuit.Branch) {
	var contacts []*circuit.Branch
	for _, x := range append(p.c.MainFeed(b.A).Branches, b) {
		if x.Kind == circuit.ContactBranch {
			contacts = append(contacts, x)
		}
	}
	if len(contacts) == 0 {
		return
	}
	open := func(s *solve.Solution) bool {
		for _, x := range contacts {
			if !s.Closed[x.Index] {
				return true
			}
		}
		return false
	}
	least, in := math.Inf(1), ""
	hours, all := make([]float64, len(p.usable)), sync.WaitGroup{}
	for i, s := range p.usable {
		hours[i] = math.NaN()
		if s.Situation.EngineRPM <= 0 && open(s) && !budget.IsParked(s.Situation) {
			all.Go(func() { hours[i] = p.hoursLinked(s.Situation, contacts) })
		}
	}
	all.Wait()
	for i, h := range hours {
		if h < least {
			least, in = h, p.usable[i].Situation.Name
		}
	}
	if !over(apartHours, least) {
		return
	}
	fin := ofPart(finding.Advice, contacts[0].Part)
	fin.Situation = in
	fin.Figure = figure.New(least, apartHours, "h", figure.Smaller)
	p.say(fin, "if %s sticks or stays closed in %q, the battery no longer starts the engine after %.2g h: it runs down with %s",
		contacts[0].Part.Name, in, least, part.Name)
}

// hoursLinked is how long the first battery still starts the engine in a situation with contacts
// held closed; +Inf beyond apartHours, NaN where it cannot be followed.
func (p *Pass) hoursLinked(s *design.Situation, contacts []*circuit.Branch) float64 {
	leg := &design.Leg{Key: s.Key, EngineRPM: s.EngineRPM, On: s.On, With: s.With, As: s, Lasts: design.Quantity{Value: apartHours * 3600},
		AmbientC: design.Quantity{Value: battery.RatedC, Text: "rated"}}
	r, err := ride.Simulate(p.c, &design.Ride{StartCharge: design.Quantity{Value: 1}, Charge: s.Charge, Legs: []*design.Leg{leg}},
		ride.Options{Tolerance: ride.Coarse, Closed: contacts, ToReserve: true, Average: budget.Average(p.d, s)})
	switch {
	case err != nil:
		return math.NaN()
	case math.IsNaN(r.ReserveS):
		return math.Inf(1)
	}
	return r.ReserveS / 3600
}

// linkRuleBad is a link over a sensing relay whose house battery serves a large load.
const linkRuleBad = `
batteries:
  house: {chemistry: AGM, capacity: 14 Ah, resistance: 12 mΩ, at: rear, fed by: house end, wire: {size: 4 mm², length: 100 mm}, returns to: frame, return wire: {size: 4 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  start end: {type: blade C, rating: 20 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
  house end: {type: blade C, rating: 20 A, at: rear, fed by: charging relay, wire: {size: 4 mm²}}
  lamp end: {type: blade C, rating: 15 A, at: rear, fed by: house, wire: {size: 2.5 mm², length: 100 mm}}
relays:
  charging relay: {form: voltage-sensing relay, at: battery tray, fed by: start end, wire: {size: 4 mm², length: 100 mm}, coil: {returns to: frame, return wire: {size: 1 mm²}}}
loads:
  cabin lamp: {power: 100 W, behaves: resistor, at: rear, fed by: lamp end, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}, own switch: true, stays live: "lights the camp"}
situations:
  at camp: {key: off, on: [cabin lamp]}
  riding: {engine: cruise, on: []}
`
