package derivation

import (
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/library"
)

// ohm is the resistance of a branch as it is solved with.
func (v *view) ohm(b *circuit.Branch) *value {
	return once(v.ohmsOf, b, func() *value {
		switch r := solve.ResistanceOf(b, &v.opt); {
		case b.Wire != nil:
			return v.wireOhm(b.Wire, r)
		case r.Factor != 1:
			return v.agedOhm(b, r)
		}
		return newOhm(b)
	})
}

// wireOhm is that of a wire: its conductor as warm as it is, and its ends.
func (v *view) wireOhm(w *circuit.Wire, r solve.Resistance) *value {
	ends := v.endsOhm(w, r.Aged)
	hot := v.hotConductor(w, r)
	if r.Ends != 1 {
		return of("resistance of "+w.Number, ohms, r.Ohm(), "{} + {} × {}", hot, v.agedAll(), ends)
	}
	return of("resistance of "+w.Number, ohms, r.Ohm(), "{} + {}", hot, ends)
}

func (v *view) hotConductor(w *circuit.Wire, r solve.Resistance) *value {
	cold := coldConductor(w)
	if r.Heat == 1 {
		return cold
	}
	heat := of("how much more when hot", plain, r.Heat, "1 + {} × ({} − {})",
		published("copper's rise by kelvin", perK, conductor.CopperAlphaPerK, "IEC 60028"),
		v.conductorC(w), exactly("where resistance is given", celsius, 20))
	return of("conductor, hot", ohms, r.ColdOhm*r.Heat, "{} × {}", cold, heat).by(cold)
}

var perK = &dimension{[]scale{{0, 1, "/K"}}}

// exactly is a number by convention.
func exactly(label string, dim *dimension, v float64) *value {
	return &value{label: label, v: v, dim: dim, mark: Computed, exact: true, source: "by definition", rests: shares{onComputed: 1}}
}

// metreOhm is what a metre of conductor has at 20 °C. Copper's own resistance is sure;
// what a row from memory has above it is not.
func metreOhm(w *circuit.Wire) *value {
	size := w.Spec.Size
	metre := row(fmt.Sprintf("%s at 20 °C, the most allowed", size.Label), perM, size.MaxOhmPerM, size.Source)
	if size.Source.Unsourced() && size.AreaMm2 > 0 {
		own := math.Min(1, conductor.CopperOhmMm2PerM/size.AreaMm2/size.MaxOhmPerM)
		for i := range metre.rests {
			metre.rests[i] *= 1 - own
		}
		metre.rests[onPublished] = own
	}
	return metre
}

// coldConductor is the conductor at 20 °C.
func coldConductor(w *circuit.Wire) *value {
	metre := metreOhm(w)
	return of("conductor at 20 °C", ohms, w.ConductorOhm20, "{} × {}", metre, lengthOf(w)).by(metre)
}

// lengthOf is the length of the finished wire.
func lengthOf(w *circuit.Wire) *value {
	if w.LengthGiven && w.Whole != nil {
		return pieceOf(w)
	}
	if w.LengthGiven {
		return given("finished length, given", metres, w.Spec.LengthM)
	}
	from := []*value{}
	formula := ""
	for _, b := range w.Route {
		from = append(from, given("run "+b.Run.Name, metres, b.Run.LengthM))
		formula += "{} + "
	}
	slack := given("slack of each end", metres, w.Spec.SlackM)
	if !w.Spec.SlackM.Given() {
		slack = assumed("slack of each end", metres, w.Spec.SlackM.Value, "to cut off and crimp again")
	}
	return of("finished length, with slack", metres, w.LengthM, formula+fmt.Sprint(2*(len(w.Poles)+1))+" × {}", append(from, slack)...)
}

// pieceOf is the length of a piece of a wire whose length is given: shared as the runs are.
func pieceOf(w *circuit.Wire) *value {
	runs := func(label string, list []*circuit.Bundle) *value {
		var from []*value
		total := 0.0
		for _, b := range list {
			from, total = append(from, given("run "+b.Run.Name, metres, b.Run.LengthM)), total+b.Run.LengthM.Value
		}
		return sum(label, metres, total, from...)
	}
	return of("finished length of the piece", metres, w.LengthM, "{} × {} ÷ {}", given("length, given", metres, w.Whole.Spec.LengthM),
		runs("runs of the piece", w.Route), runs("runs of the wire", w.Whole.Route))
}

// endsOhm is the terminations of a wire and the connectors on its way.
func (v *view) endsOhm(w *circuit.Wire, aged bool) *value {
	var list []*value
	for i, end := range w.Contacts() {
		where := [...]string{"end at " + w.From.Part.Ref, "end at " + w.To.Part.Ref, "connector"}[min(i, 2)]
		list = append(list, contactOhm(end, where, aged))
	}
	label := "ends, crimped and mated"
	if aged {
		label = "ends, aged"
	}
	return sum(label, ohms, solve.EndsOhm(w, aged), list...)
}

// contactOhm is one crimped and mated end.
func contactOhm(end *library.Terminal, where string, aged bool) *value {
	if end == nil {
		return assumed(where+", no crimp part known", ohms, circuit.EndOhm, "a usual crimp and contact")
	}
	ohm := end.ContactOhm
	if aged && end.AgedOhm > 0 {
		ohm = end.AgedOhm
	}
	from := end.Source
	if end.ContactUnsourced() {
		from = library.Source{Text: "the library's contacts are common practice", Certainty: library.CommonPractice}
	}
	return row(fmt.Sprintf("%s, %s", where, end.Name), ohms, ohm, from)
}

