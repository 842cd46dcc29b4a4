package derivation

import (
	"fmt"
	"math"

	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
)

// fuseWords is a fuse in words.
func fuseWords(b *circuit.Branch) string {
	if b.Part != nil && b.Part.Kind == circuit.Fuse {
		return b.Fuse.Ref + ", " + b.Part.Name
	}
	return b.Fuse.Ref
}

func ofFuse(b *circuit.Branch) *Tree { return &Tree{File: b.Fuse.Pos.File, Line: b.Fuse.Pos.Line} }

// bears is what a fuse carries for good where it stands.
func (b *book) bears(br *circuit.Branch, v *view) *value {
	rating := b.rating(br)
	bearsA := corner.FuseBearsA(b.d, br, v.set().In(v.state).AboveK)
	share := &value{}
	if b.d.Practice != nil && b.d.Practice.FuseLoadShare > 0 {
		share = row("of the rating, for good", percent, b.d.Practice.FuseLoadShare, b.d.Practice.Source["load share of fuse"])
	} else {
		share = exactly("of the rating", percent, 1)
	}
	dev := br.Device(v.set().In(v.state).AboveK)
	if maker, known := dev.Share(); known {
		hot := v.makersShare(br, dev, maker)
		share = of("of the rating, for good", percent, math.Min(share.v, maker), "smaller of {} and {}", share, hot)
	}
	return of("carries for good", amps, bearsA, "{} × {}", share, rating).by(share)
}

// makersShare is what the maker's table leaves of a rating at an ambient.
func (v *view) makersShare(br *circuit.Branch, dev fusing.Device, share float64) *value {
	label := fmt.Sprintf("maker's share at %s", quantity.Plain(dev.AmbientC, quantity.Temperature))
	t := dev.Type
	for i, r := range t.Rerating {
		if r.AmbientC == dev.AmbientC || i == 0 && dev.AmbientC < r.AmbientC {
			return row(label, percent, r.Share, t.Source)
		}
		if i == 0 || r.AmbientC < dev.AmbientC {
			continue
		}
		a := t.Rerating[i-1]
		low := row(fmt.Sprintf("at %s °C", text0(a.AmbientC)), percent, a.Share, t.Source)
		return of(label, percent, share, "{} + ({} − {}) × ({} − "+text0(a.AmbientC)+") ÷ "+text0(r.AmbientC-a.AmbientC), low,
			row(fmt.Sprintf("at %s °C", text0(r.AmbientC)), percent, r.Share, t.Source), low, v.placeC(br.Part, dev.AmbientC)).orSolved("the maker's table")
	}
	return solved(label, percent, share, "beyond the maker's table: "+t.Source.String())
}

// placeC is how hot the place of a part is.
func (b *book) placeC(p *circuit.Part, celsiusThere float64) *value {
	if p.AmbientKnown() && p.Place.AmbientC.Value == celsiusThere {
		return given("its place, "+p.Place.Name, celsius, p.Place.AmbientC)
	}
	return row("its place, not said", celsius, celsiusThere, circuit.DefaultAmbientSource)
}

// ratingTree explains a fuse's rating: what it has to carry and what it protects.
func (b *book) ratingTree(br *circuit.Branch) *Tree {
	t := ofFuse(br)
	worst, at := b.worstAmps(br)
	v := b.view(max(at, 0), worst.At)
	t.in(v)
	bears := b.bears(br, b.view(max(at, 0), corner.Nominal))
	least := b.guarded(br)
	if least == nil {
		t.finish(bears, v.amps(br))
	} else {
		t.finish(bears, v.amps(br), b.allowed(least))
	}
	by := fmt.Sprintf("as the design says in line %d", br.Fuse.Pos.Line)
	if br.Fuse.Auto {
		by = "chosen by sizing: see fusewright size"
	}
	t.Answer = []string{fmt.Sprintf("%s is rated %s, %s: it carries %s for good, and has %s to carry at worst, %s.", fuseWords(br),
		quantity.Plain(br.Fuse.Rating.RatingA, quantity.Current), by, t.Root.Value, t.Limit.Value, during(t.Situation)),
		b.guards(least)}
	return t
}

// guarded is the wire that may carry least of those that a fuse protects; nil = it protects none.
func (b *book) guarded(br *circuit.Branch) (least *circuit.Wire) {
	if f := b.r.Guarded().Find(br); f != nil {
		for _, w := range f.Wires {
			if least == nil || b.set().Model.Wires[w.Wire.Index].AllowedA < b.set().Model.Wires[least.Index].AllowedA {
				least = w.Wire
			}
		}
	}
	return least
}

// guards says what a fuse protects.
func (b *book) guards(least *circuit.Wire) string {
	if least == nil {
		return "It protects no wire of its own."
	}
	return fmt.Sprintf("The weakest wire that it protects, %s, may carry %s.", least.Number, b.mayCarry(least))
}

// mayCarry is what a wire may carry in words: of one that is on for a time that and what it may for good.
func (b *book) mayCarry(w *circuit.Wire) string {
	l, on := &b.set().Model.Wires[w.Index], w.Branch.TimeOn
	text := quantity.Format(l.AllowedA, quantity.Current)
	if l.Pulse.Gain > 1 && l.AllowedA > l.Pulse.SteadyA {
		text += fmt.Sprintf(" for %s every %s, and %s for good", quantity.Format(on.OnS, quantity.Duration), quantity.Format(on.EveryS, quantity.Duration),
			quantity.Format(l.Pulse.ForGoodA(l.AllowedA), quantity.Current))
	}
	return text
}
