package sizing

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"sort"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

// WayOut is a change to what the design gives that mends what no choice could,
// tried out through the whole chain.
type WayOut struct {
	What   string
	ExtraG float64 // cost beyond the best without it, in grams of copper
	Left   int     // judged findings that remain even so
	score  score
	values string // those set free, as they came out
	asked  bool   // it changes what is asked for, which is given up last
}

// same tells whether another way out comes to the same values.
func (o *WayOut) same(other *WayOut) bool { return o.values != "" && o.values == other.values }

// ledShare is the power of an LED lamp for the light of a filament: 15 to 20 %
// (common practice, no source).
const ledShare = 0.2

// change is a trial: do alters the design.
type change struct {
	what  string
	do    func(*undo)
	asked bool   // see WayOut
	tells []home // of the wires whose new size is to be said
}

// waysOut tries the usual changes on what the findings are about, one at a
// time, and lists those that leave fewer findings, the cheapest first.
func (s *search) waysOut() []*WayOut {
	w := s.look(s.best.verdict)
	base := s.best
	var list []*WayOut
	given := s.given()
	for _, c := range s.changes(w) {
		var u undo
		if c.do(&u); len(u) == 0 {
			continue // nothing to change
		}
		if out := s.tryOut(c, base, given); out != nil && !slices.ContainsFunc(list, out.same) {
			out.asked = c.asked
			list = append(list, out)
		}
		u.all()
		s.take(base)
	}
	sort.SliceStable(list, func(i, j int) bool {
		a, b := list[i], list[j]
		if a.score != b.score {
			return a.score.less(b.score)
		}
		if a.asked != b.asked {
			return b.asked
		}
		return a.ExtraG < b.ExtraG
	})
	return list
}

// tryOut chooses anew with a change in place; nil when it does not help.
func (s *search) tryOut(c change, base *answer, given map[string]string) *WayOut {
	t := newSearch(s.d, alike(s.d, collect(s.d), nil))
	t.quick, t.rater = true, s.rater
	if err := t.run(); err != nil || !t.best.verdict.score.less(base.verdict.score) {
		return nil
	}
	what, more := c.what, t.changed(given, c.tells)
	if more != "" {
		what += ": " + more
	}
	return &WayOut{What: what, values: more, ExtraG: t.best.cost.TotalG() - base.cost.TotalG(),
		Left: len(t.best.verdict.findings), score: t.best.verdict.score}
}

// given are the values that a trial could set free, by slot name.
func (s *search) given() map[string]string {
	given := everything(s.d)
	for _, x := range s.slots {
		for _, y := range x.each() {
			delete(given, string(y.kind)+y.part)
		}
	}
	return given
}

// everything is the value of each thing that could be left open, by slot name.
func everything(d *design.Design) map[string]string {
	values := map[string]string{}
	withAllOpen(d, func(slots []*slot) {
		for _, x := range slots {
			values[string(x.kind)+x.part] = x.now()
		}
	})
	for _, r := range d.Runs {
		values[string(RunCover)+r.Name] = coverName(r.Cover)
	}
	return values
}

// withAllOpen does something with the slots of all that could be left open.
func withAllOpen(d *design.Design, do func([]*slot)) {
	var u undo
	defer func() { u.all() }()
	for _, l := range leads(d) {
		for i := range *l.feeds {
			keep(&u, &(*l.feeds)[i].Wire)
			(*l.feeds)[i].Wire.SizeAuto = true
		}
	}
	for _, r := range d.Runs {
		keep(&u, r)
		r.CoverAuto = true
	}
	freeFuses(&u, d, true)
	freeParts(&u, d)
	do(collect(d))
}

// SameValues tells whether two designs have the same sizes, ratings, forms, types,
// covers and plugs.
func SameValues(a, b *design.Design) bool { return maps.Equal(everything(a), everything(b)) }

