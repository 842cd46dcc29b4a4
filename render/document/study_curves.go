package document

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"fusewright/harness"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/protection"
	"fusewright/library"
	"fusewright/render/chart"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// Measures of the time–current pictures, beside each other.
const (
	curvesInRow = 2
	curveHighMM = 46.0
	curveGapMM  = 3.0
)

// The range of time that the pictures show, in seconds: below it nothing of a
// wire damaged that a fuse could save, above it everything counts as for good.
const (
	curveFromS = 1e-3
	curveToS   = 1e4
)

// curves draws the opening band of fuses and the damage curve of their worst wire: one
// picture for all alike, of that with the least margin.
func (b *book) curves(r *harness.Review) error {
	if r.Protection == nil {
		return nil
	}
	wide := (b.width() - curveGapMM*(curvesInRow-1)) / curvesInRow
	list, left := pictured(r.Protection.Fuses)
	for i, alike := range list {
		switch {
		case i == 0:
			b.head("Fuses over wires: seconds over amperes")
			b.need(curveHighMM)
		case i%curvesInRow == 0:
			b.y += curveHighMM + curveGapMM
			b.need(curveHighMM)
		}
		at := scene.Rect{X: b.left() + float64(i%curvesInRow)*(wide+curveGapMM), Y: b.y, W: wide, H: curveHighMM}
		if err := curvePlot(alike, r.Faults).Draw(b.sheet(), at); err != nil {
			return err
		}
	}
	if len(list) > 0 {
		b.y += curveHighMM
	}
	if left > 0 {
		b.para(fmt.Sprintf("Not pictured: %s with a margin of %g or more; the table has all.", wording.Count(left, "fuse", "fuses"), report.Harmless), smallQuiet)
	}
	return nil
}

// leastPictures is how many pictures there are at least.
const leastPictures = 4

// pictured gathers the fuses that have a picture by what it would show: the same fuse
// at the same ambient over the same wire, that with the least margin first. Of those
// whose margin is harmless a few are left; the others are counted.
func pictured(fuses []*protection.Fuse) (list [][]*protection.Fuse, left int) {
	type key struct {
		device     fusing.Device
		size       *library.WireSize
		insulation *library.WireType
	}
	at := map[key]int{}
	for _, f := range fuses {
		w := f.Worst()
		if w == nil || f.Device.Rating == nil || !(w.ToA > w.FromA) {
			continue
		}
		k := key{fusing.Device{Type: f.Device.Type, Rating: f.Device.Rating, AmbientC: f.Device.AmbientC}, w.Wire.Spec.Size, w.Wire.Spec.Type}
		n, met := at[k]
		if !met {
			n, at[k] = len(list), len(list)
			list = append(list, nil)
		}
		list[n] = append(list[n], f)
	}
	margin := func(f *protection.Fuse) float64 { return f.Worst().Ratio }
	for _, alike := range list {
		slices.SortStableFunc(alike, func(a, b *protection.Fuse) int { return cmp.Compare(margin(a), margin(b)) })
	}
	slices.SortStableFunc(list, func(a, b []*protection.Fuse) int { return cmp.Compare(margin(a[0]), margin(b[0])) })
	for n := len(list); n > leastPictures && margin(list[n-1][0]) >= report.Harmless; n-- {
		left += len(list[n-1])
		list = list[:n-1]
	}
	return list, left
}

// curvePlot is one picture: time over current, both in decades.
func curvePlot(alike []*protection.Fuse, faults *fault.Study) *chart.Plot {
	f, w := alike[0], alike[0].Worst()
	fromA, toA := 0.8*w.FromA, 1.25*w.ToA
	ref := f.Branch.Fuse.Ref
	p := &chart.Plot{
		ID: "curve-" + ref, Desc: "Time over current: opening band of " + ref + " and damage of wire " + w.Wire.Number,
		Title: fmt.Sprintf("%s %s and wire %s %s", ref, quantity.Plain(f.Device.Rating.RatingA, quantity.Current),
			w.Wire.Number, sizeOf(w)),
		X: chart.Axis{Log: true, Min: fromA, Max: toA},
		Y: chart.Axis{Log: true, Min: curveFromS, Max: curveToS},
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
	p.Note = curveNote(alike)
	return p
}

// damageCurve is how long the wire stands each current.
func damageCurve(w *protection.Wire, faults *fault.Study, fromA, toA float64) chart.Curve {
	c := chart.Curve{Name: "wire damaged", Heavy: true}
	stands := faults.Wires.Stands(w.Wire)
	const points = 90
	for i := 0; i <= points; i++ {
		amps := fromA * math.Pow(toA/fromA, float64(i)/points)
		if s := stands(amps); !math.IsInf(s, 1) && s > 0 {
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

// curveNote says what the table of fuses and wires says of the worst current, in short.
func curveNote(alike []*protection.Fuse) string {
	w := alike[0].Worst()
	var text string
	switch {
	case math.IsInf(w.Ratio, 1):
		text = "The wire stands all that the fuse lets through."
	case w.Ratio == 0:
		text = fmt.Sprintf("At %s the fuse may never open: wire damaged after %s.", ampere(w.WorstA), quantity.Format(w.DamageS, quantity.Duration))
	default:
		text = fmt.Sprintf("Margin %s at %s.", quantity.Format(w.Ratio, quantity.Number), ampere(w.WorstA))
	}
	var others []string
	for _, o := range alike[1:] {
		others = append(others, o.Branch.Fuse.Ref+" over "+o.Worst().Wire.Number)
	}
	if len(others) > 0 {
		text += " The same or more: " + wording.Some(others, 2) + "."
	}
	return text
}
