package document

import (
	"fmt"
	"math"

	"fusewright/harness"
	"fusewright/harness/design/quantity"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/protection"
	"fusewright/render/chart"
	"fusewright/render/scene"
)

// Measures of the time–current pictures, two beside each other.
const (
	curveHighMM = 56.0
	curveGapMM  = 4.0
)

// The range of time that the pictures show, in seconds: below it nothing of a
// wire damaged that a fuse could save, above it everything counts as for good.
const (
	curveFromS = 1e-3
	curveToS   = 1e4
)

// curves draws each fuse's opening band and the damage curve of its worst wire.
func (b *book) curves(r *harness.Review) error {
	if r.Protection == nil {
		return nil
	}
	wide := (b.width() - curveGapMM) / 2
	drawn := 0
	for _, f := range r.Protection.Fuses {
		w := f.Worst()
		if w == nil || f.Device.Rating == nil || !(w.ToA > w.FromA) {
			continue
		}
		at := scene.Rect{W: wide, H: curveHighMM}
		switch {
		case drawn == 0:
			b.head("Fuses over wires in time and current")
			b.need(curveHighMM)
		case drawn%2 == 0:
			b.y += curveHighMM + curveGapMM
			b.need(curveHighMM)
		}
		at.X, at.Y = b.left()+float64(drawn%2)*(wide+curveGapMM), b.y
		if err := curvePlot(f, w, r.Faults).Draw(b.sheet(), at); err != nil {
			return err
		}
		drawn++
	}
	if drawn > 0 {
		b.y += curveHighMM
	}
	return nil
}

// curvePlot is one picture: time over current, both in decades.
func curvePlot(f *protection.Fuse, w *protection.Wire, faults *fault.Study) *chart.Plot {
	fromA, toA := 0.8*w.FromA, 1.25*w.ToA
	ref := f.Branch.Fuse.Ref
	p := &chart.Plot{
		ID: "curve-" + ref, Desc: "Time over current: opening band of " + ref + " and damage of wire " + w.Wire.Number,
		Title: fmt.Sprintf("%s %s and wire %s %s", ref, quantity.Plain(f.Device.Rating.RatingA, quantity.Current),
			w.Wire.Number, sizeOf(w)),
		X: chart.Axis{Title: "Current", Unit: "A", Log: true, Min: fromA, Max: toA},
		Y: chart.Axis{Title: "Time", Unit: "s", Log: true, Min: curveFromS, Max: curveToS},
	}
	band := chart.Band{Name: "opens"}
	for _, at := range f.Device.Band(fromA, toA) {
		band.X = append(band.X, at.CurrentA)
		band.Low, band.High = append(band.Low, within(at.FastS)), append(band.High, within(at.SlowS))
	}
	if len(band.X) > 1 {
		p.Bands = []chart.Band{band}
	}
	p.Curves = []chart.Curve{damageCurve(w, faults, fromA, toA)}
	p.Levels = []chart.Level{{Name: "greatest short", At: w.ToA, OnX: true}}
	if far := faults.FarEnd(w.Wire); far != nil && far.Fed {
		p.Levels = append(p.Levels, chart.Level{Name: "least", At: far.Results[fault.Weak].CurrentA, OnX: true})
	}
	if w.WorstA > 0 && !math.IsInf(w.DamageS, 1) && w.OpenKnown {
		p.Marks = []chart.Mark{{Text: "worst", X: w.WorstA, Y: within(w.OpenS)}}
	}
	p.Note = curveNote(f, w)
	return p
}

// damageCurve is how long the wire stands each current.
func damageCurve(w *protection.Wire, faults *fault.Study, fromA, toA float64) chart.Curve {
	c := chart.Curve{Name: "wire damaged", Heavy: true}
	stands := faults.Wires.Damage(w.Wire)
	const points = 90
	for i := 0; i <= points; i++ {
		amps := fromA * math.Pow(toA/fromA, float64(i)/points)
		if s := stands.FaultTimeS(amps); !math.IsInf(s, 1) && s > 0 {
			c.X, c.Y = append(c.X, amps), append(c.Y, s)
		}
	}
	return c
}

// within keeps a time that is never or not known on the paper's edge.
func within(s float64) float64 {
	return math.Min(math.Max(s, curveFromS/10), curveToS*10)
}

func sizeOf(w *protection.Wire) string {
	if w.Wire.Spec.Size == nil {
		return ""
	}
	return w.Wire.Spec.Size.Label
}

// curveNote says the margin in words.
func curveNote(f *protection.Fuse, w *protection.Wire) string {
	kind := "type not known"
	if f.Device.Type != nil {
		kind = f.Device.Type.Name
	}
	if f.Assumed {
		kind += " assumed"
	}
	text := fmt.Sprintf("%s at %s. ", kind, quantity.Format(f.Device.AmbientC, quantity.Temperature))
	switch {
	case math.IsInf(w.Ratio, 1):
		text += "The wire withstands every current at which the fuse may stay closed, for any time."
	case w.Ratio == 0:
		text += fmt.Sprintf("At %s the fuse may never open, and the wire is damaged after %s.",
			ampere(w.WorstA), quantity.Format(w.DamageS, quantity.Duration))
	default:
		text += fmt.Sprintf("At the worst current, %s, the wire withstands it %s times as long as the fuse takes.",
			ampere(w.WorstA), quantity.Format(w.Ratio, quantity.Number))
	}
	return text
}
