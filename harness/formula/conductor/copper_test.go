package conductor

import (
	"math"
	"testing"
)

// near fails unless got is within a relative tolerance of want.
func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s = %.6g, want %.6g within %.3g %%", what, got, want, 100*share)
	}
}

func TestAWGOfAreaInvertsArea(t *testing.T) {
	for n := -3; n <= 40; n++ {
		near(t, "AWG", AWGOfArea(AWGAreaMm2(n))+100, float64(n)+100, 1e-12)
	}
}

func TestResistanceEdges(t *testing.T) {
	if !math.IsInf(OhmPerM(0, 20), 1) || !math.IsInf(OhmPerM(math.NaN(), 20), 1) {
		t.Error("an area of zero must resist without bound")
	}
	if AtTemperature(1, -400) != 0 {
		t.Error("resistance must not fall below zero")
	}
}

// Marine note on three percent drop: 10 A, 21 ft loop, 12 V needs 6 270.8
// circular mils by CM = 10.75·I·L/E.
func TestCmilForDrop(t *testing.T) {
	near(t, "circular mils", CmilForDrop(ABYCK, 10, 21, 0.36), 6270.8, 1e-5)
}

// The two forms agree at the temperature that K stands for: 10.75 circular-mil
// feet per ohm is copper at 29 °C.
func TestAreaForDropAgreesWithK(t *testing.T) {
	si := AreaForDrop(10, Loop{LengthM: 21 * 0.3048, ConductorC: 29.29}, 0.36) / Mm2PerCmil
	near(t, "area", si, 6270.8, 1e-3)
}

func TestAreaForDropEdges(t *testing.T) {
	for name, c := range map[string]struct{ i, l, u, want float64 }{
		"no current": {0, 5, 0.3, 0}, "no length": {5, 0, 0.3, 0}, "no drop": {5, 5, 0, math.Inf(1)},
	} {
		if got := AreaForDrop(c.i, Loop{LengthM: c.l, ConductorC: 20}, c.u); got != c.want {
			t.Errorf("%s: %g, want %g", name, got, c.want)
		}
	}
}

// Neither scaling lengths and areas together nor splitting a length changes a drop.
func TestDropScales(t *testing.T) {
	one := DropV(7, OhmPerM(2, 50), 4)
	near(t, "scaled drop", DropV(7, OhmPerM(6, 50), 12), one, 1e-12)
	near(t, "split drop", DropV(7, OhmPerM(2, 50), 1)+DropV(7, OhmPerM(2, 50), 3), one, 1e-12)
}
