package formboard

import (
	"math"

	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Rule is a figure of workmanship with its source.
type Rule struct {
	Mm     float64
	Source string
}

// How far apart supports may stand. The aircraft figure stands for road and
// field machines, for which no published one is known.
var (
	supportBoat    = Rule{450, "ISO 10133:2012 clause 7.3"}
	supportGeneral = Rule{609.6, "AC 43.13-1B par. 11-96 (24 in), taken over"}
)

// SupportFor is the largest distance between supports in a practice.
func SupportFor(p *library.Practice) Rule {
	if p != nil && p.Afloat {
		return supportBoat
	}
	return supportGeneral
}

// Least bend radii, in outer diameters of the thickest wire of the bundle.
const (
	BendTimes     = 10 // free; see BendSource
	BendHeldTimes = 3  // held on both sides of the bend; see BendSource
	BendSource    = "TM 1-1500-204-23-4 item 27 and AC 43.13-1B ch. 11; 3 times from memory"
)

// FirstSupportMm is from the end of a run to its first clamp: 75 to 150 mm, from
// memory.
const FirstSupportMm = 100

// TieMm is the distance between supports above which ties go between them, and
// TieSource where that stands.
const (
	TieMm     = 304.8
	TieSource = "AC 43.13-1B ch. 11 (12 in)"
)

func newRun(number int, bundle *circuit.Bundle, support Rule) *Run {
	r := &Run{Number: number, Bundle: bundle, Length: bundle.Run.LengthM.Value * 1000, OuterMm: bundle.OuterMm,
		SupportMm: support.Mm}
	for _, w := range bundle.Wires {
		if w.Spec.Size != nil {
			r.Thick = math.Max(r.Thick, w.Spec.Size.OuterMm)
		}
	}
	r.BendMm, r.BendHeldMm = BendTimes*r.Thick, BendHeldTimes*r.Thick
	r.Supports = supports(r.Length, support.Mm, bundle.Run.Flexes)
	return r
}

// supports spreads clamps over a run: one in the middle of a short run, else
// one near each end and as many between as keep them within the limit. Where
// the run flexes it stays free between its two end clamps.
func supports(lengthMm, limitMm float64, flexes bool) []float64 {
	if !(lengthMm > 0) {
		return nil
	}
	if lengthMm <= 2.5*FirstSupportMm {
		return []float64{lengthMm / 2}
	}
	between := lengthMm - 2*FirstSupportMm
	spaces := int(math.Ceil(between/limitMm - 1e-9))
	if flexes {
		spaces = 1
	}
	out := make([]float64, 0, spaces+1)
	for i := range spaces + 1 {
		out = append(out, FirstSupportMm+between*float64(i)/float64(spaces))
	}
	return out
}

// Spacing is the largest distance between the run's clamps in millimetres; 0
// when it has fewer than two.
func (r *Run) Spacing() float64 {
	if len(r.Supports) < 2 {
		return 0
	}
	return r.Supports[1] - r.Supports[0]
}

// Class is how thick a bundle is for a drawing: 0 to 4.
func (r *Run) Class() int {
	for i, limit := range ClassesMm {
		if r.OuterMm <= limit {
			return i
		}
	}
	return len(ClassesMm)
}

// ClassesMm are the upper limits of the diameter classes; the last is open. Our
// choice.
var ClassesMm = []float64{4, 8, 14, 25}
