package rules_test

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// TestOneSourceOrTwo: fuses in parallel of one source add up, 5 A + 5 A; a keyed tap beside
// the battery is made live backwards; two batteries feed each other.
func TestOneSourceOrTwo(t *testing.T) {
	fed := func(second, more string) string {
		return example.Design(`
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  spare fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: ` + second + `, wire: {size: 1 mm², length: 100 mm}}
` + more + `loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: [lamp fuse, spare fuse], wire: {size: 1 mm²}, returns to: frame}
`)
	}
	for _, c := range []struct {
		name, src string
		severity  finding.Severity
		why       string
	}{
		{"one tap twice", fed("keyed feed", ""), finding.Danger, "one source twice, fuses in parallel: with both feeds live nothing behind their meeting opens below 5 A + 5 A = 10 A"},
		{"tap and battery", fed("battery", ""), finding.Danger, "one battery by two ways that are not live together"},
		{"two batteries", fed("house", "batteries:\n  house: {chemistry: AGM, capacity: 50 Ah, rate: 20 h, resistance: 6 mΩ, at: rear, returns to: battery negative}\n"),
			finding.Danger, "two batteries: with one fuse out the other battery still feeds the fault"},
	} {
		severity, said := finding.Severity(0), ""
		for _, f := range open(assess(t, "feeds.yaml", []byte(c.src))) {
			if f.Rule == "back-feed" {
				severity, said = f.Severity, f.Why
			}
		}
		if severity != c.severity || !strings.Contains(said, c.why) {
			t.Errorf("%s: %v, %q", c.name, severity, said)
		}
	}
}

// aRing is two bars, each fed from the battery over a fuse of 10 A and joined over a third, each with a lamp of 20 W behind 3 A.
const aRing = `
fuses:
  left: {type: blade C, rating: 10 A, at: battery tray, fed by: battery, wire: {size: 2.5 mm², length: 100 mm}, stays live: "a ring"}
  right: {type: blade C, rating: 10 A, at: battery tray, fed by: battery, wire: {size: 2.5 mm², length: 100 mm}, stays live: "a ring"}
  joint: {type: blade C, rating: 10 A, at: rear, fed by: front bar, wire: {size: 2.5 mm², length: 500 mm}}
  front way: {type: blade C, rating: 3 A, at: rear, fed by: front bar, wire: {size: 2.5 mm², length: 300 mm}}
  rear way: {type: blade C, rating: 3 A, at: rear, fed by: rear bar, wire: {size: 2.5 mm², length: 300 mm}}
splices:
  front bar: {at: rear, fed by: left, wire: {size: 2.5 mm²}}
  rear bar: {at: rear, fed by: {right: 2.5 mm², joint: {size: 2.5 mm², length: 500 mm}}}
loads:
  front lamp: {power: 20 W, behaves: resistor, at: rear, fed by: front way, wire: {size: 1 mm²}, returns to: frame, stays live: "a ring", own switch: true}
  rear lamp: {power: 20 W, behaves: resistor, at: rear, fed by: rear way, wire: {size: 1 mm²}, returns to: frame, stays live: "a ring", own switch: true}
`

