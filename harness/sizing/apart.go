package sizing

import (
	"cmp"
	"math"
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
)

// move puts another candidate in a slot.
type move struct{ slot, to int }

// trial is what the rules say of a move, the rest staying as it is.
type trial struct {
	worse *finding.Finding // the gravest that was not there before; nil = none
	firm  bool             // something new is this move's alone, and not close to its limit
	cost  Cost
}

// try judges moves away from the best answer. Those that touch nothing in common
// but what lies above them are judged in one pass, and a new finding goes to the
// one move on whose way its part lies. Where several could be to blame, or the
// finding is so close to its limit that the other moves may have tipped it, the
// moves are judged again apart.
func (s *search) try(moves []move) []trial { return s.trying(moves).each() }

func (s *search) trying(moves []move) *trying {
	s.take(s.best)
	w := s.look(s.best.verdict)
	return &trying{s: s, w: w, apart: w.findApart(), base: w.ledgerOf(s.best.at), out: make([]trial, len(moves)), moves: moves}
}

type trying struct {
	s     *search
	w     *view
	apart *apart
	base  *ledger
	moves []move
	out   []trial
	brief bool // that something firm stands against a move is enough; which is the gravest is not asked
}

// each judges all moves.
func (t *trying) each() []trial {
	for _, group := range t.groups() {
		t.judge(group)
	}
	return t.out
}

// groups parts the moves into sets that share no consumer; those that change
// more than one figure of the cost by themselves stand alone.
func (t *trying) groups() [][]int {
	var groups [][]int
	var used [][]bool
	for m, x := range t.moves {
		mine := t.apart.consumers[x.slot]
		at := 0
		for at < len(groups) && (used[at] == nil || overlap(used[at], mine)) {
			at++
		}
		if at == len(groups) || !t.simple(x) {
			at = len(groups)
			groups, used = append(groups, nil), append(used, nil)
			if t.simple(x) {
				used[at] = make([]bool, t.apart.count)
			}
		}
		groups[at] = append(groups[at], m)
		for _, k := range mine {
			if used[at] != nil {
				used[at][k] = true
			}
		}
	}
	return groups
}

// simple tells whether the ledger alone gives the cost of a move. Relays and
// blocks count: they cost nothing but crimp parts of their own, and only rules
// choose between them.
func (t *trying) simple(m move) bool {
	x := t.s.slots[m.slot]
	return x.kind != Plug && x.kind != Fuse || x.kind == Fuse && x.fuses[m.to].kind == x.fuses[x.at].kind
}

func overlap(used []bool, list []int) bool {
	return slices.ContainsFunc(list, func(k int) bool { return used[k] })
}

// judge tries a group, and again in halves those moves that remain unclear.
func (t *trying) judge(group []int) {
	a := t.answer(group)
	if a == nil {
		return
	}
	if len(group) == 1 {
		o := trial{cost: a.cost}
		for _, f := range t.s.allNew(t.s.best.verdict.findings, a.verdict.findings) {
			o.worse, o.firm = cmp.Or(o.worse, f), o.firm || !onEdge(f)
		}
		t.out[group[0]] = o
		return
	}
	clear := map[int]bool{}
	for _, m := range group {
		clear[m] = true
		t.out[m] = trial{cost: t.cost(t.moves[m])}
	}
	for _, f := range t.s.allNew(t.s.best.verdict.findings, a.verdict.findings) {
		list := t.blamed(group, f)
		for _, m := range list {
			if len(list) > 1 || onEdge(f) {
				clear[m] = false
				continue
			}
			t.out[m].worse, t.out[m].firm = cmp.Or(t.out[m].worse, f), true
		}
	}
	for _, m := range group { // what nothing stands against is looked at again
		if o := &t.out[m]; o.worse == nil && t.s.cheaper(o.cost) {
			clear[m] = false
		} else if t.brief && o.firm {
			clear[m] = true
		}
	}
	again := slices.DeleteFunc(slices.Clone(group), func(m int) bool { return clear[m] })
	if half := (len(again) + 1) / 2; half > 0 {
		t.judge(again[:half])
		if half < len(again) {
			t.judge(again[half:])
		}
	}
}

