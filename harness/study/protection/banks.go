package protection

import (
	"math"

	"fusewright/harness/network/circuit"
	"fusewright/harness/study/fault"
)

// banks gives the cable of each further battery's negative post to the fuses nearest to its
// positive one, those of its link and of what it feeds: what a short draws from that battery comes back over it.
func (g *gathered) banks(c *circuit.Circuit, faults *fault.Study) {
	for _, p := range c.Parts {
		if p.Kind != circuit.Bank {
			continue
		}
		for _, w := range p.Terminal("-").Wires {
			if w.From.Part != p || !w.Role.Returns() {
				continue
			}
			for _, f := range nearestFuses(p.Terminal("+").Node) {
				if most := mostThrough(faults, f); most > 0 {
					g.wires[f.Index] = append(g.wires[f.Index], protected{w, most, false})
				}
			}
		}
	}
}

// nearestFuses are those met first from a battery's post, towards what feeds it and towards
// what it feeds.
func nearestFuses(post *circuit.Node) (list []*circuit.Branch) {
	seen := map[*circuit.Node]bool{post: true}
	var walk func(n *circuit.Node, up bool)
	walk = func(n *circuit.Node, up bool) {
		next := n.FeedsOn()
		if up {
			next = n.FedBy()
		}
		for _, b := range next {
			far := b.B
			if up {
				far = b.A
			}
			switch {
			case b.Kind == circuit.FuseBranch:
				list = append(list, b)
			case !seen[far]:
				seen[far] = true
				walk(far, up)
			}
		}
	}
	walk(post, true)
	walk(post, false)
	return list
}

// mostThrough is the greatest current of a short that a device carries.
func mostThrough(faults *fault.Study, f *circuit.Branch) (most float64) {
	for _, sh := range faults.Shorts {
		r := sh.Results[fault.Strong]
		if sh.Fed && r.Device == f && len(r.Through) == 0 {
			most = math.Max(most, r.DeviceA)
		}
		for _, x := range r.Through {
			if x.Device == f {
				most = math.Max(most, x.Amps)
			}
		}
	}
	return most
}
