package together

import (
	"math"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/budget"
)

// weigh makes an item of what each hand can switch, with its current at the regulated
// voltage, everything on; what is on without a hand's doing with the key counts apart.
func (p *Plan) weigh(c *circuit.Circuit) {
	apart, positions := byThemselves(c.Design), p.positionsOf(c)
	all := solved(c, &design.Situation{Name: "all on", On: c.Design.Loads, With: c.Design.Conditions})
	none := solved(c, &design.Situation{Name: "none on", Closed: apart})
	for _, b := range c.Branches {
		if l := b.Load; l != nil && l.Load != nil && !l.Standby && !b.Follows() && b.Part.Converter() != b {
			if l.Load.Starts() || !p.all && p.behindCharger(c, b) {
				continue
			}
			if idleA := drawnA(none, b); idleA > leastA && !unplugged(l.Load) && positions[b] == nil {
				p.Always, p.AlwaysA = append(p.Always, l.Load), p.AlwaysA+idleA
				if b.Part.Kind == circuit.Charger {
					p.chargers, p.chargersA = append(p.chargers, b), p.chargersA+idleA
				}
				continue
			}
			a := drawnA(all, b)
			if a == 0 { // not reached in the solution: as rated
				a = c.SourceA(b, l.RatedA()) * budget.Average(c.Design, all.Situation)(b)
			}
			items := p.items(c, b, apart, positions[b])
			if items == nil {
				p.Always, p.AlwaysA = append(p.Always, l.Load), p.AlwaysA+a
			}
			for _, item := range items {
				item.CurrentA += a
			}
		}
	}
	for _, b := range c.Branches {
		if !b.OfCoil() {
			continue
		}
		idleA := drawnA(none, b)
		if idleA > leastA && positions[b] == nil {
			p.AlwaysA, p.Coils = p.AlwaysA+idleA, true
		} else if by := p.closing(b.Part); by != nil {
			a := max(idleA, drawnA(all, b))
			if a == 0 && positions[b] != nil { // of another position: as rated
				a = c.SourceA(b, c.DrawA(b))
			}
			by.CurrentA += a
		}
	}
	p.finish()
}

// behindCharger tells of a load of a battery that chargers alone join to the rest: what it takes is that battery's,
// and its charger takes no more for it.
func (p *Plan) behindCharger(c *circuit.Circuit, load *circuit.Branch) bool {
	fed := load.A
	if x := c.ConverterOf(fed); x != nil {
		fed = x.Converts().A
	}
	post, _ := c.Supply(fed)
	if post == c.Positive() || len(c.Links(post)) > 0 {
		return false
	}
	for _, b := range post.Branches {
		if b.Kind == circuit.BatteryBranch && b.A == post && !slices.Contains(p.Charged, b.Part.Name) {
			p.Charged = append(p.Charged, b.Part.Name)
		}
	}
	return true
}

// chargersOwnA is by how much the chargers that are always on take another current in a line of
// the balance than with full batteries: a situation may say how full these are.
func (p *Plan) chargersOwnA(l *budget.Line) float64 {
	if l.Held == nil || len(p.chargers) == 0 {
		return 0
	}
	ownA := -p.chargersA
	for _, b := range p.chargers {
		ownA += drawnA(l.Held, b)
	}
	return ownA
}

// leastA is below the current of anything that is on.
const leastA = 1e-6

// drawnA is what a branch takes of the battery in a solution; 0 where that is not one.
func drawnA(s *solve.Solution, b *circuit.Branch) float64 {
	if s.Status != solve.Converged {
		return 0
	}
	return s.SourceA(b)
}

// solved is a state at the regulated voltage at cruise, everything at its average, further batteries
// full, as the balance takes them.
func solved(c *circuit.Circuit, s *design.Situation) *solve.Solution {
	ch, atV := &c.Design.Charging, c.Design.NominalV()
	s.Key = design.KeyOn
	if ch.Present() {
		s.EngineRPM, atV = ch.CruiseRPM.Or(ch.Output[0].RPM.Value), ch.RegulatedV.Value
	}
	return solve.Solve(c, s, solve.Options{BatteryV: atV, BatteryOhm: 1e-6, NoCharging: true,
		LoadFactor: budget.Average(c.Design, s)})
}

// byThemselves are the switches that no hand closes: floats, which rising water does.
func byThemselves(d *design.Design) []*design.Switch {
	var list []*design.Switch
	for _, s := range d.Switches {
		if s.WorksAlone() {
			list = append(list, s)
		}
	}
	return list
}

// unplugged tells whether what a load stands for is pulled out by hand.
func unplugged(l *design.Load) bool { return l.Sign == design.SignSocket }

// wakes tells whether a load wakes and sleeps by itself: an alarm, which stays live and has no
// switch of its own.
func wakes(l *design.Load) bool { return l.StaysLive.Value != "" && !l.OwnSwitch }

// positionsOf are, by load, the ways in which handles with positions, and plain switches over which a relay
// changes over, give it: of each handle one position, of those that give the same the first; none where no such handle does.
func (p *Plan) positionsOf(c *circuit.Circuit) map[*circuit.Branch][][]Hand {
	ways, apart := map[*circuit.Branch][][]Hand{}, c.Exclusive()
	for _, part := range c.Parts {
		sw, ok := part.Source.(*design.Switch)
		if !ok || sw.Pole != nil || sw.Positions == nil && (sw.WorksAlone() || sw.KeyOperated) {
			continue
		}
		own, words, given := map[*circuit.Branch][]Hand{}, Hand{Part: sw}.words(), apart.ByPosition(sw)
		for i, loads := range given {
			first := slices.IndexFunc(given, func(other []*circuit.Branch) bool { return slices.Equal(other, loads) })
			p.alike[Hand{sw, words[first]}] = append(p.alike[Hand{sw, words[first]}], words[i])
			if first != i {
				continue
			}
			for _, b := range loads {
				own[b] = append(own[b], Hand{sw, words[i]})
			}
		}
		for b, hands := range own {
			ways[b] = times(ways[b], hands)
		}
	}
	return ways
}

