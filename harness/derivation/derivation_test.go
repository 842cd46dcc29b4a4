package derivation_test

import (
	"errors"
	"flag"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/derivation"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/workshop/cutting"
	"fusewright/library"
)

func reviewOf(t testing.TB, file string) *harness.Review {
	t.Helper()
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read(file, src, library.Default())
	if err != nil {
		return nil
	}
	r, err := harness.Assess(d)
	if err != nil {
		return nil
	}
	return r
}

func of(t *testing.T, r *harness.Review, what string) *derivation.Tree {
	t.Helper()
	tree, err := derivation.Of(r, what)
	if err != nil {
		t.Fatal(err)
	}
	return tree
}

var demos = []string{"fen-runner", "reed-skiff", "sedge-sloop", "hay-wain"}

// The figure that is explained is the one that the review has.
func TestFiguresOfTheReview(t *testing.T) {
	compared := 0
	for _, demo := range demos {
		r := reviewOf(t, "../../designs/"+demo+".yaml")
		s := r.Corners
		names := derivation.Names(r)
		same := func(what string, want float64) {
			t.Helper()
			if !slices.Contains(names, what) {
				return
			}
			compared++
			tree := of(t, r, what)
			scale := map[string]float64{"mV": 1e-3, "mA": 1e-3, "mΩ": 1e-3}[tree.Root.Unit]
			if scale == 0 {
				scale = 1
			}
			if got := tree.Root.Number * scale; math.Abs(got-want) > 1e-9*math.Abs(want) {
				t.Errorf("%s, %s: %.10g, the review has %.10g", demo, what, got, want)
			}
		}
		for _, b := range r.Circuit.Branches {
			if b.Kind != circuit.LoadBranch || b.Load.Load == nil || b.Load.Standby {
				continue
			}
			on := func(i int) bool { return s.Solution(i).LoadOn[b.Index] }
			drop, _ := s.WorstIn(1, corner.AtWorst, on, func(i int) corner.Value { return s.Drop(i, b) })
			same("drop of "+b.Part.Name, drop.Corner)
			least, _ := s.WorstIn(-1, corner.AtWorst, on, func(i int) corner.Value { return s.LoadV(i, b) })
			same("volts at "+b.Part.Name, least.Corner)
		}
		for _, w := range r.Circuit.Wires {
			always := func(int) bool { return true }
			hot, _ := s.WorstIn(1, corner.AtWorst, always, func(i int) corner.Value { return s.WireC(i, w) })
			same("temperature of "+w.Number, hot.Corner)
			most, _ := s.WorstIn(1, corner.AtWorst, always, func(i int) corner.Value { return s.Amps(i, w.Branch) })
			same("current of "+w.Number, most.Corner)
			same("allowed current of "+w.Number, s.Model.Wires[w.Index].AllowedA)
			same("cut length of "+w.Number, cutting.LengthM(w))
		}
		for _, l := range r.Budget.Lines {
			same("spare in "+l.Situation.Name, l.SpareA)
		}
		same("days parked", r.Budget.StandbyDays)
	}
	if compared < 500 {
		t.Errorf("%d figures compared", compared)
	}
}

// A finding is explained by its own figure and limit.
func TestFindings(t *testing.T) {
	derived := 0
	for _, demo := range demos {
		r := reviewOf(t, "../../designs/"+demo+".yaml")
		for _, f := range r.Findings {
			tree := of(t, r, "finding "+numberOf(f.Number))
			if !f.Figure.Given() || tree.Line != f.Pos.Line {
				continue
			}
			if tree.Root.Formula != "" {
				derived++
			}
			if got := base(tree.Root); math.Abs(got-f.Figure.Value) > 1e-6*math.Abs(f.Figure.Value) {
				t.Errorf("%s, finding %d: %g, its figure is %g", demo, f.Number, got, f.Figure.Value)
			}
			if tree.Limit != nil && math.Abs(base(tree.Limit)-f.Figure.Limit) > 1e-6*math.Abs(f.Figure.Limit) {
				t.Errorf("%s, finding %d: limit %g, want %g", demo, f.Number, base(tree.Limit), f.Figure.Limit)
			}
		}
	}
	if derived < 14 {
		t.Errorf("%d findings have a derived figure", derived)
	}
}

