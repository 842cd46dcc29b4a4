package page

import (
	"fmt"

	"fusewright/harness"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/sources"
)

// taken is what was taken for want of data, a sentence each: resistances that neither the
// design nor the library gives, and the ambient of places without one.
func taken(r *harness.Review) []string {
	list := []string{}
	for _, a := range sources.Assumptions(r.Circuit) {
		ohm, same := 0.0, true
		for i, name := range a.At {
			for _, b := range r.Circuit.Branches {
				if b.Name == name {
					same = same && (i == 0 || b.Ohm == ohm)
					ohm = b.Ohm
				}
			}
		}
		text := capital(a.What) + ", " + wording.Few(a.At, 4)
		if same && ohm > 0 {
			text += ": " + quantity.Format(ohm, quantity.Resistance)
		}
		list = append(list, text)
	}
	var places []string
	for i := range r.Design.Places {
		if p := r.Design.Places[i]; !p.AmbientC.Given() {
			places = append(places, p.Name)
		}
	}
	if len(places) > 0 {
		list = append(list, fmt.Sprintf("Ambient of %s: %s", wording.Few(places, 4), quantity.Plain(circuit.DefaultAmbientC, quantity.Temperature)))
	}
	return list
}