// answer judges the best answer with the moves of a group.
func (t *trying) answer(group []int) *answer {
	for _, m := range group {
		x := t.s.slots[t.moves[m].slot]
		was := x.at
		x.set(t.moves[m].to)
		if x.kind == BlockType && x.blocks[was].FuseType != x.blocks[x.at].FuseType {
			t.s.waysTake(x)
			t.w.chooseWays(x)
		}
	}
	a, err := t.s.answer()
	t.s.take(t.s.best)
	if err != nil {
		return nil
	}
	return a
}

// cost is that of the best answer with one simple move.
func (t *trying) cost(m move) Cost {
	x, c := t.s.slots[m.slot], t.s.best.cost
	if x.kind == Fuse {
		c.FusesG += x.fuses[m.to].costG() - x.fuses[x.at].costG()
	}
	if x.kind != WireSize {
		return c
	}
	t.w.swap(t.base, m.slot, x.at, m.to)
	with := t.base.Cost
	t.w.swap(t.base, m.slot, m.to, x.at)
	with.FusesG = c.FusesG
	return with
}

// blamed are the moves of a group on whose way the part of a finding lies; all
// when that is not known.
func (t *trying) blamed(group []int, f *finding.Finding) []int {
	touched := make([]bool, t.apart.count)
	known := false
	for _, b := range t.apart.byRef[f.Ref] {
		for _, k := range t.apart.below[b.Index] {
			touched[k], known = true, true
		}
	}
	var list []int
	for _, m := range group {
		if !known || overlap(touched, t.apart.consumers[t.moves[m].slot]) {
			list = append(list, m)
		}
	}
	return list
}

// edgeShare is how close to its limit a figure may have been tipped by moves in
// other circuits: they change the voltage at the posts and on a shared trunk.
const edgeShare = 0.03

// onEdge tells whether a finding is close to its limit.
func onEdge(f *finding.Finding) bool {
	return math.Abs(figure(f, "margin")) < edgeShare*math.Abs(figure(f, "limit"))
}

// figure is a number of a finding; NaN when it has none of that name.
func figure(f *finding.Finding, name string) float64 {
	for _, n := range f.Numbers {
		if n.Name == name {
			return n.Value
		}
	}
	return math.NaN()
}

// worseShare is by what share of its limit a figure is further off when a
// finding counts as graver than it was.
const worseShare = 1e-3

// allNew are the findings that were not there before, or are further off their
// limit now, the gravest first. How far off the voltage is of a load that copper does
// not help is no matter.
func (s *search) allNew(before, after []*finding.Finding) []*finding.Finding {
	known := map[string][]*finding.Finding{}
	for _, f := range before {
		known[idOf(f)] = append(known[idOf(f)], f)
	}
	var list []*finding.Finding
	for _, f := range after {
		was := known[idOf(f)]
		if len(was) == 0 || f.Severity > was[0].Severity || !(s.beyond[f.Part] && rules.Find(f.Rule).Mend == rules.MendLowest) && figure(f, "margin") < figure(was[0], "margin")-worseShare*math.Abs(figure(f, "limit")) {
			list = append(list, f)
		}
		if len(was) > 0 {
			known[idOf(f)] = was[1:]
		}
	}
	return list
}

// idOf is the same for one fault of one thing in two designs.
func idOf(f *finding.Finding) string { return f.Rule + "\x00" + f.Ref + "\x00" + f.Part }

// cheaper tells whether a cost is below the best answer's.
func (s *search) cheaper(c Cost) bool { return c.TotalG() < s.best.cost.TotalG()-1e-9 }

// firstNew is the gravest finding that was not there before; nil = none.
func (s *search) firstNew(before, after []*finding.Finding) *finding.Finding {
	if list := s.allNew(before, after); len(list) > 0 {
		return list[0]
	}
	return nil
}

