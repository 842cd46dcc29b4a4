package cutting

import (
	"math"

	"fusewright/harness/network/circuit"
)

// TrimM is what squaring off an end takes before it is stripped: 3 mm (common
// practice, no source).
const TrimM = 0.003

// Renewals is how often the slack at an end must allow the terminal to be
// renewed: twice, AC 43.13-1B par. 11-118.
const Renewals = 2

// ToleranceSource is where Band comes from.
const ToleranceSource = "IPC/WHMA-A-620 Table 11-1 (draft copy and workshop page)"

// Breakdown is what a cut length is made of. All parts add up to CutM.
type Breakdown struct {
	RouteM     float64 // along the runs; of a given length, that length
	SlackM     float64 // the design's, both ends together
	ServiceM   float64 // what slack lacks to renew each terminal twice, both ends
	StripM     float64 // inside the barrels of the terminals, both ends
	TrimM      float64 // squared off, both ends
	ToleranceM float64 // to the middle of the permitted band; see Band
	RoundingM  float64 // up to StepM
	CutM       float64
	// BandM is by how much the finished wire may be longer than route and
	// slack; it may never be shorter.
	BandM float64
	// StripKnown tells that the library gives the strip length of both ends.
	StripKnown bool
}

// Break takes the cut length of a wire apart. Slack counts as a service loop;
// a length that the design gives is taken to hold its slack and its service
// loop already.
func Break(w *circuit.Wire) Breakdown {
	b := Breakdown{RouteM: w.LengthM, TrimM: 2 * TrimM, StripKnown: w.Crimp(true) != nil && w.Crimp(false) != nil}
	for _, end := range []float64{stripM(w, true), stripM(w, false)} {
		b.StripM += end
		if !w.LengthGiven {
			slack := w.Spec.SlackM.Value
			b.SlackM += slack
			b.ServiceM += math.Max(0, Renewals*(end+TrimM)-slack)
		}
		b.StripKnown = b.StripKnown && end > 0
	}
	b.RouteM = w.LengthM - b.SlackM
	b.BandM = Band(w.LengthM)
	b.ToleranceM = b.BandM / 2
	sum := w.LengthM + b.ServiceM + b.StripM + b.TrimM + b.ToleranceM
	b.CutM = RoundUp(sum)
	b.RoundingM = b.CutM - sum
	return b
}

// LengthM is the length to cut of a wire: the one that every paper prints.
func LengthM(w *circuit.Wire) (sum float64) {
	for _, piece := range w.Cut() {
		sum += Break(piece).CutM
	}
	return sum
}

// stripM is the strip length of one end; 0 when it is not known.
func stripM(w *circuit.Wire, from bool) float64 {
	end := w.Crimp(from)
	if end == nil {
		return 0
	}
	return end.StripMm / 1000
}

// Band is by how much a finished wire of a length may be longer, with nothing
// shorter: 25 mm up to 0.3 m, 50 mm up to 1.5 m, 100 mm up to 3 m, 150 mm up to
// 7.5 m, 5 % beyond. See ToleranceSource. Cutting to its middle leaves the same
// room for a long measure as for a short one.
func Band(lengthM float64) float64 {
	for _, row := range []struct{ upToM, bandM float64 }{{0.3, 0.025}, {1.5, 0.05}, {3, 0.1}, {7.5, 0.15}} {
		if lengthM <= row.upToM+1e-9 {
			return row.bandM
		}
	}
	return 0.05 * lengthM
}
