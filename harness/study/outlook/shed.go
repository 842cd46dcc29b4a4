package outlook

import (
	"maps"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/together"
)

// Step is one thing switched off, after those before it.
type Step struct {
	Name   string
	Off    bool    // it is off already; nothing else is said
	GainsA float64 // less drawn than before the step
	LeftA  float64 // to spare after it; with the engine stopped, out of all batteries
	Set    map[string]string
}

// mostSteps is how many things are switched off one after the other, each of which is solved.
const mostSteps = 12

// leastGainA is what switching off has to spare a battery at least, with the engine stopped; less comes out of sun or shore
// power, or of what is off already.
const leastGainA = 1e-3

// shed switches things off in their order, and solves what is left after each.
func (p *Planner) shed(f *Figures, order []*together.Item) (steps []Step) {
	s := f.State
	s.Set = maps.Clone(f.Words)
	left, stopped := f.SpareA, f.State.SpeedPerMin == 0
	if stopped {
		left = OutA(f.Line)
	}
	for n, item := range order[:min(len(order), mostSteps)] {
		id, word := p.off(item, order[n+1:])
		if id == "" || s.Set[id] == word {
			continue
		}
		s.Set[id] = word
		l, _ := p.balance(s, p.situation(s))
		if l == nil {
			break
		}
		step := Step{Name: item.Name, LeftA: l.SpareA, GainsA: l.SpareA - left, Set: map[string]string{id: word}}
		if stopped {
			step.LeftA, step.GainsA = OutA(l), left-OutA(l)
			if step.GainsA < leastGainA {
				continue
			}
		}
		left = step.LeftA
		steps = append(steps, step)
	}
	return steps
}

// off is the control that switches an item off, and to what: the last of its hands that no
// other thing still on needs; of a handle, a position that gives nothing.
func (p *Planner) off(item *together.Item, others []*together.Item) (id, word string) {
	hands := item.Hands()
	for i := len(hands) - 1; i >= 0; i-- {
		h := hands[i]
		shared := slices.ContainsFunc(others, func(o *together.Item) bool { return slices.Contains(o.Hands(), h) })
		if shared && i > 0 {
			continue
		}
		c := p.Control(h.Part.PartName())
		if c == nil {
			continue
		}
		s, ok := h.Part.(*design.Switch)
		if h.Position == "" || ok && s.Positions == nil && h.Position == together.On {
			return c.ID, off
		}
		for _, at := range s.Positions {
			if len(at.Outputs) == 0 {
				return c.ID, at.Name
			}
		}
	}
	return "", ""
}

// OutA is what all batteries together give.
func OutA(l *budget.Line) float64 {
	sum := math.Max(l.BatteryA, 0)
	for _, b := range l.Banks {
		sum += math.Max(b.A, 0)
	}
	return sum
}
