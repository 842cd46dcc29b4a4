package outlook

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// Kind is what works a control.
type Kind string

// The kinds of controls.
const (
	ByHand    Kind = "switch"
	ByPush    Kind = "push-button"
	ByWater   Kind = "water or pressure" // a switch that works alone
	Own       Kind = "its own switch"
	Socket    Kind = "plugged in"
	Latch     Kind = "latching relay"
	Condition Kind = "condition"
	Sun       Kind = "sun"
	Shore     Kind = "shore power"
)

// Control is what one hand, or the day, sets.
type Control struct {
	ID    string
	Title string
	Kind  Kind
	Words []string       // what it can be set to: "off" and "on", or the positions of its handle
	Loads []*design.Load // that it switches

	part   design.Part
	when   design.When
	branch []*circuit.Branch // of loads and coils that need it
	gives  [][]*circuit.Branch
}

const on, off = "on", "off"

func (c *Control) has(word string) bool { return slices.Contains(c.Words, word) }

// Control finds a control; nil = there is none.
func (p *Planner) Control(id string) *Control {
	i := slices.IndexFunc(p.Controls, func(c *Control) bool { return c.ID == id })
	if i < 0 {
		return nil
	}
	return p.Controls[i]
}

// controlsOf lists what can be set. Names of parts are unlike each other; what is no part has
// a word before its name.
func controlsOf(c *circuit.Circuit) (list []*Control) {
	d, apart := c.Design, c.Exclusive()
	of := func(p design.Part, kind Kind) *Control {
		x := &Control{ID: p.PartName(), Title: p.PartName(), Kind: kind, Words: []string{off, on}, part: p}
		list = append(list, x)
		return x
	}
	for _, s := range d.Switches {
		if s.Pole != nil || s.KeyOperated {
			continue
		}
		switch x := of(s, ByHand); {
		case s.Positions != nil:
			x.Words = nil
			for _, at := range s.Positions {
				x.Words = append(x.Words, at.Name)
			}
			x.gives = apart.ByPosition(s)
		case s.WorksAlone():
			x.Kind = ByWater
		case s.Momentary:
			x.Kind = ByPush
		}
	}
	for _, r := range d.Relays {
		if slices.ContainsFunc(c.Branches, func(b *circuit.Branch) bool { return b.Closer != nil && b.Closer.Latch == r && b.Closer.Break == nil }) {
			of(r, Latch)
		}
	}
	for _, l := range d.Loads {
		switch {
		case l.Sign == design.SignSocket:
			of(l, Socket)
		case circuit.HasOwnSwitch(l):
			of(l, Own)
		}
	}
	for _, w := range d.Conditions {
		list = append(list, &Control{ID: "with " + string(w), Title: string(w), Kind: Condition, Words: []string{off, on}, when: w})
	}
	for _, from := range []struct {
		of   string
		kind Kind
	}{{"panel", Sun}, {"mains", Shore}} {
		if slices.ContainsFunc(d.Chargers, func(x *design.Charger) bool { return x.Type.From == from.of }) {
			list = append(list, &Control{ID: "from " + string(from.kind), Title: string(from.kind), Kind: from.kind, Words: []string{off, on}})
		}
	}
	needs := map[*circuit.Branch][]*circuit.Branch{} // contacts, by load and coil
	for _, b := range c.Branches {
		if b.Load != nil && b.Load.Load != nil && !b.Load.Standby || b.OfCoil() {
			needs[b] = c.NeededBy(b)
		}
	}
	for _, x := range list {
		x.find(c, needs)
	}
	return list
}

// find fills in what a control switches.
func (x *Control) find(c *circuit.Circuit, needs map[*circuit.Branch][]*circuit.Branch) {
	add := func(b *circuit.Branch) {
		if slices.Contains(x.branch, b) {
			return
		}
		x.branch = append(x.branch, b)
		if l := b.Load; l != nil && l.Load != nil && !slices.Contains(x.Loads, l.Load) {
			x.Loads = append(x.Loads, l.Load)
		}
	}
	for _, given := range x.gives {
		for _, b := range given {
			add(b)
		}
	}
	for _, b := range c.Branches {
		switch l := b.Load; {
		case l != nil && l.Load != nil:
			if l.Load == x.part || !l.Standby && slices.ContainsFunc(needs[b], func(k *circuit.Branch) bool { return x.closes(k.Closer) }) {
				add(b)
			}
		case b.OfCoil():
			if slices.ContainsFunc(needs[b], func(k *circuit.Branch) bool { return x.closes(k.Closer) }) {
				add(b)
			}
		}
	}
}

// Part is what it works; nil = a condition, the sun or shore power.
func (c *Control) Part() design.Part { return c.part }

// closes tells whether a contact goes with a control.
func (x *Control) closes(k *circuit.Closer) bool {
	if k == nil {
		return false
	}
	switch part := x.part.(type) {
	case *design.Switch:
		return k.Switch != nil && k.Switch.Lead() == part && k.Output == ""
	case *design.Relay:
		return k.Latch == part
	}
	return x.when != "" && k.Key == x.when
}

// wordIn is what a control is set to in a situation, by the contacts that it closes.
func (x *Control) wordIn(c *circuit.Circuit, s *design.Situation, closed []bool, at map[*design.Switch]string) string {
	is := func(yes bool) string {
		if yes {
			return on
		}
		return off
	}
	switch part := x.part.(type) {
	case *design.Switch:
		if part.Positions != nil {
			return at[part]
		}
	case *design.Load:
		if circuit.HasOwnSwitch(part) {
			return is(slices.Contains(s.On, part))
		}
		return is(!slices.Contains(s.Unplugged, part))
	}
	switch x.Kind {
	case Condition:
		return is(slices.Contains(s.With, x.when))
	case Sun:
		return is(s.Sun > 0)
	case Shore:
		return is(s.Shore)
	}
	return is(slices.ContainsFunc(c.Branches, func(b *circuit.Branch) bool {
		return closed[b.Index] && x.closes(b.Closer) && b.Closer.Break == nil
	}))
}
