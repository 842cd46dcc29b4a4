package fault

import (
	"fmt"
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// blocking finds the network of a short in which every diode that the short would drive
// backward blocks, and what the short sees there: first all conduct, then those that current
// would pass the wrong way are opened and those with more than their knee across them closed,
// until none changes. Where that comes to no end, all conduct: more than there is. Where it leaves the short
// without a source, no battery feeds it.
func (l *loom) blocking(n *net, p point, backOhm float64) (*net, Seen, bool) {
	seen, ok := n.short(p, backOhm)
	if !ok || len(l.c.Design.Diodes) == 0 {
		return n, seen, ok
	}
	all, allSeen := n, seen
	for range 2 * (1 + len(l.c.Design.Diodes)) {
		f := flow{n, p, seen.CurrentA(), seen}
		shut := f.blocked(l.c)
		if slices.Equal(shut, n.of.Blocking) {
			return n, seen, true
		}
		if n = all.with(l.plan, shut); n == nil {
			break
		}
		if seen, ok = n.short(p, backOhm); !ok {
			return n, Seen{Behind: true}, false
		}
	}
	all.response.Draw(p.draws...)
	return all, allSeen, true
}

// blocked are the diodes that block at the voltages of a flow. One that is found the wrong way
// round is taken to point with its feed.
func (f *flow) blocked(c *circuit.Circuit) (list []*circuit.Branch) {
	for _, b := range c.Branches {
		if b.Diode != nil && !b.Diode.Reversed && f.at(b.A)-f.at(b.B)-b.Diode.Type.KneeV < -sameV {
			list = append(list, b)
		}
	}
	return list
}

// sameV is less than any current through a diode's slope makes, and more than rounding.
const sameV = 1e-6

// with is the same network with diodes that block, kept for the next short.
func (n *net) with(plan *solve.Plan, shut []*circuit.Branch) *net {
	if len(shut) == 0 {
		return n
	}
	key := keyOf(shut)
	other, known := n.others[key]
	if !known {
		of := n.of
		of.Blocking = shut
		other = newNet(plan, opened(n.opt, shut), of)
		n.others[key] = other
	}
	return other
}

// keyOf tells one list of branches from another.
func keyOf(list []*circuit.Branch) (key string) {
	for _, b := range list {
		key += fmt.Sprint(b.Index, " ")
	}
	return key
}

// opened are options with branches opened.
func opened(opt solve.Options, list []*circuit.Branch) solve.Options {
	opt.Changes = slices.Clip(opt.Changes)
	for _, b := range list {
		opt.Changes = append(opt.Changes, solve.OpenBranch(b))
	}
	return opt
}
