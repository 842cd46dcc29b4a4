package layout

import (
	"math"

	"fusewright/harness/design/lengths"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/frame"
	"fusewright/render/scene"
)

// Measures of a break line in millimetres: the continuous narrow line with a zigzag, line type
// 01.1.19 of ISO 128-24, for what ISO 128 calls an interrupted view; the zigzag's size is our
// choice. Numbers of standard and line type from memory.
const (
	breakPastMM = 2.5 // out of the band at both sides
	zigMM       = 1.4 // the zigzag to each side
)

// breakOf draws the break of a run: a break line at both sides and the run's true
// length between them. Nothing for a run that is drawn whole.
func (p *picture) breakOf(l *formboard.Limb) {
	if !l.Broken() {
		return
	}
	a, b := p.ends(l)
	if b.X < a.X-1e-9 || math.Abs(b.X-a.X) < 1e-9 && b.Y > a.Y {
		a, b = b, a // text reads from below or from the right
	}
	p.sheet.Begin(scene.Group{Class: "break", Title: "drawn shortened, true length " + p.unit.Dim(l.Run.Length) + " " + p.unit.Small()})
	defer p.sheet.End()
	out := p.half(l.Run) + breakPastMM
	for _, mm := range []float64{formboard.StubMm, l.DrawnMm - formboard.StubMm} {
		points := zigzag(out)
		for i, to := range points[1:] {
			from := points[i]
			p.windowLine(along(a, b, mm+from.X, from.Y), along(a, b, mm+to.X, to.Y), hairMM)
		}
		p.marks.add(lineShape(along(a, b, mm, -out), along(a, b, mm, out), 2*zigMM))
	}
	words := p.unit.Dim(l.Run.Length)
	t := scene.Text{At: along(a, b, l.DrawnMm/2, frame.NormalMM*0.36), String: words, Face: scene.Bold, Align: scene.Middle,
		SizeMM: scene.FitSizeMM(words, frame.NormalMM, frame.SmallMM, formboard.GapMm-2*zigMM-0.6, scene.Bold),
		Colour: scene.Ink, Turn: math.Atan2(a.Y-b.Y, b.X-a.X) * 180 / math.Pi}
	if s := textShape(t); p.window.Contains(s.box().Grow(0.5)) {
		p.sheet.Text(t)
		p.taken.add(s)
	}
}

// zigzag is a break line across a run: x along it, y aside.
func zigzag(out float64) []scene.Point {
	return []scene.Point{{Y: -out}, {Y: -zigMM}, {X: -zigMM, Y: -zigMM / 3}, {X: zigMM, Y: zigMM / 3}, {Y: zigMM}, {Y: out}}
}

// inBreak tells whether a point of a run lies between its break lines or on them.
func (p *picture) inBreak(l *formboard.Limb, at scene.Point) bool {
	a, _ := p.ends(l)
	mm := math.Hypot(at.X-a.X, at.Y-a.Y)
	return l.Broken() && mm > formboard.StubMm-2*zigMM && mm < l.DrawnMm-formboard.StubMm+2*zigMM
}

// lengthLines give a run's true length and, where a break leaves out a stretch of it, say
// so with the clamps that are not to be seen.
func lengthLines(u lengths.Unit, l *formboard.Limb) []phrase {
	words := u.Dim(l.Run.Length) + " " + u.Small()
	if !l.Broken() {
		return []phrase{{words, scene.Bold, frame.NormalMM}}
	}
	list := []phrase{{"true length " + words, scene.Bold, frame.NormalMM}}
	for _, line := range scene.Wrap("drawn shortened; clamps at "+clampText(u, l.Run), frame.SmallMM, 50, scene.Regular) {
		list = append(list, phrase{line, scene.Regular, frame.SmallMM})
	}
	return list
}
