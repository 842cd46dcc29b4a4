package sizing

import (
	"math"
	"slices"

	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/warm"
	"fusewright/harness/review/rules"
)

// drop is the voltage between the posts and a load in one situation, or the part
// of it that its wires take, taken apart: what the slots change, and the rest.
type drop struct {
	load   *circuit.Branch
	wires  bool // in its wires alone
	lowest bool // against the voltage that it needs
	at     *warm.Result
	limitV float64
	aimV   float64 // limitV, or what thick wires come to where none meets it; see aim
	nowV   float64 // as judged
	restV  float64 // nowV less the terms
	terms  []*term
}

// term is one wire or fuse of the way whose resistance a slot sets. Loads that
// lose most in the same situation and state have it in common.
type term struct {
	slot int
	amps float64
	wire *circuit.Wire // nil for fuses
	warm float64       // resistance over that at 20 °C, at the present size
	rest float64       // of a fuse: its holder
	aged float64       // of ends over new ones, of a fuse over a cold one

	known []float64 // of a wire, resistance by candidate as in this state; nil = not worked out
	// plugged tells that the ends hang on plugs that are chosen too.
	plugged bool
}

// use is a drop, by its number, with one of its terms.
type use struct {
	drop int
	term *term
}

// ohm is the resistance of a term with candidate i.
func (w *view) ohm(t *term, i int, warm, aged float64) float64 {
	s := w.s.slots[t.slot]
	if t.wire == nil {
		ohm, _ := circuit.FuseOhm(s.lib, s.fuses[i].rating)
		return ohm*aged + t.rest
	}
	z := s.sizes[i]
	e := w.ends(t.wire, z)
	ends := e[0].ohm() + e[1].ohm()
	for _, p := range w.poles(t.wire, z) {
		ends += p.ohm()
	}
	return z.MaxOhmPerM*t.wire.LengthM*warm + ends*aged
}

// ohm is the resistance of an end.
func (e end) ohm() float64 {
	if e.part == nil {
		return circuit.EndOhm
	}
	return e.part.ContactOhm
}

// findDrops takes apart the way of every load in the situation in which it loses
// most, once for each limit that may bind: what its wires may lose at nominal,
// what may be lost in all there, and the voltage that it needs in the worst case.
// Of loads fed by several ways the first that carries there is taken.
func (w *view) findDrops() {
	w.drops, w.through, w.tuned = nil, make([][]use, len(w.s.slots)), w.s.tuned
	nominal := w.v.corners.Results[corner.Nominal]
	for _, b := range w.v.c.Branches {
		if b.Load == nil || b.Load.Load == nil || b.Load.Standby {
			continue
		}
		share, _ := corner.DropLimit(w.s.d, b.Load.Load.Critical)
		fedV := w.v.c.NominalAt(b.A)
		limitV := share * fedV
		aim, _ := corner.DropAim(w.v.c, b)
		wires := w.worstDrop(b, nominal, true, func(float64) float64 { return min(limitV, aim*fedV) })
		whole := w.worstDrop(b, nominal, false, func(float64) float64 { return limitV })
		if whole != nil {
			whole.limitV = wholeLimitV(whole.limitV, whole.nowV-wires.nowV)
		}
		if whole != nil && whole.nowV-wires.nowV <= whole.limitV-wires.limitV {
			whole = nil // met wherever the wires are within their limit
		}
		lowest := w.worstLowest(b)
		if lowest != nil {
			lowest.lowest = true
		}
		for _, d := range []*drop{wires, whole, lowest} {
			if d != nil {
				w.takeApart(d)
			}
		}
	}
}

// wholeLimitV is what may be lost in all where contacts and fuses lose restV: the limit,
// and above it as much as they lose, since thicker wires are no remedy while the wires
// take less than half, up to where it is a fault.
func wholeLimitV(limitV, restV float64) float64 {
	return max(limitV, min(2*restV, rules.MostWholeDrop*limitV))
}

// worstLowest is the drop of a load that needs a voltage, over all states.
func (w *view) worstLowest(b *circuit.Branch) (worst *drop) {
	l := b.Load.Load
	least := l.MinV.Value
	if !l.MinV.Given() && l.Type != nil {
		least = l.Type.MinV
	}
	if least <= 0 {
		return nil
	}
	for _, results := range w.v.corners.Results {
		d := w.worstDrop(b, results, false, func(postsV float64) float64 { return max(postsV-least, 0) })
		if d != nil && (worst == nil || d.nowV-d.limitV > worst.nowV-worst.limitV) {
			worst = d
		}
	}
	return worst
}