func numberOf(n int) string {
	return strings.TrimLeft(string(rune('0'+n/10))+string(rune('0'+n%10)), "0")
}

func base(s *derivation.Step) float64 {
	return s.Number * map[string]float64{"mV": 1e-3, "mA": 1e-3, "mΩ": 1e-3, "ms": 1e-3, "%": 1e-2, "V": 1, "A": 1, "Ω": 1, "s": 1, "m": 1, "": 1}[s.Unit]
}

func TestAskedOtherwise(t *testing.T) {
	r := reviewOf(t, "../../designs/fen-runner.yaml")
	for asked, want := range map[string]string{
		"drop left lamp": "drop of left lamp", "Drop of the LEFT lamp": "drop of left lamp", "drop of E1": "drop of left lamp",
		"rating of main": "rating of F1", "spare at idle": "spare in town, waiting", "spare at cruise": "spare in night cruise",
	} {
		if got := of(t, r, asked).What; got != want {
			t.Errorf("%q is taken for %q, want %q", asked, got, want)
		}
	}
	for asked, want := range map[string]string{"drop of left lmap": "drop of left lamp", "allowed curent of W7": "allowed current of W7", "99": ""} {
		_, err := derivation.Of(r, asked)
		var miss *derivation.Unknown
		if !errors.As(err, &miss) || want != "" && (len(miss.Nearest) == 0 || miss.Nearest[0] != want) {
			t.Errorf("%q: %v, want %q offered", asked, err, want)
		}
	}
}

var designs = flag.String("designs", "", "derive every figure of the designs of this pattern")

// TestEveryFigureHolds derives every figure of designs as people get them wrong: each formula
// gives its value, and nothing panics. By itself a few; with -designs as many as one likes.
func TestEveryFigureHolds(t *testing.T) {
	pattern, most := "../../testdata/corpus/fault/*.yaml", 6
	if *designs != "" {
		pattern, most = *designs, math.MaxInt
	}
	files, err := filepath.Glob(pattern)
	if err != nil || len(files) == 0 {
		t.Fatalf("no designs: %v", err)
	}
	figures := 0
	for i, file := range files {
		if i%max(1, len(files)/most) != 0 {
			continue
		}
		r := reviewOf(t, file)
		if r == nil {
			continue
		}
		for _, name := range derivation.Names(r) {
			tree := of(t, r, name)
			figures++
			for _, s := range []*derivation.Step{tree.Root, tree.Limit} {
				if off := offIn(s); off != nil {
					t.Errorf("%s, %s: %s  %s = %s", file, name, off.Value, off.Label, off.Formula)
				}
				if bare := bareIn(s); bare != nil && len(s.From) > 0 {
					t.Errorf("%s, %s: %s  %s is from nowhere", file, name, bare.Value, bare.Label)
				}
			}
		}
	}
	t.Logf("%d figures", figures)
}

// offIn is a step whose formula does not give its value; nil = none.
func offIn(s *derivation.Step) *derivation.Step {
	if s == nil || s.Off {
		return s
	}
	for _, k := range s.From {
		if off := offIn(k); off != nil {
			return off
		}
	}
	return nil
}

// bareIn is a leaf of which nothing says where it is from; nil = none.
func bareIn(s *derivation.Step) *derivation.Step {
	if s == nil || s.Above {
		return nil
	}
	if len(s.From) == 0 && s.First() == s && s.Source == "" && s.Line == 0 && s.Formula == "" {
		return s
	}
	for _, k := range s.From {
		if bare := bareIn(k); bare != nil {
			return bare
		}
	}
	return nil
}

func BenchmarkOf(b *testing.B) {
	for _, demo := range demos {
		r := reviewOf(b, "../../designs/"+demo+".yaml")
		name := derivation.Names(r)[0]
		b.Run(demo, func(b *testing.B) {
			for b.Loop() {
				if _, err := derivation.Of(r, name); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
