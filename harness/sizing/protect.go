package sizing

import (
	"math"
	"slices"

	"fusewright/harness/formula/charging"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/rules"
	"fusewright/library"
)

// chooseFuses sets every fuse to the first candidate that carries what hangs on
// it, those nearest the loads first, since a feed's fuse must exceed them.
func (w *view) chooseFuses() {
	for _, i := range w.loadsFirst() {
		w.chooseFuse(i)
	}
}

// chooseWays sets the fuses of a block's ways.
func (w *view) chooseWays(block *slot) {
	for i, s := range w.s.slots {
		if s.way != nil && s.block == block.block && w.branch[i] != nil {
			w.chooseFuse(i)
		}
	}
}

// loadsFirst are the slots of fuses, those with fewest fuses below them first.
func (w *view) loadsFirst() (fuses []int) {
	below := make([]int, len(w.s.slots))
	for i, b := range w.branch {
		if b != nil {
			fuses = append(fuses, i)
			below[i] = len(w.fusesBelow(b))
		}
	}
	return ascending(fuses, func(i int) float64 { return float64(below[i]) })
}

func (w *view) fusesBelow(b *circuit.Branch) []*circuit.Branch { return fusesOf(w.v.c.BelowBranch(b)) }

func fusesOf(below *circuit.Below) (list []*circuit.Branch) {
	for _, x := range below.Branches {
		if x.Kind == circuit.FuseBranch {
			list = append(list, x)
		}
	}
	return list
}

// below is what hangs on a fuse. On one that chargers alone feed nothing does: what the battery feeds
// is not theirs, and givenA is what they give together at their rating, whatever their source has in a situation.
func (w *view) below(b *circuit.Branch) (below *circuit.Below, givenA float64) {
	chargers := w.v.c.ChargersAbove(b.A)
	for _, p := range chargers {
		givenA += givesA(w.v.c, p)
	}
	if len(chargers) > 0 {
		return &circuit.Below{}, givenA
	}
	return w.v.c.BelowBranch(b), 0
}

// givesA is the most that a charger, or a charging system at its own stud, gives for good.
func givesA(c *circuit.Circuit, p *circuit.Part) float64 {
	if out := p.Output(); out != nil {
		return out.OfCharger().Type.RatingA
	}
	_, hotA := charging.MostA(&c.Design.Charging)
	return hotA
}

// chooseFuse sets one fuse: the cheapest that does all, else the cheapest that
// carries its load, else the largest.
func (w *view) chooseFuse(i int) {
	s := w.s.slots[i]
	_, givenA := w.below(w.branch[i])
	amps := math.Max(w.amps[w.branch[i].Index], givenA)
	ok := w.carrying(i, 1)
	k := w.cheapest(i, func(k int) bool { return ok[k] && w.usual(i, k) })
	if k < 0 {
		k = w.cheapest(i, func(k int) bool { return ok[k] })
	}
	if k < 0 {
		k = w.cheapest(i, func(k int) bool { return w.continuousA(w.branch[i], s.fuses[k]) >= amps })
	}
	if k < 0 {
		k = len(s.fuses) - 1
	}
	s.set(k)
}

// spareShare is what a fuse may carry more than the first look says.
const spareShare = 1.1

// bound finds the largest rating of every fuse that is for choice: the smallest that
// carries its load with a little to spare. No fuse grows to lose less voltage, or
// for the wires that its contacts take; only what it does not carry, start or let
// pass raises the bound (see raise).
func (w *view) bound() {
	for i, s := range w.s.slots {
		if s.kind == RelayForm {
			w.keepSparksOut(i, func(k int) bool { return w.contactsBear(i, k) })
		}
	}
	for _, i := range w.loadsFirst() {
		s := w.s.slots[i]
		w.noteUnable(i)
		carries := w.carrying(i, 1)
		w.keepSparksOut(i, func(k int) bool { return carries[k] })
		w.chooseFuse(i)
		ok := w.carrying(i, spareShare)
		if k := w.cheapest(i, func(k int) bool { return ok[k] && w.usual(i, k) }); k >= 0 {
			s.mostA = s.fuses[k].rating.RatingA
		}
	}
}

// noteUnable counts against the types of a fuse that has no other above it what a short just
// behind it could drive and they do not break: so much that one of the rating that breaks it
// comes first, and not so much that a far larger one does. Of another type than the usual
// one a large rating counts besides.
func (w *view) noteUnable(i int) {
	b := w.branch[i]
	f := w.v.protection.Find(b)
	if f == nil || len(w.guards[b.Index].Fuses) > 0 {
		return
	}
	for k := range w.s.slots[i].fuses {
		c := &w.s.slots[i].fuses[k]
		if c.kind.BreakingAt(w.v.c.NominalAt(b.A)) >= f.FaultA {
			continue
		}
		if c.otherG > 0 {
			c.otherG += unableGPerA * math.Max(0, c.rating.RatingA-unableA)
		}
		c.otherG += unableG
	}
}

