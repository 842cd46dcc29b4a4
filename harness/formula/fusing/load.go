package fusing

import (
	"fmt"
	"math"

	"fusewright/library"
)

// Carrying is whether a device carries its load and the load's start.
type Carrying struct {
	Share      float64 // running current over what the device carries at its ambient
	CarriesA   float64 // what it carries for good
	ShareKnown bool    // false when the type has no re-rating table

	// InrushI2t is that of the start above the running current, for as long as it is
	// more than the device carries for good, A²s.
	InrushI2t float64
	MeltShare float64 // InrushI2t over the typical melting I²t; NaN when not published
	// Margin is the least of soonest opening over elapsed time during the
	// start: above 1 the start passes under the fast edge; +Inf without start.
	Margin    float64
	WorstS    float64 // elapsed time at the least margin
	EdgeKnown bool    // false where the fast edge is not published
	// UsualMargin is the same for the middle of the band, on a logarithmic scale.
	UsualMargin float64
	StartHolds  bool // the device outlasts the start, and its repeats
	Note        string
}

// PulseShare is the share of the melting I²t that a fuse outlasts 100 000
// times. Source: maker's guide to fuse selection, pulse chart (0.22, electronic
// cartridge fuses).
const PulseShare = 0.22

// Carries judges a device against a running current and its inrush, which
// decays from PeakRatio with TauS. Several loads behind one device: give the
// sum that runs and the inrush of the whole.
func Carries(d Device, runningA float64, inrush library.Inrush) Carrying {
	c := Carrying{MeltShare: math.NaN(), Margin: math.Inf(1), UsualMargin: math.Inf(1), EdgeKnown: true, StartHolds: true}
	if d.Type == nil || d.Rating == nil || !(d.Rating.RatingA > 0) {
		c.Share, c.StartHolds, c.EdgeKnown = math.Inf(1), false, false
		c.Note = "the device's type or rating is not known"
		return c
	}
	share, known := d.Share()
	c.ShareKnown, c.CarriesA = known, d.Rating.RatingA*share
	c.Share = math.Inf(1)
	if c.CarriesA > 0 {
		c.Share = math.Abs(runningA) / c.CarriesA
	}
	if inrush.PeakRatio > 1 && inrush.TauS > 0 && runningA != 0 {
		c.start(d, math.Abs(runningA), inrush)
	}
	return c
}

// start walks through the inrush: at each elapsed time the steady current of
// the same heat must be one that the fast edge lets pass for longer.
func (c *Carrying) start(d Device, runningA float64, inrush library.Inrush) {
	c.InrushI2t = InrushI2t(runningA, inrush, beyondS(runningA, c.CarriesA, inrush))
	if m := d.Rating.MeltI2t; m > 0 {
		c.MeltShare = c.InrushI2t / m
	}
	cv := d.curve()
	const steps = 40
	for i := 0; i <= steps; i++ {
		t := inrush.TauS * math.Pow(10, -2+4*float64(i)/steps) // from τ/100 to 100 τ
		same := math.Sqrt((InrushI2t(runningA, inrush, t) + runningA*runningA*t) / t)
		if len(cv.band) == 0 {
			c.EdgeKnown = false
			break
		}
		fast, known := cv.fast(same)
		c.EdgeKnown = c.EdgeKnown && known
		if m := fast / t; m < c.Margin {
			c.Margin, c.WorstS = m, t
		}
		if slow, known := cv.slow(same); known {
			c.UsualMargin = math.Min(c.UsualMargin, math.Sqrt(fast*slow)/t)
		}
	}
	if !c.EdgeKnown {
		c.Note = fmt.Sprintf("no lower opening times published for %s", d.Type.Name)
	}
	c.StartHolds = c.Margin > 1 && !(c.MeltShare > PulseShare)
}

// beyondS is how long a start is more than a device carries for good, in seconds:
// what it carries does not bring it nearer to melting.
func beyondS(runningA, carriesA float64, inrush library.Inrush) float64 {
	if runningA >= carriesA {
		return math.Inf(1)
	}
	return math.Max(0, inrush.TauS*math.Log((inrush.PeakRatio-1)*runningA/(carriesA-runningA)))
}

// InrushI2t is the I²t of a start up to a time, above that of the running
// current, for i(t) = I·(1 + (p − 1)·e^(−t/τ)):
// I²·[(p−1)²·τ/2·(1 − e^(−2t/τ)) + 2·(p−1)·τ·(1 − e^(−t/τ))] in A²s.
func InrushI2t(runningA float64, inrush library.Inrush, seconds float64) float64 {
	if !(inrush.PeakRatio > 1) || !(inrush.TauS > 0) || !(seconds > 0) {
		return 0
	}
	q, tau := inrush.PeakRatio-1, inrush.TauS
	return runningA * runningA * (q*q*tau/2*-math.Expm1(-2*seconds/tau) + 2*q*tau*-math.Expm1(-seconds/tau))
}
