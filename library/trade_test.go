package library

import (
	"fmt"
	"math"
	"testing"
)

// TestContactors compares contactors with makers' type data, at 12 V and 24 V.
func TestContactors(t *testing.T) {
	for _, r := range reference(t, "contactors.csv") {
		want, compared := number(t, r["value"]), false
		for _, volts := range []float64{12, 24} {
			f := Default().RelayForm(fmt.Sprintf("%s %g V", r["form"], volts))
			if f == nil {
				t.Fatalf("no %s for %g V", r["form"], volts)
			}
			short := 0.0
			if len(f.ShortTime) > 0 {
				short = f.ShortTime[0].CurrentA
			}
			got := map[string]float64{"make_A": f.MakeA, "making_A": f.MakingA, "break_A": f.BreakA, "short_A": short,
				"contact_mohm": f.ContactOhm * 1e3, "pull_in_share": f.PullInV / volts,
				"drop_out_share": f.DropOutV / volts, fmt.Sprintf("coil_ohm_%gV", volts): f.CoilOhm,
				"max_C": f.MaxC, "coil_on_s": f.CoilOnS}
			if x, ok := got[r["quantity"]]; ok {
				near(t, f.Name+" "+r["quantity"], x, want, 1e-9)
				compared = true
			}
		}
		if !compared {
			t.Errorf("%s: nothing compared with %s", r["form"], r["quantity"])
		}
	}
}

// TestBreakers compares times and re-rating with the sheets of equipment breakers
// that they are taken from: the times of the surface breaker, the re-rating of all.
func TestBreakers(t *testing.T) {
	for _, b := range Default().FuseTypes {
		if b.Kind == "breaker" {
			asEquipmentBreakers(t, b)
		}
	}
}

func asEquipmentBreakers(t *testing.T, b *FuseType) {
	for _, r := range reference(t, "equipment_breaker.csv") {
		if r["quantity"] == "opens" && b.Name != "surface breaker" {
			continue
		}
		at, found := number(t, r["at"]), false
		switch r["quantity"] {
		case "opens":
			for _, p := range b.Band {
				if p.Multiple == at {
					found = p.MaxS == number(t, r["most"]) && (r["least"] == "" || p.MinS == number(t, r["least"]))
				}
			}
		case "needs":
			for _, p := range b.Rerating {
				if p.AmbientC == at {
					found = true
					near(t, fmt.Sprintf("share at %g °C", at), p.Share, 1/number(t, r["most"]), 1e-3)
				}
			}
		}
		if !found {
			t.Errorf("%s %s at %g is not as printed", b.Name, r["quantity"], at)
		}
	}
}

// TestTinnedVehicleWire compares with the tinned column of ISO 6722-1.
func TestTinnedVehicleWire(t *testing.T) {
	w := Default().WireType("tinned ISO 6722 thin wall")
	rows := reference(t, "iso6722_tinned.csv")
	for _, r := range rows {
		s := w.Size(r["nominal_mm2"] + " mm²")
		if s == nil {
			t.Fatalf("no %s mm²", r["nominal_mm2"])
		}
		near(t, s.Label+" resistance", s.MaxOhmPerM*1e3, number(t, r["rmax_tinned_ohm_per_km_20C"]), 1e-9)
		near(t, s.Label+" outer", s.OuterMm, number(t, r["thin_outer_most_mm"]), 1e-9)
	}
	if len(rows) != len(w.Sizes) {
		t.Errorf("%d sizes, the table has %d", len(w.Sizes), len(rows))
	}
}

