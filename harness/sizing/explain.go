package sizing

import (
	"fmt"
	"slices"

	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/review/finding"
)

// Explain fills in, for every choice, what decided it, the runner-up and why it
// lost: the next smaller candidate is put in its place and judged, or, for the
// smallest, the next larger. What remains wrong gets its ways out. It leaves the
// design as it was.
func (p *Plan) Explain() error { return during(p.Design, p.situations, p.explain) }

func (p *Plan) explain() error {
	s := p.s
	var moves []move
	w := s.look(s.best.verdict)
	for i, x := range s.slots {
		if !s.lacks(x) && s.compared(x, p.Choices[p.first[i]]) {
			moves = append(moves, move{i, w.other(i)})
		}
	}
	first := s.try(moves)
	s.secondBest(moves, first)
	for k, t := range first {
		i := moves[k].slot
		c := p.Choices[p.first[i]]
		c.RunnerUp = s.slots[i].label(moves[k].to)
		s.explain(s.slots[i], moves[k].to, t, c)
	}
	for i, x := range s.slots {
		for k := range x.also {
			c := p.Choices[p.first[i]+1+k]
			of := p.Choices[p.first[i]]
			c.Decided, c.RunnerUp, c.Lost, c.MoreG = of.Decided, of.RunnerUp, of.Lost, of.MoreG
		}
	}
	p.Lacking = s.lacking()
	p.Elsewhere = s.elsewhere()
	if len(p.Remaining) > 0 {
		p.Conflicts = s.conflicts()
		p.WaysOut = s.waysOut()
		s.take(s.best)
	}
	return nil
}

// secondBest looks, for wires that only the cost keeps from the next thinner
// size, for the cheapest of the thinner sizes: one that other wires have comes
// cheaper than one bought for this wire alone. Those that pass the rules take the
// place of the next thinner one.
func (s *search) secondBest(moves []move, trials []trial) {
	w := s.look(s.best.verdict)
	l := w.ledgerOf(s.best.at)
	var better []move
	var of []int
	for k, m := range moves {
		x := s.slots[m.slot]
		if x.kind != WireSize || trials[k].worse != nil || m.to > x.at {
			continue
		}
		to, least := m.to, trials[k].cost.wiresG()
		for z := range m.to {
			w.swap(l, m.slot, x.at, z)
			if g := l.wiresG(); g < least-1e-9 {
				to, least = z, g
			}
			w.swap(l, m.slot, z, x.at)
		}
		if to != m.to {
			better, of = append(better, move{m.slot, to}), append(of, k)
		}
	}
	for n, t := range s.try(better) {
		if t.worse == nil {
			moves[of[n]], trials[of[n]] = better[n], t
		}
	}
}

// other is the next candidate below the chosen one, or above the smallest.
func (x *slot) other() int {
	if x.at == 0 {
		return 1
	}
	return x.at - 1
}

// other is the candidate to compare with: of fuses the next smaller of the type,
// and of a type's smallest the first of all that carries the load; of blocks the
// next for the same fuses.
func (w *view) other(i int) int {
	x := w.s.slots[i]
	if x.kind == BlockType {
		return x.otherBlock()
	}
	if x.kind != Fuse || x.at == 0 || x.fuses[x.at-1].kind == x.fuses[x.at].kind || w.branch[i] == nil {
		return x.other()
	}
	if k := slices.Index(w.carrying(i, 1), true); k >= 0 && k < x.at {
		return k
	}
	return x.other()
}

// otherBlock is the block to compare with: the one before, else the next that
// takes the same fuses, else the next.
func (x *slot) otherBlock() int {
	if x.at == 0 {
		for i := 1; i < len(x.blocks); i++ {
			if x.blocks[i].FuseType == x.blocks[0].FuseType && x.blocks[i].Sealed == x.blocks[0].Sealed {
				return i
			}
		}
	}
	return x.other()
}

// largerBlock says what is more of another block than is needed.
func (x *slot) largerBlock(other int) string {
	now, next := x.blocks[x.at], x.blocks[other]
	switch {
	case next.Sealed != now.Sealed && now.Sealed:
		return "it is not sealed, and its place is wet"
	case next.Sealed != now.Sealed:
		return "it is sealed, and its place is dry"
	case next.Ways != now.Ways:
		return fmt.Sprintf("it has %d ways, and %s", next.Ways, wording.Count(x.block.Needs(), "is needed", "are needed"))
	}
	return fmt.Sprintf("it is for %s in total, more than needed", quantity.Plain(next.TotalA, quantity.Current))
}

// compared tells whether a choice is to be compared; what needs no comparison is
// explained at once.
func (s *search) compared(x *slot, c *Choice) bool {
	if x.count() == 1 {
		c.Decided = "the only one that fits"
		if c.Value == noCover {
			c.Decided = "the run needs none"
		}
		return false
	}
	if x.kind == RunCover {
		c.RunnerUp = x.label(x.other())
		c.Decided, c.Lost = needsOf(s.d, x.run).String()+"; of the covers for that, the one that derates least", "it derates more"
		if now, next := x.covers[x.at], x.covers[x.other()]; next != nil && next.CurrentFactor == now.CurrentFactor {
			c.Lost = fmt.Sprintf("it derates no less, and %s serves as many runs of this harness or more", c.Value)
		}
		return false
	}
	return true
}

