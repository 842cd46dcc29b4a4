package circuit

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/formula/bundle"
	"fusewright/harness/formula/conductor"
)

// Heat is a wire among the others of a run in a situation.
type Heat struct {
	conductor.Beside
	ConductorC float64 // at what the situation draws, in the run's ambient
	Warms      bool    // one of those that make the heat
}

// bundleHeat is the heat of a bundle.
type bundleHeat struct {
	in    []map[int]Heat // by situation and wire index; the same map for the same currents
	worst map[int]Heat   // by wire index
}

// BesideOf is what the wires beside a wire make of it, in the situation in which they
// leave it least of those in which it carries current, else of all.
func (b *Bundle) BesideOf(w *Wire) conductor.Beside {
	if h, ok := b.heat.worst[w.Index]; ok {
		return h.Beside
	}
	return conductor.Alike(1)
}

// HeatIn is a wire in a situation of the design, by its index; false where nothing
// heats the bundle, or it is not known.
func (b *Bundle) HeatIn(situation int, w *Wire) (Heat, bool) {
	if situation >= len(b.heat.in) {
		return Heat{}, false
	}
	h, ok := b.heat.in[situation][w.Index]
	return h, ok
}

// CoverShare is what the run's cover leaves of a current, over 0 to 1.
func (b *Bundle) CoverShare() float64 {
	if b.Run.Cover == nil || !(b.Run.Cover.CurrentFactor > 0) {
		return 1
	}
	return math.Min(1, b.Run.Cover.CurrentFactor)
}

// groupWires works out what each wire of a run may carry beside the others, and how hot
// they make it, in each situation with the currents that it asks of the wires: what is
// never on together does not heat together. What flows for a time only heats as the
// current for good that makes its wire as hot at its hottest, no less than the mean heat.
// The lower of the heat balance of the bundle and the practice's factor at that loading
// governs.
func (c *Circuit) groupWires(rater *conductor.Rater) {
	factor, byLoading := rater.Published()
	u := c.newUse()
	var all []*asked
	for _, s := range c.Design.Situations {
		all = append(all, u.ask(s, nil))
	}
	for _, b := range c.Bundles {
		g := &grouping{c: c, b: b, use: u, rater: rater, published: bundle.Published{Factor: factor, ByLoading: byLoading}, onWay: map[*Branch][]int{}}
		g.lay()
		g.heatUp(all)
	}
}

// grouping is one bundle in the making.
type grouping struct {
	c         *Circuit
	b         *Bundle
	use       *use
	rater     *conductor.Rater
	published bundle.Published

	wires []bundle.Wire
	of    []*Wire
	onWay map[*Branch][]int // the places of the wires that carry a load's or coil's current
	place bundle.Place
	burnt map[conductor.Insulated]float64
}

// lay takes the wires whose type and size are known.
func (g *grouping) lay() {
	d := g.c.Design
	g.place.AmbientC = RunAmbientC(g.b.Run)
	g.place.Share = g.b.CoverShare()
	for _, w := range g.b.Wires {
		if w.Spec.Type == nil || w.Spec.Size == nil {
			continue
		}
		limitC := w.Spec.Type.ClassC
		if d.Practice != nil {
			limitC -= d.Practice.HotSpotMarginC
		}
		in := conductor.InsulatedWire(w.Spec.Size, d.Library.Insulation(w.Spec.Type.Material))
		g.wires = append(g.wires, bundle.Wire{Insulated: in, LimitC: limitC})
		for _, load := range g.use.through(w.Branch) {
			g.onWay[load] = append(g.onWay[load], len(g.of))
		}
		g.of = append(g.of, w)
	}
}

// heatUp goes through the situations; those with the same currents are one.
func (g *grouping) heatUp(all []*asked) {
	var seen [][]float64
	g.b.heat = bundleHeat{in: make([]map[int]Heat, len(all)), worst: map[int]Heat{}}
	carries := map[int]bool{}
	for s, f := range all {
		amps := g.amps(f)
		seen = append(seen, amps)
		if same := slices.IndexFunc(seen, func(a []float64) bool { return slices.Equal(a, amps) }); same < s {
			g.b.heat.in[s] = g.b.heat.in[same]
			continue
		}
		in := g.heat(f, amps)
		g.b.heat.in[s] = in
		for i, w := range g.of {
			h, ok := in[w.Index]
			was, known := g.b.heat.worst[w.Index]
			if on := amps[i] > 0; ok && (!known || on && !carries[w.Index] || on == carries[w.Index] && h.Share < was.Share) {
				g.b.heat.worst[w.Index], carries[w.Index] = h, on
			}
		}
	}
}

// amps are the currents of the wires for good.
func (g *grouping) amps(f *asked) []float64 {
	amps := make([]float64, len(g.of))
	for i, w := range g.of {
		x := &g.wires[i]
		amps[i] = w.Branch.TimeOn.pulse(x.Insulated, g.place.AmbientC, x.LimitC).ForGoodA(f.amps[w.Branch.Index])
	}
	return amps
}

