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
		{"a motor at one current", "rating: 5 W, thermal fuse: yes", "rating: 14 W", "rated current at any speed, dropper makes 14.", finding.Advice},
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
