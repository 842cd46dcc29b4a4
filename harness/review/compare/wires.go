package compare

import (
	"math"
	"strconv"

	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/cutting"
)

// wires are all wires; one is the same as another when it is the feed or the
// return of the same part: of those that have several, the one from or to the same
// place, and of the rest in the same order.
func wires(c *circuit.Circuit, same map[string]bool) []thing {
	seen := map[string]int{}
	var list []thing
	for _, w := range c.Wires {
		k, owner := key(string(w.Role), w.Owner().Name), w.Owner().Name
		if exact := connection(w); same[exact] {
			k = exact
		}
		seen[k]++
		list = append(list, thing{key(k, strconv.Itoa(seen[k])), string(w.Role), owner, w.Number, wireFields(w)})
	}
	return list
}

// connections are the connections of a circuit.
func connections(c *circuit.Circuit) map[string]bool {
	all := map[string]bool{}
	for _, w := range c.Wires {
		all[connection(w)] = true
	}
	return all
}

func connection(w *circuit.Wire) string { return key(string(w.Role), w.From.Text(), w.To.Text()) }

func wireFields(w *circuit.Wire) fields {
	var f fields
	f.text("from", w.From.Text())
	f.text("to", w.To.Text())
	if s := w.Spec.Size; s != nil {
		f.figure("size", s.Label, s.AreaMm2, -1)
	}
	// Lengths are compared as cut, to the millimetre.
	f.lengthM("cut length", math.Round(cutting.LengthM(w)*1000)/1000, +1)
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
	var at []string
	for _, p := range w.Poles {
		at = append(at, p.Inline.Part.Name)
	}
	if len(at) > 0 {
		f.text("parted at", wording.And(at))
	}
	return f
}
