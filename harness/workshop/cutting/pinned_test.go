package cutting_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/cutting"
	"fusewright/library"
)

func strip(mm float64) *library.Terminal { return &library.Terminal{StripMm: mm} }

func slack(m float64) design.WireSpec {
	return design.WireSpec{SlackM: design.Quantity{Value: m, Text: "given"}}
}

// Cut lengths by hand. An end is squared off by 3 mm and must allow its terminal
// to be renewed twice: 2 · (strip + 3 mm) of slack; 1.5 m and less may be 50 mm
// too long, of which half is added; up to 5 mm of rounding.
func TestBreakByHand(t *testing.T) {
	for _, c := range []struct {
		name string
		wire circuit.Wire
		want cutting.Breakdown
	}{
		{"little slack: 20 − 10 and 16 − 10 mm of service loop",
			circuit.Wire{LengthM: 1.02, Spec: slack(0.01), FromEnd: strip(7), ToEnd: strip(5)},
			cutting.Breakdown{RouteM: 1, SlackM: 0.02, ServiceM: 0.016, StripM: 0.012, TrimM: 0.006, ToleranceM: 0.025,
				RoundingM: 0.001, CutM: 1.08, BandM: 0.05, StripKnown: true}},
		{"slack of exactly one loop: 20 and 16 mm",
			circuit.Wire{LengthM: 1.04, Spec: slack(0.02), FromEnd: strip(7), ToEnd: strip(5)},
			cutting.Breakdown{RouteM: 1, SlackM: 0.04, StripM: 0.012, TrimM: 0.006, ToleranceM: 0.025,
				RoundingM: 0.002, CutM: 1.085, BandM: 0.05, StripKnown: true}},
		{"a given length holds its slack",
			circuit.Wire{LengthM: 1, LengthGiven: true, Spec: slack(0.01), FromEnd: strip(7), ToEnd: strip(5)},
			cutting.Breakdown{RouteM: 1, StripM: 0.012, TrimM: 0.006, ToleranceM: 0.025, RoundingM: 0.002, CutM: 1.045,
				BandM: 0.05, StripKnown: true}},
		{"one end not known",
			circuit.Wire{LengthM: 1, LengthGiven: true, FromEnd: strip(7)},
			cutting.Breakdown{RouteM: 1, StripM: 0.007, TrimM: 0.006, ToleranceM: 0.025, RoundingM: 0.002, CutM: 1.04, BandM: 0.05}},
		{"one strip length not known",
			circuit.Wire{LengthM: 1, LengthGiven: true, FromEnd: strip(7), ToEnd: strip(0)},
			cutting.Breakdown{RouteM: 1, StripM: 0.007, TrimM: 0.006, ToleranceM: 0.025, RoundingM: 0.002, CutM: 1.04, BandM: 0.05}},
	} {
		got := cutting.Break(&c.wire)
		far := math.Max(math.Abs(got.CutM-c.want.CutM), math.Abs(got.RoundingM-c.want.RoundingM))
		for _, d := range [][2]float64{{got.RouteM, c.want.RouteM}, {got.SlackM, c.want.SlackM}, {got.ServiceM, c.want.ServiceM},
			{got.StripM, c.want.StripM}, {got.TrimM, c.want.TrimM}, {got.ToleranceM, c.want.ToleranceM}, {got.BandM, c.want.BandM}} {
			far = math.Max(far, math.Abs(d[0]-d[1]))
		}
		if far > 1e-9 || got.StripKnown != c.want.StripKnown {
			t.Errorf("%s:\n got %+v\nwant %+v", c.name, got, c.want)
		}
	}
}

// The band at and just above each step of the table.
func TestBandAtItsSteps(t *testing.T) {
	for m, want := range map[float64]float64{0.29: 0.025, 0.3: 0.025, 0.301: 0.05, 1.5: 0.05, 1.501: 0.1, 3: 0.1,
		3.01: 0.15, 7.5: 0.15, 7.6: 0.38, 20: 1} {
		if got := cutting.Band(m); math.Abs(got-want) > 1e-12 {
			t.Errorf("%g m: %g m, want %g m", m, got, want)
		}
	}
}

func TestCutterOrder(t *testing.T) {
	row := func(number, insulation, colour string, mm2, cutM float64) cutting.Row {
		return cutting.Row{Number: number, Insulation: insulation, Colour: colour, CutM: cutM,
			Wire: &circuit.Wire{Spec: design.WireSpec{Size: &library.WireSize{AreaMm2: mm2}}}}
	}
	rows := []cutting.Row{row("W1", "b", "BK", 1, 1), row("W2", "a", "RD", 1, 1), row("W3", "a", "BK", 1, 1),
		row("W4", "a", "BK", 1, 2), row("W5", "a", "RD", 2.5, 1)}
	var order []string
	for _, r := range cutting.BySizeAndColour(rows) {
		order = append(order, r.Number)
	}
	if got := strings.Join(order, " "); got != "W5 W4 W3 W2 W1" {
		t.Errorf("cut in the order %s; want the thickest, then black, then the longest first", got)
	}
}

// Whole steps stay, whatever binary numbers make of them: 35 mm over 5 mm is a
// little more than seven.
func TestWholeStepsStay(t *testing.T) {
	for step := 1; step <= 2000; step++ {
		m := float64(5*step) / 1000
		if got := cutting.RoundUp(m); math.Abs(got-m) > 1e-12 {
			t.Errorf("%g m is cut as %g m", m, got)
		}
	}
}
