package rules_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/review/finding"
)

// A resistor that is fed past in every position is said to hold nothing back, and one that nothing is fed by; not one that is in use in a position which no
// situation lists.
func TestResistorAlwaysFedPast(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/ok/two-speeds.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, old, new, want string }{
		{"as it is", "", "", ""},
		{"low listed nowhere", "switches: {speed: low, pad: low}", "switches: {speed: high, pad: high}", ""},
		{"both outputs in low", "[off, low, high]", "{off: none, low: [low, high], high: high}", "blower is fed past dropper in every position and situation: it holds nothing back"},
		{"past it from its own output", "[speed high, dropper]", "[speed high, speed low, dropper]", "blower is fed past dropper in every position and situation: it holds nothing back"},
		{"in a return", "{low: step, high: full}", "{low: [step, full], high: full}", "seat pad is fed past pad dropper in every position and situation: it holds nothing back"},
		{"nothing behind it", "[speed high, dropper]", "[speed high, speed low]", "nothing draws through dropper"},
	} {
		got := ""
		text := strings.Replace(string(src), c.old, c.new, 1)
		for _, f := range assess(t, "two-speeds.yaml", []byte(text)) {
			if f.Rule == "part-unused" && f.Severity == finding.Advice {
				got += f.What
			}
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
