package document

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"fusewright/render/report"
)

// squeezed is a text without blanks: lines are broken anywhere.
func squeezed(text string) string { return strings.Join(strings.Fields(text), "") }

// No text of a cell is lost on paper, whatever its kind, column, length and what stands beside it: tables of one to
// nine columns, with figures to the right or not, with boxes or not, all of them laid as every document does.
func TestNoCellIsLost(t *testing.T) {
	cells := []string{"14.21V", "14.21 V", "open", "wrong", "−0.3mV", "13.52 to 14.72 V", "1/8", "≤12.5", "§", "FAIL: 599 mV too low", "–",
		strings.Repeat("long ", 30) + "end", strings.Repeat("x", 60)}
	r := reviewed(t, "fen-runner")
	for seed := range uint64(40) {
		rng := rand.New(rand.NewPCG(seed, 1))
		var heads []string
		for i := range 1 + rng.IntN(9) {
			heads = append(heads, []string{"", ">"}[rng.IntN(2)]+fmt.Sprintf("h%d", i))
		}
		table := report.NewTable(heads...)
		var want []string
		for range 1 + rng.IntN(6) {
			if rng.IntN(3) == 0 {
				table.Group(fmt.Sprintf("group %d", len(want)))
			}
			row := make([]string, len(heads))
			for i := range row {
				row[i] = fmt.Sprintf("%s%d", cells[rng.IntN(len(cells))], 100+len(want)) // each its own
				want = append(want, row[i])
			}
			table.Add(row...)
		}
		var boxes []column
		if rng.IntN(2) == 0 {
			boxes = []column{{head: "reading", wide: 26}}
		}
		column := map[float64]string{} // by the edge at which its lines stand
		for _, s := range upright("Test", r, func(b *book) { b.lay(table, boxes...) }) {
			for _, item := range s.Items {
				if item.Text != nil {
					column[item.Text.At.X] += squeezed(item.Text.String)
				}
			}
		}
		page := strings.Join(slices.Collect(maps.Values(column)), "\n")
		for _, cell := range want {
			if !strings.Contains(page, squeezed(cell)) {
				t.Errorf("seed %d: %q is lost", seed, cell)
			}
		}
	}
}
