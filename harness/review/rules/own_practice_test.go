package rules_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
	"fusewright/library"
)

// ownBoat is a user's own practice of boats with the limits of the embedded one,
// and a battery switch, a float switch and a bilge pump under names of their own.
const ownBoat = `fusewright library: 1
source: "habits of an invented yard"
certainty: user data
practices:
  - name: estuary ferries
    afloat: true
    usual wire: tinned marine 105 °C AWG
    limits:
      drop critical: {value: 0.03}
      drop other: {value: 0.10}
      fuse distance mm: {value: 178}
      fuse distance sheathed mm: {value: 1016}
      most fuse distance sheathed mm: {value: 1016}
      most fuse distance mm: {value: 178}
      grave fuse distance mm: {value: 356}
      load share of fuse: {value: 0.8}
      drop aim: {value: 0.04}
      drop aim converters: {value: 0.022}
      converters from A: {value: 25}
      fuse share of wire: {value: 1}
      most fuse share of wire: {value: 1.5}
      fuse ratio: {value: 1.6}
      least mm2: {value: 1}
      least flexing mm2: {value: 1}
      margin to class K: {value: 10}
      current table: {value: 33 CFR 183.425}
switches:
  - {name: red key 100 A, resistive A: 100, lamp A: 20, motor A: 50, contact mohm: 0.5, sealed: true, isolates: true, ignition protected: true, end: ring M8}
  - {name: water feeler, resistive A: 15, lamp A: 3, motor A: 7.5, contact mohm: 10, sealed: true, float: true, end: splice}
loads:
  - {name: sump lifter, behaves: motor, sign: pump, bilge pump: true, current A: 3.3, rated V: 12, min V: 10, duty: 0.05, end: splice, inrush: {peak ratio: 3, tau s: 0.1}}
`

// TestOwnBoatKeepsItsFindings: what a boat's design is told does not hang on the
// names that its practice, its switches and its pumps have.
func TestOwnBoatKeepsItsFindings(t *testing.T) {
	lib, err := library.LoadTexts(library.Text{File: "yard.yaml", Data: []byte(ownBoat)})
	if err != nil {
		t.Fatal(err)
	}
	texts := map[string]string{}
	for _, r := range rules.All() {
		if strings.Contains(r.Bad, "practice: marine") {
			texts[r.Name] = example.Design(r.Bad)
		}
	}
	skiff, err := os.ReadFile(filepath.Join("..", "..", "..", "designs", "reed-skiff.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	texts["reed-skiff"] = string(skiff)
	if len(texts) < 5 {
		t.Fatalf("only %d designs of boats", len(texts))
	}
	silent := strings.NewReplacer("  bilge pump:", "  lifter:", "  float switch:", "  feeler:", "fed by: float switch", "fed by: feeler", "[float switch,", "[feeler,")
	rename := strings.NewReplacer("practice: marine", "practice: estuary ferries", "battery switch 100 A", "red key 100 A",
		"type: bilge pump,", "type: sump lifter,", "float switch 15 A", "water feeler")
	for name, text := range texts {
		text = silent.Replace(text)
		want := said(assess(t, "boat.yaml", []byte(text)))
		d, err := design.Read("boat.yaml", []byte(rename.Replace(text)), lib)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if got := said(check(t, d)); !slices.Equal(got, want) {
			t.Errorf("%s: with a practice of one's own\n%s\nwith the embedded one\n%s", name,
				strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
		if len(want) == 0 {
			t.Errorf("%s: a bad design without findings", name)
		}
	}
}

func said(list []*finding.Finding) (out []string) {
	for _, f := range list {
		out = append(out, f.Severity.String()+" "+f.Rule+": "+f.What)
	}
	return out
}