// cheapest is the candidate of a fuse that costs least of those that do; -1 = none.
func (w *view) cheapest(i int, does func(k int) bool) int {
	s, best := w.s.slots[i], -1
	for k := w.s.floor[i]; k < len(s.fuses); k++ {
		if does(k) && (best < 0 || s.fuses[k].costG() < s.fuses[best].costG()) {
			best = k
		}
	}
	return best
}

// carrying tells of each candidate whether it carries load, starts and branches
// with currents at a share of the estimate.
func (w *view) carrying(i int, share float64) []bool {
	s, b := w.s.slots[i], w.branch[i]
	below, givenA := w.below(b)
	demand, draws := w.demandA(below)
	least := 0.0
	if draws > 1 {
		least = demand
	}
	for _, f := range fusesOf(below) {
		if r := w.rating(f); w.next(f) == b {
			least = math.Max(least, r*w.s.d.Practice.FuseRatio)
		}
	}
	limit := math.Inf(1)
	if s.way != nil && s.block.WayLimitA() > 0 {
		limit = s.block.WayLimitA()
	}
	for _, x := range below.Loads {
		if l := x.Load.Load; l != nil && l.MostFuseA.Given() && w.isNearest(b, x) {
			limit = math.Min(limit, l.MostFuseA.Value)
		}
	}
	ok := make([]bool, len(s.fuses))
	for k, c := range s.fuses {
		amps := math.Max(math.Max(w.amps[b.Index]*share, w.alone(below)), givenA)
		ok[k] = s.offers(k) && w.continuousA(b, c) >= amps && c.rating.RatingA >= least && c.rating.RatingA <= limit &&
			c.kind.MaxV >= w.v.c.HighestAt(b.A) && w.starts(b, c, below)
	}
	return ok
}

// usual tells whether a candidate is no smaller than the fuse that makers fit right before the
// loads that have it as their nearest; see rule fuse-inrush.
func (w *view) usual(i, k int) bool {
	b, c := w.branch[i], w.s.slots[i].fuses[k]
	systemV := w.v.c.NominalAt(b.A)
	if f := w.v.protection.Find(b); w.s.d.Afloat() && f != nil && f.FaultA > c.kind.BreakingAt(systemV) {
		return true
	}
	below, _ := w.below(b)
	return !slices.ContainsFunc(below.Loads, func(x *circuit.Branch) bool {
		return x.Load.Load != nil && c.rating.RatingA < x.Load.Load.UsualFuseA(systemV) && w.isNearest(b, x)
	})
}

// next is the nearest fuse above a fuse; nil without or with several.
func (w *view) next(f *circuit.Branch) *circuit.Branch {
	if g := w.guards[f.Index].Fuses; len(g) == 1 {
		return g[0]
	}
	return nil
}

// alone is the rated current of a single load that no situation turns on: its
// fuse must carry it all the same.
func (w *view) alone(below *circuit.Below) float64 {
	if len(below.Loads) != 1 || w.amps[below.Loads[0].Index] > 0 {
		return 0
	}
	return below.Loads[0].Load.RatedA()
}

// demandA is the rated current of all that hangs below and can be on at once, and how much hangs there.
func (w *view) demandA(below *circuit.Below) (total float64, draws int) {
	all := slices.Concat(below.Loads, below.Coils)
	if w.exclusive == nil {
		w.exclusive = w.v.c.Exclusive()
	}
	for _, b := range w.exclusive.AtOnce(all) {
		total += w.v.c.DrawA(b)
	}
	return total, len(all)
}

// continuousA is what a candidate carries for good where it stands: of what is on
// for part of the time it bears its rating, or what opens the fastest of its kind in no cycle.
func (w *view) continuousA(b *circuit.Branch, c fuseCandidate) float64 {
	share, device := w.longShare(b), fitted(b, c).Device(0)
	if maker, known := device.Share(); known {
		share = math.Min(share, maker)
	}
	forGoodA := share * c.rating.RatingA
	if t := b.TimeOn; t.Timed() {
		return device.WhileOnA(fusing.Pulses{OffA: t.SteadyA, OnS: t.OnS, EveryS: t.EveryS}, forGoodA, fusing.Fastest)
	}
	return forGoodA
}

// draws are the loads and coils that hang on a fuse.
func (w *view) draws(b *circuit.Branch) []*circuit.Branch {
	below, _ := w.below(b)
	return slices.Concat(below.Loads, below.Coils)
}

// longShare is the share of its rating that the practice lets a fuse carry, by how
// long what hangs on it is on.
func (w *view) longShare(b *circuit.Branch) float64 {
	if share, known := w.shares[b]; known {
		return share
	}
	share := w.v.c.FuseShare(w.draws(b), w.s.d.Practice.FuseLoadShare)
	w.shares[b] = share
	return share
}

// fitted is a fuse's branch with a candidate in it.
func fitted(b *circuit.Branch, c fuseCandidate) *circuit.Branch {
	return &circuit.Branch{Part: b.Part, Fuse: &circuit.FuseSpec{Type: c.kind, Rating: c.rating}}
}