// explain words a choice by what its comparison came to.
func (s *search) explain(x *slot, other int, t trial, c *Choice) {
	smallest := other > x.at
	switch {
	case t.worse != nil:
		c.Decided, c.Lost = t.worse.Rule, t.worse.What+justPast(t.worse)
	case s.follows[slices.Index(s.slots, x)]:
		c.Decided, c.Lost = whatFollows, "it would be thinner than what follows it, or than a trunk should be"
	case x.kind == BlockType || x.kind == RelayForm:
		c.Decided, c.Lost = "the first that carries its load in its place", asWell
		if x.kind == BlockType {
			c.Lost = x.largerBlock(other)
		}
		if x.kind == RelayForm {
			c.Lost = fmt.Sprintf("its contact for %s is rated higher than needed here",
				quantity.Plain(x.forms[other].MakeA, quantity.Current))
		}
		if !smallest {
			c.Decided, c.Lost = "margin of the contacts at the first look", "it would do as well"
		}
	default:
		c.Decided, c.Lost = "cost", difference(s.best.cost, t.cost, x.fuseWords(other))
		c.MoreG = t.cost.TotalG() - s.best.cost.TotalG()
	}
	switch {
	case smallest && (x.kind == WireSize || x.kind == Fuse):
		c.Decided = "the smallest there is"
	case smallest:
		c.Decided = "the first that carries its load in its place"
	case x.kind == WireSize && t.worse == nil && c.Decided != whatFollows && t.cost.Sizes > s.best.cost.Sizes:
		c.Decided = s.oneSize(x)
	}
}

// whatFollows is the reason of a wire that goes by what is fed through it, see beforeFuses.
const whatFollows = "what follows it"

// justPast says that a finding is just past its limit, since the figures in its
// words are rounded and may look alike.
func justPast(f *finding.Finding) string {
	for _, n := range f.Numbers {
		if n.Name == "margin" && n.Value < 0 && onEdge(f) {
			return "; just past the limit"
		}
	}
	return ""
}

// oneSize says what sets a size that a wire shares with others: what goes wrong
// first when all of them take the next smaller one.
func (s *search) oneSize(x *slot) string {
	of := stock{x.feeds[0].Wire.Type, x.sizes[x.at]}
	if text, ok := s.shared[of]; ok {
		return text
	}
	defer s.take(s.best)
	size := x.label(x.at)
	for _, y := range s.slots {
		if y.kind == WireSize && y.at > 0 && (stock{y.feeds[0].Wire.Type, y.sizes[y.at]}) == of {
			y.set(y.at - 1)
		}
	}
	text := fmt.Sprintf("cost: %s is bought for other wires anyway", size)
	if a, err := s.answer(); err == nil {
		if f := s.firstNew(s.best.verdict.findings, a.verdict.findings); f != nil {
			text += fmt.Sprintf(" (one size thinner throughout, %s [%s])", f.What, f.Rule)
		}
	}
	text += "; stocking one more size costs more than thinner copper saves"
	s.shared[of] = text
	return text
}

// asWell is said of a second choice that costs and does the same.
const asWell = "it would do no better: either may be fitted"

// difference says what is against a second choice that would do, thing by thing, and what is
// for it.
func difference(best, other Cost, fuse string) string {
	var against, good []string
	say := func(more float64, worse, better string) {
		switch {
		case more > 0.05 && worse != "":
			against = append(against, worse)
		case more < -0.05 && better != "":
			good = append(good, better)
		}
	}
	count := func(n int, one, many string) {
		say(float64(n), wording.Count(n, "more "+one, "more "+many), wording.Count(-n, one+" less", many+" less"))
	}
	copperG := other.CopperG - best.CopperG
	say(copperG, quantity.Format(copperG, quantity.Mass)+" more copper", quantity.Format(-copperG, quantity.Mass)+" less copper")
	say(other.ThickG-best.ThickG, "thicker than it need be", "")
	count(other.Sizes-best.Sizes, "size of wire to buy", "sizes of wire to buy")
	count(other.Terminals-best.Terminals, "kind of crimp part", "kinds of crimp parts")
	count(other.Plugs-best.Plugs, "connector family", "connector families")
	say(other.PlugsA-best.PlugsA, "a larger plug than is needed", "a smaller plug")
	say(other.FusesG-best.FusesG, fuse, "")
	switch {
	case len(against)+len(good) == 0:
		return asWell
	case other.TotalG() < best.TotalG():
		return "not found by the search: " + wording.And(append(good, against...))
	case len(against) == 0:
		return wording.And(good) + ", and yet it is not worth it"
	case len(good) == 0:
		return wording.And(against)
	}
	return wording.And(against) + " against " + wording.And(good)
}

// fuseWords is what speaks against another candidate of a fuse that would do.
func (x *slot) fuseWords(other int) string {
	if x.kind != Fuse {
		return ""
	}
	now, next := x.fuses[x.at], x.fuses[other]
	switch {
	case next.rating.RatingA < now.rating.RatingA && next.kind == now.kind:
		return "few shops have one so small"
	case next.kind != now.kind && next.rating.RatingA <= now.rating.RatingA:
		return "it is not the usual type here"
	}
	return "a larger fuse protects less closely"
}
