package outlook

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// Words are what every control is set to in a state, by ID.
func (p *Planner) Words(s State) map[string]string {
	words := p.wordsIn(p.startOf(s.Start).situation)
	for id, word := range s.Set {
		words[id] = word
	}
	return words
}

func (p *Planner) wordsIn(s *design.Situation) map[string]string {
	closed := circuit.Contacts(p.Circuit, s)
	at, _ := circuit.Positions(p.Circuit, s)
	words := make(map[string]string, len(p.Controls))
	for _, x := range p.Controls {
		words[x.ID] = x.wordIn(p.Circuit, s, closed, at)
	}
	return words
}

// situation is a state as a situation: the start's own where nothing differs, so that its
// figures are the very same; else one in which every hand is said.
func (p *Planner) situation(s State) *design.Situation {
	from := p.startOf(s.Start).situation
	was := p.wordsIn(from)
	var changed []*Control
	for _, x := range p.Controls {
		if word, said := s.Set[x.ID]; said && word != was[x.ID] {
			changed = append(changed, x)
		}
	}
	key, rpm := design.KeyOff, 0.0
	if s.KeyOn {
		key, rpm = design.KeyOn, s.SpeedPerMin
	}
	if len(changed) == 0 && key == from.Key && rpm == from.EngineRPM {
		return from
	}
	to := *from
	to.Name, to.Derived, to.All, to.Key, to.EngineRPM = "as set", false, false, key, rpm
	if to.As == nil {
		to.As = from
	}
	if key != from.Key || (rpm > 0) != (from.EngineRPM > 0) {
		to.As = nil // what the machine draws in a situation it does not draw stopped
	}
	to.On, to.With, to.Held, to.Waiting = slices.Clone(from.On), slices.Clone(from.With), slices.Clone(from.Held), from.Waiting
	to.Unplugged = slices.Clone(from.Unplugged)
	to.Closed, to.Open, to.Set = nil, nil, nil
	for _, x := range p.Controls {
		word, said := s.Set[x.ID]
		if !said {
			word = was[x.ID]
		}
		x.put(&to, word)
	}
	for _, x := range changed {
		x.list(&to, was[x.ID], s.Set[x.ID])
	}
	return &to
}

// put sets a control in a situation.
func (x *Control) put(s *design.Situation, word string) {
	switch part := x.part.(type) {
	case *design.Switch:
		switch {
		case part.Positions != nil:
			s.Set = append(s.Set, design.Setting{Switch: part, Position: word})
		case word == on:
			s.Closed = append(s.Closed, part)
		default:
			s.Open = append(s.Open, part)
		}
	case *design.Relay:
		s.Held = with(s.Held, part, word == on)
	case *design.Load:
		if circuit.HasOwnSwitch(part) { // a socket that draws something by itself still does
			s.On = with(s.On, part, word == on)
		} else {
			s.Unplugged = with(s.Unplugged, part, word == off)
		}
	}
	switch x.Kind {
	case Condition:
		s.With = with(s.With, x.when, word == on)
	case Sun:
		if s.Sun == 0 || word == off {
			s.Sun, s.SunShare = 0, 0
			if word == on {
				s.Sun, s.SunShare = 1, 1
			}
		}
	case Shore:
		s.Shore = word == on
	}
}

// list notes what a control that is set otherwise than before has on and off, so that what is on for
// a while at a time counts once, as in a situation that lists it. Loads with switches of their own
// are on by those.
func (x *Control) list(s *design.Situation, was, word string) {
	gives := func(word string) (list []*design.Load) {
		if x.gives == nil {
			if word == on {
				return x.Loads
			}
			return nil
		}
		for _, b := range x.gives[slices.Index(x.Words, word)] {
			if b.Load != nil { // no coil
				list = append(list, b.Load.Load)
			}
		}
		return list
	}
	now := gives(word)
	for _, l := range gives(was) {
		if !slices.Contains(now, l) && !circuit.HasOwnSwitch(l) {
			s.On = with(s.On, l, false)
		}
	}
	for _, l := range now {
		if !circuit.HasOwnSwitch(l) {
			s.On = with(s.On, l, true)
		}
	}
}

// with is a list with a thing in it, or without.
func with[T comparable](list []T, x T, in bool) []T {
	if !in {
		return slices.DeleteFunc(list, func(y T) bool { return y == x })
	}
	if slices.Contains(list, x) {
		return list
	}
	return append(list, x)
}
