package derivation_test

import (
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/derivation"
)

// builders are questions as a builder asks them of the demos, with the figure that answers each; "" = there is none, and what is
// near is offered.
var builders = []struct{ design, asks, want string }{
	{"hay-wain", "how long does the fridge run", "hours in coffee"},
	{"hay-wain", "why is the wire of the heater so thick", "allowed current of W10"},
	{"hay-wain", "which fuse is for the water pump", "rating of F9"},
	{"hay-wain", "which fuse protects the pump", "rating of F9"},
	{"hay-wain", "what fuse do I need for the inverter", "rating of F5"},
	{"hay-wain", "how much current does the fridge use", "current of fridge"},
	{"hay-wain", "how many amps does the fridge pull", "current of fridge"},
	{"hay-wain", "how many volts reach the fridge", "volts at fridge"},
	{"hay-wain", "how much voltage is left at the air heater", "volts at air heater"},
	{"hay-wain", "how much is lost on the way to the fridge", "drop of fridge"},
	{"hay-wain", "how big is the fuse of the gas alarm", "rating of F16"},
	{"hay-wain", "what size cable for the inverter", "allowed current of W26"},
	{"hay-wain", "how long can I stand before the engine does not start", "days parked"},
	{"hay-wain", "how long will the battery last when parked", "hours in parked"},
	{"hay-wain", "how long does the battery last in winter evening", "hours in winter evening"},
	{"hay-wain", "is the alternator enough when driving", "spare in driving"},
	{"hay-wain", "is there enough charge when waiting", "spare in waiting"},
	{"hay-wain", "what does the battery see at start", "volts at start"},
	{"hay-wain", "how much does the coolbox draw", "current of fridge"},
	{"hay-wain", "how hot does W14 get", "temperature of W14"},
	{"sedge-sloop", "how many amps does the fridge take", "current of refrigerator"},
	{"sedge-sloop", "which fuse is for the fridge", "rating of F12"},
	{"sedge-sloop", "which fuse is for the bilge pump", "rating of F5"},
	{"sedge-sloop", "how much current does the anchor winch draw", "current of windlass"},
	{"sedge-sloop", "voltage drop to the anchor light", "drop of anchor lamp"},
	{"sedge-sloop", "why is the drop of the steaming light limited", "limit of steaming lamp"},
	{"sedge-sloop", "how much power does the chart plotter use", "current of plotter"},
	{"sedge-sloop", "how long must I cut W9", "cut length of W9"},
	{"sedge-sloop", "how long is wire 9", "cut length of W9"},
	{"sedge-sloop", "what terminals go on W9", "crimps of W9"},
	{"sedge-sloop", "how long do I last at anchor", "hours at anchor"},
	{"sedge-sloop", "when does fuse 3 blow", "time to open of F3"},
	{"fen-runner", "how many amps do the heated grips pull", "current of heated grips"},
	{"fen-runner", "which fuse is for the grips", "rating of F4"},
	{"fen-runner", "how thick is the wire to the left light", "allowed current of W6"},
	{"fen-runner", "how long can the bike stand", "days parked"},
	{"fen-runner", "what is left over in town", "spare in town, waiting"},
	{"reed-skiff", "how many volts does the work light get", "volts at work light"},
	{"reed-skiff", "which fuse is for the washdown pump", "rating of F5"},
	{"hay-wain", "why such a big fuse for the inverter", "rating of F5"},
	{"hay-wain", "how much does the water pump take", "current of water pump"},
	{"sedge-sloop", "which fuse feeds the plotter", "rating of F9"},
	{"sedge-sloop", "how long does the fridge run at anchor", "hours at anchor"},
	{"reed-skiff", "how much current is left at idle", "spare in night cutting"},
	{"reed-skiff", "how long can the radio play", "hours of radio"},
	{"fen-runner", "why 7.5 A for the heated grips", "rating of F4"},
	{"reed-skiff", "how much short circuit current does W3 see", "prospective short at W3"},
}

func TestBuildersAsk(t *testing.T) {
	right, demos := 0, map[string]*harness.Review{}
	for _, q := range builders {
		if demos[q.design] == nil {
			demos[q.design] = reviewOf(t, "../../designs/"+q.design+".yaml")
		}
		tree, err := derivation.Of(demos[q.design], q.asks)
		switch {
		case q.want == "" && err != nil && strings.Contains(err.Error(), "did you mean"), err == nil && tree.What == q.want:
			right++
		case err != nil:
			t.Errorf("%s, %q: %v, want %q", q.design, q.asks, err, q.want)
		default:
			t.Errorf("%s, %q: %q, want %q", q.design, q.asks, tree.What, q.want)
		}
	}
	if right < len(builders) {
		t.Errorf("%d of %d", right, len(builders))
	}
}
