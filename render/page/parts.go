package page

import (
	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/cutting"
)

// Part is a part or a wire, as the page names and finds it.
type Part struct {
	ID    string `json:"id"`   // its label on the drawing: "F1", "W7"
	Kind  string `json:"kind"` // "fuse", "wire", ...
	Name  string `json:"name"`
	Looks string `json:"looks,omitempty"` // of a wire: colour code and size
	// Colour is a wire's in words, for the search: "yellow red".
	Colour string `json:"colour,omitempty"`
	// In is the block or tap in which a fuse stands.
	In     string `json:"in,omitempty"`
	Place  string `json:"place,omitempty"`
	Length string `json:"length,omitempty"`
	Line   int    `json:"line,omitempty"`
	Col    int    `json:"col,omitempty"`
}

func parts(r *harness.Review) []Part {
	list := []Part{}
	for _, p := range r.Circuit.Parts {
		row := Part{ID: p.Ref, Kind: string(p.Kind), Name: p.Name, Line: p.Pos.Line, Col: p.Pos.Col}
		if p.Place != nil {
			row.Place = p.Place.Name
		}
		list = append(list, row)
		list = append(list, inside(p, row)...)
	}
	unit := lengths.Of(r.Design)
	for _, w := range r.Circuit.Wires {
		row := Part{ID: w.Number, Kind: "wire", Name: w.Purpose(), Looks: w.Look(), Length: cut(w, unit),
			Line: w.Pos.Line, Col: w.Pos.Col}
		if !w.Spec.Fitted {
			row.Length += ", finished " + unit.Text(w.LengthM)
		}
		if c := w.Spec.Colour; c.Base != nil {
			row.Colour = c.Base.Name
			if c.Tracer != nil {
				row.Colour += " " + c.Tracer.Name
			}
		}
		if a, b := w.From.Part.Place, w.To.Part.Place; a != nil && b != nil {
			row.Place = a.Name
			if a != b {
				row.Place = wording.Present([]string{a.Name, b.Name}, " → ")
			}
		}
		list = append(list, row)
	}
	return list
}

// cut is the length of a wire to cut, as the drawing has it.
func cut(w *circuit.Wire, unit lengths.Unit) string {
	text := unit.Text(cutting.LengthM(w))
	if w.Spec.Fitted {
		return text
	}
	return text + " to cut"
}

// inside are the fuses in the ways of a block.
func inside(p *circuit.Part, block Part) (list []Part) {
	if p.Kind != circuit.Block {
		return nil
	}
	for _, b := range p.Branches {
		if b.Fuse == nil {
			continue
		}
		row := Part{ID: b.Fuse.Ref, Kind: "fuse", Name: "in " + block.Name, In: block.ID, Place: block.Place, Line: b.Fuse.Pos.Line, Col: b.Fuse.Pos.Col}
		if b.Fuse.Rating != nil {
			row.Looks = quantity.Plain(b.Fuse.Rating.RatingA, quantity.Current)
		}
		list = append(list, row)
	}
	return list
}
