package rules

import (
	"fmt"
	"testing"

	"fusewright/harness/review/finding"
)

// Two loads in series on 12 V, worked by hand: of two resistors the voltage parts as their powers
// the other way round, so that 10 W beside 12.222 W, both at 6 V, get 12.222 / 22.222 = 55 %, 110 % of
// their half. Two equal lamps have half each, 80 % of what is rated 7.5 V.
func TestSeriesShares(t *testing.T) {
	const two = `
loads:
  tail lamp: {power: 10 W, rated at: %s, behaves: %s, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  plate lamp: {power: %s, rated at: %s, behaves: %s, at: rear, in series with: tail lamp, wire: {size: 1 mm², length: 200 mm}, returns to: frame}
`
	for _, tt := range []struct {
		rated, behaves, power string
		want                  finding.Severity
	}{
		{"6 V", "resistor", "12.1 W", 0},
		{"6 V", "resistor", "12.2 W", 0},
		{"6 V", "resistor", "12.3 W", finding.Fault},
		{"7.4 V", "filament lamp", "10 W", 0},
		{"7.5 V", "filament lamp", "10 W", 0},
		{"7.6 V", "filament lamp", "10 W", finding.Advice},
		{"7.6 V", "resistor", "10 W", 0}, // a resistor takes what is left, and may be meant to
	} {
		p := passOf(t, seriesUneven, fmt.Sprintf(two, tt.rated, tt.behaves, tt.power, tt.rated, tt.behaves))
		p.run()
		found := p.found
		if tt.want == finding.Advice && len(found) == 2 { // both are alike
			found = found[:1]
		}
		says(t, fmt.Sprint(tt), found, tt.want)
	}
}

// A motor of 6 V may have a quarter more than its half of 12 V, 7.5 V.
func TestSeriesMotor(t *testing.T) {
	p := passOf(t, seriesUneven, `
loads:
  dropper: {resistance: 6 Ω, rated at: 6 V, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  fan: {current: 1 A, rated at: 6 V, behaves: motor, at: rear, in series with: dropper, wire: {size: 1 mm², length: 200 mm}, returns to: frame}
`)
	for volts, want := range map[float64]finding.Severity{7.4: 0, 7.5: 0, 7.51: finding.Fault} {
		setVolts(p, loadBranch(part(t, p, "fan")), volts)
		setVolts(p, loadBranch(part(t, p, "dropper")), 12-volts)
		says(t, fmt.Sprint(volts), p.run(), want)
	}
}

// A resistor in series takes part of the voltage, and may; half of what a lamp or converter is rated
// for must be left, 6 V of 12 V, and a third of what a motor is, 4 V. A critical load needs its half.
func TestSeriesFloor(t *testing.T) {
	const two = `
loads:
  dropper: {resistance: 6 Ω, rated at: 12 V, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  fan: {current: 1 A, rated at: 12 V, behaves: %s, critical: %s, at: rear, in series with: dropper, wire: {size: 1 mm², length: 200 mm}, returns to: frame}
`
	for _, tt := range []struct {
		behaves, critical string
		volts             float64
		want              finding.Severity
	}{
		{"filament lamp", "no", 6.01, 0},
		{"filament lamp", "no", 6, 0},
		{"filament lamp", "no", 5.99, finding.Fault},
		{"constant power", "no", 5.99, finding.Fault},
		{"constant power", "yes", 6, 0},
		{"constant power", "yes", 5.99, finding.Danger},
		{"resistor", "no", 1, 0},
		{"resistor", "yes", 5.99, finding.Danger},
		{"motor", "no", 4, 0},
		{"motor", "no", 3.99, finding.Advice},
		{"motor", "yes", 6, 0},
		{"motor", "yes", 5.99, finding.Danger},
	} {
		p := passOf(t, seriesUneven, fmt.Sprintf(two, tt.behaves, tt.critical))
		setVolts(p, loadBranch(part(t, p, "fan")), tt.volts)
		setVolts(p, loadBranch(part(t, p, "dropper")), 12-tt.volts)
		says(t, fmt.Sprint(tt), p.run(), tt.want)
	}
}

// Two motors unlike by 5 %: the law of one current leaves their shares open, which is advice; both at 3 V
// of 12 V get twice their share in any case.
func TestSeriesMotors(t *testing.T) {
	for rated, want := range map[string]finding.Severity{"6 V": finding.Advice, "3 V": finding.Fault} {
		p := passOf(t, seriesUneven, fmt.Sprintf(`
loads:
  left: {power: 20 W, rated at: %s, behaves: motor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  right: {power: 21 W, rated at: %[1]s, behaves: motor, at: rear, in series with: left, wire: {size: 1 mm², length: 200 mm}, returns to: frame}
`, rated))
		most := finding.Severity(0)
		for _, f := range p.run() {
			most = max(most, f.Severity)
		}
		if most != want {
			t.Errorf("%s: %s, want %s", rated, most, want)
		}
	}
}
