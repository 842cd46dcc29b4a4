package derivation

import (
	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/warm"
	"fusewright/library"
)

// book is a review as derivations read it.
type book struct {
	r     *harness.Review
	c     *circuit.Circuit
	d     *design.Design
	lib   *library.Library
	set   *corner.Set
	plan  *solve.Plan
	views map[viewKey]*view
}

func newBook(r *harness.Review) *book {
	return &book{r: r, c: r.Circuit, d: r.Design, lib: r.Design.Library, set: r.Corners,
		plan: solve.Prepare(r.Circuit), views: map[viewKey]*view{}}
}

type viewKey struct {
	at    int
	state corner.State
}

// view is a solved situation in one state.
type view struct {
	*book
	viewKey
	res  *warm.Result
	sol  *solve.Solution
	opt  solve.Options
	laws []solve.Law

	amperes, ohmsOf, loads, voltsAt map[*circuit.Branch]*value
}

func (b *book) view(at int, state corner.State) *view {
	key := viewKey{at, state}
	v := b.views[key]
	if v == nil {
		res := b.set.Results[state][at]
		v = &view{book: b, viewKey: key, res: res, sol: res.Solution, opt: b.set.Options(at, state),
			amperes: map[*circuit.Branch]*value{}, ohmsOf: map[*circuit.Branch]*value{},
			loads: map[*circuit.Branch]*value{}, voltsAt: map[*circuit.Branch]*value{}}
		v.laws = b.plan.Laws(v.sol.Situation, v.opt)
		b.views[key] = v
	}
	return v
}

// once makes a value of a branch the first time it is asked for.
func once(kept map[*circuit.Branch]*value, b *circuit.Branch, make func() *value) *value {
	x, ok := kept[b]
	if !ok {
		x = make()
		kept[b] = x
	}
	return x
}

// tolerance is a row of the library's tolerances.
func (b *book) tolerance(name, label string, dim *dimension) *value {
	row1 := b.lib.Tolerance(name)
	if row1 == nil {
		return assumed(label, dim, 0, "not in the library")
	}
	return row(label, dim, row1.Value, row1.Source)
}
