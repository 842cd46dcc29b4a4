package starter_test

import (
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/design/starter"
	"fusewright/library"
)

// TestOwnLoads: a diesel has no ignition, and every vehicle draws more for itself with the engine
// running than a monitor does: an engine's pumps and injection are 40 W and more (from memory).
func TestOwnLoads(t *testing.T) {
	for _, c := range []struct{ vehicle, engine string }{{"boat", "diesel"}, {"boat", "petrol outboard"}, {"camper", "diesel"},
		{"camper", "petrol"}, {"off-road", "diesel"}, {"off-road", "petrol"}, {"truck", ""}, {"quad", ""}, {"motorcycle", ""}} {
		src, err := starter.Write(starter.Answers{Vehicle: c.vehicle, Engine: c.engine}, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		d, err := design.Read("new.yaml", src, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		powerW := 0.0
		for _, l := range d.VehicleLoads {
			powerW += l.PowerW.Value
			if c.engine == "diesel" && strings.Contains(l.Name, "ignition") {
				t.Errorf("%s: a diesel with %s", c.vehicle, l.Name)
			}
		}
		if powerW < 40 {
			t.Errorf("%s, %s: %g W", c.vehicle, c.engine, powerW)
		}
	}
}