// changed names the values that a trial set free, and those of wires, as they came out.
func (s *search) changed(given map[string]string, of []home) string {
	var list []string
	for _, x := range s.slots {
		for _, y := range x.each() {
			if was, ok := given[string(y.kind)+y.part]; (ok || slices.Contains(of, y.home())) && was != x.label(x.at) {
				if was != "" {
					was = " from " + was
				}
				list = append(list, fmt.Sprintf("%s%s to %s", y.part, was, x.label(x.at)))
			}
		}
	}
	if len(list) > 3 {
		list = append(list[:3], fmt.Sprintf("and %d more", len(list)-3))
	}
	return strings.Join(list, "; ")
}

// concerned are the wires and loads that the findings are about.
type concerned struct {
	wires []*circuit.Wire
	loads []*circuit.Branch
	known map[any]bool
}

func (c *concerned) addWire(x *circuit.Wire) {
	if !c.known[x] {
		c.known[x] = true
		c.wires = append(c.wires, x)
	}
}

// addLoad adds an accessory and the wires on its way there and back.
func (c *concerned) addLoad(w *view, b *circuit.Branch) {
	if c.known[b] || b.Load == nil || b.Load.Load == nil {
		return
	}
	c.known[b] = true
	c.loads = append(c.loads, b)
	for _, x := range append(w.v.c.MainFeed(b.A).Wires(), w.back(b.A, b.B).Wires()...) {
		c.addWire(x)
	}
}

func (w *view) concerned() *concerned {
	c := &concerned{known: map[any]bool{}}
	for _, f := range w.v.findings {
		c.add(w, f)
	}
	return c
}

// add adds what one finding is about.
func (c *concerned) add(w *view, f *finding.Finding) {
	for _, x := range w.v.c.Wires {
		if x.Number == f.Ref {
			c.addWire(x)
			for _, b := range w.v.c.BelowBranch(x.Branch).Loads {
				c.addLoad(w, b)
			}
		}
	}
	for _, b := range w.v.c.Branches {
		switch {
		case b.Load != nil && b.Load.Load != nil && !b.Load.Standby && b.Part.Name == f.Part:
			c.addLoad(w, b)
		case b.Fuse != nil && b.Fuse.Ref == f.Ref && !b.Fuse.Factory:
			for _, l := range w.v.c.BelowBranch(b).Loads {
				c.addLoad(w, l)
			}
		}
	}
}

// changes are the trials for what the findings are about.
func (s *search) changes(w *view) []change {
	about := w.concerned()
	list := []change{
		{what: "other wire sizes upstream than those given", do: func(u *undo) { s.freeWires(u, about.wires) }},
		{what: "other fuses than those given", do: func(u *undo) { freeFuses(u, s.d, false) }},
		{what: "other fuses than those given, of any type", do: func(u *undo) { freeFuses(u, s.d, true) }},
		{what: "other relays, blocks or plugs than those given", do: func(u *undo) { freeParts(u, s.d) }},
	}
	for _, t := range s.betterThan(about.wires) {
		list = append(list, change{what: "insulation " + t.Name + " on the wires of a lower class upstream",
			do: func(u *undo) { s.betterInsulation(u, about.wires, t) }})
	}
	for _, share := range []float64{0.75, 0.5, 0.25} {
		list = append(list, change{what: fmt.Sprintf("shorten the runs upstream to %.0f %% of their length", 100*share),
			do: func(u *undo) { s.shorten(u, about.wires, share) }})
	}
	for _, b := range about.loads {
		l := b.Load.Load
		if l.Behaves == design.FilamentLamp {
			list = append(list, change{what: fmt.Sprintf("an LED lamp of about %.3g W in place of %s", l.PowerW*ledShare, l.Name),
				do: func(u *undo) { toLED(u, l) }})
		}
	}
	for _, x := range w.lossiest(about.wires, 3) {
		if l, ok := s.homes[homeOf(x)]; ok && len(*l.feeds) == 1 {
			list = append(list, change{what: fmt.Sprintf("two wires in parallel from %s to %s", x.From.Part.Name, x.To.Part.Name),
				do: func(u *undo) { double(u, l.feeds) }})
		}
	}
	return slices.Concat(list, s.voltChanges(w, about), s.tails(w, about), s.moves(w, about))
}

