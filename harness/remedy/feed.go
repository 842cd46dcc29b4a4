package remedy

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/sizing"
	"fusewright/library"
)

// ownFeed takes what a finding is about, where it is meant to stay live, to the battery: where it parts from what feeds
// others too, it gets a fuse of its own there; one that it has is fed from there.
func (t *tester) ownFeed(f *finding.Finding) ladder {
	w := t.feeding(f)
	if w == nil {
		return nil
	}
	w = t.parting(w)
	feed, battery := t.feed(w), t.battery(w)
	if feed == nil || battery.Part == nil || feed.From.Part == battery.Part || !t.staysLive(w) {
		return nil
	}
	battery.Pos = feed.From.Pos
	if isFuse(w.To.Part) {
		return ladder{{About: w.To.Part.Name, Was: "fed by " + feed.From.Text, Will: "fed by " + battery.Text,
			put: func() func() { return keep(&feed.From, battery) }}}
	}
	was := "fed by " + feed.From.Text
	put := func(name string, kind *library.FuseType, r *library.FuseRating) func() {
		length := func() {}
		if battery.Part.PartPlace() != feed.From.Part.PartPlace() && len(t.Design.Runs) > 0 {
			length = keep(&feed.Wire.LengthM, design.Quantity{}) // given from elsewhere; now by the runs
		}
		from := keep(&feed.From, battery)
		fuse := t.insert(feed, name, kind, r)
		return func() { fuse(); from(); length() }
	}
	list := t.fuses(w, was, battery.Text, put)
	thick := t.openBelow(w)
	if len(thick) == 0 {
		return list
	}
	label := thick[0].Label(thick[0].Least(t.Design.Practice.MinMm2))
	thin := t.fuses(w, was, battery.Text+", wires left open "+label, func(name string, kind *library.FuseType, r *library.FuseRating) func() {
		var back []func()
		for _, v := range thick {
			back = append(back, v.Take(v.Least(t.Design.Practice.MinMm2)))
		}
		back = append(back, put(name, kind, r)) // its wire is of the size that there is by now
		return func() {
			for _, b := range slices.Backward(back) {
				b()
			}
		}
	})
	return append(thin, list...)
}

// openBelow are the sizes left open of a wire, of those behind it and of the returns of
// their loads, that are above the practice's smallest: made so for the fuse of others.
func (t *tester) openBelow(w *circuit.Wire) (list []*sizing.Value) {
	below := t.Circuit.BelowBranch(w.Branch)
	wires := []*circuit.Wire{w}
	for _, b := range below.Branches {
		if b.Wire != nil {
			wires = append(wires, b.Wire)
		}
	}
	for _, v := range t.values {
		of := slices.ContainsFunc(wires, v.Sets) || slices.ContainsFunc(below.Loads, func(b *circuit.Branch) bool { return v.IsWireOf(b.Part.Name) })
		if v.Open() && of && v.Now > v.Least(t.Design.Practice.MinMm2) && v.Least(t.Design.Practice.MinMm2) >= 0 {
			list = append(list, v)
		}
	}
	return list
}

// staysLive tells whether the design means all that a wire feeds to be live always: nothing
// else is taken to the battery.
func (t *tester) staysLive(w *circuit.Wire) bool {
	loads := t.Circuit.BelowBranch(w.Branch).Loads
	return len(loads) > 0 && !slices.ContainsFunc(loads, func(b *circuit.Branch) bool { return b.Load.Load == nil || b.Load.Load.LiveReason() == "" })
}

// feeding is the last wire of the main feed to what a finding is about; nil = it has none.
func (t *tester) feeding(f *finding.Finding) *circuit.Wire {
	if w := t.named(f); w != nil && !w.Role.Returns() {
		return w
	}
	p := t.part(f.Part)
	if p == nil || p.Kind != circuit.Load {
		return nil
	}
	wires := t.Circuit.MainFeed(p.Terminal("+").Node).Wires()
	if len(wires) == 0 {
		return nil
	}
	return wires[len(wires)-1]
}

// parting is the first wire on the way to another that carries nothing more than it does,
// behind the battery switch where there is one.
func (t *tester) parting(w *circuit.Wire) *circuit.Wire {
	way := t.Circuit.MainFeed(w.To.Node)
	for i, b := range way.Branches {
		if b.Closer != nil && b.Closer.Switch != nil && b.Closer.Switch.Type != nil && b.Closer.Switch.Type.Isolates {
			way = circuit.Path{Branches: way.Branches[i+1:]}
			break
		}
	}
	drawA := t.drawBelowA(w.Branch)
	for _, x := range way.Wires() {
		if t.drawBelowA(x.Branch) <= drawA {
			return x
		}
	}
	return w
}

// battery is how the design names the battery that feeds a wire, where it feeds; zero = nowhere.
func (t *tester) battery(w *circuit.Wire) design.Ref {
	post, _ := t.Circuit.Supply(w.To.Node)
	for _, p := range t.Circuit.Parts {
		if x, further := p.Source.(*design.Bank); further && p.Terminal("+").Node == post {
			return design.Ref{Text: x.Name, Part: x}
		}
	}
	for _, p := range t.Circuit.Parts {
		for _, list := range design.Feeds(p.Source) {
			for _, f := range *list {
				if _, is := f.From.Part.(*design.BatteryPart); is {
					return f.From
				}
			}
		}
	}
	return design.Ref{}
}

// fuses are the ratings, the smallest first, that may carry what a wire does: of the usual
// type, or where it has none of the others, one of each.
func (t *tester) fuses(w *circuit.Wire, was, at string, put func(string, *library.FuseType, *library.FuseRating) func()) (l ladder) {
	name, leastA := w.To.Part.Name+" fuse", t.leastFuseA(w)
	add := func(kind *library.FuseType, most int) {
		for _, r := range kind.Ratings {
			if r.RatingA >= leastA && most > 0 {
				most--
				l = append(l, &Trial{About: w.To.Part.Name + ", wire", Was: was,
					Will: kind.Name + " " + quantity.Plain(r.RatingA, quantity.Current) + " at " + at,
					put:  func() func() { return put(name, kind, r) }})
			}
		}
	}
	if usual := t.Design.Library.FuseType(design.UsualFuseType); usual != nil {
		add(usual, mostOnWay)
	}
	if len(l) > 0 {
		return l
	}
	for _, kind := range t.Design.Library.FuseTypes {
		if kind.Kind == "fuse" && (!kind.Afloat || t.Design.Afloat()) {
			add(kind, 1)
		}
	}
	return l
}

// leastFuseA is the smallest rating worth trying in a wire: what carries the current of any
// situation and of any one load behind it; in the cable to another battery, which carries little
// while both are full, the rating of the fuse at its other end, else what carries all that the engine gives.
func (t *tester) leastFuseA(w *circuit.Wire) float64 {
	below := t.Circuit.BelowBranch(w.Branch)
	amps := t.Amps(w.Branch)
	for _, b := range slices.Concat(below.Loads, below.Coils) {
		amps = max(amps, t.Circuit.DrawA(b))
	}
	endA := 0.0
	if len(t.Circuit.BatteriesBelow(w.Branch)) > 0 {
		for _, f := range t.Circuit.Linked().Fuses[w.Branch.Index] {
			if f.Fuse != nil && f.Fuse.Rating != nil {
				endA = max(endA, f.Fuse.Rating.RatingA)
			}
		}
		if endA == 0 {
			_, hotA := charging.MostA(&t.Design.Charging)
			amps = max(amps, hotA)
		}
	}
	return max(endA, amps/t.Design.Practice.FuseLoadShare)
}
