package rules_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/review/finding"
)

const (
	blower   = "{power: 90 W, behaves: motor, inrush: {peak: 1.5, time: 50 ms}, protected motor: yes, at: cab, fed by: [speed high, dropper]"
	highFuse = "fuses:\n  high fuse: {type: blade C, rating: 15 A, at: cab, fed by: keyed, wire: {size: 4 mm²}}\n"
	high     = "relays:\n  high: {form: mini make, at: cab, fed by: high fuse, wire: {size: 4 mm²}, coil: {fed by: speed high, returns to: cab stud, suppressed by: resistor, wire: {size: 1 mm²}}}\n"
	pilot    = "  led r: {resistance: 470 Ω, rating: 1 W, at: cab, fed by: blower fuse}\nloads:\n  led: {resistance: 200 Ω, at: cab, fed by: led r, wire: {size: 0.35 mm², length: 300 mm}, returns to: cab stud}\n"
	drop     = "{resistance: 0.6 Ω, rating: 60 W, thermal fuse: yes, at: cab, fed by: speed low}"
)

// A motor that stands behind a resistor, by hand: 36 W at 12 V with eight times its current has 0.5 Ω and draws 24 A
// past the resistor, 12 V / (0.5 Ω + R) = 8 A through 1 Ω. A fuse of 15 A at 23 °C carries
// 16.5 A for 100 h, which R = 0.227 Ω let through. 90 W draw
// 37.5 A, which 2.5 mm² withstands and 0.5 mm² does not; behind 3 Ω they are 3.6 A. A half short of 20 A, which 15 A may carry for
// 30 min, hurts 0.5 mm² before the resistor, and behind it where the position past it feeds the motor's end of the wire.
func TestBehindResistor(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/ok/two-speeds.yaml")
	if err != nil {
		t.Fatal(err)
	}
	small := strings.NewReplacer("power: 90 W", "power: 36 W", "inrush: {peak: 1.5, time: 50 ms}, protected motor: yes", "inrush: {peak: 8, time: 100 ms}").Replace(blower)
	thin := strings.Replace(blower, "[speed high, dropper]", "{speed high: 2.5 mm², dropper: 0.5 mm²}", 1)
	thinner := strings.Replace(blower, "[speed high, dropper]", "{speed high: 0.5 mm², dropper: 2.5 mm²}", 1)
	for _, c := range []struct {
		name   string
		change []string
		rule   string
		says   string // "" = nothing
	}{
		{"1 Ω: 8 A never open 15 A", []string{blower, small, "0.6 Ω", "1 Ω"}, "motor-never-opens-fuse", "stalled, blower draws 8.00 A, which fuse F2 (blower fuse, 15 A) carries"},
		{"only listed at high", []string{blower, small, "0.6 Ω", "1 Ω", "switches: {speed: low, pad: low}", "switches: {pad: low}"}, "motor-never-opens-fuse", "draws 8.00 A"},
		{"just below", []string{blower, small, "0.6 Ω", "0.23 Ω", "cab: {ambient: 45 °C}", "cab: {ambient: 23 °C}"}, "motor-never-opens-fuse", "draws 16.4 A"},
		{"just above", []string{blower, small, "0.6 Ω", "0.22 Ω", "cab: {ambient: 45 °C}", "cab: {ambient: 23 °C}"}, "motor-never-opens-fuse", ""},
		{"past it alone", []string{blower, strings.Replace(small, "[speed high, dropper]", "speed high", 1), "  dropper: {resistance: 0.6 Ω, rating: 60 W, thermal fuse: yes, at: cab, fed by: speed low}\n", ""}, "motor-never-opens-fuse", ""},
		{"3 Ω before the thin wire", []string{blower, thin, drop, "{resistance: 3 Ω, rating: 60 W, at: cab, fed by: speed low, wire: {size: 0.5 mm²}}"}, "overload-hurts-wire", ""},
		{"3 Ω between two thin wires: that before it, and that a short gets past it", []string{blower, thin, drop, "{resistance: 3 Ω, rating: 80 W, at: cab, fed by: speed low, wire: {size: 0.5 mm²}}"}, "fuse-wire-curve", "dropper to blower) is damaged"},
		{"past it by nothing", []string{blower, strings.Replace(blower, "[speed high, dropper]", "dropper, wire: {size: 0.5 mm²}", 1), drop, "{resistance: 3 Ω, rating: 80 W, at: cab, fed by: speed low}"}, "fuse-wire-curve", ""},
		{"before it all the same", []string{blower, strings.Replace(blower, "[speed high, dropper]", "dropper", 1), drop, "{resistance: 3 Ω, rating: 80 W, at: cab, fed by: speed low, wire: {size: 0.5 mm²}}"}, "fuse-wire-curve", "speed low to dropper) is damaged"},
		{"the thin wire past it", []string{blower, thinner}, "overload-hurts-wire", "37.5 A"},
		{"high by a relay and fuse of its own", []string{"[speed high, dropper]", "[high, dropper]", "fuses:\n", highFuse, "relays:\n", high}, "back-feed", ""},
		{"such a relay that drops out late", []string{"[speed high, dropper]", "[high, dropper]", "fuses:\n", highFuse, "relays:\n", strings.Replace(high, "mini make", "mini make, off delay: 5 s", 1)}, "back-feed", "bypasses"},
		{"such a relay on in both", []string{"[speed high, dropper]", "[high, dropper]", "fuses:\n", highFuse, "relays:\n", high, "[off, low, high]", "{off: none, low: [low, high], high: high}"}, "back-feed", "bypasses"},
		{"such a relay by a switch of its own", []string{"[speed high, dropper]", "[high, dropper]", "fuses:\n", highFuse, "relays:\n", strings.Replace(high, "speed high", "fast", 1),
			"switches:\n", "switches:\n  fast: {type: rocker 16 A, at: cab, fed by: blower fuse}\n"}, "back-feed", "bypasses"},
		{"a fuse after the resistor", []string{"[speed high, dropper]", "[speed high, late]", "fuses:\n", "fuses:\n  late: {type: blade C, rating: 10 A, at: cab, fed by: dropper}\n"}, "back-feed", ""},
		{"a switch without a fuse, by both outputs", []string{"at: cab, fed by: blower fuse, positions", "at: cab, fed by: battery, positions"}, "live-with-key-off", "speed can leave blower on with the key off, drawing about 7.50 A; a full battery no longer starts the engine after 3.12 h\n$"},
		{"a lamp's wire behind 470 Ω of 1 W", []string{"loads:\n", pilot}, "fuse-over-wire", ""},
		{"a short there: 14.2 V make 0.43 W", []string{"loads:\n", pilot}, "short-too-weak", ""},
		{"a rating just enough", []string{"loads:\n", strings.Replace(pilot, "1 W", "0.43 W", 1)}, "short-too-weak", ""},
		{"a rating just too small", []string{"loads:\n", strings.Replace(pilot, "1 W", "0.42 W", 1)}, "short-too-weak", "fuse F2 (blower fuse, 15 A) may never open"},
		{"then the fuse must protect the wire", []string{"loads:\n", strings.Replace(pilot, "1 W", "0.42 W", 1)}, "fuse-over-wire", "protects wire"},
		{"no rating", []string{"loads:\n", strings.Replace(pilot, "rating: 1 W, ", "", 1)}, "fuse-over-wire", "protects wire"},
		{"a way past it", []string{"loads:\n", strings.Replace(pilot, "fed by: led r,", "fed by: [led r, blower fuse],", 1)}, "fuse-over-wire", "protects wire"},
		{"1.2 Ω that lets through 11.8 A", []string{"loads:\n", strings.NewReplacer("470 Ω", "1.2 Ω", "1 W", "200 W").Replace(pilot)}, "fuse-over-wire", "protects wire"},
	} {
		text := string(src)
		for i := 0; i < len(c.change); i += 2 {
			if !strings.Contains(text, c.change[i]) {
				t.Fatalf("%s: no %q", c.name, c.change[i])
			}
			text = strings.Replace(text, c.change[i], c.change[i+1], 1)
		}
		got := ""
		for _, f := range assess(t, "two-speeds.yaml", []byte(text)) {
			if f.Rule == c.rule && f.Severity >= finding.Fault {
				got += f.What + "\n"
			}
		}
		if says, once := strings.CutSuffix(c.says, "$"); !strings.Contains(got, says) || once && got != says || (c.says == "") != (got == "") {
			t.Errorf("%s: %q, want %q", c.name, got, c.says)
		}
	}
}
