package derivation

import (
	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/warm"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/fault"
	"fusewright/library"
)

// book is a review as derivations read it.
type book struct {
	r     *harness.Review
	c     *circuit.Circuit
	d     *design.Design
	lib   *library.Library
	plan  *solve.Plan
	views map[viewKey]*view
	last  map[*circuit.Branch]fault.Latest // see latest

	called map[string][]string        // see names
	rated  map[*circuit.Branch]*value // see ratedV
}

func newBook(r *harness.Review) *book {
	return &book{r: r, c: r.Circuit, d: r.Design, lib: r.Design.Library,
		plan: solve.Prepare(r.Circuit), views: map[viewKey]*view{}, rated: map[*circuit.Branch]*value{}}
}

// set are the solved situations.
func (b *book) set() *corner.Set { return b.r.Solved() }

// latest is the short for which a fuse opens last; nil where it opens for none.
func (b *book) latest(fuse *circuit.Branch) *fault.Latest {
	if b.last == nil {
		b.last = b.r.Faulted().Latest()
	}
	if l, opens := b.last[fuse]; opens {
		return &l
	}
	return nil
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

	mean         bool // each load at its average over the situation
	shorted      bool // of shorts: wires at their class where hot, contacts aged all alike
	net          fault.Net
	kept, across *value // resistance of the source; volts across the posts

	amperes, ohmsOf, voltsAt map[*circuit.Branch]*value
	left                     map[*circuit.Branch]*value // volts of a load whose drop was derived
	posts                    map[*circuit.Node]*value
}

func (b *book) view(at int, state corner.State) *view {
	key := viewKey{at, state}
	v := b.views[key]
	if v == nil {
		res := b.set().Results[state][at]
		v = b.viewOf(res.Solution, b.set().Options(at, state))
		v.viewKey, v.res = key, res
		b.views[key] = v
	}
	return v
}

func (b *book) viewOf(s *solve.Solution, opt solve.Options) *view {
	return &view{book: b, sol: s, opt: opt, laws: b.plan.Laws(s.Situation, opt),
		amperes: map[*circuit.Branch]*value{}, ohmsOf: map[*circuit.Branch]*value{}, voltsAt: map[*circuit.Branch]*value{},
		posts: map[*circuit.Node]*value{}, left: map[*circuit.Branch]*value{}}
}

// averageView is a solution of the budget.
func (b *book) averageView(s *solve.Solution) *view {
	v := b.viewOf(s, solve.Options{LoadFactor: budget.Average(b.d, s.Situation)})
	v.mean = true
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
