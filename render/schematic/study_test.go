package schematic

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/render/scene"
	"fusewright/render/schematic/solved"
)

// words are all texts of sheets.
func words(sheets []*scene.Sheet) map[string]int {
	out := map[string]int{}
	for _, s := range sheets {
		for _, item := range s.Items {
			if item.Text != nil {
				out[item.Text.String]++
			}
		}
	}
	return out
}

// A study sheet says of every wire and load what the solution says, worked out
// here from the node volts and branch amperes.
func TestStudyShowsTheSolution(t *testing.T) {
	review := demo(t, "fen-runner")
	const name = "night cruise"
	sheets, err := Draw(review, Options{Situation: strings.ToUpper(name)})
	if err != nil {
		t.Fatal(err)
	}
	var sol *solve.Solution
	for _, s := range review.Solutions {
		if s.Situation.Name == name {
			sol = s
		}
	}
	found := words(sheets)
	if !strings.Contains(strings.Join(slices.Sorted(maps.Keys(found)), " "), "at one") {
		t.Error("nothing says that the values are those of one moment")
	}
	for _, w := range review.Circuit.Wires {
		end := w.To
		if w.Role == circuit.ReturnWire || w.Role == circuit.CoilReturnWire {
			end = w.From
		}
		want := quantity.Format(sol.BranchA[w.Branch.Index], quantity.Current) + ", " + quantity.Format(sol.NodeV[end.Node.Index], quantity.Voltage)
		if found[want] == 0 {
			t.Errorf("%s: no %q on the sheets", w.Number, want)
		}
	}
	for _, b := range review.Circuit.Branches {
		switch {
		case b.Kind == circuit.LoadBranch && b.Part.Kind == circuit.Load && sol.LoadOn[b.Index]:
			v := sol.NodeV[b.A.Index] - sol.NodeV[b.B.Index]
			want := quantity.Format(v, quantity.Voltage) + ", " + quantity.Format(v*sol.BranchA[b.Index], quantity.Power)
			if found[want] == 0 {
				t.Errorf("%s: no %q on the sheets", b.Part.Ref, want)
			}
		case b.Fuse != nil && !b.Fuse.Factory:
			want := quantity.Format(math.Abs(sol.BranchA[b.Index])/b.Fuse.Rating.RatingA, quantity.Share)
			if found[want]+found[want+" of rating"] == 0 {
				t.Errorf("%s: no %q on the sheets", b.Fuse.Ref, want)
			}
		}
	}
}

// A situation that was not solved shows no numbers, and one that does not exist
// is refused with the nearest name.
func TestStudyWithoutSolution(t *testing.T) {
	review := demo(t, "fen-runner")
	if _, err := Draw(review, Options{Situation: "nite cruise"}); err == nil || !strings.Contains(err.Error(), `did you mean "night cruise"`) {
		t.Errorf("error %v", err)
	}
	for _, s := range review.Solutions {
		s.Status, s.Why = solve.Collapsed, "too much asked"
	}
	sheets, err := Draw(review, Options{Situation: "night cruise"})
	if err != nil {
		t.Fatal(err)
	}
	found := words(sheets)
	if found["? A"] == 0 || found["not solved"] == 0 {
		t.Error("an unsolved situation does not say so")
	}
	for text := range found {
		if strings.HasSuffix(text, " V") && strings.Contains(text, " A, ") {
			t.Errorf("a number of an unsolved situation: %q", text)
		}
	}
	if got := solved.HeaviestSituation(review); got != "" {
		t.Errorf("heaviest of none solved is %q", got)
	}
}

func TestHeaviestSituation(t *testing.T) {
	if got := solved.HeaviestSituation(demo(t, "fen-runner")); got != "night cruise" {
		t.Errorf("got %q", got) // everything is on, at cruise
	}
}
