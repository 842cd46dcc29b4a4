package report

import (
	"strings"
	"testing"

	"fusewright/harness/design/quantity"
	"fusewright/harness/workshop/bench"
)

// Loads of the same figures at the same points share a row, and so does what is only
// looked at, which has nothing to write in.
func TestRowsOfSeveralChecks(t *testing.T) {
	volts := func(number, ref string, high float64) *bench.Check {
		return &bench.Check{Number: number, Ref: ref, Name: "lamp", Where: "+ and −", Quantity: quantity.Voltage, Nominal: 0.2, ShowsV: 12, Low: 0.1,
			High: high, Below: true}
	}
	look := func(number, ref string) *bench.Check {
		return &bench.Check{Number: number, Ref: ref, Where: "− W1, + W2", Text: bench.ByEye}
	}
	for _, c := range []struct {
		kind   bench.Kind
		checks []*bench.Check
		want   string
		looks  int
	}{
		{bench.InUse, []*bench.Check{volts("1.1", "E1", 0.3), volts("1.2", "E2", 0.3), volts("1.3", "E3", 0.4)},
			"1.1–2|E1 E2|+ and − of each, the worst|12.0 V|100 to 300 mV below; 1.3|E3 lamp|+ and −|12.0 V|100 to 400 mV below", 0},
		{bench.Polarity, []*bench.Check{look("1.1", "E1"), look("1.2", "E2")}, "1.1–2|by eye|E1: − W1, + W2 · E2: − W1, + W2||", 1},
	} {
		table := BenchTable(&bench.Section{Kind: c.kind, Groups: []*bench.Group{{Checks: c.checks}}})
		var rows []string
		for _, row := range table.Rows {
			rows = append(rows, strings.Join(row, "|"))
		}
		if got := strings.Join(rows, "; "); got != c.want || len(table.Looks) != c.looks {
			t.Errorf("got %s with %d only looked at, want %s", got, len(table.Looks), c.want)
		}
	}
}
