package rules_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/review/finding"
)

// house is the design with a further battery, changed: pairs of old and new text.
func house(t *testing.T, changes ...string) []byte {
	t.Helper()
	src, err := os.ReadFile(filepath.Join(casesDir, "ok", "house-by-sensing-relay.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	text := string(src)
	for i := 0; i < len(changes); i += 2 {
		if !strings.Contains(text, changes[i]) {
			t.Fatalf("the design has no %q", changes[i])
		}
		text = strings.Replace(text, changes[i], changes[i+1], 1)
	}
	return []byte(text)
}

const (
	houseTwo   = "  house two: {chemistry: AGM, capacity: 30 Ah, rate: 10 h, resistance: 14 mΩ, at: rear, fed by: end two, wire: {length: 120 mm}}\n"
	houseEnds  = "at: rear, fed by: house end, wire: {length: 120 mm}, returns to: frame}"
	lampEnd    = "lamp end: {type: blade C, rating: 5 A, at: rear, fed by: house, wire: {length: 120 mm}}"
	lampEnd30  = "lamp end: {type: blade C, rating: 30 A, at: rear, fed by: house, wire: {size: 6 mm², length: 120 mm}}"
	lamp       = "at: rear, fed by: lamp end, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 1 mm²}, own switch: true"
	lamp30     = "at: rear, fed by: lamp end, maximum fuse: 30 A, wire: {size: 6 mm²}, returns to: frame, return wire: {size: 6 mm²}, own switch: true"
	lampEndOut = "  " + lampEnd + "\n"
)

// What two batteries drive through cables is judged at both.
func TestTwoBatteries(t *testing.T) {
	cable := func(to, size string) string {
		return strings.TrimSuffix(houseEnds, ", returns to: frame}") + ", returns to: " + to + ", return wire: {size: " + size + "}}"
	}
	bus := "grounds:\n  bus: {kind: ground block, at: rear, returns to: battery negative, wire: {size: 0.75 mm²}}"
	tapped := func(size string) string {
		return "at: rear, fed by: charging relay, wire: {size: " + size + "}, returns to: frame, return wire: {size: " + size + "}, own switch: true"
	}
	for _, c := range []struct {
		name    string
		changes []string
		want    string // rules of the findings above advice
	}{
		{"a house's negative thinner than its fuses", []string{houseEnds, cable("frame", "0.75 mm²"), lampEnd, lampEnd30, lamp, lamp30}, "return-below-fuse"},
		{"a house's negative good for them", []string{houseEnds, cable("frame", "6 mm²"), lampEnd, lampEnd30, lamp, lamp30}, ""},
		{"whose cable only a fault to the frame passes", []string{houseEnds, cable("frame", "1.5 mm²"), lampEnd, strings.Replace(lampEnd30, "30 A", "40 A", 1),
			lamp, strings.NewReplacer("returns to: frame", "returns to: house negative", "30 A", "40 A").Replace(lamp30)}, "fuse-wire-curve"},
		{"thinner than the link's fuse alone", []string{houseEnds, cable("frame", "0.75 mm²")}, "return-below-fuse"},
		{"behind a ground block", []string{houseEnds, cable("bus", "6 mm²"), "grounds:", bus, lampEnd, lampEnd30, lamp, lamp30}, "return-below-fuse"},
		{"a load on the middle of the link", []string{lampEndOut, "", lamp, tapped("2.5 mm²")}, "back-feed fuse-over-wire return-below-fuse"},
		{"gel charged too high", []string{"regulated: 14.3 V", "regulated: 14.8 V", "house: {chemistry: AGM", "house: {chemistry: gel"}, "charging-over-battery"},
		{"gel charged right", []string{"house: {chemistry: AGM", "house: {chemistry: gel"}, ""},
		{"current between two further batteries", []string{"fuses:\n", houseTwo + "fuses:\n  end two: {type: blade C, rating: 20 A, at: rear, fed by: charging relay}\n"}, ""},
		{"two, and the first gives to both", []string{"fuses:\n", houseTwo + "fuses:\n  end two: {type: blade C, rating: 20 A, at: rear, fed by: start end}\n", lampEnd, strings.Replace(lampEnd, "fed by: house", "fed by: house two", 1)}, "live-with-key-off start-battery-shared"},
		{"one behind its own fuse there", []string{lampEnd, strings.Replace(lampEnd, "fed by: house", "fed by: charging relay", 1)}, ""},
		{"whose wires bear both fuses", []string{lampEndOut, "", lamp, tapped("6 mm²")}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, f := range open(assess(t, "house.yaml", house(t, c.changes...))) {
				t.Logf("%v %s: %s", f.Severity, f.Rule, f.What)
				if f.Severity.String() != "advice" && !slices.Contains(got, f.Rule) {
					got = append(got, f.Rule)
				}
			}
			slices.Sort(got)
			if s := strings.Join(got, " "); s != c.want {
				t.Errorf("found %q, want %q", s, c.want)
			}
		})
	}
}

// A position that lights a further lamp is seen too where another situation names every load one by one.
func TestPositionLightsMore(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(casesDir, "on-but-not-listed.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for position, want := range map[string]string{"[bow, stern]": "tail lamp", "stern": ""} {
		text := strings.NewReplacer("\nloads:\n", "\nswitches:\n  lights: {rating: 10 A, at: battery tray, fed by: lamp fuse, positions: {off: none, under way: [bow, stern], at anchor: "+position+"}}\nloads:\n",
			"at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame} # want", "at: rear, fed by: lights bow, returns to: frame} # want",
			"own switch: yes, at: rear, fed by: lamp fuse", "at: rear, fed by: lights stern",
			"on: [tail lamp]", "on: [tail lamp, work lamp]").Replace(string(src))
		got := ""
		for _, f := range assess(t, "positions.yaml", []byte(text)) {
			if f.Rule == "on-but-not-listed" {
				got = f.Part
			}
		}
		if got != want {
			t.Errorf("at anchor %s: %q on though not listed, want %q", position, got, want)
		}
	}
}

// A charger whose source is there in no situation was not checked, and that is said.
func TestChargerWithoutItsSource(t *testing.T) {
	shore := "returns to: frame}\nchargers:\n  mains: {type: shore charger 10 A, at: rear, returns to: frame, return wire: {size: 4 mm²}}\n"
	end := "fuses:\n  dock end: {type: blade C, rating: 15 A, at: rear, fed by: mains, wire: {size: 4 mm², length: 120 mm}}\n"
	for given, want := range map[string]bool{"": true, ", shore: yes": false} {
		got := false
		for _, f := range assess(t, "house.yaml", house(t, "fed by: house end, wire: {length: 120 mm}, returns to: frame}\n", "fed by: [house end, dock end], wire: {length: 120 mm}, "+shore,
			"fuses:\n", end, "on: [cabin lamp]}", "on: [cabin lamp]"+given+"}")) {
			got = got || f.Rule == "load-never-on" && f.Part == "mains"
		}
		if got != want {
			t.Errorf("%q: said %v, want %v", given, got, want)
		}
	}
}

// A further battery's resistance that slipped by a unit is asked about as the first one's is.
func TestResistanceOfAFurtherBattery(t *testing.T) {
	for given, meant := range map[string]string{"14 mΩ": "", "60 mΩ": "", "140 mΩ": "14 mΩ", "1.4 Ω": "14 mΩ"} {
		got := ""
		for _, f := range assess(t, "house.yaml", house(t, "resistance: 14 mΩ", "resistance: "+given)) {
			if f.Rule == "implausible-figure" && f.Part == "house" {
				got = f.Meant.Text
			}
		}
		if got != meant {
			t.Errorf("%s: meant %q, want %q", given, got, meant)
		}
	}
}

// Of a link without a fuse its own wires have none: what hangs on the other battery is behind that one's fuses.
func TestUnfusedLinkAlone(t *testing.T) {
	text := house(t, "  start end: {type: blade C, rating: 20 A, at: battery tray, fed by: battery, wire: {length: 120 mm}}\n", "",
		"fed by: start end", "fed by: battery", "  house end: {type: blade C, rating: 20 A, at: rear, fed by: charging relay}\n", "",
		"fed by: house end", "fed by: charging relay")
	var got []string
	for _, f := range assess(t, "house.yaml", text) {
		if f.Rule == "unfused-conductor" {
			got = append(got, f.Part)
		}
	}
	slices.Sort(got)
	if s := strings.Join(got, ", "); s != "charging relay, house" {
		t.Errorf("without a fuse: %s", s)
	}
}

// A connector's contact is held against the fuse before it as a plug's is: 40 A before 18 A.
func TestConnectorContactBelowItsFuse(t *testing.T) {
	for rating, want := range map[string]finding.Severity{"40 A": finding.Fault, "30 A": 0} {
		src, err := os.ReadFile(filepath.Join(casesDir, "ok", "connectors.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Replace(string(src), "fuses:\n", "fuses:\n  big fuse: {type: blade C, rating: "+rating+", at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}\n", 1)
		text = strings.Replace(text, "partings:\n", "partings:\n  heat plug: {family: sealed 1.5, at: hinge, takes: heater}\n", 1)
		text = strings.Replace(text, "\nloads:\n", "\nloads:\n  heater: {power: 60 W, behaves: resistor, at: rear, fed by: big fuse, maximum fuse: 40 A, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}, own switch: true}\n", 1)
		got := finding.Severity(0)
		for _, f := range assess(t, "connector.yaml", []byte(text)) {
			if f.Rule == "part-below-fuse" {
				got = f.Severity
			}
		}
		if got != want {
			t.Errorf("fuse of %s: %v, want %v", rating, got, want)
		}
	}
}

// A connector holds a wire at its place: 100 mm do not reach over the 400 and 200 mm on its
// two sides, nor do 590; 600 mm do.
func TestWireTooShortForItsConnector(t *testing.T) {
	for length, want := range map[string]finding.Severity{"50 mm": finding.Fault, "100 mm": finding.Advice, "590 mm": finding.Advice, "600 mm": 0} {
		src, err := os.ReadFile(filepath.Join(casesDir, "ok", "connectors.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Replace(string(src), "fed by: button, returns to: frame", "fed by: button, wire: {length: "+length+"}, returns to: frame", 1)
		got := finding.Severity(0)
		for _, f := range assess(t, "connector.yaml", []byte(text)) {
			if f.Rule == "wire-too-short" {
				got = f.Severity
			}
		}
		if got != want {
			t.Errorf("%s: %v, want %v", length, got, want)
		}
	}
}
