package sign

import (
	"math"

	"fusewright/harness/review/compare"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// What is drawn round changed parts and under changed wires leaves the lines of
// the circuit free. Measures in mm.
const (
	bandHalf  = 0.8 // half the width of a band under a wire
	bandDash  = 2.4
	bandGap   = 1.6
	crossHalf = 0.7 // half the width of a cross
	crossStep = 7.0
)

// bandTints are light enough for lines and words to stand on.
var bandTints = map[compare.What]scene.RGB{
	compare.Added: {R: 196, G: 212, B: 242}, compare.Changed: {R: 246, G: 212, B: 168},
}

// Band marks an upright and level line: added with a plain band under it, changed
// with a broken one, removed with crosses.
func Band(sheet *scene.Sheet, kind compare.What, ref string, pts []scene.Point) {
	if kind == "" || kind == compare.Judged {
		return
	}
	sheet.Begin(scene.Group{ID: sheet.UniqueID("band-" + ref), Class: "band", Title: ref + " " + string(kind)})
	defer sheet.End()
	for i := 1; i < len(pts); i++ {
		p, q := pts[i-1], pts[i]
		long := math.Abs(q.X-p.X) + math.Abs(q.Y-p.Y)
		at := func(mm float64) scene.Point {
			return scene.Point{X: p.X + (q.X-p.X)*mm/long, Y: p.Y + (q.Y-p.Y)*mm/long}
		}
		switch kind {
		case compare.Added:
			stripe(sheet, p, q, kind)
		case compare.Changed:
			n := max(math.Round((long+bandGap)/(bandDash+bandGap)), 1)
			gap := min(bandGap, long/2)
			dash := (long+gap)/n - gap
			for k := range int(n) {
				from := float64(k) * (dash + gap)
				stripe(sheet, at(from), at(from+dash), kind)
			}
		case compare.Removed:
			n := int(math.Round(long / crossStep))
			if i == len(pts)-1 {
				n = max(n, 1)
			}
			for k := range n {
				cross(sheet, at(long*(float64(k)+0.5)/float64(n)), crossHalf)
			}
		}
	}
}

// stripe is a straight piece of a band.
func stripe(sheet *scene.Sheet, p, q scene.Point, kind compare.What) {
	r := scene.Rect{X: min(p.X, q.X), Y: min(p.Y, q.Y), W: math.Abs(q.X - p.X), H: math.Abs(q.Y - p.Y)}
	if p.Y == q.Y {
		r.Y, r.H = r.Y-bandHalf, 2*bandHalf
	} else {
		r.X, r.W = r.X-bandHalf, 2*bandHalf
	}
	sheet.Rect(r, nil, scene.Paint(bandTints[kind]))
}

func cross(sheet *scene.Sheet, at scene.Point, half float64) {
	pen := scene.Pen(symbol.LineMM).In(dangerRed)
	for _, up := range []float64{-1, 1} {
		sheet.Line(scene.Point{X: at.X - half, Y: at.Y - up*half}, scene.Point{X: at.X + half, Y: at.Y + up*half}, pen)
	}
}

// CrossOut marks a part that is gone.
func CrossOut(sheet *scene.Sheet, ref string, box scene.Rect) {
	sheet.Begin(scene.Group{ID: sheet.UniqueID("band-" + ref), Class: "band", Title: ref + " " + string(compare.Removed)})
	cross(sheet, box.Centre(), min(box.W, box.H)/2)
	sheet.End()
}