// TestBreakingAt: a sheet's 14 V is for 12 V systems, 32 V for 24 V; between
// and above, the next higher voltage decides, that is the lesser current.
func TestBreakingAt(t *testing.T) {
	for _, c := range []struct {
		name           string
		systemV, wantA float64
	}{
		{"battery post fuse", 12, 10000}, {"battery post fuse", 14, 10000}, {"battery post fuse", 14.1, 5000},
		{"battery post fuse", 24, 5000}, {"battery post fuse", 48, 2000},
		{"surface breaker", 12, 3000}, {"surface breaker", 24, 1500}, {"surface breaker", 48, 1000},
		{"blade C", 6, 1000}, {"blade C", 24, 1000}, {"marine strip", 12, 6000},
	} {
		if got := Default().FuseType(c.name).BreakingAt(c.systemV); got != c.wantA {
			t.Errorf("%s at %g V: %g A, want %g A", c.name, c.systemV, got, c.wantA)
		}
	}
}

// TestStuds: a breaker for more has a larger stud, and a fitter's ring fits.
func TestStuds(t *testing.T) {
	for _, c := range []struct {
		kind      string
		a, mm2    float64
		end, ring string
	}{
		{"breaker type III", 5, 1.5, "ring M5", "ring M5 red"},
		{"breaker type III", 50, 10, "ring M5", "lug M5 10 mm²"},
		{"breaker type III", 60, 16, "ring M6", "lug M6 16 mm²"},
		{"surface breaker", 150, 50, "ring M6", "lug M6 50 mm²"},
		{"surface breaker", 175, 50, "ring M10", "lug M10 50 mm²"},
		{"battery post fuse", 300, 95, "ring M8", "lug M8 95 mm²"},
	} {
		f := Default().FuseType(c.kind)
		end := f.End(f.Rating(c.a))
		ring := Default().TerminalFor(end, c.mm2)
		if end != c.end || ring == nil || ring.Name != c.ring {
			t.Errorf("%s %g A: %s, %+v", c.kind, c.a, end, ring)
		}
	}
	if got := Default().FuseType("surface breaker").End(nil); got != "ring M6" {
		t.Errorf("without a rating: %s", got)
	}
	form := Default().RelayForm("contactor 150 A")
	if form.End("30") != "ring M8" || form.End("87") != "ring M8" || form.End("85") != "ring M5" {
		t.Errorf("ends of %+v", form)
	}
	if form = Default().RelayForm("micro make"); form.End("30") != "tab 6.3" || form.End("85") != "tab 4.8" {
		t.Errorf("ends of %+v", form)
	}
}

// TestShopSizes: the sizes of a shop are marked wherever a wire type has them.
func TestShopSizes(t *testing.T) {
	for _, c := range []struct {
		wire, size string
		want       bool
	}{
		{"FLRY", "1.5 mm²", true}, {"FLRY", "1.25 mm²", false}, {"FLRY", "0.35 mm²", false},
		{"FLY", "95 mm²", true}, {"FLY", "120 mm²", false}, {"GXL", "20 AWG", true}, {"GXL", "22 AWG", false},
		{"tinned marine AWG", "4/0 AWG", true}, {"JASO AV", "0.85 mm²", true}, {"JASO AVSSX", "1.25 mm²", true},
	} {
		if s := Default().WireType(c.wire).Size(c.size); s.Shop != c.want {
			t.Errorf("%s %s: in shops %v", c.wire, c.size, s.Shop)
		}
	}
}

// TestDropAtRating: no contact or breaker loses more at its rating than twice
// the 100 mV that makers allow a relay contact at 10 A.
func TestDropAtRating(t *testing.T) {
	check := func(name string, v float64) {
		if v > 0.2+1e-9 || v < 0.01 {
			t.Errorf("%s loses %g V at its rating", name, v)
		}
	}
	for _, s := range Default().Switches {
		check(s.Name, s.ResistiveA*s.ContactOhm)
	}
	for _, f := range Default().RelayForms {
		check(f.Name, f.MakeA*f.ContactOhm)
	}
	for _, f := range Default().FuseTypes {
		for _, r := range f.Ratings {
			if f.Kind != "ptc" {
				check(f.Name, r.RatingA*r.ColdOhm)
			}
		}
	}
	for _, d := range Default().ContactDrops {
		check(d.Kind, d.DropV)
	}
}

