package validation

import (
	"io/fs"
	"math"
	"reflect"
	"testing"

	"fusewright/library"
)

// Each source: enough values, none missing beyond what is known, and none on
// the unsafe side by more than its tolerance unless a table governs there.
func TestSources(t *testing.T) {
	for _, c := range Comparisons() {
		t.Run(c.What, func(t *testing.T) {
			t.Logf("%d values, %d missing, median %+.2f %%, farthest %+.2f %% at %s; outside %d, unsafe %d",
				c.N, c.Missing, 100*c.MedianShare, 100*c.MaxShare, c.MaxAt, c.Outside, c.Unsafe)
			if c.N < 3 || c.Source == "" || c.Certainty == "" || c.Tolerance == "" {
				t.Errorf("not complete: %+v", c)
			}
			if c.Unsafe > 0 && !c.Governed {
				t.Errorf("%d of %d values on the unsafe side (%s) by more than %s; worst %+.3g %% at %s",
					c.Unsafe, c.N, c.UnsafeSide, c.Tolerance, 100*c.MaxShare, c.MaxAt)
			}
			if c.UnsafeSide == Either && c.Outside > 0 {
				t.Errorf("%d of %d values outside", c.Outside, c.N)
			}
		})
	}
}

func TestSourcesAreSure(t *testing.T) {
	known := map[string]bool{}
	for _, c := range library.Certainties {
		known[c] = true
	}
	for _, c := range Comparisons() {
		if !known[c.Certainty] {
			t.Errorf("%s: certainty %q", c.What, c.Certainty)
		}
	}
}

// Every reference file is read by some comparison or helps one.
func TestReferenceFilesRead(t *testing.T) {
	list, err := fs.Glob(files, "reference/*.csv")
	if err != nil || len(list) < 15 {
		t.Fatalf("%d files, %v", len(list), err)
	}
	used := map[string]bool{}
	for _, c := range Comparisons() {
		used[c.Source] = true
	}
	for _, f := range list {
		name := f[len("reference/") : len(f)-len(".csv")]
		if s := read(name); !used[s.head.Source] && name != "sae_least_cmil" {
			t.Errorf("%s is in no comparison", f)
		}
	}
}

func TestComparisonsAreStable(t *testing.T) {
	if a, b := Comparisons(), Comparisons(); !reflect.DeepEqual(a, b) {
		t.Error("two runs differ")
	}
}

func TestCompare(t *testing.T) {
	pairs := []pair{{"a", 11, 10, 0.5}, {"b", 9, 10, 0.5}, {"c", 10.4, 10, 0.5}, {"d", math.NaN(), 10, 1}}
	for side, unsafe := range map[Side]int{OverBad: 1, UnderBad: 1, Either: 2} {
		c := compare(Comparison{UnsafeSide: side}, pairs)
		if c.N != 3 || c.Missing != 1 || c.Outside != 2 || c.Unsafe != unsafe || math.Abs(c.MedianShare-0.04) > 1e-12 {
			t.Errorf("%v: %+v", side, c)
		}
	}
}

// What is a prediction is listed: whoever calls a further comparison one adds it here
// with a reason why neither its table nor its formula is the program's own.
func TestKinds(t *testing.T) {
	want := map[string]bool{
		"free-air current: heat balance (Churchill-Chu)":                        true, // correlations against a chart of currents
		"free-air current: heat balance with Morgan's convection":               true,
		"heat balance at the class, M22759/16 dimensions":                       true,
		"heat balance at the class, tinned marine 105 °C AWG dimensions":        true,
		"heat balance at the class, tinned marine 105 °C metric dimensions":     true,
		"resting volts, other tables of the same chemistry from 60 % charge up": true, // not the table of the library
		"charging output between documented points, each left out in turn":      true, // the point is not in the curve
	}
	for _, c := range bundles()[1:] { // the first is what the model is fitted to
		want[c.What] = true // a heat balance against charts that go into no answer of it
	}
	for _, c := range Comparisons() {
		if (c.Kind == Prediction) != want[c.What] || c.Kind != Prediction && c.Kind != ReadBack {
			t.Errorf("%s: %s", c.What, c.Kind)
		}
		delete(want, c.What)
	}
	for name := range want {
		t.Errorf("no comparison %q", name)
	}
}
