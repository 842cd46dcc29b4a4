package validation

import (
	"math"
	"regexp"
	"strconv"
	"testing"
)

// What is allowed is what the page says: a tolerance that begins with a number
// and a unit holds for every value of its comparison.
func TestTolerancesAreThoseSaid(t *testing.T) {
	said := regexp.MustCompile(`^±?([0-9.]+) (%|V)`)
	checked := 0
	for _, c := range Comparisons() {
		m := said.FindStringSubmatch(c.Tolerance)
		if m == nil {
			continue
		}
		want, err := strconv.ParseFloat(m[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		got := c.within
		if m[2] == "%" {
			want, got = want/100, c.withinShare
		}
		checked++
		for _, x := range got {
			if math.Abs(x-want) > 1e-9 {
				t.Errorf("%s: a value may be off by %g, the page says %s", c.What, x, c.Tolerance)
				break
			}
		}
	}
	if checked < 8 {
		t.Errorf("only %d tolerances are said in numbers", checked)
	}
}

// The tolerance itself is within it, a hair for binary rounding included.
func TestCompareAtTheTolerance(t *testing.T) {
	for off, outside := range map[float64]int{0.49: 0, 0.5: 0, 0.5 + 4e-10: 0, 0.501: 1, 0.54: 1} {
		c := compare(Comparison{UnsafeSide: Either}, []pair{{"a", 8 + off, 8, 0.5}})
		if c.Outside != outside || c.Unsafe != outside {
			t.Errorf("off by %g of 0.5: %d outside, %d unsafe", off, c.Outside, c.Unsafe)
		}
	}
}

func TestHalfALastDigit(t *testing.T) {
	for printed, want := range map[string]float64{"115": 0.5, "8.9": 0.05, "0.021": 0.0005} {
		if got := lastDigit(printed); math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: %g, want %g", printed, got, want)
		}
	}
}

// Where the program errs on the safe side it must not err by much either: 2 % for
// the lay of strands meets every row of the table.
func TestStrandLayMeetsTheTable(t *testing.T) {
	if c := necTable8(); c.Outside != 0 || math.Abs(c.MedianShare) > 0.002 {
		t.Errorf("%d of %d outside, median %+.2f %%", c.Outside, c.N, 100*c.MedianShare)
	}
}
