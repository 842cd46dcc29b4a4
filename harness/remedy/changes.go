package remedy

import (
	"cmp"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
	"fusewright/harness/sizing"
)

// Of wires so many thicker ones are tried, of fuses so many ratings each way, of a way
// with a loss so many wires.
const (
	mostSteps   = 4
	mostRatings = 5
	mostOnWay   = 3
)

// lossyShare is the least share of what the worst wire of a way loses that makes another one
// worth a thicker size (our choice).
const lossyShare = 0.2

// ladder is changes of one thing, the smallest first: the first that mends the finding
// ends it, and so does a degree that brings it no nearer.
type ladder []*Trial

// tryAll tries what may be meant first, from which much may follow, and the changes of each finding, the
// worst first; then, for those that none mends, a feed of its own and what is for the builder to decide.
func (t *tester) tryAll() {
	for _, slip := range []bool{true, false} {
		for _, f := range t.open {
			if !t.cut && (f.Meant != nil) == slip && (slip || !f.Leave) { // what the trade leaves so asks for no change
				t.climb(f, t.ladders(f))
			}
		}
	}
	for _, f := range t.open {
		if !t.cut && !slices.ContainsFunc(t.order, func(x *Trial) bool { return !x.Decides && x.mends(f) && x.Holds() }) {
			t.climb(f, append(t.decisions(f), t.ownFeed(f)))
		}
	}
}

// climb tries each ladder up to what mends the finding.
func (t *tester) climb(f *finding.Finding, list []ladder) {
	for _, l := range list {
		for _, c := range l {
			x := t.try(c)
			t.met[f] = t.met[f] || x != nil
			if x == nil || x.mends(f) && x.harms() == 0 || x.degree && (!x.nears(f) || worst(x.Breaks) >= f.Severity) {
				break
			}
		}
	}
}

// ladders are the usual changes against a finding, by what it is about.
func (t *tester) ladders(f *finding.Finding) []ladder {
	var list []ladder
	mend := rules.Find(f.Rule).Mend
	if w := t.named(f); w != nil {
		list = append(list, t.wire(w)...)
	}
	var lossy []*circuit.Wire
	if mend == rules.MendDrop || mend == rules.MendLowest {
		lossy = t.lossyWires(f)
	}
	for _, w := range lossy {
		list = append(list, t.sizes(w))
	}
	if len(lossy) > 0 || t.named(f) != nil {
		list = append(list, t.pair(f.Part))
	}
	if mend != rules.MendDrop {
		for _, b := range t.fusesOf(f) {
			list = append(list, t.ratings(b, -1), t.ratings(b, +1))
		}
	}
	if p := t.part(f.Part); p != nil {
		list = append(list, t.sameFamily(p))
	}
	for _, v := range t.values {
		if v.Kind() != sizing.Fuse && (v.Kind() != sizing.Plug || mend != rules.MendNot) && v.Of(f.Part) {
			list = append(list, choices(v))
		}
	}
	if p := t.part(f.Part); p != nil {
		list = append(list, t.own(p)...)
	}
	return append(append(list, t.straps(f)...), t.place(f.Part), t.meant(f))
}

// wire is what may be changed of a wire, the cheapest first: the fuses above it, what of
// it is before its first fuse, its size.
func (t *tester) wire(w *circuit.Wire) []ladder {
	var list []ladder
	for _, b := range t.guards[w.Branch.Index].Fuses {
		list = append(list, t.ratings(b, -1))
	}
	list = append(list, t.nearer(w), t.fused(w), t.classes(w))
	if t.fuseIsNotItsOwn(w) {
		return list
	}
	return append(list, t.sizes(w))
}

// sizes are a wire in each thicker size.
func (t *tester) sizes(w *circuit.Wire) ladder {
	for _, v := range t.values {
		if v.Sets(w) {
			return t.together(t.thicker(v), v.Owner())
		}
	}
	return nil
}

// together takes the other wire of a load with the one that gets thicker, where it would be
// left more than a few sizes behind.
func (t *tester) together(l ladder, load string) ladder {
	two := t.wiresOf(load)
	if len(l) == 0 || len(two) != 2 || l[0].sizes[0] != two[0] && l[0].sizes[0] != two[1] {
		return l
	}
	other := two[0]
	if l[0].sizes[0] == other {
		other = two[1]
	}
	for _, x := range l {
		if other.Index(x.Will)-other.Now > sizing.MostApart {
			t.both(x, load, two)
		}
	}
	return l
}

// wiresOf are the sizes of the feed and the return of a part.
func (t *tester) wiresOf(name string) (list []*sizing.Value) {
	for _, v := range t.values {
		if v.IsWireOf(name) {
			list = append(list, v)
		}
	}
	return list
}

// both makes a change of one wire of a load one of its feed and its return.
func (t *tester) both(x *Trial, load string, two []*sizing.Value) {
	will := x.Will
	x.About, x.sizes = load+", wire and return wire", two
	x.put = func() func() {
		one := two[0].Take(two[0].Index(will))
		other := two[1].Take(two[1].Index(will))
		return func() { other(); one() }
	}
}

// pair are the feed and the return of a load, of one size, in each thicker size: a fitter
// lays both alike.
func (t *tester) pair(name string) ladder {
	two := t.wiresOf(name)
	if len(two) != 2 || !two[0].SameSize(two[1]) {
		return nil
	}
	l := t.thicker(two[0])
	for _, x := range l {
		t.both(x, name, two)
	}
	return l
}

