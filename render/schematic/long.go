package schematic

import (
	"fmt"
	"slices"

	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
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
	bare.Plan, bare.Findings = nil, atParts(review)
	l := labels.New(review.Circuit, nil, "assembled", sign.OfFindings(&bare, false))
	l.Signs.Shapes, l.Slots, l.Outlined = true, labels.NoSlots, false
	a, err := arranged(review, l)
	if err != nil {
		return nil, err
	}
	return (&paint.Drawing{Sheets: crossref.Of(a)}).Long(), nil
}

// One page is arranged whole, which takes longer the more parts stand behind one another; beyond
// these the circuit is shared out to pages, one below the other, as on paper.
const deepest, mostWires = 24, 2000

func arranged(review *harness.Review, l *labels.Labels) (*arrange.Arrangement, error) {
	if depth(review.Circuit) <= deepest && len(review.Circuit.Wires) <= mostWires {
		return arrange.Narrow(l, roll(review))
	}
	paper, err := frame.PaperOf("A3")
	if err != nil {
		return nil, err
	}
	return arrange.Circuit(l, paper, nil)
}

// depth is how many wires stand behind one another at most.
func depth(c *circuit.Circuit) (most int) {
	deep := make([]int, len(c.Nodes))
	for _, n := range c.Downstream() {
		for _, b := range n.FedBy() {
			at := deep[b.A.Index]
			if b.Wire != nil {
				at++
			}
			deep[n.Index] = max(deep[n.Index], at)
		}
		most = max(most, deep[n.Index])
	}
	return most
}

// atParts are the findings, those about a section of the design at the part that it describes:
// what is missing of the charging system is flagged at the generator.
func atParts(review *harness.Review) []*finding.Finding {
	list := slices.Clone(review.Findings)
	for i, f := range list {
		for _, p := range review.Circuit.Parts {
			if f.Ref == f.Part && p.Name == f.Part && p.Ref != f.Ref {
				at := *f
				at.Ref = p.Ref
				list[i] = &at
			}
		}
	}
	return list
}

// roll is paper on which any circuit finds room: a screen is moved over it.
func roll(review *harness.Review) frame.Paper {
	paper, _ := frame.PaperOf("A4")
	wires := float64(len(review.Circuit.Wires) + len(review.Circuit.Parts))
	paper.Name, paper.W, paper.H = "roll", 420+4*wires, 420+30*wires
	return paper
}
