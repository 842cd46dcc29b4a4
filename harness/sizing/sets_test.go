package sizing

import (
	"flag"
	"math/rand/v2"
	"testing"

	"fusewright/harness/design/starter"
	"fusewright/library"
)

var sets = flag.Int("sets", 12, "how many random sets of accessories TestRandomSets tries")

// someSet is a new design for a few accessories of the library, drawn by a seed.
func someSet(seed uint64) (a starter.Answers, src []byte, err error) {
	lib := library.Default()
	r := rand.New(rand.NewPCG(seed, 163))
	a = starter.Answers{Vehicle: starter.Vehicles()[r.IntN(len(starter.Vehicles()))], Accessories: []string{}}
	for range 1 + r.IntN(5) {
		a.Accessories = append(a.Accessories, lib.Loads[r.IntN(len(lib.Loads))].Name)
	}
	src, err = starter.Write(a, lib)
	return a, src, err
}

// TestStrongNeighbour: a windlass in the loom, whose heat on thin wire leaves the others
// nothing, does not keep an actuator on the plug and the thick wire that the first look
// found it to need: 10 mm² on blade contacts, of which the library has none.
func TestStrongNeighbour(t *testing.T) {
	src, err := starter.Write(starter.Answers{Vehicle: "motorcycle", Accessories: []string{"implement actuator", "windlass"}}, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	p, err := Complete(read(t, string(src)))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range p.Remaining {
		t.Errorf("%s: %s", f.Rule, f.What)
	}
	if w := p.Design.Loads[0].FedBy[0].Wire.Size; w.AreaMm2 > 2.5 {
		t.Errorf("the actuator of 12 A on %s", w.Label)
	}
}

// TestRandomSets: whatever accessories a new design is begun for, sizing leaves
// nothing of what it chooses to be mended.
func TestRandomSets(t *testing.T) {
	tried := 0
	for seed := uint64(0); tried < *sets; seed++ {
		a, src, err := someSet(seed)
		if err != nil {
			continue // what the starter says no to
		}
		tried++
		p, err := Complete(read(t, string(src)))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range p.Remaining {
			if !aboutVoltage(f) || !p.s.hopeless[f.Part] { // what the battery loses no copper gives back
				t.Errorf("%s, %q: %s: %s: %s", a.Vehicle, a.Accessories, f.Severity, f.Rule, f.What)
			}
		}
	}
}
