package rules_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
)

// van is the camper with a DC-DC charger and a solar controller, changed: pairs of old and new text.
func van(t *testing.T, changes ...string) []byte { return changed(t, "hay-wain", changes) }

// sloop is the boat with a voltage-sensing relay, changed likewise.
func sloop(t *testing.T, changes ...string) []byte { return changed(t, "sedge-sloop", changes) }

func changed(t *testing.T, name string, changes []string) []byte {
	t.Helper()
	src, err := os.ReadFile("../../../designs/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i < len(changes); i += 2 {
		if !strings.Contains(string(src), changes[i]) {
			t.Fatalf("the design has no %q", changes[i])
		}
	}
	return []byte(strings.NewReplacer(changes...).Replace(string(src)))
}

// What is said of chargers and links by name: the severity, the part and the rule.
func saidOf(t *testing.T, text []byte, rules string) (got []string) {
	t.Helper()
	for _, f := range open(assess(t, "links.yaml", text)) {
		if slices.Contains(strings.Fields(rules), f.Rule) {
			got = append(got, f.Severity.String()+" "+f.Part+" "+f.Rule)
		}
	}
	slices.Sort(got)
	return got
}

// What chargers hold is ordinary use of what they charge: at 14.3 V of the solar controller a lost
// return gives nothing more than that, though the alternator holds 13 V only. A DC-DC charger bears 14.7 V.
func TestLostReturnAtTheChargersVoltage(t *testing.T) {
	for name, text := range map[string][]byte{
		"alternator at 13 V": van(t, "regulated: 14.4 V", "regulated: 13.0 V"),
		"PWM at 14.5 V":      van(t, "chemistry: LiFePO4", "chemistry: gel", "    board: 150 A\n", "", "MPPT controller 20 A", "PWM controller 20 A"),
	} {
		if got := saidOf(t, text, "ground-lost-overvoltage"); len(got) > 0 {
			t.Errorf("%s: %v", name, got)
		}
	}
}

