package scenetest

import (
	"fmt"
	"sort"
	"strings"

	"fusewright/render/scene"
)

// LeastCapMM is the height that capitals have at least on paper.
const LeastCapMM = 2.0

// edgeMM is what a text may reach over the frame it is checked against: the
// advance width of a glyph is a little more than its ink.
const edgeMM = 0.05

// Texts tells what is wrong with the texts of a sheet: capitals under
// LeastCapMM, ink outside the rectangle given, ink of one text over that of
// another. Nil is a clean sheet.
func Texts(s *scene.Sheet, within scene.Rect) []string {
	var problems []string
	var list []inked
	for _, item := range s.Items {
		if item.Text == nil || strings.TrimSpace(scene.Clean(item.Text.String)) == "" {
			continue
		}
		t := *item.Text
		if high := scene.CapHeightMM(t.SizeMM, t.Face); high < LeastCapMM-1e-6 {
			problems = append(problems, fmt.Sprintf("%q: capitals %.2f mm high (expected at least %.1f)", t.String, high, LeastCapMM))
		}
		ink := Ink(t)
		if !within.Grow(edgeMM).Contains(ink) {
			problems = append(problems, fmt.Sprintf("%q at %.1f, %.1f reaches outside %.0f × %.0f mm", t.String, t.At.X, t.At.Y, within.W, within.H))
		}
		list = append(list, inked{t.String, ink})
	}
	return append(problems, overlaps(list)...)
}

// inked is a text with the rectangle that its ink covers.
type inked struct {
	text string
	ink  scene.Rect
}

// overlaps finds the pairs whose ink meets. The texts are swept from the top, so
// that only neighbours are compared.
func overlaps(list []inked) []string {
	sort.SliceStable(list, func(i, j int) bool { return list[i].ink.Y < list[j].ink.Y })
	var problems []string
	for i, a := range list {
		for _, b := range list[i+1:] {
			if b.ink.Y >= a.ink.Bottom() {
				break
			}
			if a.ink.Overlaps(b.ink) {
				problems = append(problems, fmt.Sprintf("%q and %q lie over each other at %.1f, %.1f", a.text, b.text, b.ink.X, b.ink.Y))
			}
		}
	}
	return problems
}

// Ink is what a text covers: InkBox, without the part below the baseline when no
// glyph reaches there.
func Ink(t scene.Text) scene.Rect {
	r := scene.InkBox(t)
	if t.Turn == 0 && !strings.ContainsAny(t.String, "gjpqyQ,;()[]{}µ|_ÇçŞş/@$&") {
		r.H = t.At.Y + 0.02*t.SizeMM - r.Y
	}
	return r
}