// TestMostLampPower compares the most that a lamp may draw with UN R37: its watts are
// those at 12 V, and the power goes with the 1.55th power of the volts.
func TestMostLampPower(t *testing.T) {
	for _, r := range reference(t, "lamp_power.csv") {
		l := Default().Load(r["load"])
		if l == nil || l.PowerW != number(t, r["rated_W"]) || l.RatedV != 12 {
			t.Errorf("%s: %+v", r["load"], l)
			continue
		}
		near(t, l.Name, l.Most.PowerW*math.Pow(number(t, r["test_V"])/12, 1.55), number(t, r["most_W"]), 0.05)
	}
}

// TestTimesOn: what is on for moments is on for less than every.
func TestTimesOn(t *testing.T) {
	for name, want := range map[string][2]float64{ // common practice, no source
		"horn": {5, 60}, "twin air horn": {5, 60}, "winch": {60, 600}, "windlass": {180, 1800},
		"air compressor": {600, 2400}, "implement actuator": {30, 300}, "VHF radio": {60, 600},
		"starter": {10, 60}, "starter car petrol": {10, 60}, "glow plug": {60, 600}, "bilge pump": {0, 0},
	} {
		if l := Default().Load(name); l == nil || l.OnForS != want[0] || l.EveryS != want[1] {
			t.Errorf("%s: %+v, want on for %g s every %g s", name, l, want[0], want[1])
		}
	}
}

// TestInterruptingRows reads the table of the standard of boats at and above the
// bound of each row.
func TestInterruptingRows(t *testing.T) {
	for crankingA, want := range map[float64][2]float64{1: {1500, 750}, 650: {1500, 750}, 651: {3000, 1500}, 1100: {3000, 1500},
		1101: {5000, 2500}, 2200: {5000, 2500}} {
		if x := Default().InterruptingFor(crankingA); x == nil || [2]float64{x.MainA, x.BranchA} != want {
			t.Errorf("%g A: %+v, want %v", crankingA, x, want)
		}
	}
	if x := Default().InterruptingFor(2201); x != nil {
		t.Errorf("beyond the table: %+v", x)
	}
}

// TestPlugInTheHeat by hand: contacts that their rating heats by 55 K and that bear 125 °C
// keep it to 70 °C; at 111.25 °C a quarter of the heat is left, half the current.
func TestPlugInTheHeat(t *testing.T) {
	for _, c := range []struct {
		family         string
		ambient, share float64
	}{
		{"sealed 2.8", -40, 1}, {"sealed 2.8", 69.9, 1}, {"sealed 2.8", 70, 1}, {"sealed 2.8", 83.75, math.Sqrt(0.75)},
		{"sealed 2.8", 111.25, 0.5}, {"sealed 2.8", 125, 0}, {"sealed 2.8", 140, 0},
		{"open 6.3", 50, 1}, {"open 6.3", 91.25, 0.5}, {"open 6.3", 105, 0},
	} {
		near(t, fmt.Sprintf("%s at %g °C", c.family, c.ambient), Default().Connector(c.family).Share(c.ambient), c.share, 1e-12)
	}
	if s := (&Connector{MaxA: 10}).Share(200); s != 1 {
		t.Errorf("a family without its heat keeps %g", s)
	}
}

// TestHousePack by hand: 60 mΩ·Ah of cells, and from 30 Ah 2 mΩ of a board.
func TestHousePack(t *testing.T) {
	lithium, agm := Default().Chemistry("LiFePO4"), Default().Chemistry("AGM")
	for _, c := range []struct {
		of         *Chemistry
		ah, wantMO float64
	}{{lithium, 6, 10}, {lithium, 29.9, 60 / 29.9}, {lithium, 30, 4}, {lithium, 100, 2.6}, {agm, 100, 1.5}} {
		near(t, fmt.Sprintf("%s of %g Ah", c.of.Name, c.ah), c.of.Ohm(c.ah), c.wantMO/1000, 1e-12)
	}
}
