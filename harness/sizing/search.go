package sizing

import (
	"cmp"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

// maxRounds is how often the heuristic judges and chooses anew at most.
const maxRounds = 16

// quickRounds is the same in trials of ways out.
const quickRounds = 5

// search is the choice of everything that a design leaves open.
type search struct {
	d       *design.Design
	slots   []*slot
	homes   map[home]lead
	rater   *conductor.Rater
	numbers map[any]int // of the things that ledgers hold
	pieces  [][]*piece  // by wire

	floor  []int              // by slot: candidates below are known not to do
	tight  map[string]float64 // by load: share of its drop limit to aim at
	tuned  int                // how often tight was changed
	raised []bool             // by slot: a floor was ever put in
	// follows are the slots of wires before a fuse that go by what is behind it.
	follows []bool
	beside  []int // by slot, see besides
	// hopeless are the loads that lose too much on any wires, by the estimate.
	hopeless map[string]bool
	// beyond are those whose lowest voltage contacts, fuses and the battery keep too low.
	beyond map[string]bool

	judgements int
	quick      bool             // no proof
	shared     map[stock]string // what sets a size that several wires have
	best       *answer
	proven     bool
	asIfOn     []string        // loads that no situation turns on
	usual      map[home]string // of wires with a better insulation than the usual one, see Choice.Usual
}

// answer is a judged set of choices.
type answer struct {
	at      []int
	kinds   [][]fuseCandidate // by slot: the candidates that at counts in
	verdict *verdict
	cost    Cost
}

// better prefers fewer findings, then less cost.
func (a *answer) better(than *answer) bool {
	if than == nil || a.verdict.score != than.verdict.score {
		return than == nil || a.verdict.score.less(than.verdict.score)
	}
	return a.cost.TotalG() < than.cost.TotalG()-1e-9
}

func newSearch(d *design.Design, slots []*slot) *search {
	s := &search{d: d, slots: slots, homes: map[home]lead{}, rater: conductor.NewRater(d.Library, d.Practice),
		numbers: map[any]int{}, floor: make([]int, len(slots)),
		raised: make([]bool, len(slots)), follows: make([]bool, len(slots)), beside: besides(slots), tight: map[string]float64{}, shared: map[stock]string{}}
	for _, l := range leads(d) {
		s.homes[l.home] = l
	}
	return s
}

// run finds the best choices and leaves them in the design. The error is that
// of package circuit.
func (s *search) run() error {
	if s.quick {
		s.asGiven()
	} else {
		s.generous()
	}
	v, err := s.firstLook()
	if err != nil {
		return err
	}
	s.look(v).bound()
	if s.quick {
		s.best = s.answerOf(v)
		err = s.rounds(v)
		s.take(s.best)
		return err
	}
	if err := s.begin(v); err != nil {
		return err
	}
	s.prove()
	s.beforeFuses()
	return nil
}

// firstLook judges what the search starts from, with every load on in some situation and no wire so thin for its load that
// its heat leaves those beside it nothing.
func (s *search) firstLook() (*verdict, error) {
	v, err := s.judge()
	if err != nil {
		return nil, err
	}
	if loads := v.unlisted(); len(loads) > 0 {
		if v, err = s.turnOn(v.c, loads); err != nil {
			return nil, err
		}
	}
	if s.look(v).thicken() {
		return s.judge()
	}
	return v, nil
}

// begin finds a good answer.
func (s *search) begin(v *verdict) error {
	if err := s.rounds(v); err != nil {
		return err
	}
	s.take(s.best)
	s.polish()
	s.trim()
	s.take(s.best)
	return nil
}

// rounds chooses, judges and learns, again and again.
func (s *search) rounds(v *verdict) error {
	seen, last := map[string]bool{}, (*answer)(nil)
	rounds := maxRounds
	if s.quick {
		rounds = quickRounds
	}
	for range rounds {
		w := s.look(v)
		w.chooseFirst(BlockType, w.blockBears)
		w.chooseFirst(RelayForm, w.contactsBear)
		w.chooseFuses()
		w.choosePlugs()
		w.chooseWires()
		if last == nil || !s.chosen(last) {
			var err error
			if last, err = s.answer(); err != nil {
				return err
			}
		}
		if v = last.verdict; last.better(s.best) {
			s.best = last
		}
		taught := s.learn(v)
		for i, z := range s.floor {
			s.raised[i] = s.raised[i] || z > 0
		}
		if key := s.key(); seen[key] && !taught {
			break
		} else {
			seen[key] = true
		}
	}
	return nil
}

// maxPolished is how many open values a design may have for polish.
const maxPolished = 80

// maxPolishes is how often polish goes over the design.
const maxPolishes = 6

// polish tries smaller fuses and other types with the wires chosen anew: smaller
// ones let thinner wires be protected, other types take other wires.
func (s *search) polish() {
	if len(s.slots) > maxPolished {
		return
	}
	for pass := 0; pass < maxPolishes; pass++ {
		before := s.best
		w := s.look(s.best.verdict)
		concerned := s.concernedFuses(w)
		for i, x := range s.slots {
			if x.kind == Fuse {
				s.tryLower(w, i)
			}
			if concerned[i] {
				s.tryTypes(w, i)
			}
		}
		s.tryPlugs()
		if s.best.verdict.score != (score{}) {
			s.tryForms()
		}
		if s.best == before {
			return
		}
	}
}

// tryForms tries the next relay form and block: other tabs and studs take other
// wires.
func (s *search) tryForms() {
	for _, x := range s.slots {
		if x.kind != RelayForm && x.kind != BlockType || x.at+1 >= x.count() {
			continue
		}
		x.set(x.at + 1)
		if x.kind == BlockType {
			s.waysTake(x)
		}
		if v, err := s.judge(); err == nil {
			w := s.look(v)
			w.chooseFuses()
			w.choosePlugs()
			w.chooseWires()
			s.improved()
		}
		s.take(s.best)
	}
}

// tryLower takes a fuse to every cheaper candidate that carries its load.
func (s *search) tryLower(w *view, i int) {
	x := s.slots[i]
	ok := w.carrying(i, 1)
	for k := range x.fuses {
		if ok[k] && x.fuses[k].costG() < x.fuses[s.best.at[i]].costG() {
			x.set(k)
			s.tryWires(w)
		}
	}
}

// concernedFuses are the slots of fuses that the findings left have to do with.
func (s *search) concernedFuses(w *view) map[int]bool {
	fuses, a := map[int]bool{}, w.findApart()
	for _, f := range s.best.verdict.findings {
		for _, i := range s.concernedBy(a, w, f, Fuse) {
			fuses[i] = true
		}
	}
	return fuses
}

// tryTypes takes a fuse, where something is wrong, to the cheapest candidate of
// each further type that carries its load: other studs take other wires.
func (s *search) tryTypes(w *view, i int) {
	x, ok := s.slots[i], w.carrying(i, 1)
	tried := map[*library.FuseType]bool{x.fuses[x.at].kind: true}
	for s.best.verdict.score != (score{}) {
		k := w.cheapest(i, func(k int) bool { return ok[k] && !tried[x.fuses[k].kind] })
		if k < 0 {
			return
		}
		tried[x.fuses[k].kind] = true
		x.set(k)
		if v, err := s.judge(); err == nil { // the new studs
			s.tryWires(s.look(v))
		}
		s.take(s.best)
	}
}

// tryWires chooses the wires anew for the present fuses and plugs, keeps the
// result if it is better, and goes back to the best.
func (s *search) tryWires(w *view) {
	w.chooseWires()
	if w.widen() {
		w.chooseWires()
	}
	if s.best.verdict.score != (score{}) || w.guess() < s.best.cost.TotalG() {
		s.improved()
	}
	s.take(s.best)
}

// improved keeps the present choices if they are better than the best, else goes
// back to those.
func (s *search) improved() bool {
	a, err := s.answer()
	better := err == nil && a.better(s.best)
	if better {
		s.best = a
	}
	s.take(s.best)
	return better
}

// key names the present choices.
func (s *search) key() string {
	b := make([]byte, 0, 2*len(s.slots))
	for _, x := range s.slots {
		b = append(b, byte(x.at), byte(x.at>>8))
	}
	return string(b)
}

// chosen tells whether an answer's choices are the present ones.
func (s *search) chosen(a *answer) bool {
	for i, x := range s.slots {
		if x.at != a.at[i] || !slices.Equal(x.fuses, a.kinds[i]) {
			return false
		}
	}
	return true
}

// answer judges the present choices.
func (s *search) answer() (*answer, error) {
	v, err := s.judge()
	if err != nil {
		return nil, err
	}
	return s.answerOf(v), nil
}

// answerOf is the present choices with their verdict.
func (s *search) answerOf(v *verdict) *answer {
	a := &answer{verdict: v, cost: s.costOf(v.c)}
	for _, x := range s.slots {
		a.at = append(a.at, x.at)
		a.kinds = append(a.kinds, x.fuses)
	}
	return a
}

// take puts an answer's choices into the design.
func (s *search) take(a *answer) {
	for i, x := range s.slots { // blocks come before their ways
		x.fuses = a.kinds[i]
		x.set(a.at[i])
		if x.kind == BlockType {
			s.waysTake(x)
		}
	}
}

// generousMm2 is the wire that the first look is taken with: little is lost
// on it, so that every load draws.
const generousMm2 = 6

// asGiven starts with what the design has: the choices made before, and what it
// gave before a trial set it free.
func (s *search) asGiven() {
	for _, x := range s.slots {
		x.set(max(x.given(), 0))
	}
}

// generous starts with thick wires, large fuses and strong relays.
func (s *search) generous() {
	for _, x := range s.slots {
		switch x.kind {
		case WireSize:
			i := slices.IndexFunc(x.sizes, func(z *library.WireSize) bool { return z.AreaMm2 >= generousMm2 })
			if i < 0 {
				i = len(x.sizes) - 1
			}
			x.set(i)
		case RunCover:
			x.set(0)
		default:
			x.set(x.count() - 1)
		}
	}
}

// tighter is the share of a load's limit of drop to aim at.
func (s *search) tighter(load string) float64 {
	return cmp.Or(s.tight[load], 1)
}
