package rules_test

import (
	"testing"

	"fusewright/harness/review/finding"
)

// A wire that leads to a fuse of its own is a tail within the practice's distance
// alone: there a short that melts it is advice, beyond it a danger, and a longer
// distance of the design from the battery changes nothing.
func TestTailsAreNotSilent(t *testing.T) {
	const behind = `
limits: {fuse distance: 5 m}
fuses:
  main: {type: blade C, rating: 40 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}, stays live: "a test"}
  own: {type: blade C, rating: 5 A, at: rear, fed by: main, wire: {size: 0.5 mm², LENGTH}, stays live: "a test"}
loads:
  lamp: {power: 20 W, behaves: resistor, at: rear, fed by: own, wire: {length: 300 mm}, returns to: frame, own switch: yes, stays live: "a test"}
battery: {chemistry: AGM, capacity: 60 Ah, rate: 10 h, resistance: 5 mΩ, at: battery tray}
`
	for _, c := range []struct {
		length, rule string
		want         finding.Severity
	}{
		{"length: 4 m", "fuse-over-wire", finding.Danger},
		{"length: 1 m, sheathed: yes", "fuse-over-wire", 0},
		{"length: 1.02 m, sheathed: yes", "fuse-over-wire", finding.Danger},
	} {
		if got := gravest(t, replace(behind, "LENGTH", c.length), c.rule); got != c.want {
			t.Errorf("%s: %s is %s, want %s", c.length, c.rule, got, c.want)
		}
	}
	strip := replace(behind, "LENGTH", "length: 1 m, sheathed: yes", "blade C, rating: 40 A", "strip SF51, rating: 100 A", "size: 6 mm²", "size: 25 mm²")
	if got := gravest(t, strip, "short-overheats-wire"); got != finding.Advice {
		t.Errorf("a short that melts a tail is %s", got)
	}
}

// Two fuses of 20 A that meet hold 40 A for good: 2.5 mm² behind them is a danger at
// 1.5 times of 25 A, 6 mm² is none. Behind a common fuse of 20 A they let through 20 A, and
// of a change-over only one is closed at a time.
func TestFeedsThatMeetAddUp(t *testing.T) {
	const meet = `
fuses:
  main: {type: blade C, rating: MAIN, at: battery tray, fed by: battery, wire: {size: 10 mm², length: 100 mm}, stays live: "a test"}
  left: {type: blade C, rating: 20 A, at: battery tray, fed by: LEFT, wire: {size: 10 mm², length: 100 mm}, stays live: "a test"}
  right: {type: blade C, rating: 20 A, at: battery tray, fed by: RIGHT, wire: {size: 10 mm², length: 100 mm}, stays live: "a test"}
splices:
  joint: {at: battery tray, fed by: [left, right], wire: {size: 6 mm², length: 100 mm}}
loads:
  heater: {power: 100 W, behaves: resistor, at: rear, fed by: joint, wire: {size: SIZE}, returns to: battery negative, return wire: {size: 10 mm²}, own switch: yes, stays live: "a test"}
`
	for _, c := range []struct {
		name, main, left, right, size string
		want                          finding.Severity
	}{
		{"apart, thin", "40 A", "battery", "battery", "1.5 mm²", finding.Danger},
		{"apart, thick", "40 A", "battery", "battery", "6 mm²", 0},
		{"below one of 20 A", "20 A", "main", "main", "2.5 mm²", 0},
		{"below one of 40 A", "40 A", "main", "main", "1.5 mm²", finding.Danger},
		{"one below another of 5 A", "5 A", "main", "battery", "2.5 mm²", 0},
	} {
		text := replace(meet, "MAIN", c.main, "LEFT", c.left, "RIGHT", c.right, "SIZE", c.size)
		if got := gravest(t, text, "fuse-over-wire"); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// The library's navigation unit has a lead of 0.5 mm² and 5 A at most, as is usual: on
// its own 5 A it is silent, above that advice, and above 1.5 times of what the lead may
// carry a danger, since a short burns it. The maker's own largest fuse is a fault.
func TestThinLeadsOfTheLibrary(t *testing.T) {
	const unit = `
fuses:
  unit fuse: {type: blade C, rating: FUSE, at: battery tray, fed by: keyed feed, wire: {size: 6 mm², length: 100 mm}}
loads:
  the unit: {type: navigation unit, OWN at: rear, fed by: unit fuse, wire: {size: 6 mm²}, returns to: frame}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 60 A, spare: 6 A, supervised: no}
`
	gravities(t, "fuse-over-accessory", unit, "FUSE | OWN", map[string]finding.Severity{
		"5 A | ": 0, "7.5 A | ": finding.Advice, "15 A | ": finding.Advice, "30 A | ": finding.Danger,
		"7.5 A | maximum fuse: 7.5 A,": 0, "10 A | maximum fuse: 7.5 A,": finding.Fault,
		"30 A | maximum fuse: 30 A, lead: {size: 6 mm²},": 0,
	})
}

// A wire to what is on for a minute at once is not left in an overload that hurts it after
// longer; of a motor of which only a duty is said nobody knows how long it runs.
func TestCurveOfWhatIsOnForATime(t *testing.T) {
	const text = `
fuses:
  lamp fuse: {type: strip SF51, rating: 250 A, at: battery tray, fed by: battery, wire: {size: 70 mm², length: 100 mm}}
loads:
  tail lamp: {current: 90 A, behaves: motor, TIMES, at: battery tray, fed by: lamp fuse, wire: {size: 35 mm², length: 3 m}, returns to: battery negative, return wire: {size: 35 mm², length: 3 m}, stays live: "a test"}
`
	gravities(t, "fuse-wire-curve", text, "TIMES", map[string]finding.Severity{"on for: 1 min, every: 10 min": 0, "on for: 4 min, every: 40 min": finding.Advice,
		"duty: 10 %": finding.Advice, "duty: 10 %, own switch: yes": 0})
}
