// Package formboard lays the loom of a circuit flat on a board, to scale: the
// trunk straight from left to right, branches leaving it at breakouts by even
// angles, nothing across anything else. It says of each run what the person at
// the board needs: length, wires, diameter, cover, clamps, least bend; and of
// each place which wire ends lie there and how long they stand out.
//
// It is geometry only: it draws nothing and prints nothing. The same circuit
// always gives the same board, and an added wire or branch moves little of it.
package formboard

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// Point is a place on the board in millimetres, x to the right, y downwards.
type Point struct{ X, Y float64 }

// Board is the whole loom, laid flat.
type Board struct {
	Runs     []*Run     // that hold wires, in design order
	Unused   []*Run     // that hold none, in design order; not laid out
	Sections []*Section // drawings; each joined loom is one or more of them
	Places   []*Ends    // every place where a wire ends, in design order
	Nowhere  []End      // ends whose part has no place
	Support  Rule       // largest distance between supports
}

// Run is what is known of one run.
type Run struct {
	Number  int // from 1, in design order
	Bundle  *circuit.Bundle
	Length  float64 // mm
	OuterMm float64 // of the bundle, its cover not counted
	Thick   float64 // outer diameter of its thickest wire, mm; 0 = not known
	// BendMm is the least bend radius where it is free, BendHeldMm where clamps
	// hold it; 0 = not known.
	BendMm, BendHeldMm float64
	Supports           []float64 // of clamps, mm from the run's first place
	SupportMm          float64   // most that clamps may stand apart
	// LoopAt is the place at which the run was cut open because it closes a
	// loop; nil for others.
	LoopAt *design.Place
}

// Section is a piece of the board that goes on one drawing.
type Section struct {
	Number int // from 1
	Spots  []*Spot
	Limbs  []*Limb // the trunk first, from left to right
	// Even tells that the trunk is straight and all angles are multiples of
	// 15°; crowded sections are fanned out instead.
	Even bool
}

// Spot is a point of the board where runs end or meet.
type Spot struct {
	Place *design.Place
	At    Point
	Limbs []*Limb // that meet here, in the order of the runs
	// Copy tells that this is the loose end of a loop that was cut open: it is
	// joined at the place's own spot when the loom goes in.
	Copy bool
	// Others are the numbers of the other sections that begin or end here.
	Others []int
	// Inlines are the connectors at which the loom comes apart here.
	Inlines []*circuit.Inline

	index int
}

// Breakout tells whether runs part here.
func (s *Spot) Breakout() bool { return len(s.Limbs) > 1 }

// connectors finds the connectors of the loom at the spots of a section.
func (s *Section) connectors(c *circuit.Circuit) {
	for _, x := range c.Inlines() {
		for _, spot := range s.Spots {
			if spot.Place == x.Part.Place && !spot.Copy && len(x.Poles) > 0 {
				spot.Inlines = append(spot.Inlines, x)
			}
		}
	}
}

// Limb is a run laid on the board, straight from spot to spot. From is the spot
// of the run's first place.
type Limb struct {
	Run      *Run
	From, To *Spot
	// DrawnMm is how far apart its spots lie: the run's length, less where a break leaves
	// out a straight stretch of it.
	DrawnMm float64
	Trunk   bool
	// HeadingDeg is its direction away from the source of the section, counter-clockwise,
	// 0 to the right.
	HeadingDeg float64

	near, far *Spot // the end towards the section's root, and the other
}

// Far is the spot at its other end.
func (l *Limb) Far(s *Spot) *Spot {
	if l.From == s {
		return l.To
	}
	return l.From
}

// Ends is the wire ends at a place.
type Ends struct {
	Place *design.Place
	Ends  []End
}

// End is one end of a wire at a place.
type End struct {
	Wire     *circuit.Wire
	Terminal *circuit.Terminal
	AtFrom   bool // the wire's first end, not its second
	Via      *Run // the run out of which it comes; nil within one place
	// FreeMm is how far the finished wire stands out of the breakout: its
	// slack, or half of what a given length leaves. Of wires within one place it is the
	// whole length. Short tells that the given length does not reach, Beside that it
	// does not along the runs.
	FreeMm        float64
	Short, Beside bool
}

// Lay makes the board of a circuit, every run at its length.
func Lay(c *circuit.Circuit) *Board { return lay(c, false) }

// LayBroken is the board with the straight stretches of long runs left out; see
// Limb.Break.
func LayBroken(c *circuit.Circuit) *Board { return lay(c, true) }

func lay(c *circuit.Circuit, broken bool) *Board {
	b := &Board{Support: SupportFor(c.Design.Practice)}
	var tree forest
	for i, bundle := range c.Bundles {
		r := newRun(i+1, bundle, b.Support)
		if len(bundle.ToMake()) == 0 {
			b.Unused = append(b.Unused, r)
			continue
		}
		b.Runs = append(b.Runs, r)
	}
	tree.grow(c.Design, b.Runs)
	b.Sections = tree.sections()
	for _, s := range b.Sections {
		for _, l := range s.Limbs {
			l.DrawnMm = l.Run.Length
			if broken {
				l.DrawnMm = l.Run.BrokenMm()
			}
		}
		s.lay()
		s.connectors(c)
	}
	b.gatherEnds(c)
	return b
}