// worstDrop is the drop of a load, in its wires alone or in all, in the result in
// which it is furthest past the limit; nil when it is never on.
func (w *view) worstDrop(b *circuit.Branch, results []*warm.Result, wires bool, limitV func(postsV float64) float64) (worst *drop) {
	for _, r := range results {
		if !r.Usable() || !r.Solution.LoadOn[b.Index] {
			continue
		}
		postsV := r.Solution.PostsV(b)
		d := &drop{load: b, wires: wires, limitV: limitV(postsV) * w.s.tighter(b.Load.Load.Name), at: r,
			nowV: r.Solution.LostV(b)}
		if wires {
			d.nowV = 0
			for _, way := range w.ways(b, r) {
				for _, x := range way.Branches {
					if x.Wire != nil || x.OfLead() {
						d.nowV += math.Abs(r.Solution.Volts(x))
					}
				}
			}
		}
		if worst == nil || d.nowV-d.limitV > worst.nowV-worst.limitV {
			worst = d
		}
	}
	return worst
}

// ways are the feed of a load that carries in a result and the return that carries most.
func (w *view) ways(b *circuit.Branch, r *warm.Result) [2]circuit.Path {
	return [2]circuit.Path{w.v.c.FeedIn(b.A, r.Solution.BranchA), w.back(b.A, b.B)}
}

// back is the way home that carries most, of what draws between what is fed at a node and another.
func (w *view) back(fed, from *circuit.Node) circuit.Path {
	return w.v.c.HeaviestReturn(from, w.v.c.Home(fed), w.amps)
}

// takeApart adds a drop with what the slots on its way make of it.
func (w *view) takeApart(d *drop) {
	r := d.at
	if w.terms[r] == nil {
		w.terms[r] = make([]*term, len(w.v.c.Branches))
	}
	known := w.terms[r]
	d.restV = d.nowV
	for _, way := range w.ways(d.load, r) {
		for _, x := range way.Branches {
			i := w.slotOf[x.Index]
			if i < 0 || d.wires && x.Wire == nil {
				continue
			}
			t := known[x.Index]
			if t == nil {
				t = w.termOf(i, x, r)
				known[x.Index] = t
			}
			d.restV -= t.amps * r.Solution.Ohm[x.Index]
			d.terms = append(d.terms, t)
			w.through[i] = append(w.through[i], use{len(w.drops), t})
		}
	}
	w.drops = append(w.drops, d)
}

// termOf is a branch that slot i sets, in a result.
func (w *view) termOf(i int, x *circuit.Branch, r *warm.Result) *term {
	t := &term{slot: i, amps: math.Abs(r.Solution.Amps(x)), wire: x.Wire}
	ohm := r.Solution.Ohm[x.Index]
	if x.Wire == nil {
		cold, _ := circuit.FuseOhm(w.v.c.Design.Library, x.Fuse.Rating)
		t.rest = x.Ohm - cold
		t.aged = (ohm - t.rest) / cold
		return t
	}
	t.plugged = w.plugged(x.Wire)
	t.warm = conductor.AtTemperature(1, r.UsedC(x.Wire))
	t.aged = (ohm - x.Wire.ConductorOhm20*t.warm) / x.Wire.EndsOhm
	return t
}

// predicted is the drop with candidates by slot.
func (w *view) predicted(d *drop, at []int) float64 {
	v := d.restV
	for _, t := range d.terms {
		v += t.amps * w.inState(t, at[t.slot])
	}
	return v
}

// copperV is the part of it that the wires chosen take.
func (w *view) copperV(d *drop, at []int) (v float64) {
	for _, t := range d.terms {
		if t.wire != nil {
			v += t.amps * w.inState(t, at[t.slot])
		}
	}
	return v
}

// plugged tells whether a wire ends in a plug that is chosen.
func (w *view) plugged(x *circuit.Wire) bool {
	_, from := w.plugSlot[x.From.Part]
	_, to := w.plugSlot[x.To.Part]
	return from || to || slices.ContainsFunc(x.Poles, func(p *circuit.Pole) bool {
		_, chosen := w.plugSlot[p.Inline.Part]
		return chosen
	})
}

// inState is the resistance of a term with candidate i in the state of its drop.
func (w *view) inState(t *term, i int) float64 {
	if t.known == nil {
		if t.wire == nil || t.plugged { // their candidates or ends change
			return w.ohm(t, i, t.warm, t.aged)
		}
		for k := range w.s.slots[t.slot].count() {
			t.known = append(t.known, w.ohm(t, k, t.warm, t.aged))
		}
	}
	return t.known[i]
}

// least is a drop that no way of wiring with these candidates goes below while
// it meets the limits: currents at share of the estimate, wires no warmer than
// their place.
func (w *view) least(d *drop, at []int, share float64) float64 {
	v := math.Max(0, d.restV) * share
	for _, t := range d.terms {
		warm, aged := 1.0, 1.0
		if t.wire != nil {
			warm = math.Min(conductor.AtTemperature(1, t.wire.AmbientC), t.warm)
			if !t.plugged {
				aged = t.aged
			}
		}
		v += t.amps * share * w.ohm(t, at[t.slot], warm, aged)
	}
	return v
}
