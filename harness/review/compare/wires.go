package compare

import (
	"math"
	"strconv"

	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
)

// wires are all wires; one is the same as another when it is the feed or the
// return of the same part, in the same order when there are several.
func wires(c *circuit.Circuit) []thing {
	seen := map[string]int{}
	var list []thing
	for _, w := range c.Wires {
		owner := w.To
		if w.Role == circuit.ReturnWire || w.Role == circuit.CoilReturnWire {
			owner = w.From
		}
		k := key(string(w.Role), owner.Part.Name)
		seen[k]++
		list = append(list, thing{key(k, strconv.Itoa(seen[k])), string(w.Role), owner.Part.Name, w.Number, wireFields(w)})
	}
	return list
}

func wireFields(w *circuit.Wire) fields {
	var f fields
	f.text("from", w.From.Text())
	f.text("to", w.To.Text())
	if s := w.Spec.Size; s != nil {
		f.figure("size", s.Label, s.AreaMm2, -1)
	}
	// Lengths are compared as cut, to the millimetre.
	mm := math.Round(w.LengthM * 1000)
	f.figure("length", quantity.Format(mm/1000, quantity.Length), mm, +1)
	if w.Spec.Type != nil {
		f.text("wire type", w.Spec.Type.Name)
	}
	f.text("colour", w.Spec.Colour.Code())
	f.yes("already fitted", w.Spec.Fitted)
	if w.FromEnd != nil {
		f.text("crimp at its start", w.FromEnd.Name)
	}
	if w.ToEnd != nil {
		f.text("crimp at its end", w.ToEnd.Name)
	}
	return f
}