// times is each of some ways with each of some hands.
func times(ways [][]Hand, hands []Hand) (out [][]Hand) {
	if ways == nil {
		ways = [][]Hand{nil}
	}
	for _, w := range ways {
		for _, h := range hands {
			out = append(out, append(slices.Clone(w), h))
		}
	}
	return out
}

// items are the items of a load's branch: that of the same hands, else a new one, for each way in
// which positions give it. A load that no hand switches, and yet is not on, stands alone; one
// that wakes by itself is none.
func (p *Plan) items(c *circuit.Circuit, b *circuit.Branch, apart []*design.Switch, ways [][]Hand) (list []*Item) {
	var hands []Hand
	var relays []*circuit.Part
	for _, x := range c.NeededBy(b) {
		switch k := x.Closer; {
		case k.Switch != nil && k.Output == "" && !slices.Contains(apart, k.Switch):
			h := Hand{Part: k.Switch}
			if on := (Hand{k.Switch, On}); p.alike[on] != nil { // off, it has something else on
				h = on
			}
			if !slices.Contains(hands, h) {
				hands = append(hands, h)
			}
		case k.OwnSwitch != nil && !unplugged(k.OwnSwitch) && !wakes(k.OwnSwitch):
			hands = append(hands, Hand{Part: k.OwnSwitch})
		case k.Coil != nil:
			relays = append(relays, k.Coil.Part)
		}
	}
	if l := b.Load.Load; unplugged(l) {
		hands = append(hands, Hand{Part: l})
	}
	if len(hands) == 0 && ways == nil && wakes(b.Load.Load) {
		return nil
	}
	if ways == nil {
		ways = [][]Hand{nil}
	}
	for _, way := range ways {
		others := slices.DeleteFunc(slices.Clone(hands), func(h Hand) bool { return slices.Contains(way, h) || slices.Contains(way, Hand{h.Part, On}) })
		list = append(list, p.item(b.Load.Load, slices.Concat(way, others), relays))
	}
	return list
}

func (p *Plan) item(l *design.Load, hands []Hand, relays []*circuit.Part) *Item {
	for _, i := range p.Items {
		if len(hands) > 0 && slices.Equal(i.hands, hands) {
			i.Loads, i.relays = append(i.Loads, l), append(i.relays, relays...)
			return i
		}
	}
	p.Items = append(p.Items, &Item{hands: hands, relays: relays, Loads: []*design.Load{l}})
	return p.Items[len(p.Items)-1]
}

// closing is the item that closes a relay: of those that need it the one with the fewest
// hands; nil = none.
func (p *Plan) closing(relay *circuit.Part) *Item {
	var by *Item
	for _, i := range p.Items {
		if slices.Contains(i.relays, relay) && (by == nil || len(i.hands) < len(by.hands)) {
			by = i
		}
	}
	return by
}

// finish names and ranks the items. One whose hands others need too ranks with them:
// they are not on without it.
func (p *Plan) finish() {
	for _, i := range p.Items {
		i.Name, i.Rank = p.label(i), math.MaxInt
		for _, l := range i.Loads {
			if rank, stated := Rank(l); rank < i.Rank {
				i.Rank, i.Stated = rank, stated
			}
			i.Critical, i.kept = i.Critical || l.Critical, i.kept || !GivenUp(l)
		}
		i.kept = i.kept || p.stuckOn(i)
	}
	for _, i := range p.Items {
		for _, j := range p.Items {
			if len(j.hands) > 0 && len(j.hands) < len(i.hands) && i.behind(j.hands) {
				i.needs = append(i.needs, j)
				if i.Rank < j.Rank {
					j.Rank, j.Stated = i.Rank, i.Stated
				}
				j.Critical, j.kept = j.Critical || i.Critical, j.kept || i.kept
			}
		}
	}
	byImportance(p.Items)
}

// stuckOn tells of an item on handles alone none of which has an off: with it off another is on.
func (p *Plan) stuckOn(i *Item) bool {
	return len(i.hands) > 0 && !slices.ContainsFunc(i.hands, func(h Hand) bool {
		return h.Position == "" || slices.ContainsFunc(p.words(h), func(at string) bool {
			return !slices.ContainsFunc(p.Items, func(j *Item) bool {
				return slices.Contains(j.hands, Hand{h.Part, at}) && !slices.ContainsFunc(j.hands, func(o Hand) bool { return o.Position == "" })
			})
		})
	})
}

// behind tells whether an item needs all of some hands.
func (i *Item) behind(hands []Hand) bool {
	return !slices.ContainsFunc(hands, func(h Hand) bool { return !slices.Contains(i.hands, h) })
}

// label is the name of a single accessory that is in no other item, else that of the switch that
// is the item's alone, or its positions, with its accessories.
func (p *Plan) label(i *Item) string {
	names := make([]string, len(i.Loads))
	for n, l := range i.Loads {
		names[n] = l.Name
	}
	elsewhere := slices.ContainsFunc(p.Items, func(j *Item) bool { return j != i && slices.Contains(j.Loads, i.Loads[0]) })
	if len(names) == 1 && !elsewhere {
		return names[0]
	}
	by := i.hands[len(i.hands)-1]
	for _, h := range i.hands {
		if !slices.ContainsFunc(p.Items, func(j *Item) bool { return j != i && slices.Contains(j.hands, h) }) {
			by = h
		}
	}
	return p.name(by) + " (" + strings.Join(names, ", ") + ")"
}