// betterThan are the next better insulations than that of the lowest class among
// wires, where heat is the trouble: one for each class that stands the hottest place
// on the way, in sizes given as now, two at most.
func (s *search) betterThan(wires []*circuit.Wire) []*library.WireType {
	var now *library.WireType
	hottestC := math.Inf(-1)
	for _, x := range wires {
		hottestC = max(hottestC, x.AmbientC)
		if t := x.Spec.Type; x.Spec.SizeAuto && (now == nil || t.ClassC < now.ClassC) {
			now = t
		}
	}
	if now == nil || !s.notVoltageAlone() {
		return nil
	}
	var list []*library.WireType
	types := ascending(slices.Clone(s.d.Library.WireTypes), func(t *library.WireType) float64 { return t.ClassC })
	for _, t := range types {
		last := now
		if len(list) > 0 {
			last = list[len(list)-1]
		}
		if t.ClassC > max(last.ClassC, hottestC) && inGauge(t) == inGauge(now) && t.Cores == now.Cores && len(list) < 2 {
			list = append(list, t)
		}
	}
	return list
}

// inGauge tells whether a type's sizes go by gauge numbers.
func inGauge(t *library.WireType) bool { return t.Sizes[0].GaugeSystem != "metric" }

// lossiest are the wires on which most is lost, so many at most.
func (w *view) lossiest(wires []*circuit.Wire, most int) []*circuit.Wire {
	list := ascending(append([]*circuit.Wire(nil), wires...), func(x *circuit.Wire) float64 {
		return -w.corner[x.Branch.Index] * x.Branch.Ohm
	})
	return list[:min(most, len(list))]
}

// moves are the blocks above the loads concerned, in every other place that
// makes no way longer, or that is cooler where the trouble is not voltage alone.
func (s *search) moves(w *view, about *concerned) []change {
	var list []change
	before, hot := s.waysM(about), s.notVoltageAlone()
	for _, block := range s.d.Blocks {
		above := slices.ContainsFunc(about.wires, func(x *circuit.Wire) bool {
			return x.From.Part.Source == design.Part(block)
		})
		for _, place := range s.d.Places {
			if !above || place == block.At {
				continue
			}
			do := func(u *undo) {
				keep(u, &block.At)
				block.At = place
			}
			cooler := hot && block.At != nil && circuit.PlaceAmbientC(place) < circuit.PlaceAmbientC(block.At)
			if cooler || s.noLonger(do, about, before) {
				list = append(list, change{what: fmt.Sprintf("move %s to %s", block.Name, place.Name), do: do})
			}
		}
	}
	return list
}

// notVoltageAlone tells whether anything but lost voltage is left.
func (s *search) notVoltageAlone() bool {
	return slices.ContainsFunc(s.best.verdict.findings, func(f *finding.Finding) bool {
		return !aboutVoltage(f)
	})
}

// waysM are the lengths of the wires on the ways of loads, there and back.
func (s *search) waysM(about *concerned) []float64 {
	c, err := circuit.BuildBy(s.d, s.rater)
	if err != nil {
		return nil
	}
	list := make([]float64, 0, len(about.loads))
	for _, b := range about.loads {
		if p := c.PartOf(b.Load.Load); p != nil {
			plus := p.Terminal("+").Node
			list = append(list, c.MainFeed(plus).LengthM()+c.MainReturn(p.Terminal("-").Node, c.Home(plus)).LengthM())
		}
	}
	return list
}

// noLonger tells whether a change makes no way longer.
func (s *search) noLonger(do func(*undo), about *concerned, before []float64) bool {
	var u undo
	do(&u)
	defer u.all()
	after := s.waysM(about)
	for i := range after {
		if i >= len(before) || after[i] > before[i]+1e-6 {
			return false
		}
	}
	return after != nil
}