// laidWire is what a wire's heat hangs on within a bundle: also what else carries its
// loads' current, by its heat.
type laidWire struct {
	conductor.Insulated
	amps, limitC      float64
	alongA2, alongMm2 float32 // rounded: sums of the same in another order are one
}

// heat is each wire among the others at some currents; nil where nothing flows.
func (g *grouping) heat(f *asked, amps []float64) map[int]Heat {
	for i, a := range amps {
		g.wires[i].CurrentA = a
	}
	laid, err := bundle.New(g.wires, g.place)
	if err != nil {
		return nil
	}
	for i := range g.wires {
		g.wires[i].CurrentA = math.Min(g.wires[i].CurrentA, g.burntA(laid, i))
	}
	if laid, err = bundle.New(g.wires, g.place); err != nil {
		return nil
	}
	if laid.Heating() == 0 {
		return nil
	}
	along := make([][]float64, len(g.of))
	for i := range g.of {
		along[i] = g.along(f, i)
	}
	made := g.rater.Kept(laidWires(fmt.Sprint(g.place, g.wires, along)), func() any { return g.among(laid, along) }).(*heated)
	g.b.Loaded = max(g.b.Loaded, made.loaded)
	in := make(map[int]Heat, len(g.of))
	for i, w := range g.of {
		in[w.Index] = made.of[i]
	}
	return in
}

// laidWires is all that the heat of a bundle's wires hangs on, in words: what a rater keeps
// it under.
type laidWires string

// heated is the wires of a bundle at some currents, by their place in it.
type heated struct {
	loaded int
	of     []Heat
}

// among is each wire among the others. Wires with the same heat about them are one.
func (g *grouping) among(laid *bundle.Bundle, along [][]float64) *heated {
	out := &heated{laid.Heating(), make([]Heat, len(g.of))}
	loading, known := laid.Loading(g.published), map[laidWire]Heat{}
	for i := range g.of {
		x := &g.wires[i]
		key := laidWire{Insulated: x.Insulated, amps: x.CurrentA, limitC: x.LimitC}
		for j, a := range along[i] {
			key.alongA2 += float32(a * x.CurrentA * g.wires[j].OhmPerM20)
			key.alongMm2 += float32(a * g.wires[j].OuterMm)
		}
		h, ok := known[key]
		if !ok {
			h = g.oneAmong(laid, i, along[i], loading)
			known[key] = h
		}
		out.of[i] = h
	}
	return out
}

// burntA is worked out once: it hangs on the wire alone.
func (g *grouping) burntA(laid *bundle.Bundle, i int) float64 {
	if g.burnt == nil {
		g.burnt = map[conductor.Insulated]float64{}
	}
	in := g.wires[i].Insulated
	if _, known := g.burnt[in]; !known {
		g.burnt[in] = laid.BurntA(i)
	}
	return g.burnt[in]
}

// oneAmong is a wire among the others. Where the practice's factor is lower it governs what
// the wire may carry and what it stands in a fault; how hot it gets is the heat balance's.
func (g *grouping) oneAmong(laid *bundle.Bundle, i int, along []float64, loading bundle.Loading) (h Heat) {
	h.Beside, h.ConductorC = laid.Among(i, laid.Along(i, along))
	h.Warms = laid.Heats(i)
	h.Beside = h.Beside.AtMost(bundle.Governing(h.Share, g.published, loading).Factor)
	return h
}

// along is, by wire of the bundle, what it carries of the current of one wire.
func (g *grouping) along(f *asked, i int) []float64 {
	w := g.of[i]
	along := make([]float64, len(g.of))
	if f.amps[w.Branch.Index] == 0 {
		return along
	}
	for _, load := range g.use.through(w.Branch) {
		if f.ofA[load.Index] == 0 {
			continue
		}
		for _, j := range g.onWay[load] {
			along[j] += f.ofA[load.Index] * g.wires[j].CurrentA / f.amps[g.of[j].Branch.Index]
		}
	}
	return along
}

// use is what what is on asks of the branches.
type use struct {
	c       *Circuit
	ways    map[*Branch][]*Branch // by load or coil
	carried map[*Branch][]*Branch // the loads and coils of a branch
	closed  map[*design.Situation][]bool
}

func (c *Circuit) newUse() *use {
	return &use{c: c, ways: map[*Branch][]*Branch{}, closed: map[*design.Situation][]bool{}}
}

// asked is what a situation asks, by branch index.
type asked struct {
	amps []float64
	ofA  []float64 // of loads and coils
}

