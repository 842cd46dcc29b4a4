package schematic

import (
	"fmt"

	"fusewright/harness"
	"fusewright/render/frame"
	"fusewright/render/scene"
	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/crossref"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/paint"
	"fusewright/render/schematic/sign"
)

// Long draws a reviewed design on one sheet as high and as wide as it takes, without frame
// and lists, for a page on a screen. Each part and wire has its spot, and each one that
// something is found at its flag, whatever it follows from.
func Long(review *harness.Review) (*scene.Sheet, error) {
	if review == nil || review.Circuit == nil {
		return nil, fmt.Errorf("schematic: no circuit to draw")
	}
	bare := *review
	bare.Plan = nil
	l := labels.New(review.Circuit, nil, "assembled", sign.OfFindings(&bare, false))
	l.Signs.Shapes, l.Slots, l.Outlined = true, labels.NoSlots, false
	a, err := arrange.Narrow(l, roll(review))
	if err != nil {
		return nil, err
	}
	if len(a.Pages) != 1 {
		return nil, fmt.Errorf("schematic: %d pages (expected one)", len(a.Pages))
	}
	return (&paint.Drawing{Sheets: crossref.Of(a)}).Long(), nil
}

// roll is paper on which any circuit finds room: a screen is moved over it.
func roll(review *harness.Review) frame.Paper {
	paper, _ := frame.PaperOf("A4")
	wires := float64(len(review.Circuit.Wires) + len(review.Circuit.Parts))
	paper.Name, paper.W, paper.H = "roll", 420+4*wires, 420+30*wires
	return paper
}
