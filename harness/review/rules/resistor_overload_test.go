package rules_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/review/finding"
)

// By hand: 14.2 V over 5 Ω and 7 Ω drive 1.18 A, which make 7.0 W in the resistor; as is likely, with a load 10 % over
// its power, 7.7 W. A danger above its rating, advice above half of it. Shorted, 14.2 V make 40 W at 2.8 A, which a fuse of
// 5 A carries. A motor in its place draws 1.7 A at any speed: 14.5 W.
func TestResistorOverload(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/resistor-overload.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, old, new, says string
		want                 finding.Severity
	}{
		{"below its likely heat", "rating: 5 W", "rating: 7.4 W", "makes", finding.Danger},
		{"above its worst, over half", "rating: 5 W", "rating: 9 W", "half of that is usual", finding.Advice},
		{"just under twice", "rating: 5 W", "rating: 13.8 W", "half of that is usual", finding.Advice},
		{"just over twice", "rating: 5 W", "rating: 14.4 W", "", 0},
		{"not given", "rating: 5 W, ", "", "not given: in", finding.Advice},
		{"shorted behind its fuse", "rating: 5 W, thermal fuse: yes", "rating: 30 W", "shorted, dropper makes 40", finding.Advice},
		{"shorted, enough", "rating: 5 W, thermal fuse: yes", "rating: 45 W", "", 0},
		{"a motor at one current", "rating: 5 W, thermal fuse: yes", "rating: 14 W", "front lamp is taken as a fan or pump, with which dropper makes 5.", finding.Advice},
		{"a motor held fast", "rating: 5 W, thermal fuse: yes", "rating: 20 W", "held fast, dropper makes 2", finding.Advice},
	} {
		text := strings.Replace(string(src), c.old, c.new, 1)
		if strings.Contains(c.name, "motor") {
			text = strings.Replace(text, "{resistance: 7 Ω,", "{current: 1.7 A, rated at: 12 V, behaves: motor, protected motor: yes,", 1)
		}
		var got finding.Severity
		said := ""
		for _, f := range assess(t, c.name, []byte(text)) {
			if f.Rule == "resistor-overload" {
				got, said = max(got, f.Severity), said+f.What
			}
		}
		if got != c.want || !strings.Contains(said, c.says) {
			t.Errorf("%s: %s, want %s with %q: %s", c.name, got, c.want, c.says, said)
		}
	}
}

// What is advised of a motor that draws its rated current at any speed is a thermal fuse, unless there is one.
func TestThermalFuseIsNotAdvisedTwice(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/resistor-overload.yaml")
	if err != nil {
		t.Fatal(err)
	}
	motor := strings.NewReplacer("{resistance: 7 Ω,", "{current: 1.7 A, rated at: 12 V, behaves: motor, protected motor: yes,", "rating: 5 W", "rating: 14 W")
	for own, want := range map[string]bool{", thermal fuse: yes": false, "": true} {
		advised, said := false, false
		for _, f := range assess(t, "motor", []byte(strings.Replace(motor.Replace(string(src)), ", thermal fuse: yes", own, 1))) {
			if f.Rule == "resistor-overload" && strings.Contains(f.What, "any speed") {
				said, advised = true, advised || strings.Contains(f.Change, "thermal fuse")
			}
		}
		if !said || advised != want {
			t.Errorf("%q: said %t, a thermal fuse advised %t, want %t", own, said, advised, want)
		}
	}
}

