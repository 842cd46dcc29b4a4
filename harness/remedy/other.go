package remedy

import (
	"cmp"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/sizing"
	"fusewright/harness/study/together"
	"fusewright/library"
)

// keep puts a new value into a design; back takes it out again.
func keep[T any](of *T, now T) (back func()) {
	was := *of
	*of = now
	return func() { *of = was }
}

// suppressor is a relay's coil with a resistor, which every form may have.
func (t *tester) suppressor(x *design.Relay) ladder {
	if x.Coil.Suppressed != "" && x.Coil.Suppressed != "none" {
		return nil
	}
	return ladder{{About: x.Name + ", coil", Was: "no suppression", Will: "with a resistor",
		put: func() func() { return keep(&x.Coil.Suppressed, "resistor") }}}
}

// sameFamily is a relay in the form of its family for the system's voltage: it fits the
// socket that is there.
func (t *tester) sameFamily(p *circuit.Part) ladder {
	x, is := p.Source.(*design.Relay)
	if !is || x.Form == nil || x.Half != nil {
		return nil
	}
	form := t.Design.Library.RelayFormFor(x.Form.Family, t.Design.NominalV())
	if form == nil || form == x.Form || form.Family != x.Form.Family || slices.ContainsFunc(t.Design.Relays, func(r *design.Relay) bool { return r.Half == x }) {
		return nil
	}
	return ladder{{About: x.Name, Was: x.Form.Name, Will: form.Name, put: func() func() { return keep(&x.Form, form) }}}
}

// strap is a frame stud with a strap from the engine or frame to the battery.
func (t *tester) strap(x *design.Ground) ladder {
	if x.Kind != design.FrameStud || !x.FrameOhm.Given() || x.FrameOhm.Value <= circuit.FrameOhm {
		return nil
	}
	text := quantity.Plain(circuit.FrameOhm, quantity.Resistance)
	return ladder{{About: x.Name, Was: quantity.Plain(x.FrameOhm.Value, quantity.Resistance) + " to the battery",
		Will: "a strap, " + text, put: func() func() {
			return keep(&x.FrameOhm, design.Quantity{Value: circuit.FrameOhm, Text: text, Pos: x.FrameOhm.Pos})
		}}}
}

// straps are those at the frame studs that a finding's load returns by.
func (t *tester) straps(f *finding.Finding) []ladder {
	p := t.part(f.Part)
	if p == nil || p.Kind != circuit.Load || t.named(f) != nil {
		return nil
	}
	var list []ladder
	for _, way := range t.Circuit.Ways(p) {
		for _, b := range way.Branches {
			if b.Part != nil {
				if g, is := b.Part.Source.(*design.Ground); is {
					list = append(list, t.strap(g))
				}
			}
		}
	}
	return list
}

// switches are the switches of the library that bear more, the weakest first.
func (t *tester) switches(x *design.Switch) ladder {
	var l ladder
	if x.Type == nil {
		return nil
	}
	types := slices.Clone(t.Design.Library.Switches)
	slices.SortStableFunc(types, func(a, b *library.SwitchType) int { return cmp.Compare(a.ResistiveA, b.ResistiveA) })
	for _, s := range types {
		if s != x.Type && s.Sealed == x.Type.Sealed && s.Float == x.Type.Float && s.Isolates == x.Type.Isolates && s.Held == x.Type.Held &&
			s.End == x.Type.End && s.ResistiveA <= sizing.MostStronger*x.Type.ResistiveA &&
			s.LampA >= x.Type.LampA && s.MotorA >= x.Type.MotorA && s.ResistiveA > x.Type.ResistiveA && len(l) < mostSteps {
			l = append(l, &Trial{About: x.Name, Was: x.Type.Name, Will: s.Name, put: func() func() { return keep(&x.Type, s) }})
		}
	}
	return l
}

// place is a place or a run with the ambient that was taken for it written in.
func (t *tester) place(name string) ladder {
	for _, p := range t.Design.Places {
		if p.Name == name && !p.AmbientC.Given() {
			c := circuit.PlaceAmbientC(p)
			text := quantity.Format(c, quantity.Temperature)
			return ladder{{About: name, Was: "ambient not given", Will: text + ", measured or looked up, written in",
				put: func() func() { return keep(&p.AmbientC, design.Quantity{Value: c, Text: text, Pos: p.Pos}) }}}
		}
	}
	return nil
}