// TestRing: what a wire of 40 °C bears is some 15 A of 1 mm² and 27 A of 2.5 mm² (class B, lone in its run at most). In a ring of 10 A
// each wire carries 10 A from either end: 1 mm² will do for a leg. Over 30 A at the far side the joining leg is fed with 30 A from there, which
// is more than 1 mm² bears at all. What hangs on a bar without a fuse may draw 10 A + 10 A.
func TestRing(t *testing.T) {
	for _, c := range []struct {
		name     string
		change   []string
		backFeed finding.Severity
		why      string
		dangers  string // rules that say danger at which part
	}{
		{"as it should be", nil, finding.Advice, "this is a ring", ""},
		{"a thin leg suits its fuse", []string{"joint: {size: 2.5", "joint: {size: 1"}, finding.Advice, "this is a ring", ""},
		{"larger fuses far away", []string{"right: {type: blade C, rating: 10 A", "right: {type: blade C, rating: 30 A", "joint: {type: blade C, rating: 10 A", "joint: {type: blade C, rating: 30 A",
			"joint: {size: 2.5", "joint: {size: 1", "right: 2.5 mm²", "right: 6 mm²"}, finding.Danger, "does not stand what", "back-feed rear bar, fuse-over-wire rear bar"},
		{"the near leg behind its small fuse is fed by the large one", []string{"right: {type: blade C, rating: 10 A", "right: {type: blade C, rating: 30 A", "joint: {type: blade C, rating: 10 A", "joint: {type: blade C, rating: 30 A",
			"right: 2.5 mm²", "right: 6 mm²", "joint: {size: 2.5", "joint: {size: 6", "fed by: front bar, wire: {size: 2.5 mm², length: 500 mm}", "fed by: front bar, wire: {size: 6 mm², length: 500 mm}",
			"fed by: left, wire: {size: 2.5", "fed by: left, wire: {size: 1"}, finding.Danger, "does not stand what", "back-feed rear bar, fuse-over-wire front bar"},
		{"unfused behind a bar, for one fuse", []string{"fed by: rear way, wire: {size: 1", "fed by: rear bar, wire: {size: 0.5"}, finding.Danger, "does not stand what", "back-feed rear bar, fuse-over-wire rear lamp"},
		{"unfused behind a bar, for both", []string{"fed by: rear way, wire: {size: 1 mm²}, returns to: frame", "fed by: rear bar, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}"}, finding.Advice, "this is a ring", ""},
		{"one fuse does not bear all", []string{"rear lamp: {power: 20 W", "rear lamp: {power: 120 W", "rear way: {type: blade C, rating: 3 A", "rear way: {type: blade C, rating: 15 A"}, finding.Advice, "this is a ring", ""},
		{"one feed is bare", []string{"{right: 2.5 mm²,", "{battery: 2.5 mm²,"}, finding.Danger, "", ""},
		{"a switch in one leg", []string{"fed by: left, wire: {size: 2.5 mm²}}", "fed by: cut, wire: {size: 2.5 mm²}}", "loads:", "switches:\n  cut: {rating: 20 A, at: rear, fed by: left, wire: {size: 2.5 mm²}}\nloads:"}, finding.Danger, "", ""},
	} {
		src := aRing
		for i := 0; i+1 < len(c.change); i += 2 {
			if !strings.Contains(src, c.change[i]) {
				t.Fatalf("%s: no %q", c.name, c.change[i])
			}
			src = strings.Replace(src, c.change[i], c.change[i+1], 1)
		}
		severity, why := finding.Severity(0), ""
		var dangers []string
		for _, f := range open(assess(t, "ring.yaml", []byte(example.Design(src)))) {
			if f.Rule == "back-feed" {
				severity, why = f.Severity, f.Why
			}
			if f.Severity == finding.Danger {
				dangers = append(dangers, f.Rule+" "+f.Part)
			}
		}
		if severity != c.backFeed || !strings.Contains(why, c.why) {
			t.Errorf("%s: back-feed %v, %q", c.name, severity, why)
		}
		slices.Sort(dangers)
		if got := strings.Join(dangers, ", "); c.dangers != "" && got != c.dangers || severity < finding.Danger && got != "" {
			t.Errorf("%s: %q, want %q", c.name, got, c.dangers)
		}
	}
}

// A bilge pump is fed by its float and by hand, each behind a fuse: advice. Of another
// load, or with one feed bare, it is a danger.
func TestPumpOnFloatAndHand(t *testing.T) {
	const pump = `
practice: marine
wire: {insulation: tinned marine 105 °C metric, size: 1.5 mm²}
fuses:
  float fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {length: 100 mm}}
  hand fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {length: 100 mm}}
  big fuse: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {length: 100 mm}}
switches:
  float switch: {type: float switch 15 A, at: rear, fed by: float fuse}
  hand switch: {type: toggle 20 A, at: rear, fed by: HAND}
loads:
  the pump: {type: TYPE, at: rear, fed by: [float switch, hand switch], wire: {length: 400 mm}, returns to: battery negative, stays live: "must run unattended"}
`
	gravities(t, "back-feed", pump, "TYPE | HAND", map[string]finding.Severity{
		"bilge pump | hand fuse":       finding.Advice,
		"fresh water pump | hand fuse": finding.Danger,
		"bilge pump | battery":         finding.Danger,
		"bilge pump | big fuse":        finding.Danger, // which the wires from the float do not bear
	})
}
