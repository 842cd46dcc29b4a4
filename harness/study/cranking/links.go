package cranking

import (
	"math"
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// Helper is a further battery during a start.
type Helper struct {
	Part *circuit.Part
	// GivesA is what it gives over its links to the starter and the first battery's loads, the most over the situations, with the relays
	// as the voltage moves them; HeldA with the sensing relays in links held closed.
	GivesA, HeldA float64
}

// sensing are the contacts of voltage-sensing relays in links between batteries: one is still closed when the engine is started
// soon after a stop, from the sun or shore power, or while a battery rests above the volts at which it opens, and then lets go
// only after its delay, which outlasts a start (from memory: 5 to 60 s).
func sensing(c *circuit.Circuit) (list []*circuit.Branch) {
	for _, p := range banks(c) {
		for _, link := range c.Links(p.Terminal("+").Node) {
			for _, b := range c.Sensing(link) {
				if !slices.Contains(list, b) {
					list = append(list, b)
				}
			}
		}
	}
	return list
}

// Relays are the parts whose contacts Held has closed, each once, in the circuit's order.
func (s *Study) Relays() (list []*circuit.Part) {
	for _, b := range s.sensing {
		if !slices.Contains(list, b.Part) {
			list = append(list, b.Part)
		}
	}
	return list
}

func banks(c *circuit.Circuit) (list []*circuit.Part) {
	for _, p := range c.Parts {
		if p.Kind == circuit.Bank {
			list = append(list, p)
		}
	}
	return list
}

// closed are changes that hold contacts closed.
func closed(contacts []*circuit.Branch) (list []solve.Change) {
	for _, b := range contacts {
		list = append(list, solve.CloseBranch(b))
	}
	return list
}

// help fills in what further batteries give in a case.
func (k *Case) help(c *circuit.Circuit, turning, held []*solve.Solution) {
	for _, p := range banks(c) {
		k.Helpers = append(k.Helpers, Helper{p, gives(p, turning), gives(p, held)})
	}
}

// gives is the most that a further battery gives over its links in any solution; NaN = none is known.
func gives(p *circuit.Part, list []*solve.Solution) float64 {
	_, most := Most(p, list)
	return most
}

// Most is the solution in which a further battery gives most over its links, and how much; nil and NaN where none is known.
func Most(p *circuit.Part, list []*solve.Solution) (in *solve.Solution, most float64) {
	most = math.NaN()
	for _, s := range list {
		if s.Status != solve.Converged {
			continue
		}
		a := 0.0
		for _, link := range s.Circuit.Links(p.Terminal("+").Node) {
			a -= s.LinkA(s.Circuit, link)
		}
		if a = max(a, 0); !(a <= most) {
			in, most = s, a
		}
	}
	return in, most
}