// nearer is a wire without a fuse before it, cut to what the practice allows.
func (t *tester) nearer(w *circuit.Wire) ladder {
	g := t.guards[w.Branch.Index]
	limitM, _ := t.Circuit.FuseDistanceM(w)
	if !g.Bare || g.BareM <= limitM || w.Role.Returns() {
		return nil
	}
	f := t.feed(w)
	if f == nil || w.LengthM <= g.BareM-limitM {
		return nil
	}
	lengthM := w.LengthM - (g.BareM - limitM)
	if apartM, _ := w.ApartM(); lengthM < apartM {
		return nil // the fuse itself has to come nearer
	}
	text := lengths.Of(t.Design).Text(lengthM)
	return ladder{{About: w.To.Part.Name + ", wire", Was: lengths.Of(t.Design).Text(w.LengthM), Will: text + " long",
		put: func() func() {
			return keep(&f.Wire.LengthM, design.Quantity{Value: lengthM, Text: text, Pos: w.Pos})
		}}}
}

// feed is where the design gives a feed wire; nil = of a return.
func (t *tester) feed(w *circuit.Wire) *design.Feed {
	if w.Spec.Parallel > 1 { // one of them moved alone would lie beside the others
		return nil
	}
	for _, l := range design.Feeds(w.To.Part.Source) {
		for i := range *l {
			if (*l)[i].From.Pos == w.Pos {
				return &(*l)[i]
			}
		}
	}
	return nil
}

// fused is a wire straight from the battery, or one behind a fuse that is many times what
// it carries, with a fuse of its own at its source.
func (t *tester) fused(w *circuit.Wire) ladder {
	f := t.feed(w)
	bare := w.From.Node == t.Circuit.Positive()
	if f == nil || !bare && !t.fuseIsNotItsOwn(w) || isFuse(w.To.Part) {
		return nil
	}
	was, at := "no fuse", design.BatteryName
	if !bare {
		was, at = "no fuse of its own", f.From.Text
	}
	return t.fuses(w, was, at, func(name string, kind *library.FuseType, r *library.FuseRating) func() {
		return t.insert(f, name, kind, r)
	})
}

// fuseIsNotItsOwn tells whether every fuse above a wire is many times what the wire is for
// and feeds others more: no wire is made thick for the fuse of others.
func (t *tester) fuseIsNotItsOwn(w *circuit.Wire) bool {
	fuses, drawA := t.guards[w.Branch.Index].Fuses, t.drawBelowA(w.Branch)
	return len(fuses) > 0 && drawA > 0 && !slices.ContainsFunc(fuses, func(b *circuit.Branch) bool {
		return b.Fuse == nil || b.Fuse.Rating == nil || b.Fuse.Rating.RatingA <= sizing.MostStronger*drawA || t.drawBelowA(b) < 2*drawA
	})
}

// drawBelowA is what the loads and coils that hang on a branch take together.
func (t *tester) drawBelowA(b *circuit.Branch) (amps float64) {
	if known, ok := t.drawA[b]; ok {
		return known
	}
	below := t.Circuit.BelowBranch(b)
	for _, x := range slices.Concat(below.Loads, below.Coils) {
		amps += t.Circuit.DrawA(x)
	}
	t.drawA[b] = amps
	return amps
}

func isFuse(p *circuit.Part) bool {
	_, is := p.Source.(*design.Fuse)
	return is
}

// insert puts a fuse into a feed, at its source.
func (t *tester) insert(f *design.Feed, name string, kind *library.FuseType, r *library.FuseRating) func() {
	x := &design.Fuse{Type: kind, Rating: r, FedBy: []design.Feed{*f}}
	x.Name, x.At, x.Pos = name, t.Design.Battery.At, f.From.Pos
	if f.From.Part != nil {
		x.At = f.From.Part.PartPlace()
	}
	shortM := design.Quantity{Value: t.Design.Practice.FuseDistanceM, Text: "short", Pos: f.From.Pos}
	x.FedBy[0].Wire.LengthM = shortM
	fuses, from := keep(&t.Design.Fuses, append(slices.Clone(t.Design.Fuses), x)), keep(&f.From, design.Ref{Text: name, Part: x, Pos: f.From.Pos})
	return func() { from(); fuses() }
}

