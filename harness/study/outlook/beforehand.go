package outlook

import (
	"cmp"
	"slices"

	"fusewright/harness/formula/charging"
)

// Beforehand are the states that are answered for a reader who has no program: each start by itself, at
// every speed of Speeds, and with every combination of its Moves. A reader without the program is
// shown no other, so that all figures are the program's own.
type Beforehand struct {
	Speeds  []float64 // per minute, ascending: stopped, where the output bends, idle, cruise, those of starts
	ParkedH []float64
	Moves   map[string][]*Control // by start
	States  []State
}

// statesTimesWires is how many states are answered of a harness of one wire; mostStates of any. A state of one wire
// takes some 50 µs.
const statesTimesWires, mostStates = 40_000, 1000

// mostOf is how many states are answered of so many wires.
func mostOf(wires int) int { return min(statesTimesWires/max(1, wires), mostStates) }

// Beforehand chooses the states. Of a large harness they are fewer: hands first, then speeds.
func (p *Planner) Beforehand() *Beforehand {
	d := p.Circuit.Design
	b := &Beforehand{ParkedH: []float64{0, 6, 12, 24, 48, 72, 120, 168, 240, 336, 504, 720, 1008, 1440}, Moves: map[string][]*Control{}}
	speeds, _ := charging.Of(&d.Charging).Points(1)
	speeds = append(speeds, 0, d.Charging.IdleRPM.Value, d.Charging.CruiseRPM.Value)
	for _, s := range p.Starts {
		speeds = append(speeds, s.State.SpeedPerMin)
	}
	slices.Sort(speeds)
	b.Speeds = slices.Compact(speeds)
	most := mostOf(len(p.Circuit.Wires))
	each := max(most-len(p.Starts)*(len(b.Speeds)+1), 0) / max(1, len(d.Situations)) / (len(b.Speeds) + 1)
	for i, s := range p.Starts {
		sets := []map[string]string{{}}
		if i < len(d.Situations) {
			b.Moves[s.ID], sets = p.moves(s, each)
		}
		at := b.Speeds
		if len(p.Starts)*(len(b.Speeds)+1) > most {
			at = []float64{s.State.SpeedPerMin}
		}
		for _, set := range sets {
			state := s.State
			state.Set = set
			if !s.State.KeyOn {
				b.States = append(b.States, state)
				continue
			}
			for _, state.SpeedPerMin = range at {
				b.States = append(b.States, state)
			}
			state.KeyOn, state.SpeedPerMin = false, 0
			b.States = append(b.States, state)
		}
	}
	return b
}

// moves are the controls that switch most, as many as have no more combinations than that, and those
// combinations, that of the start first.
func (p *Planner) moves(s *Start, most int) (chosen []*Control, sets []map[string]string) {
	order := slices.Clone(p.Controls)
	slices.SortStableFunc(order, func(a, b *Control) int { return cmp.Compare(b.watts(), a.watts()) })
	words := p.Words(s.State)
	sets = []map[string]string{{}}
	for _, x := range order {
		if len(sets)*len(x.Words) > most {
			continue
		}
		chosen = append(chosen, x)
		for _, set := range slices.Clone(sets) {
			for _, word := range x.Words {
				if word == words[x.ID] {
					continue
				}
				with := map[string]string{x.ID: word}
				for id, w := range set {
					with[id] = w
				}
				sets = append(sets, with)
			}
		}
	}
	return chosen, sets
}

func (c *Control) watts() (w float64) {
	for _, l := range c.Loads {
		w += l.PowerW
	}
	return w
}