// A DC-DC charger that starts at 13.3 V never does on an alternator of 13 V, nor a relay that closes there;
// at 13.5 V they do. One that holds 5 V charges nothing.
func TestNeverCharges(t *testing.T) {
	for _, c := range []struct {
		name string
		text []byte
		want string
	}{
		{"as designed", van(t), ""},
		{"alternator too low for the charger", van(t, "regulated: 14.4 V", "regulated: 13.0 V"), "fault booster battery-not-charged"},
		{"just high enough", van(t, "regulated: 14.4 V", "regulated: 13.6 V"), ""},
		{"holds less than the battery", van(t, "type: DC-DC charger 30 A", "type: DC-DC charger 30 A\n    output: 5 V"), "fault booster battery-not-charged"},
		{"by a relay", sloop(t), ""},
		{"a fuse on its own post", house(t, "house end: {type: blade C, rating: 20 A, at: rear,", "house end: {on post of: house, rating: 50 A,"), ""},
		{"a fuse on its own post that feeds only", house(t, "fed by: house end, wire: {length: 120 mm}, ", "",
			"house end: {type: blade C, rating: 20 A, at: rear, fed by: charging relay}", "house end: {on post of: house, rating: 50 A}"), "fault house battery-not-charged"},
		{"linked to one that a charger gives", van(t, third("driving", "at the lake")...), ""},
		{"linked to one while nothing gives", van(t, third("parked")...), "fault bed battery battery-not-charged"},
		{"alternator too low for the relay", sloop(t, "regulated: 14.4 V", "regulated: 13.0 V"), "fault house battery-not-charged"},
	} {
		if got := strings.Join(saidOf(t, c.text, "battery-not-charged"), ", "); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// third is a further battery in the van, joined to the one in the seat box by a switch that is closed in some situations.
func third(in ...string) []string {
	changes := []string{"charging:\n", "  bed battery: {chemistry: AGM, capacity: 60 Ah, resistance: 5 mΩ, at: seat box, fed by: bed end, wire: {size: 16 mm², length: 150 mm}, returns to: body stud, return wire: {size: 16 mm², length: 300 mm}}\ncharging:\n",
		"fuses:\n", "fuses:\n  bed start: {type: class T, rating: 50 A, at: seat box, fed by: house, wire: {size: 16 mm², length: 150 mm}}\n  bed end: {type: class T, rating: 50 A, at: seat box, fed by: join, wire: {size: 16 mm², length: 150 mm}}\n",
		"switches:\n", "switches:\n  join: {type: battery switch 300 A, at: seat box, fed by: bed start, wire: {size: 16 mm², length: 300 mm}}\n"}
	for _, s := range in {
		changes = append(changes, "  "+s+": {", "  "+s+": {closed: [join], ")
	}
	return changes
}

// cabled is the van with a switch in the alternator's cable.
func cabled(t *testing.T, on string) []byte {
	return van(t, "charging:\n", "charging:\n  fed by: cable switch\n  at: engine bay\n  wire: {size: 50 mm², length: 1 m}\n",
		"switches:\n", "switches:\n  cable switch: {type: battery switch 300 A, at: engine bay, fed by: cable fuse, wire: {size: 50 mm², length: 200 mm}}\n",
		"fuses:\n", "fuses:\n  cable fuse: {type: class T, rating: 175 A, at: engine bay, fed by: battery, wire: {size: 50 mm², length: 150 mm}}\n",
		"engine: cruise, on: [", "engine: cruise, "+on+"on: [", "engine: idle, on: [", "engine: idle, "+on+"on: [")
}

// A switch between the running alternator and the battery makes a load dump; one that is open throughout does not.
func TestSwitchInChargingCable(t *testing.T) {
	for on, want := range map[string]string{"": "", "closed: [cable switch], ": "advice cable switch load-dump"} {
		if got := strings.Join(saidOf(t, cabled(t, on), "load-dump"), ", "); got != want {
			t.Errorf("with %q: %q, want %q", on, got, want)
		}
	}
}

// A charging system that is cut off from the battery gives nothing at any speed.
func TestChargingCutOff(t *testing.T) {
	for on, want := range map[string]string{"": "fault driving, fault waiting", "closed: [cable switch], ": ""} {
		var got []string
		for _, f := range open(assess(t, "links.yaml", cabled(t, on))) {
			if f.Rule == "charging-deficit" {
				got = append(got, f.Severity.String()+" "+f.Part)
				if !strings.Contains(f.What, "charging gives 0 A") || !strings.Contains(f.What, "nothing from the engine reaches the battery") || strings.Contains(f.What, "keeps up") {
					t.Errorf("it contradicts itself: %s", f.What)
				}
			}
		}
		slices.Sort(got)
		if s := strings.Join(got, ", "); s != want {
			t.Errorf("with %q on: %q, want %q", on, s, want)
		}
	}
}

// A lithium start battery rests above the 13.3 V at which the DC-DC charger starts, a lead battery below.
func TestChargerRunsOn(t *testing.T) {
	lithium := van(t, "battery: {chemistry: AGM, capacity: 80 Ah", "battery: {chemistry: LiFePO4, board: 100 A, capacity: 80 Ah")
	for _, c := range []struct {
		text []byte
		want string
	}{{van(t), ""}, {lithium, "fault booster standby-drain"}} {
		if got := strings.Join(saidOf(t, c.text, "standby-drain"), ", "); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// PWM: 10 A are 185 W at 18.5 V. MPPT: 20 A and a half more at 14.3 V are 456 W of panels at 0.94.
func TestPanelOverController(t *testing.T) {
	for _, c := range [][3]string{{"PWM controller 10 A", "185 W", ""}, {"PWM controller 10 A", "186 W", "fault roof charger panel-over-controller"},
		{"MPPT controller 20 A", "456 W", ""}, {"MPPT controller 20 A", "457 W", "advice roof charger panel-over-controller"}} {
		text := van(t, "MPPT controller 20 A", c[0], "panel: 200 W", "panel: "+c[1])
		if got := strings.Join(saidOf(t, text, "panel-over-controller"), ", "); got != c[2] {
			t.Errorf("%s on %s: %q, want %q", c[1], c[0], got, c[2])
		}
	}
}

// A further battery that its protection has switched off is not helped by a larger one: by 15.6 V of the DC-DC charger,
// which a lower one mends, by 55 A and more of an inverter through a protection of 50 A, which fewer loads do.
func TestProtectionOpensOnARide(t *testing.T) {
	for want, text := range map[string][]byte{
		"set the charger lower":   van(t, "type: DC-DC charger 30 A", "type: DC-DC charger 30 A\n    output: 15.6 V"),
		"run fewer loads at once": van(t, "board: 150 A", "board: 50 A", "duty: 20 %, on for: 10 min, every: 50 min, ", "", "  to the coast:\n", "  cooking: {legs: [{lasts: 1 h, key: off, on: [inverter]}]}\n  to the coast:\n"),
	} {
		found := false
		for _, f := range open(assess(t, "links.yaml", text)) {
			if f.Rule == "ride-empties-battery" {
				if found = true; !strings.HasPrefix(f.Change, want) || !strings.Contains(f.What, "switches itself off") || !strings.Contains(f.Why, "protection") && !strings.Contains(f.Why, "switches the battery off") {
					t.Errorf("%s: %s; %s", f.What, f.Why, f.Change)
				}
			}
		}
		if !found {
			t.Errorf("nothing that says %q", want)
		}
	}
}

// What an isolator's output passes is the machine's current: 1200 W at the battery behind it are 100 A, and with 40 W of the
// boat's more than the 100 A of the fuse there, which the battery gives.
func TestFuseBehindAnIsolator(t *testing.T) {
	if got := saidOf(t, []byte(buildtest.Machines), "feed-fuse-under-branches"); len(got) > 0 {
		t.Error(got)
	}
}
