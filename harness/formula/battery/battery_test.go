package battery_test

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/library"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.6g, want %.6g ± %.3g", what, got, want, tolerance)
	}
}

// reference reads a table of published values by column name and refuses rows
// without a source.
func reference(t *testing.T, name string) []map[string]string {
	t.Helper()
	path := filepath.Join("..", "validation", "reference", name)
	if _, err := os.Stat(path); err != nil {
		path = filepath.Join("..", "..", "..", "testdata", "reference", "charging", name)
	}
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	in := csv.NewReader(f)
	in.Comment = '#'
	records, err := in.ReadAll()
	if err != nil || len(records) < 2 {
		t.Fatalf("%s: %d rows, %v", name, len(records), err)
	}
	var out []map[string]string
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, cell := range record {
			row[records[0][i]] = cell
		}
		if row["source"] == "" || row["certainty"] == "" {
			t.Fatalf("%s: a row without source: %v", name, row)
		}
		out = append(out, row)
	}
	return out
}

func number(t *testing.T, cell string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// lastDigit is one unit of a printed number's last digit.
func lastDigit(cell string) float64 {
	_, decimals, _ := strings.Cut(cell, ".")
	return math.Pow10(-len(decimals))
}

func given(v float64) design.Quantity { return design.Quantity{Value: v, Text: "given"} }

func of(chemistry string, capacityAh float64) *battery.Battery {
	d := design.Battery{Chemistry: library.Default().Chemistry(chemistry), CapacityAh: given(capacityAh)}
	return battery.New(&d, 12)
}

// TestRestingVolts compares resting volts with each published table. The table
// that a chemistry is taken from must be met. Other tables of the same chemistry
// differ from it, and among themselves, by up to 0.14 V in the middle. Two round
// flooded tables stay high towards empty, and "empty" (10 % and below) is not
// one state; there the program must be on the low side.
func TestRestingVolts(t *testing.T) {
	chemistry := map[string]string{
		"flooded_lead_acid": "flooded", "flooded_lead_acid_rule_of_thumb": "flooded",
		"flooded_lead_acid_trade_table": "flooded", "agm_powersports": "AGM", "agm_motorcycle": "AGM",
		"agm_trade_table": "AGM", "gel_trade_table": "gel", "lifepo4_4s": "LiFePO4", "lifepo4_4s_alt": "LiFePO4",
	}
	own := map[string]bool{"flooded_lead_acid": true, "agm_trade_table": true, "gel_trade_table": true, "lifepo4_4s": true}
	compared := 0
	for _, r := range reference(t, "resting_volts.csv") {
		name := chemistry[r["table"]]
		if name == "" {
			t.Fatalf("table %q is of no chemistry", r["table"])
		}
		charge := number(t, r["charge_pct"]) / 100
		high := number(t, r["volts_max"])
		low := high
		if r["volts_min"] != "" {
			low = number(t, r["volts_min"])
		}
		got := of(name, 20).OpenCircuitV(charge, 25)
		tolerance := 0.14
		switch {
		case own[r["table"]]:
			tolerance = 0.021 // the LiFePO4 row of 99 % is taken as 100 %
		case charge <= 0.1, strings.HasPrefix(r["table"], "flooded") && charge <= 0.5:
			low = 10
		}
		if got < low-tolerance || got > high+tolerance {
			t.Errorf("%s %s %%: %.3f V, printed %.2f to %.2f", r["table"], r["charge_pct"], got, low, high)
		}
		compared++
	}
	if compared < 50 {
		t.Errorf("only %d values compared", compared)
	}
}

// TestWorkedExamples compares with printed examples to their last digit; marked
// misprints must stay visible as disagreements.
func TestWorkedExamples(t *testing.T) {
	for _, r := range reference(t, "battery_examples.csv") {
		amps := number(t, r["amps"])
		got := battery.PeukertHours(number(t, r["capacity_ah"]), number(t, r["rate_h"]), number(t, r["exponent"]), amps)
		if r["kind"] == "amphours" {
			got *= amps
		}
		compareOrMisprint(t, r, got, lastDigit(r["printed"]))
	}
}

func compareOrMisprint(t *testing.T, r map[string]string, got, tolerance float64) {
	t.Helper()
	printed := r["printed"] + r["printed_days"]
	off := math.Abs(got - number(t, printed))
	if misprint := r["misprint"] != ""; misprint != (off > tolerance) {
		t.Errorf("%s: %.4g, printed %s ± %.3g (misprint: %q)", r["example"], got, printed, tolerance, r["misprint"])
	}
}

// TestStandbyDays compares with printed days to a whole day (half a day of
// rounding here, as much in the capacity that the source implies). The sources
// count no self-discharge.
func TestStandbyDays(t *testing.T) {
	for _, r := range reference(t, "standby_days.csv") {
		noLoss := *library.Default().Chemistry("AGM")
		noLoss.SelfDischarge = 0
		flat := design.Battery{Chemistry: &noLoss, CapacityAh: given(number(t, r["capacity_ah"]))}
		got := battery.New(&flat, 12).DaysBetween(number(t, r["from_charge"]), number(t, r["to_charge"]),
			number(t, r["drain_ma"])/1000, 20)
		compareOrMisprint(t, r, got, 1)
	}
}

// TestDataSheet compares an AGM battery with a maker's data sheet (AGM 12 V
// 40 Ah): capacity by temperature to its digits, resistance within the maximum.
func TestDataSheet(t *testing.T) {
	b := of("AGM", 40)
	for celsius, pct := range map[float64]float64{30: 103, 25: 100, 10: 90, -10: 74} {
		near(t, strconv.Itoa(int(celsius))+" °C", 100*b.CapacityShare(celsius), pct, 0.5)
	}
	if r := b.Ohm(1, 25); r > 8e-3 || r < 2e-3 {
		t.Errorf("full at 25 °C: %.4f Ω, data sheet at most 8 mΩ", r)
	}
	// Self-discharge 5 % in one month, 10 % in two, 19 % printed for three; at
	// a constant rate the third month gives 14 %, so the sheet's rate rises.
	for months, pct := range map[float64]float64{1: 5, 2: 10} {
		days := b.DaysBetween(1, 1-pct/100, 0, 20)
		near(t, "months of self-discharge", days/30, months, 0.06*months)
	}
}

// TestAcceptance simulates the published charge test of an AGM battery whose
// capacity was measured as 95.69 Ah: from half full, held at 14.4 V with at most
// 0.4 of capacity, it took 33.43 Ah in one hour. The acceptance rows are of
// another test, in which each rate began at rest; after a fast start a battery
// takes more than such a static law says. The program must promise no more than
// was measured, and not less by a sixth.
func TestAcceptance(t *testing.T) {
	b := of("AGM", 95.69)
	charge, taken := 0.5, 0.0
	for range 3600 {
		amps := -b.At(charge, 25).Amps(14.4)
		taken += amps / 3600
		charge += amps / 3600 / b.CapacityAh() // the test counts ampere-hours
	}
	if taken > 33.43 || taken < 33.43*5/6 {
		t.Errorf("%.2f Ah in one hour, measured 33.43", taken)
	}
}

// TestColdAndEmpty: every chemistry gives less, resists more and needs more
// reserve when cold; discharge and charge meet at the resting voltage.
func TestColdAndEmpty(t *testing.T) {
	for _, name := range library.Default().Names("batteries") {
		b := of(name, 14)
		for c := -30.0; c < 25; c += 5 {
			for charge := 0.0; charge <= 1; charge += 0.1 {
				if b.Ohm(charge, c) < b.Ohm(charge, c+5) || b.Ohm(charge, c) < b.Ohm(charge+0.1, c) {
					t.Errorf("%s: resistance falls in the cold or when emptied at %g, %g °C", name, charge, c)
				}
				if b.AcceptedA(charge, c) > b.AcceptedA(charge, c+5) || b.AcceptedA(charge, 25) < b.AcceptedA(charge+0.1, 25) {
					t.Errorf("%s: acceptance rises in the cold or when full at %g, %g °C", name, charge, c)
				}
				near(t, name+" at rest", b.At(charge, c).Amps(b.OpenCircuitV(charge, c)), 0, 1e-9)
			}
			if b.StartReserve(c) < b.StartReserve(c+5) || b.EmptyCharge(c) < b.EmptyCharge(c+5) ||
				b.StartReserve(c) < b.EmptyCharge(c) {
				t.Errorf("%s: reserve at %g °C", name, c)
			}
		}
	}
	if a := of("LiFePO4", 8).At(0.5, -5).Amps(14.4); a != 0 {
		t.Errorf("lithium takes %.3f A at -5 °C", a)
	}
}

// TestRateAgreesWithPeukert: following Rate from full to empty at a steady
// current takes the hours of Peukert's law (0.2 %: self-discharge is in Rate).
func TestRateAgreesWithPeukert(t *testing.T) {
	d := design.Battery{Chemistry: library.Default().Chemistry("AGM"), CapacityAh: given(14), RateH: given(10)}
	b := battery.New(&d, 12)
	for _, amps := range []float64{0.7, 1.4, 5, 14, 40} {
		want := battery.PeukertHours(14, 10, 1.11, amps)
		near(t, "hours", -1/b.Rate(amps, 0.5, 25)/3600, want, 2e-3*want)
		near(t, "hours between", b.HoursBetween(1, 0, amps), want, 1e-9*want)
		near(t, "amp-hours", b.AvailableAh(amps, 25), amps*want, 1e-9*amps*want)
	}
}

// TestDaysWithSelfDischarge checks the closed form against small steps.
func TestDaysWithSelfDischarge(t *testing.T) {
	b := of("flooded", 80)
	charge, hours := 1.0, 0.0
	for charge > b.StartReserve(25) {
		charge += 3600 * b.Rate(0.02, charge, 25)
		hours++
	}
	near(t, "days", b.DaysToNoStart(0.02, 1, 25), hours/24, 0.1)
	if with, without := b.DaysToNoStart(0.02, 1, 25), b.DaysToNoStart(0, 1, 25); with >= without {
		t.Errorf("a drain lengthens %.1f days to %.1f", without, with)
	}
}

func TestUnknowns(t *testing.T) {
	if battery.New(&design.Battery{}, 12) != nil || battery.Of(nil) != nil {
		t.Error("a battery without a capacity")
	}
	b := battery.New(&design.Battery{CapacityAh: given(20)}, 24)
	near(t, "24 V at rest", b.OpenCircuitV(1, 25), 25.4, 1e-9)
	near(t, "24 V resistance", b.Ohm(1, 25), 2*0.34/20, 1e-12)
	near(t, "reserve", b.StartReserve(25), 0.6, 0)
}
