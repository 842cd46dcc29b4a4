package layout

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fusewright/harness/design/lengths"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/scene"
)

// TestPages holds how many pages at full size the demos take, their long runs broken and
// whole.
func TestPages(t *testing.T) {
	want := map[string]string{"fen-runner": "4, 9", "reed-skiff": "3, 35", "hay-wain": "3, 37", "sedge-sloop": "5, 92"}
	for name, r := range demos(t) {
		var got []string
		for _, runs := range []string{"broken", "whole"} {
			r.Design.Sheet.LongRuns = runs
			got = append(got, fmt.Sprint(len(fullSizeOf(t, r, formboard.Lay(r.Circuit)))))
		}
		if s := strings.Join(got, ", "); s != want[name] {
			t.Errorf("%s: %s pages at full size, broken and whole; want %s", name, s, want[name])
		}
	}
}

// TestBreaks: every long run has its true length across its break and a note beside it,
// and what is drawn of it stands as far from its nails as on the loom.
func TestBreaks(t *testing.T) {
	for name, r := range demos(t) {
		u, board := lengths.Of(r.Design), formboard.LayBroken(r.Circuit)
		want, notes := map[string]int{}, 0
		for _, section := range board.Sections {
			for _, l := range section.Limbs {
				if l.Run.Length >= formboard.BreakFromMm {
					want[u.Dim(l.Run.Length)]++
				}
				got := math.Hypot(l.To.At.X-l.From.At.X, l.To.At.Y-l.From.At.Y)
				if math.Abs(got-l.Run.BrokenMm()) > 1e-9 {
					t.Errorf("%s: run %d is drawn %g mm long, want %g", name, l.Run.Number, got, l.Run.BrokenMm())
				}
			}
		}
		for _, s := range Whole(r, board) {
			for across, n := range breaksOn(s) {
				want[across] -= n
			}
			text := allText([]*scene.Sheet{s})
			notes += strings.Count(text, "drawn shortened; clamps at")
			if !strings.Contains(text, "their true length stands across the break") {
				t.Errorf("%s: %s does not say that it is not to scale throughout", name, s.Title)
			}
		}
		for across, n := range want {
			notes -= n
			if n != 0 {
				t.Errorf("%s: %+d runs of %s without their true length", name, n, across)
			}
		}
	}
}

// breaksOn counts the words across the breaks of a sheet.
func breaksOn(s *scene.Sheet) map[string]int {
	out := map[string]int{}
	within := false
	for _, item := range s.Items {
		switch {
		case item.Begin != nil:
			within = item.Begin.Class == "break"
		case item.End:
			within = false
		case within && item.Text != nil:
			out[item.Text.String]++
		}
	}
	return out
}

// TestPiecesInRuns: a run names the piece of a parted wire that lies in it.
func TestPiecesInRuns(t *testing.T) {
	board := formboard.Lay(demos(t)["sedge-sloop"].Circuit)
	for name, want := range map[string]string{
		"saloon to mast foot":            "W12a, W14a, W50b, W51b",
		"mast foot to mast, half height": "W12b, W14b, W50a, W51a",
		"cockpit to pushpit":             "W11, W49",
	} {
		for _, r := range board.Runs {
			if got := wireNumbers(r); r.Bundle.Run.From.Name+" to "+r.Bundle.Run.To.Name == name && got != want {
				t.Errorf("%s: %s, want %s", name, got, want)
			}
		}
	}
}
