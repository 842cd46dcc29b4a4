package battery_test

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/library"
)

// A start of 120 A for 10 s is 0.333 Ah. AGM of 12 Ah takes back 0.370 Ah, at an
// efficiency of 0.9, and at most 0.4 · 12 A = 4.8 A.
func TestStartIsGivenBack(t *testing.T) {
	lib := library.Default()
	given := func(v float64) design.Quantity { return design.Quantity{Value: v, Text: "given"} }
	d := &design.Design{SystemV: given(12), Library: lib,
		Battery: design.Battery{Chemistry: lib.Chemistry("AGM"), CapacityAh: given(12)}}
	start := battery.StartOf(d)
	if got, want := start.Ah(), 120*10/3600.0; math.Abs(got-want) > 1e-12 {
		t.Fatalf("a start takes %g Ah, want %g", got, want)
	}
	b := battery.Of(d)
	back := 120 * 10 / 3600.0 / 0.9
	for spare, want := range map[float64]float64{-1: math.Inf(1), 0: math.Inf(1), 0.5: back / 0.5, 4.8: back / 4.8, 30: back / 4.8} {
		if got := b.HoursToReturn(start.Ah(), spare); got != want && !(math.Abs(got-want) < 1e-12) {
			t.Errorf("with %g A to spare: %g h, want %g", spare, got, want)
		}
	}
	// The design's own starter goes first: 960 W at 12 V for 5 s.
	d.Loads = []*design.Load{{Type: lib.Load("starter motorcycle"), PowerW: 960, RatedV: 12, OnForS: given(5)}}
	if got, want := battery.StartOf(d).Ah(), 80*5/3600.0; math.Abs(got-want) > 1e-12 {
		t.Errorf("the design's own start takes %g Ah, want %g", got, want)
	}
}

// A design without a starter counts with the one that fits its voltage, practice and
// battery; the practices that rows name are there.
func TestUsualStarter(t *testing.T) {
	lib := library.Default()
	for _, c := range []struct {
		systemV, ah float64
		practice    string
		want        string
		amps        float64
	}{
		{12, 12, "motorcycle", "starter motorcycle", 120}, {12, 60, "motorcycle", "starter motorcycle", 120},
		{6, 6, "motorcycle", "starter motorcycle", 120}, {12, 14, "off-road", "starter quad", 110},
		{12, 34.9, "off-road", "starter quad", 110}, {12, 35, "off-road", "starter car petrol", 120},
		{12, 0, "off-road", "starter quad", 110}, {12, 59, "marine", "starter outboard", 150}, {12, 60, "marine", "starter diesel 12 V", 250},
		{24, 110, "off-road", "starter diesel 24 V", 300}, {24, 100, "marine", "starter diesel 24 V", 300},
		{12, 14, "", "starter motorcycle", 120}, {12, 59, "", "starter car petrol", 120}, {12, 60, "", "starter diesel 12 V", 250},
	} {
		d := &design.Design{SystemV: design.Quantity{Value: c.systemV}, Library: lib, Practice: lib.Practice(c.practice),
			Battery: design.Battery{CapacityAh: design.Quantity{Value: c.ah}}}
		if got := battery.StartOf(d); got.Starter != c.want || got.CurrentA != c.amps || !got.Assumed {
			t.Errorf("%g V, %g Ah, %q: %s of %g A, assumed %t; want %s of %g A", c.systemV, c.ah, c.practice, got.Starter,
				got.CurrentA, got.Assumed, c.want, c.amps)
		}
	}
	for _, l := range lib.Loads {
		for _, name := range l.Practices {
			if lib.Practice(name) == nil || !l.Starter {
				t.Errorf("%s: practice %s", l.Name, name)
			}
		}
	}
	said := &design.Design{SystemV: design.Quantity{Value: 12}, Library: lib, Practice: lib.Practice("marine"),
		Charging: design.Charging{Starter: lib.Load("starter diesel 12 V")}}
	if got := battery.StartOf(said); got.Starter != "starter diesel 12 V" || got.CurrentA != 250 || got.Assumed || got.Own {
		t.Errorf("as the charging says: %+v", got)
	}
	d := &design.Design{Loads: []*design.Load{{Common: design.Common{Name: "mine"}, Type: lib.Load("starter"), PowerW: 960, RatedV: 12}}}
	if got := battery.StartOf(d); got.Starter != "mine" || got.Assumed || !got.Own {
		t.Errorf("of its own: %+v", got)
	}
}

// The engine that title or vehicle speak of goes before practice and battery; one that is larger than the battery's usual one is said.
func TestStarterOfTheEngine(t *testing.T) {
	lib := library.Default()
	for _, c := range []struct {
		vehicle, practice string
		ah                float64
		want              string
		large             bool
	}{
		{"a yacht with a Diesel inboard", "marine", 59, "starter diesel 12 V", true}, {"a yacht with a diesel inboard", "marine", 60, "starter diesel 12 V", false},
		{"a boat with an outboard engine", "marine", 90, "starter outboard", false}, {"a boat", "marine", 90, "starter diesel 12 V", false},
		{"a panel van with a diesel engine", "off-road", 80, "starter diesel 12 V", false}, {"a petrol car", "off-road", 80, "starter car petrol", false},
		{"a diesel quad", "off-road", 14, "starter diesel 12 V", true},
	} {
		d := &design.Design{SystemV: design.Quantity{Value: 12}, Library: lib, Practice: lib.Practice(c.practice), Vehicle: design.Text{Value: c.vehicle},
			Battery: design.Battery{CapacityAh: design.Quantity{Value: c.ah}}}
		if got := battery.StartOf(d); got.Starter != c.want || got.Large != c.large {
			t.Errorf("%s, %g Ah: %s, large %v; want %s, %v", c.vehicle, c.ah, got.Starter, got.Large, c.want, c.large)
		}
	}
}

// A boat that says nothing of its engine has a diesel from 60 Ah and 35 A of alternator on, else an outboard.
func TestStarterByTheAlternator(t *testing.T) {
	lib := library.Default()
	given := func(v float64) design.Quantity { return design.Quantity{Value: v, Text: "given"} }
	for a, want := range map[float64]string{20: "starter outboard", 34.9: "starter outboard", 35: "starter diesel 12 V", 72: "starter diesel 12 V"} {
		d := &design.Design{SystemV: given(12), Library: lib, Practice: lib.Practice("marine"), Battery: design.Battery{CapacityAh: given(70)},
			Charging: design.Charging{RegulatedV: given(14.2), Output: []design.OutputPoint{{RPM: given(800), CurrentA: given(5)}, {RPM: given(3000), CurrentA: given(a)}}}}
		if got := battery.StartOf(d); got.Starter != want {
			t.Errorf("%g A: %s, want %s", a, got.Starter, want)
		}
	}
}