// thicker are the next sizes of a wire.
func (t *tester) thicker(v *sizing.Value) ladder {
	l := byDegree(steps(v, v.Now+1, min(v.Count(), v.Now+1+mostSteps), +1))
	for _, x := range l {
		x.sizes = []*sizing.Value{v}
	}
	return l
}

// ratings are a fuse in other ratings of its type, one way: never up where it is there already, since what it
// protects of the vehicle is not known.
func (t *tester) ratings(b *circuit.Branch, way int) ladder {
	if b.Part.Fitted && way > 0 {
		return nil
	}
	for _, v := range t.values {
		if !v.Protects(b) || v.Now < 0 {
			continue
		}
		var l ladder
		for i := v.Now + way; i >= 0 && i < v.Count() && v.SameType(i) && len(l) < mostRatings; i += way {
			l = append(l, take(v, i))
		}
		return byDegree(l)
	}
	return nil
}

// byDegree marks changes each of which is more of the one before.
func byDegree(l ladder) ladder {
	for _, x := range l {
		x.degree = true
	}
	return l
}

// choices are all others of a value.
func choices(v *sizing.Value) ladder {
	return append(steps(v, v.Now+1, v.Count(), +1), steps(v, v.Now-1, -1, -1)...)
}

func steps(v *sizing.Value, from, to, way int) ladder {
	var l ladder
	for i := from; i != to && i >= 0 && i < v.Count(); i += way {
		if v.Alike(i) {
			l = append(l, take(v, i))
		}
	}
	return l
}

func take(v *sizing.Value, i int) *Trial {
	return &Trial{About: v.Name(), Was: v.Given(), Will: v.Label(i), put: func() func() { return v.Take(i) }}
}

// part is the part of a name; nil = none has it.
func (t *tester) part(name string) *circuit.Part {
	for _, p := range t.Circuit.Parts {
		if p.Name == name && p.Source != nil {
			return p
		}
	}
	return nil
}

// named is the wire that a finding names; nil = it names none.
func (t *tester) named(f *finding.Finding) *circuit.Wire {
	for _, w := range t.Circuit.Wires {
		if w.Number == f.Ref {
			return w
		}
	}
	return nil
}

// lossyWires are those on the way of a finding's load whose copper loses most, there
// and back, its own before what it shares with others. Where the joints of a wire lose
// more than its copper a thicker one is no remedy.
func (t *tester) lossyWires(f *finding.Finding) []*circuit.Wire {
	p := t.part(f.Part)
	if p == nil || p.Kind != circuit.Load || t.named(f) != nil {
		return nil
	}
	way := slices.DeleteFunc(t.Circuit.WayWires(p), func(b *circuit.Branch) bool { return b.Wire.EndsOhm > b.Wire.ConductorOhm20 })
	loss := func(b *circuit.Branch) float64 { return t.Amps(b) * b.Wire.ConductorOhm20 }
	slices.SortStableFunc(way, func(a, b *circuit.Branch) int { return cmp.Compare(loss(b), loss(a)) })
	way = way[:min(mostOnWay, len(way))]
	if len(way) > 0 {
		least := lossyShare * loss(way[0])
		way = slices.DeleteFunc(way, func(b *circuit.Branch) bool { return loss(b) < least })
	}
	slices.SortStableFunc(way, func(a, b *circuit.Branch) int { return cmp.Compare(shared(a.Wire, p), shared(b.Wire, p)) })
	var list []*circuit.Wire
	for _, b := range way {
		list = append(list, b.Wire)
	}
	return list
}

// shared is 0 for a wire at the part itself, 1 for one that serves others too.
func shared(w *circuit.Wire, p *circuit.Part) int {
	if w.To.Part == p || w.From.Part == p {
		return 0
	}
	return 1
}

// fusesOf are the fuses that a finding is about: the one that it names, what causes it,
// or the one nearest above its load.
func (t *tester) fusesOf(f *finding.Finding) []*circuit.Branch {
	var list []*circuit.Branch
	for _, b := range t.Circuit.Branches {
		if b.Fuse != nil && !b.Fuse.Factory && (b.Fuse.Ref == f.Ref || f.Cause != "" && b.Part.Name == f.Cause) {
			list = append(list, b)
		}
	}
	if p := t.part(f.Part); list == nil && p != nil && p.Kind == circuit.Load {
		if hot := p.Terminal("+"); hot != nil {
			list, _ = t.guards.Above(hot.Node)
		}
	}
	return list
}

// own is what a part has beside what sizing chooses.
func (t *tester) own(p *circuit.Part) []ladder {
	switch x := p.Source.(type) {
	case *design.Ground:
		return []ladder{t.strap(x), t.bar(p)}
	case *design.BatteryPart:
		return []ladder{t.bar(p)}
	case *design.Relay:
		return []ladder{t.suppressor(x)}
	case *design.Switch:
		return []ladder{t.switches(x)}
	}
	return nil
}

// decisions are changes of what the vehicle does: another feed, less at once.
func (t *tester) decisions(f *finding.Finding) []ladder {
	list := []ladder{t.without(f.Part)}
	p := t.part(f.Part)
	if p == nil {
		return list
	}
	switch x := p.Source.(type) {
	case *design.Relay:
		return append(list, t.fedElsewhere(p, x.Name+", coil", &x.Coil.FedBy))
	case *design.Tap:
		for _, r := range t.Design.Relays {
			if len(r.Coil.FedBy) == 1 && r.Coil.FedBy[0].From.Part == design.Part(x) {
				list = append(list, t.fedElsewhere(t.Circuit.PartOf(r), r.Name+", coil", &r.Coil.FedBy))
			}
		}
	}
	return list
}