// newOhm is the resistance of what is no wire, as new.
func newOhm(b *circuit.Branch) *value {
	if b.OfLead() {
		return leadOhm(b, b.Part.Source.(*design.Load))
	}
	var list []*value
	for _, p := range b.OhmParts() {
		switch {
		case p.DropV > 0:
			list = append(list, of(p.What, ohms, p.Ohm, "{} ÷ {}", row("drop at its rating", volts, p.DropV, p.Source),
				row("rating", amps, p.RatedA, p.Source)))
		case p.Given.Line > 0:
			list = append(list, yours(p.What, ohms, p.Ohm, p.Given))
		default:
			list = append(list, row(p.What, ohms, p.Ohm, p.Source))
		}
	}
	if len(list) == 1 {
		return list[0]
	}
	return sum(elementName(b)+", new", ohms, b.Ohm, list...)
}

var ohmMm2PerM = in("Ω·mm²/m")

// leadOhm is the lead that an accessory comes with, there and back, as warm as its place.
func leadOhm(b *circuit.Branch, l *design.Load) *value {
	air := row("its place, not said", celsius, b.Part.AmbientC(), circuit.DefaultAmbientSource)
	if b.Part.AmbientKnown() {
		air = given("its place, "+b.Part.Place.Name, celsius, b.Part.Place.AmbientC)
	}
	cold := of("there and back, at 20 °C", ohms, 2*l.Lead.LengthM.Value*conductor.OhmPerM(l.Lead.AreaMm2.Value, 20), "2 × {} × {} ÷ {}",
		published("copper", ohmMm2PerM, conductor.CopperOhmMm2PerM, "IEC 60028"), given("lead", metres, l.Lead.LengthM), given("its size", mm2, l.Lead.AreaMm2))
	heat := of("how much more when warm", plain, conductor.AtTemperature(1, b.Part.AmbientC()), "1 + {} × ({} − {})",
		published("copper's rise by kelvin", perK, conductor.CopperAlphaPerK, "IEC 60028"), air, exactly("where resistance is given", celsius, 20))
	return of("resistance of its lead", ohms, b.Ohm, "{} × {}", cold, heat).by(cold)
}

// agedOhm is a contact in use or a warm fuse.
func (v *view) agedOhm(b *circuit.Branch, r solve.Resistance) *value {
	cold := newOhm(b)
	if v.shorted {
		return of(elementName(b)+", in use", ohms, r.Ohm(), "{} × {}", cold, v.agedAll())
	}
	a := v.set().Tolerances.Aged(b, v.set().Results[corner.Nominal][v.at])
	times := v.tolerance(a.Row, a.Row+" over new", plain)
	if a.Share == 1 {
		return of(elementName(b)+", in use", ohms, r.Ohm(), "{} × {}", cold, times)
	}
	hot := of("how much more when warm", plain, a.Factor(), "1 + ({} − 1) × ({} × {} ÷ {})²", times,
		mostGain(),
		v.book.view(v.at, corner.Nominal).amps(b), v.rating(b))
	return of(elementName(b)+", warm", ohms, r.Ohm(), "{} × {}", cold, hot)
}

// mostGain is how far a current may be above nominal.
func mostGain() *value {
	x := assumed("most over nominal", plain, corner.MostGain, "20 % of power for a motor, or 10 % at 12 V")
	x.formula = "4 ÷ 3"
	x.exact = false
	return x
}

// agedAll is what a short study takes for every contact.
func (v *view) agedAll() *value {
	name := "aged relay contact"
	if s, r := v.lib.Tolerance("aged switch contact"), v.lib.Tolerance(name); s != nil && (r == nil || s.Value > r.Value) {
		name = "aged switch contact"
	}
	return v.tolerance(name, "aged contact over new", plain)
}

// rating is a fuse's.
func (b *book) rating(br *circuit.Branch) *value {
	label := "rating"
	if br.Fuse.Auto {
		x := solved(label+", chosen by sizing", amps, br.Fuse.Rating.RatingA, "see fusewright size")
		x.exact = true
		return x
	}
	return yours(label, amps, br.Fuse.Rating.RatingA, br.Fuse.Pos)
}

// elementName is a branch in a few words.
func elementName(b *circuit.Branch) string {
	switch {
	case b.Wire != nil && b.Wire.Spec.Size != nil:
		return fmt.Sprintf("%s %s %s", b.Wire.Number, b.Wire.Spec.Size.Label, quantity.Format(b.Wire.LengthM, quantity.Length))
	case b.Wire != nil:
		return b.Wire.Number
	case b.Fuse != nil && b.Fuse.Rating != nil:
		ref := b.Fuse.Ref
		if ref == "" {
			ref = b.Name
		}
		return ref + " " + quantity.Plain(b.Fuse.Rating.RatingA, quantity.Current)
	case b.OfLead():
		return "its own lead"
	case b.Part != nil && b.Kind == circuit.ContactBranch && b.Part.Kind == circuit.Load:
		return "its own switch"
	case b.Part != nil:
		return b.Part.Ref + " " + b.Part.Name
	}
	return b.Name
}
