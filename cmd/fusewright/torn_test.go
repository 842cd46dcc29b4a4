package main

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design/quantity"
	"fusewright/render/document"
	"fusewright/render/scene"
)

// TestNothingTorn: on no page of the dossier in feet and inches, nor of the papers that
// lie apart, does a line of a cell or paragraph end inside a number, or between a
// number, its fraction and its unit.
func TestNothingTorn(t *testing.T) {
	r := reviewOf(t, demos[0])
	r.Design.Sheet.Lengths = "ft"
	all := papersOf(t, r)
	sheets := document.Dossier(r, "Dossier", sectionsOf(r, all, "")).Sheets
	for _, d := range all {
		sheets = append(sheets, d.sheets...)
	}
	lines := 0
	for i, s := range sheets {
		for _, pair := range goesOn(s) {
			lines++
			if torn(pair[0], pair[1]) {
				t.Errorf("sheet %d: %q and, on the next line, %q", i+1, pair[0], pair[1])
			}
		}
	}
	if lines < 100 {
		t.Errorf("only %d lines go on: are they still found?", lines)
	}
}

// TestNoWordTorn: on no page of any paper of the demo designs and of the largest designs
// of the corpora does a line end inside a word.
func TestNoWordTorn(t *testing.T) {
	files := slices.Clone(demos)
	for _, name := range []string{"corpus-review/clean/24-pot-fishing-coble",
		"corpus-clean-trade/14-overland-complete"} {
		files = append(files, "../../testdata/"+name+".yaml")
	}
	for _, file := range files {
		_, all := drawnOf(t, file)
		known := map[string]bool{}
		learn := func(text string) {
			for _, word := range strings.Fields(text) {
				known[strings.Trim(word, marks)] = true
			}
		}
		learn(string(sourceOf(t, file)))
		for _, d := range all {
			for _, s := range d.sheets {
				for _, item := range s.Items {
					if item.Text != nil {
						learn(item.Text.String)
					}
				}
			}
		}
		for _, d := range all {
			for i, s := range slices.Concat(d.sheets, d.legend.Sheets) {
				for _, pair := range goesOn(s) {
					// The head of a word that was cut stands alone on its line; behind a sign it may end.
					first, _, _ := strings.Cut(pair[1], " ")
					if !strings.Contains(pair[0], " ") && !strings.ContainsAny(pair[0][len(pair[0])-1:], ":/-") && known[strings.Trim(pair[0]+first, marks)] {
						t.Errorf("%s, %s, page %d: %q and, on the next line, %q", file, d.title, i+1, pair[0], pair[1])
					}
				}
			}
		}
	}
}

// marks stand beside words.
const marks = ".,;:()[]{}\"'·"

// goesOn are the lines of a sheet with those that stand one line height below them,
// drawn next in the same way: a cell or paragraph that was wrapped.
func goesOn(s *scene.Sheet) (pairs [][2]string) {
	var last *scene.Text
	for _, item := range s.Items {
		x := item.Text
		if x == nil || x.Turn != 0 {
			continue
		}
		if last != nil && last.At.X == x.At.X && last.Face == x.Face && last.Align == x.Align &&
			math.Abs(x.At.Y-last.At.Y-scene.LineHeightMM(last.SizeMM)) < 0.3 {
			pairs = append(pairs, [2]string{last.String, x.String})
		}
		last = x
	}
	return pairs
}

var (
	endsInNumber   = regexp.MustCompile(`[0-9][0-9./]*$`)
	beginsInNumber = regexp.MustCompile(`^[0-9./]+`)
)

// torn tells whether a quantity goes over the end of a line: words that belong
// together, or a number cut in two.
func torn(line, next string) bool {
	before, after := strings.Fields(line), strings.Fields(next)
	if len(before) == 0 || len(after) == 0 {
		return false
	}
	last, first := before[len(before)-1], after[0]
	if last == "ft" && beginsInNumber.MatchString(first) && strings.Contains(next, " in") {
		return true
	}
	return quantity.Belong(last, first) || len(before) == 1 && endsInNumber.MatchString(last) && beginsInNumber.MatchString(first) &&
		strings.ContainsAny(last+first, "/.")
}
