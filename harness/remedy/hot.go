package remedy

import (
	"cmp"
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/sizing"
	"fusewright/library"
)

// mostClasses is how many other insulations are tried for a hot place.
const mostClasses = 3

// hotK is how little below what a wire's insulation bears with the margin a place is hot.
const hotK = 5

// classes are the wires of one type through a place that leaves them little to carry in
// a type of the same standard for more heat, that of the lowest class first.
func (t *tester) classes(w *circuit.Wire) ladder {
	now := w.Spec.Type
	if now == nil || w.AmbientC < now.ClassC-t.Design.Practice.HotSpotMarginC-hotK {
		return nil
	}
	types := slices.DeleteFunc(slices.Clone(t.Design.Library.WireTypes), func(x *library.WireType) bool {
		return x.Standard != now.Standard || x.Cores != now.Cores || x.ClassC <= now.ClassC
	})
	slices.SortStableFunc(types, func(a, b *library.WireType) int { return cmp.Compare(a.ClassC, b.ClassC) })
	var l ladder
	for _, x := range types[:min(mostClasses, len(types))] {
		l = append(l, &Trial{About: "wires at " + w.AmbientAt, Was: now.Name, Will: x.Name,
			put: func() func() { return t.ofType(t.alike(w), x) }})
	}
	return l
}

// alike are the sizes of the wires of a wire's type whose hottest point is where its is.
func (t *tester) alike(w *circuit.Wire) []*sizing.Value {
	var list []*sizing.Value
	for _, x := range t.Circuit.Wires {
		if x.Spec.Type != w.Spec.Type || x.AmbientAt != w.AmbientAt {
			continue
		}
		at := slices.IndexFunc(t.values, func(v *sizing.Value) bool { return v.Sets(x) })
		if at >= 0 && !slices.Contains(list, t.values[at]) {
			list = append(list, t.values[at])
		}
	}
	return list
}

// ofType puts a type into all of some wires.
func (t *tester) ofType(list []*sizing.Value, x *library.WireType) (back func()) {
	var done []func()
	for _, v := range list {
		if one := v.TakeType(x); one != nil {
			done = append(done, one)
		}
	}
	return func() {
		for _, one := range slices.Backward(done) {
			one()
		}
	}
}
