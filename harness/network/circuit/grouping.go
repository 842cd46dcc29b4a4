package circuit

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/formula/bundle"
	"fusewright/harness/formula/conductor"
)

// ShareOf is what the wires beside it leave a wire of the current that it could
// carry alone.
func (b *Bundle) ShareOf(w *Wire) float64 {
	if share, ok := b.shares[w.Index]; ok {
		return share
	}
	return 1
}

// groupWires works out what each wire of a run may carry beside the others, each of
// which carries the most that a situation of the design asks of it, whether they do
// so together or not; what flows for a time only heats as the current for good that
// makes its wire as hot at its hottest, no less than the mean heat. The lower of the heat balance of the bundle and the
// practice's factor at that loading governs. The currents are the rated ones in every corner: up to its
// allowed current a wire is warmed by the others as its own current grows, and with
// theirs a tenth to a fifth higher beyond it no verdict of all designs kept here differs.
func (c *Circuit) groupWires(rater *conductor.Rater) {
	useA := c.newUse().most(nil)
	factor, byLoading := rater.Published()
	published := bundle.Published{Factor: factor, ByLoading: byLoading}
	for _, b := range c.Bundles {
		b.group(c, useA, rater, published)
	}
}

// laidWire is what a share hangs on within a bundle.
type laidWire struct {
	conductor.Insulated
	amps, limitC float64
}

// laidWires is all that the shares of a bundle's wires hang on, in words: what a rater keeps
// them under.
type laidWires string

func (b *Bundle) group(c *Circuit, useA []float64, rater *conductor.Rater, published bundle.Published) {
	d := c.Design
	b.shares = map[int]float64{}
	var wires []bundle.Wire
	var of []*Wire
	for _, w := range b.Wires {
		if w.Spec.Type == nil || w.Spec.Size == nil {
			continue
		}
		in := conductor.InsulatedWire(w.Spec.Size, d.Library.Insulation(w.Spec.Type.Material))
		limitC := w.Spec.Type.ClassC
		if d.Practice != nil {
			limitC -= d.Practice.HotSpotMarginC
		}
		amps := w.Branch.TimeOn.pulse(in, RunAmbientC(b.Run), limitC).ForGoodA(useA[w.Branch.Index])
		wires = append(wires, bundle.Wire{Insulated: in, CurrentA: amps, LimitC: limitC})
		of = append(of, w)
	}
	if b.Loaded = heating(wires); b.Loaded == 0 {
		return
	}
	place := bundle.Place{AmbientC: RunAmbientC(b.Run)}
	shares := rater.Kept(laidWires(fmt.Sprint(place, wires)), func() any { return sharesOf(wires, place, published) }).([]float64)
	for i, share := range shares {
		b.shares[of[i].Index] = math.Max(share, leastShare)
	}
}

// sharesOf is what the others leave each wire of a bundle; nil where that is not known.
func sharesOf(wires []bundle.Wire, place bundle.Place, published bundle.Published) []float64 {
	laid, err := bundle.New(wires, place)
	if err != nil {
		return nil
	}
	// A wire that carries more than it may alone is found for itself, and is not to
	// spoil what is said of the others.
	for i := range wires {
		wires[i].CurrentA = math.Min(wires[i].CurrentA, laid.AloneA(i))
	}
	if laid, err = bundle.New(wires, place); err != nil {
		return nil
	}
	loading := laid.Loading(published)
	known, shares := map[laidWire]float64{}, make([]float64, len(wires))
	for i := range wires {
		key := laidWire{wires[i].Insulated, wires[i].CurrentA, wires[i].LimitC}
		share, ok := known[key]
		if !ok {
			share = bundle.Governing(laid.Factor(i), published, loading).Factor
			known[key] = share
		}
		shares[i] = share
	}
	return shares
}

// heatsShare is the loss, over that of the wire that loses most, from which a wire
// counts as loaded: a tenth of the current in a wire of the same size. Those of coils
// have less. It is a word only: the heat balance takes what each wire carries (our choice).
const heatsShare = 0.01

// heating counts the wires that heat a bundle.
func heating(wires []bundle.Wire) (count int) {
	most := 0.0
	loss := func(w bundle.Wire) float64 { return w.CurrentA * w.CurrentA * w.OhmPerM20 }
	for _, w := range wires {
		most = math.Max(most, loss(w))
	}
	for _, w := range wires {
		if most > 0 && loss(w) >= heatsShare*most {
			count++
		}
	}
	return count
}

// leastShare keeps a share from being none: what a bundle leaves nothing of, its
// own wires are found too hot for.
const leastShare = 1e-3

// use is what the rated draw of what is on asks of the branches.
type use struct {
	c    *Circuit
	ways map[*Branch][]*Branch // by load or coil
}

func (c *Circuit) newUse() *use { return &use{c, map[*Branch][]*Branch{}} }

// most is, by branch index, the greatest current over the design's situations; of the
// loads and coils left out it counts nothing.
func (u *use) most(leave func(*Branch) bool) []float64 {
	c := u.c
	most, now := make([]float64, len(c.Branches)), make([]float64, len(c.Branches))
	for _, s := range c.Design.Situations {
		for i, a := range u.in(s, leave, now) {
			most[i] = math.Max(most[i], a)
		}
	}
	return most
}

// in is the same of one situation, put into now.
func (u *use) in(s *design.Situation, leave func(*Branch) bool, now []float64) []float64 {
	clear(now)
	on := isOn(s)
	for _, b := range u.c.Branches {
		a := u.c.onA(b, on)
		if a == 0 || leave != nil && leave(b) {
			continue
		}
		for _, x := range u.way(b) {
			now[x.Index] += a
		}
	}
	return now
}

func isOn(s *design.Situation) map[*design.Load]bool {
	on := map[*design.Load]bool{}
	for _, l := range s.On {
		on[l] = true
	}
	return on
}

// onA is what a load that is on, or that nothing of its own turns off, or a coil
// draws by its rating; 0 for others.
func (c *Circuit) onA(b *Branch, on map[*design.Load]bool) float64 {
	switch {
	case b.Load != nil && b.Load.Load != nil && !b.Load.Standby:
		if l := b.Load.Load; on[l] || !l.OwnSwitch {
			return c.DrawA(b)
		}
	case b.Part != nil && b == b.Part.Coil():
		return c.DrawA(b)
	}
	return 0
}

// way is the main feed and the main return of a load's or coil's branch.
func (u *use) way(b *Branch) []*Branch {
	way, known := u.ways[b]
	if !known {
		way = slices.Clone(u.c.MainFeed(b.A).Branches)
		way = slices.AppendSeq(way, u.c.Homeward(b.B))
		u.ways[b] = way
	}
	return way
}
