// Package schematic draws a circuit as sheets of standard symbols: fed from the
// left, loads at the right, each return ending in the sign of its ground point.
// It lays out and draws; it knows no physics and judges nothing.
//
// The work goes in steps, each in its own files: the circuit becomes cells
// (cell*.go), cells are shared out to sheets by feed (pack*.go), each sheet gets
// columns and an order (layout.go), rows on the grid (rows.go) and tracks for
// its wires (channel.go), and is then drawn (paint*.go) into its frame
// (frame.go) with the lists round it (panel*.go). Changes against an earlier
// design are marked by change*.go and paint_change.go.
package schematic

import (
	"cmp"
	"fmt"

	"fusewright/harness"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// Options choose how the sheets look. The zero value is the usual drawing.
type Options struct {
	// Size is "A4", "A3", "Letter" or "Tabloid"; "" takes the design's, or A4.
	Size string
	// NoFindings leaves out flags and the list of findings, for the bench.
	NoFindings bool
	// Symbols is the family of symbols; nil takes the design's, or IEC 60617.
	Symbols symbol.Set
	// Relays is "assembled" or "detached"; "" takes the design's, or assembled.
	Relays string
	// Situation names the situation whose solved values are written into the
	// drawing, a study sheet; "" leaves them out. A study has no findings on it.
	Situation string
	// Changes marks what differs from an earlier design, in place of findings;
	// nil marks nothing. DrawChanges draws the earlier design too.
	Changes *Changes

	asWas bool // the design is the earlier one
}

// Draw makes the sheets of a reviewed design in order. Findings may be missing;
// the circuit must be there.
func Draw(review *harness.Review, opt Options) ([]*scene.Sheet, error) {
	if review == nil || review.Circuit == nil {
		return nil, fmt.Errorf("schematic: no circuit to draw")
	}
	d, err := plan(review, opt)
	if err != nil {
		return nil, err
	}
	return d.paint(), nil
}

// plan lays all sheets out without drawing them.
func plan(review *harness.Review, opt Options) (*drawing, error) {
	signs := findingFlags(review, opt.NoFindings || opt.Situation != "")
	if opt.Changes != nil {
		signs = changeFlags(opt.Changes, opt.asWas)
	}
	l := newLabels(review.Circuit, opt.Symbols, opt.Relays, signs)
	if opt.Situation != "" {
		s, err := newStudy(review, opt.Situation)
		if err != nil {
			return nil, err
		}
		l.study = s
	}
	paper, err := paperOf(cmp.Or(opt.Size, l.design.Sheet.Size))
	if err != nil {
		return nil, err
	}
	a, err := arrange(l, paper)
	if err != nil {
		return nil, err
	}
	return newDrawing(sheetsOf(a), review), nil
}
