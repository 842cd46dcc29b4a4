package bundle

import (
	"math"
	"math/rand"
	"testing"
)

// Currents by hand: heats are added up, so with a gain of 2 and 30 A for good a
// wire for 50 A takes √(30² + 4·(50² − 30²)) = √7300 A. Of 60 A with 30 A for good the
// wire is as hot as of √(30² + 2700/4) = 39.69 A, and beyond it goes in proportion.
func TestPulseByHand(t *testing.T) {
	for _, c := range []struct{ gain, steadyA, usedA, forGoodA, most float64 }{
		{0, 0, 0, 50, 50},  // no cycle
		{1, 10, 0, 50, 50}, // on for good
		{2, 0, 0, 50, 100}, // nothing beside it
		{2, 30, 0, 50, 85.44003745317531},
		{2, 49.9, 0, 50, 50.29880714291345},
		{2, 50, 0, 50, 50},                  // all of it flows for good
		{2, 60, 0, 50, 50},                  // and more than it may
		{2, 30, 60, 35, 46.904157598234295}, // within its use: √(30² + 4·(35² − 30²))
		{2, 30, 60, 39.68626966596886, 60},
		{2, 30, 60, 79.37253933193772, 120}, // twice its use is twice of each part
		{2, 0, 60, 50, 100},
	} {
		p := Pulse{c.gain, c.steadyA, c.usedA}
		if got := p.MostA(c.forGoodA); math.Abs(got-c.most) > 1e-9 {
			t.Errorf("%+v: %g A for %g A for good, want %g", p, got, c.forGoodA, c.most)
		}
		if got := p.ForGoodA(c.most); math.Abs(got-c.forGoodA) > 1e-9 {
			t.Errorf("%+v: %g A is as %g A for good, want %g", p, c.most, got, c.forGoodA)
		}
	}
}

// At its gain a wire's settled peak is at its limit and not above, unless the gain
// is bounded; the mean heat is never passed.
func TestGainIsAtTheLimit(t *testing.T) {
	for _, c := range []Cycle{{60, 600}, {180, 1800}, {300, 600}, {5, 60}, {600, 2400}} {
		g := GainOf(thin25, 40, 95, c)
		b := pulsed(t, thin25, 1, 1, 95, 40)
		peak := b.with(0, g*b.AloneA(0)).Course(0, c).Settled.ConductorC
		if peak > 95 || g > 1 && g < mostGain && g < 1/math.Sqrt(c.duty()) && peak < 94.5 {
			t.Errorf("%v: gain %g, settled peak %g °C, limit 95 °C", c, g, peak)
		}
		if g > 1/math.Sqrt(c.duty()) {
			t.Errorf("%v: gain %g is more than the mean heat gives", c, g)
		}
	}
	for _, c := range []Cycle{{}, {60, 60}, {60, 0}, {math.NaN(), 600}} {
		if g := GainOf(thin25, 40, 95, c); g != 1 {
			t.Errorf("%v is on for good, gain %g", c, g)
		}
	}
	if g := GainOf(thin25, 95, 95, Cycle{60, 600}); g != 1 {
		t.Errorf("no room below the limit, gain %g", g)
	}
}

// A longer on-time or a shorter period never gives more.
func TestLongerOnNeverGainsMore(t *testing.T) {
	rng := rand.New(rand.NewSource(7))
	const search = 1.001 // within which a gain is found
	for range 12 {
		w := mixed(rng, 1, 0.5)[0].Insulated
		on, rest := 5*math.Pow(100, rng.Float64()), 60*math.Pow(30, rng.Float64())
		g := GainOf(w, 40, 95, Cycle{on, on + rest})
		for _, c := range []Cycle{{on * 1.2, on + rest*1}, {on, on + rest*0.8}} {
			if more := GainOf(w, 40, 95, c.within()); more > g*search {
				t.Errorf("%v gains %g, %v %g", Cycle{on, on + rest}, g, c, more)
			}
		}
	}
}
