package rules_test

import (
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/study/fault"
)

// Study and check give one answer on which fuses cannot break a short: those with none
// before them, by the same capacity.
func TestBreakingIsOneAnswer(t *testing.T) {
	files, err := filepath.Glob("../../../testdata/corpus-clean-trade/2*.yaml")
	if err != nil || len(files) != 10 {
		t.Fatal(files, err)
	}
	named := 0
	for _, file := range files {
		r := reviewtest.File(t, file)
		check, study := map[string]bool{}, map[string]bool{}
		for _, f := range r.Findings {
			if f.Rule == "fuse-breaking-capacity" {
				check[f.Ref] = true
			}
		}
		for _, s := range r.Faults.Shorts {
			if b := s.Results[fault.Strong].Exceeded; b != nil {
				study[b.Fuse.Ref] = true
			}
		}
		if a, b := slices.Sorted(maps.Keys(check)), slices.Sorted(maps.Keys(study)); !slices.Equal(a, b) {
			t.Errorf("%s: check names %v, study %v", file, a, b)
		}
		named += len(check)
	}
	if named == 0 {
		t.Error("no fuse is named")
	}
}

// Class T is the remedy of a lithium house pack alone; a battery that empties with the
// engine stopped is no matter of its speed.
func TestRemediesFitTheDesign(t *testing.T) {
	change := func(src, rule string) (text string) {
		for _, f := range assess(t, "remedy.yaml", []byte(example.Design(src))) {
			if f.Rule == rule {
				text = f.Change + " " + f.Why
			}
		}
		return text
	}
	for chemistry, want := range map[string]bool{"LiFePO4": true, "AGM": false} {
		text := change("battery: {chemistry: "+chemistry+", capacity: 200 Ah, rate: 20 h, resistance: 1 mΩ, at: battery tray}\n"+
			"fuses:\n  lamp fuse: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 16 mm², length: 100 mm}}\n", "fuse-breaking-capacity")
		if text == "" || strings.Contains(text, "class T") != want {
			t.Errorf("%s: %q", chemistry, text)
		}
	}
	for leg, want := range map[string]bool{"engine: idle": true, "engine: stopped": false} {
		text := change("vehicle loads:\n  machine: {power: 190 W, when: key}\nrides:\n  queue: {start charge: 80 %, legs: [{lasts: 20 h, "+leg+
			", on: none, ambient: 10 °C}]}\n", "ride-empties-battery")
		if text == "" || strings.Contains(text, "engine faster") != want || strings.Contains(text, "under way") != want {
			t.Errorf("%s: %q", leg, text)
		}
	}
}
