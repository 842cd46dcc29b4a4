package document

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"fusewright/harness/proof/fuzztest"
)

// FuzzCSV: a table of any texts reads back as the table it was, cell by cell,
// and no cell is a formula.
func FuzzCSV(f *testing.F) {
	for _, s := range []string{"=1+1", "-1.5", "\t=x", " +1", "a,b\r\n\"c\"", "'", "-2+3", "\ufeff=1", "⁻=1"} {
		f.Add(s, s)
	}
	f.Fuzz(func(t *testing.T, a, b string) {
		fuzztest.Within(t, func() {
			var out bytes.Buffer
			if err := writeCSV(&out, []string{"a", "b"}, [][]string{{a, b}, {b, a}}); err != nil {
				t.Fatal(err)
			}
			rows, err := csv.NewReader(&out).ReadAll()
			if err != nil || len(rows) != 3 {
				t.Fatalf("%d rows, %v", len(rows), err)
			}
			for i, want := range []string{SafeCell(a), SafeCell(b)} {
				got := rows[1][i]
				if got != want || rows[2][1-i] != want {
					t.Errorf("cell %q reads back as %q", want, got)
				}
				text := strings.TrimLeft(got, " \t\r\n")
				if text != "" && strings.ContainsRune("=+-@|%", rune(text[0])) && strings.Trim(text, "+-.0123456789") != "" {
					t.Errorf("cell %q would run", got)
				}
			}
		})
	})
}
