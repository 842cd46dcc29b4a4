// Package cutting makes the cut list: one row per wire with everything the
// person with the cutter and the crimping tool needs. It reads circuits and
// draws nothing.
package cutting

import (
	"math"
	"sort"

	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// StepM is what cut lengths are rounded up to: 5 mm, what a tape measure and a
// pair of cutters hold (common practice, no source).
const StepM = 0.005

// Row is one wire to cut, or a piece of one.
type Row struct {
	Wire       *circuit.Wire
	Number     string
	Size       string
	Colour     string // IEC 60757
	Insulation string
	CutM       float64 // Parts.CutM
	Parts      Breakdown
	From, To   End
	Runs       []string // names of the runs it lies in, in order
	Label      string   // text for the marker at both ends
}

// End is one end of a wire.
type End struct {
	At       string // "F1:2 main"
	Place    string
	Terminal *library.Terminal // nil = none in the library fits
	Kind     string            // terminal kind the part asks for; "" = not known
	StripMm  float64           // 0 = not known
	Plug     string            // the plug it goes into: "sealed 1.5, 2 ways"; "" = none
	Mark     string            // where on the part: "cavity 1" of the plug, "C" of a switch; "" = not known
	Mate     bool              // the crimp part is the mate of Terminal, in the other half of a connector
	Seal     bool              // a seal goes on the wire before it is stripped
}

// Crimp names the part that is crimped on, or says that none is known.
func (e End) Crimp() string {
	switch {
	case e.Terminal != nil && e.Mate:
		return "mate of " + e.Terminal.Name
	case e.Terminal != nil:
		return e.Terminal.Name
	case e.Kind != "":
		return "none fits " + e.Kind
	}
	return "not known"
}

// LengthFrom is what the length rests on: the design's own, the runs that the
// wire lies in, or slack alone where both ends are at one place.
func (r *Row) LengthFrom() string {
	switch {
	case r.Wire.SlackOnly():
		return "slack only"
	case r.Wire.LengthGiven:
		return "design"
	}
	return "runs"
}

// List makes the rows in wire order, of the wires that are not there yet; of a wire that
// connectors part, a row for each piece.
func List(c *circuit.Circuit) []Row {
	rows := make([]Row, 0, len(c.Wires))
	for _, w := range c.ToCut() {
		r := Row{
			Wire:       w,
			Number:     w.Number,
			Colour:     w.Spec.Colour.Code(),
			Insulation: w.Spec.Type.Name,
			Parts:      Break(w),
			From:       end(w.From, w.Crimp(true)),
			To:         end(w.To, w.Crimp(false)),
		}
		r.CutM = r.Parts.CutM
		if w.Spec.Size != nil {
			r.Size = w.Spec.Size.Label
		}
		for _, b := range w.Route {
			r.Runs = append(r.Runs, b.Run.Name)
		}
		r.Label = r.Number + " " + w.Purpose()
		rows = append(rows, r)
	}
	return rows
}

// BySizeAndColour orders rows for one pass with the cutter: largest first, then
// colour, then longest first, so that short pieces come from what is left.
func BySizeAndColour(rows []Row) []Row {
	out := append([]Row(nil), rows...)
	sort.SliceStable(out, func(i, j int) bool {
		a, b := out[i], out[j]
		switch {
		case a.Insulation != b.Insulation:
			return a.Insulation < b.Insulation
		case area(a) != area(b):
			return area(a) > area(b)
		case a.Colour != b.Colour:
			return a.Colour < b.Colour
		}
		return a.CutM > b.CutM
	})
	return out
}

// RoundUp rounds a length up to the next StepM.
func RoundUp(lengthM float64) float64 {
	// A hair is taken off first so that 0.605 m does not become 0.610 m.
	return math.Ceil(lengthM/StepM-1e-9) * StepM
}

func area(r Row) float64 {
	if r.Wire.Spec.Size == nil {
		return 0
	}
	return r.Wire.Spec.Size.AreaMm2
}

func end(t *circuit.Terminal, crimp *library.Terminal) End {
	e := End{At: pin(t), Terminal: crimp, Kind: t.Kind, Mark: t.Mark}
	if t.Part.Name != "" && t.Part.Name != t.Part.Ref {
		e.At += " " + t.Part.Name
	}
	if t.Part.Place != nil {
		e.Place = t.Part.Place.Name
	}
	if plug := t.Part.Plug; plug != nil {
		e.Plug, e.Seal, e.Mate = plug.String(), plug.Family.Sealed, t.Mate()
	}
	if t.Jointed {
		e.Kind = circuit.JointEnd
	}
	if crimp != nil {
		e.StripMm = crimp.StripMm
	}
	return e
}

// pin is the short address of a terminal: "K1:87".
func pin(t *circuit.Terminal) string { return t.Part.Ref + ":" + t.Name }
