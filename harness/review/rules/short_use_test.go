package rules_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// saidBy is what one rule says of a design, first of its findings; "" for nothing.
func saidBy(t *testing.T, rule, text string) (string, finding.Severity) {
	t.Helper()
	for _, f := range assess(t, "said.yaml", []byte(text)) {
		if f.Rule == rule {
			return f.What, f.Severity
		}
	}
	return "", 0
}

// A horn that nothing but the key switches sounds as long as it is on, whether a situation
// lists it or not.
func TestLoadForMomentsWithoutASwitch(t *testing.T) {
	const text = `
taps:
  keyed feed: {at: battery tray, hot: HOT, fuse: 10 A, spare: 6 A, supervised: no}
switches:
  button: {type: horn button 10 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
loads:
  horn: {type: TYPE, at: rear, fed by: FEED, wire: {size: 1 mm²}, returns to: frame}
situations:
  night: {engine: cruise, on: [LISTED], with: [WITH]}
`
	const want = "horn is made to be on for 5 s at most, and nothing but the key switches it"
	for _, c := range []struct{ name, hot, kind, feed, listed, want string }{
		{"not listed", "key", "horn", "lamp fuse", "", want},
		{"listed", "key", "horn", "lamp fuse", "horn", want},
		{"a button", "key", "horn", "button", "horn", ""},
		{"its own switch", "key", "horn, own switch: yes", "lamp fuse", "horn", ""},
		{"the vehicle's button", "horn button", "horn", "lamp fuse", "horn", ""},
		{"always live is live-with-key-off", "always", "horn", "lamp fuse", "horn", ""},
		{"a load for good", "key", "LED auxiliary lamp", "lamp fuse", "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			with := ""
			if c.hot == "horn button" {
				with = c.hot
			}
			what, severity := saidBy(t, "on-but-not-listed",
				example.Design(replace(text, "HOT", c.hot, "WITH", with, "TYPE", c.kind, "FEED", c.feed, "LISTED", c.listed)))
			if what != c.want || c.want != "" && severity != finding.Fault {
				t.Errorf("%v %q, want %q", severity, what, c.want)
			}
		})
	}
}

// linked is a design with a house battery behind a sensing relay, silent as it is.
func linked(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("../../../testdata/rules/ok/house-by-sensing-relay.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// Two feeds of a pump from one fuse at the house battery: the fuses of the link charge that
// battery, and are not above the pump.
func TestTwoFeedsFromTheHouseBattery(t *testing.T) {
	two := strings.Replace(linked(t), "fed by: lamp end, wire: {size: 1 mm²}", "fed by: [left, right], wire: {size: 1 mm²}", 1)
	for _, c := range []struct{ name, right, want string }{
		{"one fuse", "lamp end", ""},
		{"two fuses", "spare end", "cabin lamp has 2 feeds, so another one bypasses fuse F3 (lamp end, 5 A) and fuse F4 (spare end, 5 A)"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := two + "splices:\n  left: {at: rear, fed by: lamp end}\n  right: {at: rear, fed by: " + c.right + "}\n"
			text = strings.Replace(text, "relays:\n", "  spare end: {type: blade C, rating: 5 A, at: rear, fed by: house, wire: {length: 120 mm}}\nrelays:\n", 1)
			if what, _ := saidBy(t, "back-feed", text); what != c.want {
				t.Errorf("%q, want %q", what, c.want)
			}
		})
	}
}

// A house battery whose negative cable is not given has none in the cut list either.
func TestNegativeCableOfAFurtherBattery(t *testing.T) {
	given := linked(t)
	if what, _ := saidBy(t, "data-missing", given); what != "" {
		t.Errorf("with the cable: %q", what)
	}
	what, _ := saidBy(t, "data-missing", strings.Replace(given, "{length: 120 mm}, returns to: frame}", "{length: 120 mm}}", 1))
	if want := "the negative cable of house is not given: no resistance is assumed for it, and it is in no cut list or bill"; what != want {
		t.Errorf("%q, want %q", what, want)
	}
}