// ask leaves out some loads and coils.
func (u *use) ask(s *design.Situation, leave func(*Branch) bool) *asked {
	f := &asked{make([]float64, len(u.c.Branches)), make([]float64, len(u.c.Branches))}
	on := isOn(s)
	for _, b := range u.c.Branches {
		if !u.draws(b, on, s) || leave != nil && leave(b) {
			continue
		}
		a := u.c.DrawAtA(b, u.c.busV(b.A, s))
		f.ofA[b.Index] = a
		for _, x := range u.way(b) {
			f.amps[x.Index] += x.ShareA(a)
		}
	}
	return f
}

// draws tells whether a load is on in a situation, or is left on by it: nothing of its own
// turns it off, and no open contact stands in its way. So of a coil.
func (u *use) draws(b *Branch, on map[*design.Load]bool, s *design.Situation) bool {
	switch {
	case b.Follows(): // it draws what the load before it does
	case b.Load != nil && b.Load.Load != nil && !b.Load.Standby:
		l := b.Load.Load
		return on[l] || !l.OwnSwitch && u.reached(b, s, nil)
	case b.Part != nil && b == b.Part.Coil():
		return u.reached(b, s, nil)
	}
	return false
}

// reached tells whether all contacts on the main way of a load or coil are closed in a
// situation; those of relays by their coils, of which asked are those already looked at.
func (u *use) reached(b *Branch, s *design.Situation, asked []*Branch) bool {
	closed := u.closed[s]
	if closed == nil {
		closed = Contacts(u.c, s)
		u.closed[s] = closed
	}
	for _, x := range u.way(b) {
		switch k := x.Closer; {
		case k == nil || k.Break != nil:
		case k.Coil != nil && k.Latch == nil:
			if !slices.Contains(asked, k.Coil) && !u.reached(k.Coil, s, append(asked, k.Coil)) {
				return false
			}
		case !closed[x.Index]:
			return false
		}
	}
	return true
}

// busV is the voltage that loads fed at a node have in a situation, but for what their wires lose: that
// of the charging system, of the full battery at rest, or of the converter that feeds them.
func (c *Circuit) busV(fed *Node, s *design.Situation) float64 {
	if c.ConverterOf(fed) != nil {
		return c.HighestAt(fed)
	}
	if v := c.Design.Charging.RegulatedV.Value; Running(s) && v > 0 {
		return v
	}
	if x := c.Design.Battery.Chemistry; x != nil {
		return x.OpenCircuitV(1) * c.Design.NominalV() / 12 // the table is of the 12 V class
	}
	return c.Design.NominalV()
}

// LampExponent is how filament current follows voltage: i ~ V^0.55.
// Source: Standard Handbook for Electrical Engineers, 11th ed., p. 22-8
// (as quoted by the lamp re-rating literature).
const LampExponent = 0.55

// DrawAtA is what a load or coil draws at a voltage.
func (c *Circuit) DrawAtA(b *Branch, volts float64) float64 {
	if b.Load == nil {
		return c.DrawA(b) * volts / c.NominalAt(b.A)
	}
	a := b.Load.RatedA()
	if a == 0 {
		return 0
	}
	if b.Load.StringA > 0 {
		return a * volts / c.NominalAt(b.A)
	}
	if b.Load.FanStall > 0 {
		a, _ = FanA(volts, a, b.Load.RatedV, b.Load.WindingOhm(a))
		return a
	}
	switch over := volts / b.Load.RatedV; b.Load.Behaves {
	case design.Resistor:
		return a * over
	case design.FilamentLamp:
		return a * math.Pow(over, LampExponent)
	case design.ConstantPower:
		return a / over
	}
	return a
}

// through are the loads and coils whose main way leads through a branch, of those
// that are on in some situation.
func (u *use) through(b *Branch) []*Branch {
	if u.carried == nil {
		u.carried = map[*Branch][]*Branch{}
		for _, load := range u.c.Branches {
			for _, x := range u.ways[load] {
				u.carried[x] = append(u.carried[x], load)
			}
		}
	}
	return u.carried[b]
}

// most is, by branch index, the greatest current over the design's situations; of the
// loads and coils left out it counts nothing.
func (u *use) most(leave func(*Branch) bool) []float64 {
	most := make([]float64, len(u.c.Branches))
	for _, s := range u.c.Design.Situations {
		for i, a := range u.ask(s, leave).amps {
			most[i] = math.Max(most[i], a)
		}
	}
	return most
}

func isOn(s *design.Situation) map[*design.Load]bool {
	on := map[*design.Load]bool{}
	for _, l := range s.On {
		on[l] = true
	}
	return on
}

// way is the main feed and the main return of a load's or coil's branch.
func (u *use) way(b *Branch) []*Branch {
	way, known := u.ways[b]
	if !known {
		way = Abreast(slices.Clone(u.c.MainFeed(b.A).Branches))
		way = slices.AppendSeq(way, u.c.WaysHome(b.A, b.B))
		u.ways[b] = way
	}
	return way
}
