// Package together says what may run at once, by what a hand can switch: for each situation
// with the engine running, all largest choices that the charging system carries,
// and what to switch off where the design asks for more. It counts by current at
// the battery posts, at the regulated voltage, duty included.
package together

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/budget"
)

// MostSets is how many sets a choice holds at most: all of 20 like accessories
// (184 756 at the worst) and some more.
const MostSets = 1 << 18

// Item is what one hand switches: an accessory, or all those behind the same switches.
type Item struct {
	Name     string // of one accessory its own, of several that of their switch with theirs
	Loads    []*design.Load
	CurrentA float64 // at the posts, regulated voltage, duty counted, with the coils that it closes
	Rank     int     // 1 = given up last
	Stated   bool    // Rank is the design's
	Critical bool

	kept   bool            // something of it may not be shed
	hands  []Hand          // switches that its loads need closed, and a load's own
	relays []*circuit.Part // that its loads need closed
	needs  []*Item         // those whose switches it stands behind: on with it
}

// Hand is a switch, or a load with its own; of one with positions, in which of them, and of a plain
// switch that works a relay which changes over, whether On or Off.
type Hand struct {
	Part     design.Part
	Position string // "" = it has none
}

// On and Off are the positions of a plain switch that has something on in either.
const On, Off = "on", "off"

// plain tells of a switch without positions of its own.
func (h Hand) plain() bool {
	s, ok := h.Part.(*design.Switch)
	return ok && s.Positions == nil
}

// words are all positions of a hand.
func (h Hand) words() (list []string) {
	if h.plain() {
		return []string{Off, On}
	}
	for _, at := range h.Part.(*design.Switch).Positions {
		list = append(list, at.Name)
	}
	return list
}

// Hands are what has to be on for an item.
func (i *Item) Hands() []Hand { return i.hands }

// words are the positions of a hand that differ in what they give.
func (p *Plan) words(h Hand) []string {
	return slices.DeleteFunc(h.words(), func(at string) bool { return len(p.alike[Hand{h.Part, at}]) == 0 })
}

// name is what the hand does: "fog lamps", "lights at anchor or at mooring".
func (p *Plan) name(h Hand) string {
	switch s, ok := h.Part.(*design.Switch); {
	case !ok || h.Position == "":
		return h.Part.PartName()
	case h.plain():
		return s.Name + " " + h.Position
	default:
		return s.Name + " at " + wording.Or(p.alike[h])
	}
}

// against tells whether two hands are on one handle, in different positions.
func (h Hand) against(o Hand) bool { return h.Part == o.Part && h.Position != o.Position }

// against tells whether two items are not on at once: they need a handle in two positions.
func (i *Item) against(o *Item) bool {
	return slices.ContainsFunc(i.hands, func(h Hand) bool { return slices.ContainsFunc(o.hands, h.against) })
}

// Plan is the answer for a design.
type Plan struct {
	Items   []*Item // what is given up last first; bit i of a Set is Items[i]
	Choices []*Choice
	Always  []*design.Load // on with the key and behind no switch: nothing to choose
	AlwaysA float64        // what these take, and the coils that are on with the key
	Coils   bool           // there are such coils
	Charged []string       // batteries whose loads are left out: their chargers count, as in the balance
	Why     string         // what stands in the way of an answer; "" = nothing

	alike     map[Hand][]string // by the first of a handle's positions that give the same: all of them
	all       bool              // what hangs on further batteries too
	chargers  []*circuit.Branch // among those always on: what they take hangs on how full their batteries are
	chargersA float64           // with these full
}

// Choice is what may run together in one situation.
type Choice struct {
	Name      string
	Situation *design.Situation // nil for idle and cruise in general
	EngineRPM float64
	OutputA   float64 // of the charging system, hot
	BaseA     float64 // the vehicle's own and what is always on
	CapacityA float64 // left for what is switched; below zero = the base alone asks too much
	Sets      []Set   // every largest choice, most important members first
	Complete  bool    // Sets holds all of them

	// Of a named situation: what it has on, what is missing, and what to switch
	// off for it, first thing first, of what may be shed. UncoveredA is what
	// stays missing then.
	On         []*Item
	OverdrawA  float64
	SwitchOff  []*Item
	UncoveredA float64
}

// Members are the items of a set, in order of importance.
func (p *Plan) Members(s Set) []*Item {
	var out []*Item
	for i, item := range p.Items {
		if i < MostItems && s.Has(i) {
			out = append(out, item)
		}
	}
	return out
}

// Compute finds what may run together at idle, at cruise and in each situation
// of a budget with the engine running.
func Compute(c *circuit.Circuit, sols []*solve.Solution, b *budget.Budget) *Plan {
	if !c.Design.Charging.Present() {
		return &Plan{Why: "the design has no charging section"}
	}
	p := Weigh(c, sols, b)
	p.findSets()
	return p
}

