package derivation

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// drop is what is lost between the posts of the battery and a load, there and back.
func (v *view) drop(load *circuit.Branch) *value {
	way, ok := v.way(load)
	if !ok {
		return of("lost on the way out and back", volts, v.sol.PostsV(load)-v.sol.LoadV(load), "{} − {}", v.postsV(load),
			solved("volts at "+loadName(load), volts, v.sol.LoadV(load), "solved together"))
	}
	from, heldV := "{} − {}", 0.0 // a resistor that is there to take volts loses none
	taken := []*value{v.postsV(load)}
	for _, b := range way {
		if b.Dropper() {
			e := v.element(b)
			from, taken, heldV = from+" − {}", append(taken, e), heldV+e.v
		}
	}
	way = slices.DeleteFunc(way, (*circuit.Branch).Dropper)
	total := v.sol.PostsV(load) - heldV - v.sol.LoadV(load)
	x := &value{label: "lost on the way out and back", v: total, dim: volts, mark: Computed}
	left := v.sol.LoadV(load)
	v.left[load] = of("volts at "+loadName(load), volts, left, from, append(taken, x)...)
	v.voltsAt[load] = solved("volts at "+loadName(load), volts, left, "solved together").
		checked(of("check: posts less what is lost", volts, left, from, append(taken, x)...))
	x.from = v.groups(load, way)
	*x = *sumInto(x)
	return x
}

func sumInto(x *value) *value {
	if len(x.from) == 1 {
		only := x.from[0]
		x.from, x.formula, x.carries = only.from, only.formula, only.carries
		return x
	}
	s := sum(x.label, x.dim, x.v, x.from...)
	s.source = x.source
	return s
}

// way are the branches from the posts to a load and back that its current flows through,
// in order.
func (v *view) way(load *circuit.Branch) (way []*circuit.Branch, ok bool) {
	plus, minus := v.c.Supply(load.A)
	from, to := load.A, load.B
	if v.sol.BranchA[load.Index] < 0 {
		from, to = to, from
	}
	feed, ok1 := v.trail(from, plus, false)
	back, ok2 := v.trail(to, minus, true)
	slices.Reverse(feed)
	return append(feed, back...), ok1 && ok2
}

// trail follows the heaviest current from a node, with it or against it, to another.
func (v *view) trail(n, end *circuit.Node, along bool) (way []*circuit.Branch, ok bool) {
	for n != end {
		var next *circuit.Branch
		most := traceA
		for _, b := range n.Branches {
			a := v.sol.BranchA[b.Index]
			if math.IsNaN(a) || b.Load != nil || b.OfCoil() || b.Kind == circuit.BatteryBranch || b.Kind == circuit.ChargerBranch {
				continue
			}
			if (a > 0) == (b.A == n) == along && math.Abs(a) > most {
				next, most = b, math.Abs(a)
			}
		}
		if next == nil || len(way) > len(v.c.Branches) {
			return way, false
		}
		way = append(way, next)
		if next.A == n {
			n = next.B
		} else {
			n = next.A
		}
	}
	return way, true
}

// groups are the elements of a way by what shares them.
func (v *view) groups(load *circuit.Branch, way []*circuit.Branch) (list []*value) {
	type group struct {
		key, label string
		sum        float64
		elements   []*value
	}
	var all []*group
	for _, b := range way {
		users := v.users(b)
		key := fmt.Sprint(indices(users))
		at := slices.IndexFunc(all, func(g *group) bool { return g.key == key })
		if at < 0 {
			at, all = len(all), append(all, &group{key: key, label: v.shared(load, users)})
		}
		x := v.element(b)
		all[at].sum += x.v
		all[at].elements = append(all[at].elements, x)
	}
	for _, g := range all {
		if len(g.elements) == 1 {
			list = append(list, g.elements[0])
			continue
		}
		list = append(list, sum(g.label, volts, g.sum, g.elements...))
	}
	return list
}

func indices(list []*circuit.Branch) (out []int) {
	for _, b := range list {
		out = append(out, b.Index)
	}
	return out
}

// shared says whose current an element carries.
func (v *view) shared(load *circuit.Branch, users []*circuit.Branch) string {
	var others []string
	for _, u := range users {
		if u != load && u.Load != nil {
			others = append(others, loadName(u))
		}
	}
	switch {
	case len(others) == 0 && len(users) == 1:
		return loadName(load) + " alone"
	case len(others) > 2:
		return fmt.Sprintf("shared with %d others that are on", len(others))
	case len(others) == 0:
		return "shared with relay coils"
	}
	return "shared with " + strings.Join(others, " and ")
}

// element is the volts that one element loses.
func (v *view) element(b *circuit.Branch) *value {
	lost := math.Abs(v.sol.Volts(b))
	if law := v.laws[b.Index]; law.Kind == solve.Valve {
		return v.diode(b, lost)
	}
	ohm := v.ohm(b)
	return of(elementName(b), volts, lost, "{} × {}", ohm, v.amps(b)).by(ohm)
}

func (v *view) diode(b *circuit.Branch, lost float64) *value {
	t := b.Diode.Type
	return of(elementName(b), volts, lost, "{} + {} × {}", row("knee of "+t.Name, volts, t.KneeV, t.Source), newOhm(b), v.amps(b))
}
