package rules_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/rules"
)

// TestReversingIsJudged: what a motor between two relays asks of fuse, contacts and
// situations is found by the rules that there are, at either end. It draws 12 A: the
// break contact of a micro relay carries 10 A, a mini relay's 30 A.
func TestReversingIsJudged(t *testing.T) {
	const harness = `
fuses:
  lift fuse: {type: blade C, rating: 20 A, at: battery tray, fed by: battery, wire: {size: 2.5 mm², length: 100 mm}}
  pilot: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
switches:
  up: {rating: 5 A, at: battery tray, momentary: yes, fed by: pilot, wire: {size: 1 mm², length: 100 mm}}
  down: {rating: 5 A, at: battery tray, momentary: yes, fed by: pilot, wire: {size: 1 mm², length: 100 mm}}
relays:
  raise: {form: %[1]s changeover, at: battery tray, fed by: lift fuse, wire: {size: 2.5 mm², length: 100 mm}, returns to: frame, return wire: {size: 2.5 mm², length: 100 mm}, coil: {fed by: up, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
  lower: {form: %[1]s changeover, at: battery tray, fed by: %[2]s, wire: {size: 2.5 mm², length: 100 mm}, returns to: frame, return wire: {size: 2.5 mm², length: 100 mm}, coil: {fed by: down, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  lift: {current: 12 A, rated at: 12 V, behaves: motor, inrush: {peak: 1.5, time: 50 ms}, protected motor: yes, minimum voltage: 10 V, on for: 10 s, every: 5 min, at: rear, fed by: raise, wire: {size: 2.5 mm²}, returns to: lower, return wire: {size: 2.5 mm²}}
situations:
  lifting: {engine: cruise, on: [lift]}
  lowering: {engine: cruise, %[3]s}
`
	for name, c := range map[string]struct {
		form, feed, lowering string
		want                 []string // rule and part, or a word of the sentence
	}{
		"clean":           {"mini", "lift fuse", "reversed: [lift]", nil},
		"weak contacts":   {"micro", "lift fuse", "reversed: [lift]", []string{"relay-contact-overload K1:30-87a", "relay-contact-overload K2:30-87a"}},
		"one way only":    {"mini", "lift fuse", "on: none", []string{"data-missing no situation runs lift in reverse"}},
		"unfused one way": {"mini", "battery", "reversed: [lift]", []string{"unfused-conductor W"}},
	} {
		var got []string
		for _, f := range assess(t, "lift.yaml", []byte(example.Design(fmt.Sprintf(harness, c.form, c.feed, c.lowering)))) {
			got = append(got, f.Rule+" "+f.What)
		}
		for _, want := range c.want {
			rule, word, _ := strings.Cut(want, " ")
			if !slices.ContainsFunc(got, func(s string) bool { return strings.HasPrefix(s, rule+" ") && strings.Contains(s, word) }) {
				t.Errorf("%s: no %s among\n%s", name, want, strings.Join(got, "\n"))
			}
		}
		if c.want == nil && len(got) > 0 {
			t.Errorf("%s: %s", name, strings.Join(got, "\n"))
		}
	}
}

// A motor with both ends on one half never runs, and no situation is asked for it.
func TestBothEndsOnOneHalf(t *testing.T) {
	bad := strings.Replace(rules.Find("reversing-both-on").Bad, "returns to: lower", "returns to: raise", 1)
	var got []string
	for _, f := range assess(t, "lift.yaml", []byte(example.Design(bad))) {
		if f.Part == "lift" {
			got = append(got, f.Rule+": "+f.What)
		}
	}
	want := []string{"reversing-both-on: both ends of lift are on the same contact of raise, so it never runs"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
