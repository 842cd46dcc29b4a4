package starter_test

import (
	"slices"
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

// What is fitted already, live at all times, comes with its own fuse and wires: none of it is chosen or bought; what keeps watch on
// a motorcycle stands under the seat.
func TestFittedComesWithItsFeed(t *testing.T) {
	for _, vehicle := range []string{"motorcycle", "quad", "boat", "camper", "off-road", "truck"} {
		src, err := starter.Write(starter.Answers{Vehicle: vehicle, Accessories: []string{"alarm"}, Fitted: []string{"alarm"}, Live: []string{"alarm"}}, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		d, err := design.Read("new.yaml", src, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		if len(d.Fuses) != 1 || !d.Fuses[0].Fitted || d.Fuses[0].Rating == nil {
			t.Errorf("%s: the fuse is not fitted:\n%s", vehicle, src)
		}
		alarm := d.Loads[0]
		for _, f := range append(slices.Clone(alarm.FedBy), alarm.Returns...) {
			if !f.Wire.Fitted || f.Wire.Size == nil {
				t.Errorf("%s: a wire is not fitted, or has no size:\n%s", vehicle, src)
			}
		}
		if vehicle == "motorcycle" && alarm.At.Name != "under seat" {
			t.Errorf("the alarm is at %s", alarm.At.Name)
		}
	}
}
