package circuit_test

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// A switch past a resistor stays open in a situation that does not name it, where the load is on without; in one with everything on
// it is closed. The other state is looked at beside the situations. Switches of which each is needed stay closed by themselves.
func TestBypassOfResistor(t *testing.T) {
	const plain = "r: {resistance: 1 Ω, at: a, fed by: f}\nswitches:\n  hi: {at: a, fed by: f}\n"
	for _, c := range []struct {
		name, parts, load, situation string
		want                         bool // hi is closed
		beside                       string
	}{
		{"not named", plain, "fed by: [r, hi], returns to: stud", "on: [fan]", false, "now, fan with hi closed"},
		{"named", plain, "fed by: [r, hi], returns to: stud", "on: [fan], closed: [hi]", true, "now, fan with hi open"},
		{"everything on", plain, "fed by: [r, hi], returns to: stud", "on: all", true, "now, fan with hi open"},
		{"a lamp needs it", plain, "fed by: [r, hi], returns to: stud}\n  lamp: {power: 5 W, behaves: filament lamp, at: a, fed by: hi, returns to: stud", "on: [fan, lamp]", true, "now, fan with hi open"},
		{"in the return", "r: {resistance: 1 Ω, at: a, returns to: stud}\nswitches:\n  hi: {at: a, returns to: stud}\n", "fed by: f, returns to: [r, hi]", "on: [fan]", false, "now, fan with hi closed"},
		{"behind one more", "r: {resistance: 1 Ω, at: a, fed by: main}\nswitches:\n  main: {at: a, fed by: f}\n  hi: {at: a, fed by: main}\n", "fed by: [r, hi], returns to: stud", "on: [fan]", false, "now, fan with hi closed; now, fan through main and hi alone; now, fan through main alone"},
		{"by a relay", "r: {resistance: 1 Ω, at: a, fed by: f}\nswitches:\n  hi: {at: a, fed by: f}\nrelays:\n  past: {form: mini make, at: a, fed by: f, coil: {fed by: hi, returns to: stud}}\n",
			"fed by: [r, past], returns to: stud", "on: [fan]", false, "now, fan with hi closed"},
		{"a switch for each", "r: {resistance: 1 Ω, at: a, fed by: lo}\nswitches:\n  lo: {at: a, fed by: f}\n  hi: {at: a, fed by: f}\n", "fed by: [r, hi], returns to: stud", "on: [fan]", true,
			"now, fan through lo alone; now, fan through hi alone"},
		{"no resistor before it", "r: {resistance: 1 Ω, at: a, fed by: f}\nswitches:\n  hi: {at: a, fed by: f}\n", "fed by: [f, hi], returns to: stud", "on: [fan]", true, ""},
	} {
		net := build(t, c.name+".yaml", start+"\nfuses: {f: {type: blade C, rating: 15 A, at: a, fed by: battery}}\nresistors:\n  "+c.parts+
			"loads:\n  fan: {power: 60 W, behaves: motor, inrush: {peak: 6, time: 100 ms}, at: a, "+c.load+"}\nsituations:\n  now: {key: on, "+c.situation+"}\n")
		s := net.Design.Situations[0]
		closed := circuit.Contacts(net, s)
		hi := slices.IndexFunc(net.Design.Switches, func(w *design.Switch) bool { return w.Name == "hi" })
		got := slices.ContainsFunc(net.Branches, func(b *circuit.Branch) bool {
			return closed[b.Index] && b.Closer.Switch == net.Design.Switches[hi]
		})
		var beside []string
		for _, x := range net.Alone() {
			if strings.Contains(x.Name, "fan") {
				beside = append(beside, x.Name)
			}
		}
		if text := strings.Join(beside, "; "); got != c.want || text != c.beside {
			t.Errorf("%s: hi closed %t, want %t; beside: %q, want %q", c.name, got, c.want, text, c.beside)
		}
	}
}
