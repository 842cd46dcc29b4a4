package cutting_test

import (
	"fmt"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/workshop/cutting"
)

// The demo's joints by hand: the tap's one wire of 1 mm² and the factory wire twice, 3 mm²;
// its fuse 120 mm on. The lamp pair: 2.5 + 2 · 1.5 = 5.5 mm², 280 mm of run from the fork
// (340 from the handlebar is further).
func TestJoints(t *testing.T) {
	var got []string
	for _, j := range cutting.Joints(buildtest.Circuit(t, buildtest.File(t, "../../../designs/fen-runner.yaml"))) {
		text := fmt.Sprintf("%s: %d, %.2f mm², %s, %.0f mm from %s", j.Part.Name, len(j.Wires), j.CopperMm2, j.Crimp.Name, j.Along*1000, j.From.Part.Name)
		for _, f := range j.Fuses {
			text += fmt.Sprintf(", %s %.0f mm on", f.Fuse.Name, f.LengthM*1000)
		}
		got = append(got, text)
	}
	want := []string{"tail lamp feed: 1, 3.00 mm², open-barrel splice 6 mm², 120 mm from pilot, F2 120 mm on",
		"lamp pair: 3, 5.50 mm², open-barrel splice 6 mm², 280 mm from left lamp"}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("got %q\nwant %q", got, want)
	}
}