// apart tells which slots have to do with each other: those on the way of one
// consumer. Consumers are loads, coils, whose way is that of all their relay
// feeds too, and wires and fuses that feed nothing; those behind one fuse count as one, and so
// does each wire that it protects, since rules give one finding a fuse.
type apart struct {
	count     int                     // of consumers
	behind    map[*circuit.Branch]int // consumers by the fuse they are behind
	consumers [][]int                 // by slot
	below     [][]int                 // by branch: the consumers on whose way it lies
	byRef     map[string][]*circuit.Branch
}

func (w *view) findApart() *apart {
	c := w.v.c
	a := &apart{consumers: make([][]int, len(w.s.slots)), below: make([][]int, len(c.Branches)),
		behind: map[*circuit.Branch]int{}, byRef: map[string][]*circuit.Branch{}}
	for _, b := range c.Branches {
		if b.Load != nil || isCoil(b) {
			a.consumer(c, b)
		}
	}
	for _, b := range c.Branches {
		if (b.Wire != nil || b.Kind == circuit.FuseBranch) && a.below[b.Index] == nil {
			a.consumer(c, b)
		}
	}
	a.switched(c)
	for _, x := range c.Wires {
		a.byRef[x.Number] = append(a.byRef[x.Number], x.Branch)
	}
	for _, b := range c.Branches {
		if b.Fuse != nil {
			a.byRef[b.Fuse.Ref] = append(a.byRef[b.Fuse.Ref], b)
		}
		if b.Part != nil && (b.Fuse == nil || b.Part.Ref != b.Fuse.Ref) {
			a.byRef[b.Part.Ref] = append(a.byRef[b.Part.Ref], b)
		}
	}
	for i, list := range w.sets {
		for _, b := range list {
			a.consumers[i] = append(a.consumers[i], a.below[b.Index]...)
			if fuse := lastFuse(c.MainFeed(b.A).Branches); b.Wire != nil && b.Feeds() && fuse != nil {
				a.consumers[i] = append(a.consumers[i], a.numberOf(fuse))
			}
		}
	}
	return a
}

// consumer counts one more behind its fuse, with the branches on its way.
func (a *apart) consumer(c *circuit.Circuit, b *circuit.Branch) {
	k := a.numberOf(lastFuse(c.MainFeed(b.A).Branches))
	for _, x := range wayOf(c, b) {
		a.below[x.Index] = append(a.below[x.Index], k)
	}
}

// wayOf is a branch with those that feed it and bring its current back.
func wayOf(c *circuit.Circuit, b *circuit.Branch) []*circuit.Branch {
	return slices.Concat([]*circuit.Branch{b}, c.MainFeed(b.A).Branches, c.MainReturn(b.B, c.Home(b.A)).Branches)
}

// numberOf is the consumer behind a fuse; one of its own without a fuse.
func (a *apart) numberOf(fuse *circuit.Branch) int {
	k, ok := a.behind[fuse]
	if !ok || fuse == nil {
		k = a.count
		a.count++
		a.behind[fuse] = k
	}
	return k
}

// lastFuse is the fuse nearest the end of a way; nil when it has none.
func lastFuse(way []*circuit.Branch) *circuit.Branch {
	for i := len(way) - 1; i >= 0; i-- {
		if way[i].Kind == circuit.FuseBranch {
			return way[i]
		}
	}
	return nil
}

// switched puts the way of every coil on the way of what its contacts feed.
func (a *apart) switched(c *circuit.Circuit) {
	fed := make([][]int, len(c.Branches)) // by branch on the way of a coil
	for _, coil := range c.Branches {
		if !isCoil(coil) {
			continue
		}
		var list []int
		for _, b := range coil.Part.Branches {
			if b.Kind == circuit.ContactBranch {
				list = append(list, a.below[b.Index]...)
			}
		}
		for _, b := range wayOf(c, coil) {
			fed[b.Index] = append(fed[b.Index], list...)
		}
	}
	for i, list := range fed {
		a.below[i] = append(a.below[i], list...)
	}
}

// isCoil tells whether a branch is the coil of a relay.
func isCoil(b *circuit.Branch) bool {
	return b.Part != nil && b.Part.Kind == circuit.Relay && b == b.Part.Coil()
}
