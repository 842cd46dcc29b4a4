package fusing

import "math"

// Selectivity is whether of two devices in series only the one nearer the
// fault opens.
type Selectivity struct {
	Selective bool // up to the fault current
	// UpToA is the highest current up to which it is; the fault current when
	// Selective; 0 when at none.
	UpToA float64
	// At the first current where it is not:
	FailsA float64 // 0 when there is none
	DownS  float64 // latest opening of the device nearer the fault
	UpS    float64 // soonest opening of the other
	By     string  // ByCurves or ByI2t: what was compared there
	Known  bool    // false when data were missing and the worst was assumed
	Note   string
}

// The ways of comparing.
const (
	ByCurves = "curves"
	ByI2t    = "I²t"
)

// shortTimeS is the time below which curves do not decide and only melting
// against clearing I²t does. From memory: the usual 10 ms of the trade.
const shortTimeS = 0.01

// Selective compares two devices in series, down being nearer the fault, at
// every current up to the bolted-fault current: the latest opening of down must
// come before the soonest of up. Below 10 ms the clearing I²t of down (twice
// its typical melting) must lie below the least melting I²t of up (0.8 of its
// typical), as no clearing values are published for blade fuses.
func Selective(down, up Device, faultA float64) Selectivity {
	s := Selectivity{Known: true}
	if !complete(down) || !complete(up) || !(faultA > 0) {
		s.Known, s.Note = false, "a device's type or rating is not known"
		return s
	}
	cd, cu := down.curve(), up.curve()
	from := math.Min(faultA, math.Min(cd.ratingA, cu.hotA))
	for _, i := range merged(cd, cu, from, faultA) {
		if ok := s.holds(cd, cu, i); !ok {
			s.FailsA = i
			return s
		}
		s.UpToA = i
	}
	s.Selective, s.Known, s.Note = true, true, ""
	return s
}

func complete(d Device) bool {
	return d.Type != nil && d.Rating != nil && d.Rating.RatingA > 0
}

// merged are the currents of both curves in order.
func merged(a, b *curve, from, to float64) []float64 {
	x, y := a.currents(from, to), b.currents(from, to)
	out := make([]float64, 0, len(x)+len(y))
	for len(x) > 0 || len(y) > 0 {
		if len(y) == 0 || (len(x) > 0 && x[0] <= y[0]) {
			out, x = append(out, x[0]), x[1:]
		} else {
			out, y = append(out, y[0]), y[1:]
		}
	}
	return out
}

// holds compares at one current.
func (s *Selectivity) holds(down, up *curve, i float64) bool {
	slow, slowKnown := down.slow(i)
	fast, fastKnown := up.fast(i)
	s.DownS, s.UpS, s.By, s.Known, s.Note = slow, fast, ByCurves, slowKnown && fastKnown, ""
	if math.IsInf(fast, 1) {
		return true // the other carries it for good
	}
	if fast >= shortTimeS || !fastKnown {
		if !s.Known {
			s.Note = "no opening times published there: the worst is assumed"
		}
		return slow < fast
	}
	s.By = ByI2t
	if down.meltSlow == 0 || up.meltFast == 0 {
		s.Known, s.Note = false, "no melting I²t published for one of them"
		return false
	}
	return down.meltSlow < up.meltFast
}