// mostFeeds is how many other feeds are tried for one part.
const mostFeeds = 4

// fedElsewhere is a part fed by what feeds others, the battery left out; coils of
// relays and loads alike.
func (t *tester) fedElsewhere(of *circuit.Part, about string, feeds *[]design.Feed) ladder {
	if len(*feeds) != 1 {
		return nil
	}
	f := &(*feeds)[0]
	var l ladder
	seen := map[string]bool{f.From.Text: true, design.BatteryName: true}
	for _, p := range t.Circuit.Parts {
		for _, list := range design.Feeds(p.Source) {
			for _, other := range *list {
				if x := other.From; !seen[x.Text] && x.Part != nil && len(l) < mostFeeds && !t.hangsOn(x.Part, of) {
					seen[x.Text] = true
					x.Pos = f.From.Pos
					l = append(l, &Trial{About: about, Was: "fed by " + f.From.Text, Will: "fed by " + x.Text, Decides: true,
						put: func() func() { return keep(&f.From, x) }})
				}
			}
		}
	}
	return l
}

// hangsOn tells whether a part is fed through another, or is it.
func (t *tester) hangsOn(x design.Part, on *circuit.Part) bool {
	p := t.Circuit.PartOf(x)
	seen := map[*circuit.Part]bool{}
	for queue := []*circuit.Part{p}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		if at == on {
			return true
		}
		if at == nil || seen[at] {
			continue
		}
		seen[at] = true
		for _, list := range design.Feeds(at.Source) {
			for _, f := range *list {
				queue = append(queue, t.Circuit.PartOf(f.From.Part))
			}
		}
	}
	return false
}

// about tells whether a situation is about a load: no other has it on.
func (t *tester) about(s *design.Situation, l *design.Load) bool {
	return !slices.ContainsFunc(t.Design.Situations, func(o *design.Situation) bool { return o != s && slices.Contains(o.On, l) })
}

// without are a situation without what the budget sheds for it, then without more of what may
// be shed, first thing first; what it is about stays.
func (t *tester) without(name string) ladder {
	for _, s := range t.Design.Situations {
		if s.Name != name {
			continue
		}
		if t.hands == nil {
			t.hands = t.Hands()
		}
		var l ladder
		for _, off := range t.shedding(s) {
			off = slices.DeleteFunc(off, func(l *design.Load) bool { return !slices.Contains(s.On, l) || t.about(s, l) })
			if len(off) == 0 || len(l) > 0 && l[len(l)-1].Will == "without "+names(off) {
				continue
			}
			on := slices.DeleteFunc(slices.Clone(s.On), func(l *design.Load) bool { return slices.Contains(off, l) })
			l = append(l, &Trial{About: name, Will: "without " + names(off), Decides: true,
				put: func() func() { return keep(&s.On, on) }})
		}
		return l
	}
	return nil
}

// shedding are choices of loads to go without in a situation, the fewest first.
func (t *tester) shedding(s *design.Situation) (choices [][]*design.Load) {
	loads := func(items []*together.Item) (list []*design.Load) {
		for _, i := range items {
			list = append(list, i.Loads...)
		}
		return list
	}
	on := slices.DeleteFunc(slices.Clone(t.hands.Items), func(i *together.Item) bool {
		return !slices.ContainsFunc(i.Loads, func(l *design.Load) bool { return slices.Contains(s.On, l) })
	})
	order := together.Shed(on)
	least := 1
	for _, c := range t.hands.Choices {
		if c.Situation == s && len(c.SwitchOff) > 0 {
			choices, least = append(choices, loads(c.SwitchOff)), len(c.SwitchOff)+1
		}
	}
	for n := least; n <= len(order) && n <= mostOnWay; n++ {
		choices = append(choices, loads(order[:n]))
	}
	return choices
}

func names(list []*design.Load) string {
	text := make([]string, len(list))
	for i, l := range list {
		text[i] = l.Name
	}
	return wording.And(text)
}
