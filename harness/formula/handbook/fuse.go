package handbook

import (
	"fmt"
	"math"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/fusing"
	"fusewright/library"
)

// FuseInput asks when an overcurrent device opens.
type FuseInput struct {
	Type     *library.FuseType
	RatingA  float64
	CurrentA float64
	AmbientC float64
	Practice *library.Practice // whose share of the rating continuous load may have; nil = none
}

// Fuse answers the soonest and the latest opening at a current, and what the
// device may carry continuously at the ambient.
func Fuse(in FuseInput) (*Answer, error) {
	var k check
	if in.Type == nil {
		k.say("the fuse type is not in the library")
	}
	k.positive("the rating", in.RatingA, mostA, "A")
	k.positive("the current", in.CurrentA, mostA, "A")
	k.between("the ambient", in.AmbientC, coldestC, hottestC, "°C")
	if err := k.err(); err != nil {
		return nil, err
	}
	a := newAnswer("fuse", "When a fuse opens")
	a.inText("type", in.Type.Name)
	a.in("rating", in.RatingA, quantity.Current)
	a.in("current", in.CurrentA, quantity.Current)
	a.in("ambient", in.AmbientC, quantity.Temperature)
	if in.Type.Rating(in.RatingA) == nil {
		a.warn("%s is not made in %g A; its ratings are %v A", in.Type.Name, in.RatingA, in.Type.RatingsA())
	}
	d := fusing.Device{Type: in.Type, Rating: fusing.RatingOf(in.Type, in.RatingA), AmbientC: in.AmbientC}
	a.opening(d, in)
	if in.CurrentA > in.Type.BreakingA {
		a.warn("the current is above the breaking capacity of %g A: the device may not clear it", in.Type.BreakingA)
	}
	return a, nil
}

func (a *Answer) opening(d fusing.Device, in FuseInput) {
	o := d.Open(in.CurrentA)
	a.step("multiple = I / rating", "multiple = %.4g A / %g A = %.4g", in.CurrentA, in.RatingA, o.Multiple)
	for _, p := range in.Type.BandFor(in.RatingA) {
		a.step("published opening at a multiple", "%g times: %s (%s)", p.Multiple, span(p.MinS, p.MaxS), p.Source.String())
	}
	a.outNumber("multiple of the rating", o.Multiple, "")
	if o.FastKnown {
		a.out("soonest opening", o.FastS, quantity.Duration)
	} else {
		a.outText("soonest opening", "not published")
	}
	if o.SlowKnown {
		a.out("latest opening", o.SlowS, quantity.Duration)
	} else {
		a.outText("latest opening", "not published: it may never open")
	}
	share, known := d.Share()
	if known {
		a.out("may carry continuously at the ambient", share*in.RatingA, quantity.Current)
	} else {
		a.warn("no temperature derating published for %s", in.Type.Name)
	}
	if p := in.Practice; p != nil {
		most := p.FuseLoadShare * in.RatingA
		a.step("maximum continuous load = share · rating", "%.4g · %g A = %.4g A", p.FuseLoadShare, in.RatingA, most)
		a.out(fmt.Sprintf("maximum continuous load, %.4g of the rating", p.FuseLoadShare), most, quantity.Current)
	}
	if m := d.Rating.MeltI2t; m > 0 {
		a.out("typical melting I²t", m, quantity.CurrentSquareTime)
	}
	if o.Note != "" {
		a.warn("%s", o.Note)
	}
	source := in.Type.Source.String()
	if !strings.HasPrefix(source, in.Type.Standard) {
		source = in.Type.Standard + ", " + source
	}
	a.source(source, "between published points by straight line on log-log axes")
}

func span(minS, maxS float64) string {
	from, to := "no lower limit", "no upper limit"
	if minS > 0 {
		from = "not before " + duration(minS)
	}
	if maxS > 0 {
		to = "by " + duration(maxS)
	}
	return fmt.Sprintf("%s, %s", from, to)
}

// duration prints a time of a test as the standards do: carrying for 100 h is
// not 4.17 days.
func duration(s float64) string {
	if s >= 3600 {
		return say("%g h", s/3600)
	}
	return quantity.Plain(s, quantity.Duration)
}

// never is a time without end.
func never(s float64) bool { return math.IsInf(s, 1) }
