package bench_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/workshop/bench"
	"fusewright/library"
)

// charged is the design with chargers, an engine for one of them and situations with what a
// bench has not.
var charged = strings.NewReplacer("situations: {parked: {key: off}}", `situations:
  parked: {key: off}
  camp: {key: off, on: [a], sun: 70 %, shore: yes, charge: {house: 60 %}}`,
	"chargers:\n", "charging: {regulated: 14.4 V, output: {1000 rpm: 60 A, 3000 rpm: 90 A}, idle: 1000 rpm, cruise: 2500 rpm, hot derating: 0 %}\n"+
		"chargers:\n  shore: {type: shore charger 20 A, at: bay, returns to: house negative}\n",
	"capacity: 60 Ah", "capacity: 200 Ah", // which takes all that they give
	"fed by: [booster end, roof end]", "fed by: [booster end, roof end, shore end]",
	"  roof end:", "  shore end: {type: marine strip, at: bay, rating: 35 A, fed by: shore}\n  roof end:",
).Replace(timed)

func chargedTest(t *testing.T) *bench.Test {
	t.Helper()
	return bench.Make(read(t, charged))
}

// A converter charges nothing: what it gives is read in each pass that has it on, and nothing says that it is not.
func TestConverterIsNoChargerInUse(t *testing.T) {
	text, err := os.ReadFile("../../../testdata/rules/ok/converter.yaml")
	if err != nil {
		t.Fatal(err)
	}
	test := bench.Make(read(t, string(text)))
	read := 0
	for _, s := range test.Sections {
		for _, k := range s.Checks() {
			if strings.HasPrefix(k.Ref, "T") && k.Posts() {
				read++
			}
			if strings.HasPrefix(k.Ref, "T") && s.Kind == bench.Charging {
				t.Errorf("%s %s is read as a charger", k.Number, k.Where)
			}
		}
	}
	if read == 0 {
		t.Error("no pass reads the converter")
	}
	if said := strings.Join(test.Missing, " "); strings.Contains(said, "gives nothing at fast idle") {
		t.Error(said)
	}
}

// Each charger has a reading in use: the DC-DC one and the shore one what they are rated for
// into a battery drawn down, the panel's whatever the sun gives.
func TestChargersInUse(t *testing.T) {
	test := chargedTest(t)
	for _, c := range []struct {
		name, where string
		nominal     float64
	}{{"booster", "clamp round", 20}, {"shore", "clamp round", 20}, {"roof", "the sun there is", math.NaN()}} {
		found := 0
		for _, s := range test.Sections {
			if s.Kind != bench.Charging {
				continue
			}
			for _, check := range s.Checks() {
				if check.Name != c.name || !strings.Contains(check.Where, c.where) {
					continue
				}
				found++
				if math.IsNaN(c.nominal) {
					if !math.IsNaN(check.Nominal) || check.Low != 0.2 || !(check.High > 1 && check.High < 11) {
						t.Errorf("%s: %+v", c.name, check)
					}
				} else if math.Abs(check.Nominal-c.nominal) > 0.1 || !(check.High < 20*1.025+0.2) {
					t.Errorf("%s: %g A, at most %g A, rated %g A", c.name, check.Nominal, check.High, c.nominal)
				}
			}
		}
		if found != 1 {
			t.Errorf("%s is read in use %d times, want once", c.name, found)
		}
	}
}

// A pass whose situation has sun, shore power or a battery half empty says that the bench has
// not, and no drop is asked for that needs them.
func TestPassSaysWhatTheBenchHasNot(t *testing.T) {
	for _, s := range chargedTest(t).Sections {
		if s.Situation == nil || s.Situation.Name != "camp" {
			continue
		}
		text := strings.Join(s.Setup, " ")
		for _, want := range []string{"panels covered", "shore lead out", "house 60 %"} {
			if !strings.Contains(text, want) {
				t.Errorf("%q is not said: %s", want, text)
			}
		}
		return
	}
	t.Error("no pass for camp")
}

// What is lost in the leads of a charger is read in the state in which it charges.
func TestDropsOfAChargerNameItsState(t *testing.T) {
	for _, s := range bench.Make(read(t, strings.Replace(charged, "DC-DC charger 20 A", "DC-DC charger 30 A", 1))).Sections {
		for _, g := range s.Groups {
			if s.Kind == bench.Charging && strings.HasPrefix(g.Title, "Drops") {
				if !strings.HasSuffix(g.Title, ": Fast idle, 1500 rpm") {
					t.Errorf("%q", g.Title)
				}
				return
			}
		}
	}
	t.Error("no drops in the leads of a charger of 30 A")
}

// A sound further battery passes anywhere between four fifths full and full, and a flat one not.
func TestFurtherBatteryByItsCurve(t *testing.T) {
	agm := library.Default().Chemistry("AGM")
	for _, c := range chargedTest(t).Sections {
		for _, check := range c.Checks() {
			if c.Kind != bench.Parked || check.Name != "house" {
				continue
			}
			for charge, sound := range map[float64]bool{1: true, 0.9: true, 0.8: true, 0.5: false, 0.3: false} {
				if v := agm.OpenCircuitV(charge); (v >= check.Low && v <= check.High) != sound {
					t.Errorf("%g full, %.2f V: allowed %.2f to %.2f V", charge, v, check.Low, check.High)
				}
			}
			return
		}
	}
	t.Error("the house battery is not read")
}

// A stout lead is not undone for a meter, which stands in for its fuse.
func TestStandbyInPlaceOfTheFuse(t *testing.T) {
	if got := find(t, bench.Make(read(t, tiny)), bench.Parked, "W1", ""); got.Where != "meter in place of F1" {
		t.Errorf("read %q", got.Where)
	}
}

// A relay without tabs is bolted: nothing comes out of a socket.
func TestBoltedRelay(t *testing.T) {
	src := strings.Replace(timed, "  late: {form: mini make, at: bay, on delay: 4 s,", "  late: {form: contactor 150 A 12 V, at: bay,", 1)
	test := bench.Make(read(t, src))
	if got := find(t, test, bench.Coils, "K1", ""); !strings.Contains(got.Where, "leads off") {
		t.Errorf("contactor: %q", got.Where)
	}
	if got := find(t, test, bench.Coils, "K2", ""); !strings.Contains(got.Where, "relay out") {
		t.Errorf("plugged relay: %q", got.Where)
	}
}

// A cold second alternator beside the first one, which an isolator has on the same battery, gives most into the emptiest
// battery with the other held low: 18 A at 700 rpm and 45 A at 1500 rpm are 32.34 A at 1125 rpm, and a clamp adds 2.5 % and 0.1 A.
func TestSecondAlternatorColdInUse(t *testing.T) {
	k := find(t, bench.Make(read(t, buildtest.Machines)), bench.Charging, "T1", "clamp")
	if want := (18+27*425.0/800)*1.025 + 0.1; math.Abs(k.High-want) > 0.05 {
		t.Errorf("at most %.2f A, by hand %.2f A", k.High, want)
	}
}