// starts tells whether a candidate outlasts the start of every load that has it
// as its nearest fuse.
func (w *view) starts(b *circuit.Branch, c fuseCandidate, below *circuit.Below) bool {
	for _, x := range below.Loads {
		l := x.Load.Load
		if l == nil || l.Inrush.PeakRatio <= 1 || l.Inrush.TauS <= 0 || !w.isNearest(b, x) {
			continue
		}
		f := fusing.Carries(fitted(b, c).Device(0), x.Load.RatedA(), l.Inrush)
		if !f.StartHolds && (f.EdgeKnown || f.MeltShare > fusing.PulseShare) {
			return false
		}
	}
	return true
}

func (w *view) isNearest(fuse, load *circuit.Branch) bool {
	return slices.ContainsFunc(load.A.FedBy(), func(up *circuit.Branch) bool { return slices.Contains(w.above(up), fuse) })
}

// chooseFirst sets every slot of a kind to the first candidate that bears what it
// must, else to the last; blocks give their fuse type to their ways.
func (w *view) chooseFirst(kind Kind, bears func(i, k int) bool) {
	for i, s := range w.s.slots {
		if s.kind != kind {
			continue
		}
		w.chooseFor(i, bears)
		if kind == BlockType {
			w.s.waysTake(s)
		}
	}
}

func (w *view) chooseFor(i int, bears func(i, k int) bool) {
	s, k := w.s.slots[i], w.s.floor[i]
	for k < s.count()-1 && !bears(i, k) {
		k++
	}
	s.set(min(k, s.count()-1))
}

// waysTake gives the ways of a block the candidates of the fuses it takes.
func (s *search) waysTake(block *slot) {
	t := s.d.Library.FuseType(block.block.Type.FuseType)
	for _, x := range s.slots {
		if x.way != nil && x.block == block.block && x.way.TypeAuto && t != nil && x.fuses[x.at].kind != t {
			x.fuses = ratingsOf(t)
			x.set(len(x.fuses) - 1)
		}
	}
	for _, w := range block.block.Ways {
		if w.TypeAuto && t != nil && !w.FuseAuto && w.Fuse != nil {
			if r := t.Rating(w.Fuse.RatingA); r != nil {
				w.FuseType, w.Fuse = t, r
			}
		}
	}
}

// blockBears tells whether the ways and the bus of a block bear their currents.
func (w *view) blockBears(i, k int) bool {
	s := w.s.slots[i]
	part, t, total := w.v.c.PartOf(s.owner), s.blocks[k], 0.0
	if part == nil {
		return false
	}
	for _, sol := range w.v.sols {
		sum := 0.0
		for _, b := range part.Branches {
			if a := math.Abs(sol.Amps(b)); !math.IsNaN(a) && !math.IsInf(a, 0) {
				sum += a
			}
		}
		total = math.Max(total, sum)
	}
	if total > t.TotalA {
		return false
	}
	takes := w.s.d.Library.FuseType(t.FuseType)
	for _, way := range s.block.Ways {
		n := part.Terminal(way.Number)
		if n == nil || way.Spare {
			continue
		}
		if way.Fuse != nil && !way.FuseAuto {
			if way.Fuse.RatingA > t.WayA || way.TypeAuto && takes != nil && takes.Rating(way.Fuse.RatingA) == nil {
				return false
			}
			continue
		}
		if !w.wayBears(part, n, t, takes) {
			return false
		}
	}
	return true
}

// wayBears tells whether a way, with some fuse that the block takes, carries
// its current.
func (w *view) wayBears(part *circuit.Part, n *circuit.Terminal, t *library.BlockType,
	takes *library.FuseType) bool {
	for _, b := range part.Branches {
		if b.B != n.Node {
			continue
		}
		if b.Kind != circuit.FuseBranch || takes == nil {
			return w.amps[b.Index] <= t.WayA
		}
		for _, c := range ratingsOf(takes) {
			if c.rating.RatingA <= t.WayA && w.continuousA(b, c) >= w.amps[b.Index] {
				return true
			}
		}
		return false
	}
	return true
}

// contactsBear tells whether the contacts of a relay form bear what they switch.
func (w *view) contactsBear(i, k int) bool {
	s := w.s.slots[i]
	part, form := w.v.c.PartOf(s.owner), s.forms[k]
	if part == nil || s.sparkless && s.sparks(k) {
		return false
	}
	ambient := part.AmbientC()
	if form.MaxC > 0 && ambient > form.MaxC {
		return false
	}
	for _, b := range part.Branches {
		if b.Kind != circuit.ContactBranch || b.Closer == nil {
			continue
		}
		rated, below := rules.RelayContact(form, b, ambient), w.v.c.BelowBranch(b)
		for _, sol := range w.v.sols {
			if rated.Known() && sol.Status == solve.Converged && contactUse(sol, b, below, rated) > 1 {
				return false
			}
		}
	}
	return true
}

// contactUse is the sum of current over rating by kind of load.
func contactUse(sol *solve.Solution, b *circuit.Branch, below *circuit.Below, rated rules.ContactRatings) float64 {
	if !(math.Abs(sol.Amps(b)) > 0) {
		return 0
	}
	use := 0.0
	for _, x := range below.Loads {
		if a := math.Abs(sol.Amps(x)); a > 0 {
			use += a / rated.OfLoad(x.Load)
		}
	}
	return use
}
