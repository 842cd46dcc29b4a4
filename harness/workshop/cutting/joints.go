package cutting

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Joint is a splice of the loom, a tap of the factory wiring, or the lead of a part that
// several wires go to, as it is made.
type Joint struct {
	Part      *circuit.Part
	Wires     []*circuit.Wire
	CopperMm2 float64           // of all that is in the crimp part, by which it is chosen
	Crimp     *library.Terminal // takes all of them; nil = none in the library does
	Own       bool              // the design gives its wires' ends crimp parts of their own
	Lead      bool              // the lead that the part comes with goes in too
	Fold      bool              // one of two wires is too thin for the crimp part unless folded back
	// Along is how far it is along the loom from From, the nearest end of a wire of it;
	// From is nil when the runs do not tell.
	Along float64
	From  *circuit.Terminal
	// Of a tap: the fuses at the ends of its wires, none where that is what is missing.
	Fuses []TapFuse
}

// TapFuse is the first protection of our own behind a tap.
type TapFuse struct {
	Fuse    *circuit.Branch
	LengthM float64 // of the wire between
}

// Joints are the splices and taps that have wires, and the leads that several go to, in the
// order of the circuit's parts.
func Joints(c *circuit.Circuit) (list []Joint) {
	for _, p := range c.Parts {
		for _, t := range p.Terminals {
			if of := p.Kind == circuit.Splice || p.Kind == circuit.Tap; of && len(t.Wires) > 0 || t.Jointed {
				list = append(list, joint(p, t))
			}
		}
	}
	return list
}

func joint(p *circuit.Part, t *circuit.Terminal) Joint {
	j := Joint{Part: p, Wires: t.Wires, Crimp: t.Joint, Own: !t.Jointed, CopperMm2: t.CopperMm2(), Along: math.Inf(1),
		Lead: p.Kind != circuit.Splice && p.Kind != circuit.Tap}
	for _, w := range t.Wires {
		if !j.Lead { // it is at the part
			j.near(w, t)
		}
		j.Fold = j.Fold || len(t.Wires) == 2 && p.Kind == circuit.Splice && t.Joint != nil && w.Spec.Size != nil && w.Spec.Size.AreaMm2 < t.Joint.MinMm2
		if b := ownFuse(w); p.Kind == circuit.Tap && b != nil {
			j.Fuses = append(j.Fuses, TapFuse{b, w.LengthM})
		}
	}
	return j
}

// near takes the other end of a wire when the way to it is known and shorter.
func (j *Joint) near(w *circuit.Wire, t *circuit.Terminal) {
	far := w.From
	if far == t {
		far = w.To
	}
	way := 0.0
	for _, b := range w.Route {
		way += b.Run.LengthM.Value
	}
	if way == 0 && w.LengthGiven {
		way = w.LengthM
	}
	if way > 0 && way < j.Along && far.Part.Kind != circuit.Splice {
		j.Along, j.From = way, far
	}
}

// ownFuse is the fuse at the far end of a wire; nil = there is none.
func ownFuse(w *circuit.Wire) *circuit.Branch {
	if _, ok := w.To.Part.Source.(*design.Fuse); ok && len(w.To.Part.Branches) > 0 {
		return w.To.Part.Branches[0]
	}
	return nil
}