// Weigh is Compute without the sets: what each hand switches, and what to shed where a
// situation asks too much.
func Weigh(c *circuit.Circuit, sols []*solve.Solution, b *budget.Budget) *Plan {
	p := &Plan{alike: map[Hand][]string{}}
	p.weigh(c)
	if !c.Design.Charging.Present() {
		return p
	}
	if len(p.Items) > MostItems {
		p.Why = "more than 64 accessories: sets are not listed"
	}
	p.general(c.Design, b)
	for _, l := range b.Lines {
		if l.Usable && l.Situation.EngineRPM > 0 {
			p.named(l, solutionOf(sols, l.Situation))
		}
	}
	return p
}

// general adds idle and cruise, unless the budget has a situation of that name
// and speed.
func (p *Plan) general(d *design.Design, b *budget.Budget) {
	for _, g := range []struct {
		name string
		rpm  design.Quantity
	}{{"idle", d.Charging.IdleRPM}, {"cruise", d.Charging.CruiseRPM}} {
		if g.rpm.Given() && !slices.ContainsFunc(b.Lines, func(l *budget.Line) bool {
			return l.Usable && l.Situation.Name == g.name && l.Situation.EngineRPM == g.rpm.Value
		}) {
			p.add(&Choice{Name: g.name, EngineRPM: g.rpm.Value, BaseA: b.VehicleA + p.AlwaysA,
				OutputA: charging.OutputA(d, g.rpm.Value)})
		}
	}
}

func (p *Plan) add(c *Choice) {
	c.CapacityA = c.leftA()
	p.Choices = append(p.Choices, c)
}

// leftA is what the output leaves for what is switched.
func (c *Choice) leftA() float64 { return c.OutputA - c.BaseA }

// named adds a situation of the budget, with what to switch off.
func (p *Plan) named(l *budget.Line, s *solve.Solution) { p.add(p.of(l, s)) }

// In is what may run together in a state of the design by its balance, with at most so many sets.
func (p *Plan) In(l *budget.Line, s *solve.Solution, most int) *Choice {
	c := p.of(l, s)
	c.CapacityA = c.leftA()
	c.Sets, c.Complete = p.setsFor(c.CapacityA, most)
	return c
}

// Hands are what each hand switches, whichever battery feeds it: for the engine stopped.
func Hands(c *circuit.Circuit) *Plan {
	p := &Plan{all: true, alike: map[Hand][]string{}}
	p.weigh(c)
	return p
}

// On are the items that are on in a solution; of nil none.
func (p *Plan) On(s *solve.Solution) (on []*Item) {
	if s == nil {
		return nil
	}
	draws := drawing(s)
	at, _ := circuit.Positions(s.Circuit, s.Situation)
	for _, item := range p.Items {
		if p.standsAt(item, at) && slices.ContainsFunc(item.Loads, func(l *design.Load) bool { return draws[l] }) {
			on = append(on, item)
		}
	}
	return on
}

func (p *Plan) of(l *budget.Line, s *solve.Solution) *Choice {
	c := &Choice{Name: l.Situation.Name, Situation: l.Situation, EngineRPM: l.Situation.EngineRPM,
		OutputA: l.OutputA, BaseA: l.VehicleA + p.AlwaysA + p.chargersOwnA(l), On: p.On(s)}
	if l.SpareA < 0 {
		c.OverdrawA = -l.SpareA
		c.SwitchOff, c.UncoveredA = giveUp(c.On, c.OverdrawA)
	}
	return c
}

// standsAt tells whether the handles that an item needs are in the positions for it; whether a plain switch is, its loads tell.
func (p *Plan) standsAt(i *Item, at map[*design.Switch]string) bool {
	return !slices.ContainsFunc(i.hands, func(h Hand) bool {
		s, ok := h.Part.(*design.Switch)
		return ok && h.Position != "" && !h.plain() && !slices.Contains(p.alike[h], at[s])
	})
}

func drawing(s *solve.Solution) map[*design.Load]bool {
	on := map[*design.Load]bool{}
	for _, b := range s.Circuit.Branches {
		if b.Load != nil && b.Load.Load != nil && s.LoadOn[b.Index] {
			on[b.Load.Load] = true
		}
	}
	return on
}

func solutionOf(sols []*solve.Solution, at *design.Situation) *solve.Solution {
	for _, s := range sols {
		if s.Situation == at {
			return s
		}
	}
	return nil
}

// findSets fills in the sets; choices of one capacity share theirs.
func (p *Plan) findSets() {
	done := map[float64]*Choice{}
	for _, c := range p.Choices {
		if same := done[c.CapacityA]; same != nil {
			c.Sets, c.Complete = same.Sets, same.Complete
			continue
		}
		c.Sets, c.Complete = p.setsFor(c.CapacityA, MostSets)
		done[c.CapacityA] = c
	}
}

// setsFor are the largest sets that a current carries, at most so many.
func (p *Plan) setsFor(capacityA float64, most int) (sets []Set, complete bool) {
	amps := make([]float64, len(p.Items))
	for i, item := range p.Items {
		amps[i] = item.CurrentA
	}
	sets, complete = p.byPositions(amps, capacityA, most)
	return p.switchable(sets, amps, capacityA), complete
}