// A fan of 1.7 A at 12 V, standing 8.5 A, has Ra = 1.412 Ω and E = 9.6 V. At 14.2 V behind 5 Ω: 10.9·y² + 9.6·y = 14.2, y = 0.783,
// 1.042 A, 5.43 W; at its rated current at any speed 1.7 A, 14.45 W; held fast 14.2 V / 6.412 Ω = 2.21 A, 24.5 W. Two of half
// of it side by side and two of half of its volts in series are the same. With 14 Ω beside it the fan has 7.595 V: (14.2 V − 7.595 V) / 5 Ω
// = 1.321 A of both, 0.778 A of it the fan's, 8.72 W; at its rated current 4.2 V and 2 A, 20 W; held fast 14.2 V / 6.283 Ω, 25.5 W.
func TestMotorsBehindResistor(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/resistor-overload.yaml")
	if err != nil {
		t.Fatal(err)
	}
	const own, motor = "  front lamp: {resistance: 7 Ω, at: front, fed by: dropper, returns to: frame}\n", "behaves: motor, protected motor: yes, at: front"
	one := "  fan: {current: 1.7 A, rated at: 12 V, " + motor + ", fed by: dropper, returns to: frame}\n"
	for _, c := range []struct {
		name, loads          string
		fans, steady, stands string
	}{
		{"one", one, "5.4", "14.", "24."},
		{"two side by side", strings.Repeat("  fan: {current: 0.85 A, rated at: 12 V, "+motor+", fed by: dropper, returns to: frame}\n", 2), "5.4", "14.", "24."},
		{"two in series", "  fan: {current: 1.7 A, rated at: 6 V, " + motor + ", fed by: dropper}\n  second: {current: 1.7 A, rated at: 6 V, " + motor + ", in series with: fan, returns to: frame}\n", "5.4", "14.", "24."},
		{"with 14 Ω", one + "  pad: {resistance: 14 Ω, at: front, fed by: dropper, returns to: frame}\n", "8.", "20 W", "25."},
		{"in its return", one, "5.4", "14.", "24."},
	} {
		loads := strings.Replace(c.loads, "fan:", "other:", strings.Count(c.loads, "fan:")-1)
		for rating, want := range map[string]string{"": "it makes " + c.fans, "13 W": "any speed, would make it " + c.steady, "21 W": "held fast, dropper makes " + c.stands, "60 W": ""} {
			text := strings.Replace(strings.Replace(string(src), own, loads, 1), "rating: 5 W, thermal fuse: yes, ", map[bool]string{true: "rating: " + rating + ", "}[rating != ""], 1)
			if c.name == "in its return" {
				text = strings.NewReplacer("fed by: lamps}", "returns to: frame}", "fed by: dropper, returns to: frame", "fed by: lamps, returns to: dropper").Replace(text)
			}
			said := ""
			for _, f := range assess(t, c.name, []byte(text)) {
				if f.Rule == "resistor-overload" {
					said += f.What + "; "
				}
			}
			if !strings.Contains(said, want) || want == "" && said != "" {
				t.Errorf("%s, rated %q: %q, want %q", c.name, rating, said, want)
			}
		}
	}
}

// 14.2 V over 10 kΩ drive 1.4 mA: a motor of 17 A has 1 % of its speed, 0.09 V, and the resistor is why, whatever switches are closed.
func TestNeverOnBehindTooMuchResistance(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/resistor-overload.yaml")
	if err != nil {
		t.Fatal(err)
	}
	motor := strings.NewReplacer("{resistance: 7 Ω,", "{current: 17 A, rated at: 12 V, behaves: motor, protected motor: yes,", "resistance: 5 Ω", "resistance: 10 kΩ")
	found := false
	for _, f := range assess(t, "motor", []byte(motor.Replace(string(src)))) {
		if f.Rule == "load-never-on" {
			found = true
			if f.Severity != finding.Fault || !strings.Contains(f.What, "the resistor before it takes 14") || !strings.Contains(f.Change, "less resistance") {
				t.Errorf("%s: %s; %s", f.Severity, f.What, f.Change)
			}
		}
	}
	if !found {
		t.Error("not said")
	}
}

// With everything on the switch past the resistor is closed and no heat is in it: the 7 W with it open are judged all the same, and it is in use.
func TestBypassOpenIsJudged(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/resistor-overload.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer("fed by: dropper, returns", "fed by: [dropper, past], returns", "resistors:\n", "switches:\n  past: {rating: 10 A, at: battery tray, fed by: lamps}\nresistors:\n").Replace(string(src))
	var got finding.Severity
	for _, f := range assess(t, "past", []byte(text)) {
		switch f.Rule {
		case "resistor-overload":
			got = max(got, f.Severity)
			if !strings.Contains(f.What, "with past open") {
				t.Error(f.What)
			}
		case "part-unused":
			t.Error(f.What)
		}
	}
	if got != finding.Danger {
		t.Errorf("%s, want a danger", got)
	}
}
