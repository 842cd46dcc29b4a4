package derivation_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/derivation"
)

// What a further battery gives to a start is asked by its name, and is the study's figure; with a voltage-sensing relay in
// the link it is that with the relay still closed. By hand (13.6 V − 12.04 V) / 33.4 mΩ = 46.6 A. A van with a DC-DC charger has no such figure.
func TestStartOverLink(t *testing.T) {
	for _, c := range []struct {
		file   string
		wantA  float64
		closed bool
	}{
		{"../../testdata/rules/start-over-link.yaml", 46.6, false},
		{"../../testdata/rules/sensing-relay-stays.yaml", 46.2, true},
		{"../../designs/sedge-sloop.yaml", 114.9, true},
	} {
		r := reviewOf(t, c.file)
		tree := of(t, r, "current at a start of house")
		k := r.Cranking.Cases[0].Helpers[0]
		study := k.GivesA
		if c.closed {
			study = k.HeldA
		}
		if got := base(tree.Root); tree.What != "start current of house" || tree.Root.Formula == "" || offIn(tree.Root) != nil || math.Abs(got-c.wantA) > 0.05 || math.Abs(got-study) > 0.02 {
			t.Errorf("%s: %s is %g A, %q; want %g A, the study has %g A", c.file, tree.What, got, tree.Root.Formula, c.wantA, study)
		}
		if said := strings.Contains(strings.Join(tree.Answer, " "), "in place of"); said != c.closed {
			t.Errorf("%s: %q", c.file, tree.Answer)
		}
	}
	if r := reviewOf(t, "../../designs/hay-wain.yaml"); slices.ContainsFunc(derivation.Names(r), func(s string) bool { return strings.HasPrefix(s, "start current") }) {
		t.Error("a battery behind a DC-DC charger helps")
	}
}
