package rules_test

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// Vehicles: bare, 7 in as on boats are free, 300 mm advice, 1 m a fault. Sheathed 40 in
// are free and twice that a fault; on boats twice 7 in, and sheathed from the battery's post
// 72 in advice, but where petrol vapour can gather.
func TestFuseDistances(t *testing.T) {
	const lamp = `
practice: PRACTICE
wire: {insulation: tinned marine 105 °C metric, size: 1.5 mm²}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {LENGTH}, stays live: "a test"}
`
	for _, c := range []struct {
		practice, length string
		want             finding.Severity
	}{
		{"motorcycle", "length: 178 mm", 0},
		{"motorcycle", "length: 179 mm", finding.Advice},
		{"motorcycle", "length: 300 mm", finding.Advice},
		{"motorcycle", "length: 301 mm", finding.Fault},
		{"off-road", "length: 1 m", finding.Fault},
		{"off-road", "length: 1001 mm", finding.Danger},
		{"off-road", "length: 1016 mm, sheathed: yes", 0},
		{"off-road", "length: 1017 mm, sheathed: yes", finding.Fault},
		{"off-road", "length: 2033 mm, sheathed: yes", finding.Danger},
		{"marine", "length: 179 mm", finding.Fault},
		{"marine", "length: 356 mm", finding.Fault},
		{"marine", "length: 357 mm", finding.Danger},
		{"marine", "length: 1016 mm, sheathed: yes", 0},
		{"marine", "length: 1017 mm, sheathed: yes", finding.Advice},
		{"marine", "length: 1829 mm, sheathed: yes", finding.Advice},
		{"marine", "length: 1830 mm, sheathed: yes", finding.Fault},
		{"marine", "length: 2032 mm, sheathed: yes", finding.Fault},
		{"marine", "length: 2033 mm, sheathed: yes", finding.Danger},
		{"marine with petrol", "length: 1016 mm, sheathed: yes", 0},
		{"marine with petrol", "length: 1017 mm, sheathed: yes", finding.Fault},
		{"marine with petrol", "length: 2033 mm, sheathed: yes", finding.Danger},
	} {
		practice, petrol := strings.CutSuffix(c.practice, " with petrol")
		places := ""
		if petrol {
			places = "places:\n  battery tray: {ambient: 40 °C}\n  rear: {ambient: 35 °C, petrol vapour: yes}\n"
		}
		if got := gravest(t, places+replace(lamp, "PRACTICE", practice, "LENGTH", c.length), "fuse-too-far"); got != c.want {
			t.Errorf("%s, %s: %s, want %s", c.practice, c.length, got, c.want)
		}
	}
}

// A cranking circuit needs no fuse; what hangs on its cable besides does.
func TestCrankingCircuitIsUnfused(t *testing.T) {
	const text = `
relays:
  starter relay: {form: winch contactor 12 V, at: battery tray, fed by: battery, wire: {size: 25 mm², length: 300 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode}}
loads:
  starter: {TYPE, at: rear, fed by: starter relay, wire: {size: 25 mm²}, returns to: battery negative, return wire: {size: 25 mm²}}
OTHER`
	gravities(t, "unfused-conductor", text, "TYPE | OTHER", map[string]finding.Severity{
		"type: starter motorcycle | ":                                                                           0,
		"current: 120 A, behaves: motor | ":                                                                     finding.Danger,
		"type: starter motorcycle, current: 60 A | ":                                                            0,
		"type: starter motorcycle, current: 59 A | ":                                                            finding.Danger,
		"type: starter motorcycle, on for: 60 s, every: 10 min | ":                                              0,
		"type: starter motorcycle, on for: 61 s, every: 10 min | ":                                              finding.Danger,
		"type: starter motorcycle, behaves: resistor | ":                                                        finding.Danger,
		"type: starter motorcycle |   horn: {type: horn, at: rear, fed by: starter relay, returns to: frame}\n": finding.Danger,
	})
	thin := strings.NewReplacer("TYPE", "type: starter motorcycle", "OTHER", "", "25 mm²", "6 mm²").Replace(text)
	if got := gravest(t, thin, "unfused-conductor"); got != finding.Danger {
		t.Errorf("6 mm² is no starter cable: %s", got)
	}
}

// The cable to an isolator from which the starter is fed needs no fuse, whatever branches off there: a branch is judged from
// where it leaves the starter cable, without a fuse a danger, and by how far off its first fuse is.
func TestBranchOfStarterCable(t *testing.T) {
	const text = `
switches:
  isolator: {type: battery switch 300 A, at: battery tray, fed by: battery, wire: {size: 25 mm², length: 1.2 m}}
fuses:
  house fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: FEED, wire: {size: 2.5 mm², length: LENGTH}}
loads:
  starter: {type: starter motorcycle, at: rear, fed by: isolator, wire: {size: 25 mm²}, returns to: battery negative, return wire: {size: 25 mm²}}
  horn: {type: horn, at: rear, fed by: HORN, wire: {size: 2.5 mm²}, returns to: frame}
`
	for _, c := range []struct {
		feed, length, horn string
		want               []string // rule, severity and wire
	}{
		{"isolator", "150 mm", "house fuse", nil},
		{"starter", "150 mm", "house fuse", nil},
		{"isolator", "400 mm", "house fuse", []string{"fuse-too-far fault house fuse"}},
		{"isolator", "1.1 m", "house fuse", []string{"fuse-too-far danger house fuse"}},
		{"isolator", "150 mm", "isolator", []string{"unfused-conductor danger horn"}},
	} {
		var got []string
		for _, f := range assess(t, "branch.yaml", []byte(example.Design(strings.NewReplacer("FEED", c.feed, "LENGTH", c.length, "HORN", c.horn).Replace(text)))) {
			if f.Rule == "unfused-conductor" || f.Rule == "fuse-too-far" {
				got = append(got, f.Rule+" "+f.Severity.String()+" "+f.Part)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s, %s, horn from %s: %q, want %q", c.feed, c.length, c.horn, got, c.want)
		}
	}
}
