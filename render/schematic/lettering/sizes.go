// Package lettering is how words are set: sizes, wrapping and the caption of a
// part, in millimetres on paper. It knows nothing of circuits.
package lettering

import (
	"math"

	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// Text sizes in mm: capitals are at least 2.0 mm high on paper.
const (
	SmallMM  = 2.95 // capitals 2.03 mm
	LineMM   = 3.4  // from line to line
	CapMM    = 2.05
	DescMM   = 0.65
	titleMM  = 4.6
	NormalMM = 3.3
	GapMM    = 0.95 // between a wire and its label
)

var Grey = scene.RGB{R: 70, G: 70, B: 70}

// TextW is the width of small text in mm.
func TextW(s string, face scene.Face) float64 { return scene.TextWidthMM(s, SmallMM, face) }

// InM rounds a length in mm up to whole modules.
func InM(mm float64) int { return int(math.Ceil(mm/symbol.M - 1e-9)) }
