package handbook

import (
	"math"
	"strings"
	"testing"

	"fusewright/library"
)

// The widest inputs are taken, what lies beyond is refused.
func TestInputsAtTheirLimits(t *testing.T) {
	wire := func(amps, copperC float64) error {
		_, err := Drop(DropInput{Conductor: Conductor{AreaMm2: 1}, CurrentA: amps, Path: Path{LengthM: 1}, SystemV: 12, ConductorC: copperC})
		return err
	}
	for _, c := range []struct {
		name          string
		amps, copperC float64
		ok            bool
	}{
		{"most current", 1e5, 20, true}, {"more", 1.001e5, 20, false}, {"coldest", 1, -60, true}, {"colder", 1, -60.1, false},
		{"hottest", 1, 400, true}, {"hotter", 1, 400.1, false},
	} {
		if err := wire(c.amps, c.copperC); (err == nil) != c.ok {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func TestLoopsAndShares(t *testing.T) {
	if there, loop := (Path{LengthM: 3, OneWay: true}).loopM(), (Path{LengthM: 3}).loopM(); there != 6 || loop != 3 {
		t.Errorf("3 m one way are a loop of %g m, a loop of 3 m is %g m", there, loop)
	}
	// 12 Ah at 10 h, 1.2 A: 10 h to empty, 4 h down to 60 %.
	a, err := Battery(BatteryInput{CapacityAh: 12, RateH: 10, Peukert: 1.2, CurrentA: 1.2, KeepShare: 0.6})
	if err != nil {
		t.Fatal(err)
	}
	near(t, a, "time to the reserve", 4*3600, 1e-12)
}

// The adiabatic law is warned of above 5 s: 1 mm² from 70 to 160 °C stands
// 114.836² A²s, so 51.357 A for 5 s.
func TestAdiabaticWarning(t *testing.T) {
	for _, c := range []struct {
		amps  float64
		warns bool
	}{{114.836 / math.Sqrt(4.99), false}, {114.836 / math.Sqrt(5.01), true}} {
		a, err := Short(ShortInput{CurrentA: c.amps, AreaMm2: 1, StartC: 70, EndC: 160})
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(strings.Join(a.Warnings, ""), "up to 5 s"); got != c.warns {
			t.Errorf("%g A: warned %t", c.amps, got)
		}
	}
}

func TestDurationsInHours(t *testing.T) {
	for s, want := range map[float64]string{360000: "100 h", 3600: "1 h", 600: "10 min"} {
		if got := duration(s); got != want {
			t.Errorf("%g s: %q, want %q", s, got, want)
		}
	}
}

// A blade C of 10 A opens at 20 A within 5 s: a fault of 30 A behind it ends in
// time for the adiabatic law, one of 15 A does not.
func TestFaultWarning(t *testing.T) {
	kind := library.Default().FuseType("blade C")
	for amps, warns := range map[float64]bool{30: false, 15: true} {
		a, err := Fault(FaultInput{SourceV: 12, SourceOhm: 12/amps - 0.01, Type: kind, RatingA: 10, AmbientC: 23,
			Legs: []FaultLeg{{Conductor: Conductor{AreaMm2: 1.7241}, LengthM: 1, ConductorC: 20}}})
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(strings.Join(a.Warnings, ""), "over 5 s"); got != warns {
			t.Errorf("%g A: warned %t: %v", amps, got, a.Warnings)
		}
	}
}
