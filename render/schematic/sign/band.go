package sign

import (
	"cmp"
	"math"

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
	lobe      = 3.4 // about the length of a cloud's lobe
	bulge     = 1.0 // how far it stands out

	// cloudReach is how far the cloud stands from the part it surrounds.
	cloudReach = 1.4
)

// bandTints are light enough for lines and words to stand on.
var bandTints = map[ChangeKind]scene.RGB{
	Added: {R: 196, G: 212, B: 242}, Changed: {R: 246, G: 212, B: 168},
}

// Band marks an upright and level line: added with a plain band under it, changed
// with a broken one, removed with crosses.
func Band(sheet *scene.Sheet, kind ChangeKind, ref string, pts []scene.Point) {
	if kind == "" || kind == Judged {
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
		case Added:
			stripe(sheet, p, q, kind)
		case Changed:
			n := max(math.Round((long+bandGap)/(bandDash+bandGap)), 1)
			gap := min(bandGap, long/2)
			dash := (long+gap)/n - gap
			for k := range int(n) {
				from := float64(k) * (dash + gap)
				stripe(sheet, at(from), at(from+dash), kind)
			}
		case Removed:
			n := int(math.Round(long / crossStep))
			if i == len(pts)-1 {
				n = max(n, 1)
			}
			for k := range n {
				cross(sheet, at(long*(float64(k)+0.5)/float64(n)))
			}
		}
	}
}

// stripe is a straight piece of a band.
func stripe(sheet *scene.Sheet, p, q scene.Point, kind ChangeKind) {
	r := scene.Rect{X: min(p.X, q.X), Y: min(p.Y, q.Y), W: math.Abs(q.X - p.X), H: math.Abs(q.Y - p.Y)}
	if p.Y == q.Y {
		r.Y, r.H = r.Y-bandHalf, 2*bandHalf
	} else {
		r.X, r.W = r.X-bandHalf, 2*bandHalf
	}
	sheet.Rect(r, nil, scene.Paint(bandTints[kind]))
}

func cross(sheet *scene.Sheet, at scene.Point) {
	pen := scene.Pen(symbol.LineMM).In(dangerRed)
	for _, up := range []float64{-1, 1} {
		sheet.Line(scene.Point{X: at.X - crossHalf, Y: at.Y - up*crossHalf}, scene.Point{X: at.X + crossHalf, Y: at.Y + up*crossHalf}, pen)
	}
}

// Surround marks a changed part round a box: added with a plain frame, changed
// with a cloud, removed with crosses.
func Surround(sheet *scene.Sheet, kind ChangeKind, ref string, box scene.Rect) {
	sheet.Begin(scene.Group{ID: sheet.UniqueID("cloud-" + ref), Class: "band", Title: ref + " " + string(kind)})
	defer sheet.End()
	switch kind {
	case Added:
		pen := scene.Pen(symbol.LineMM).In(changeColours[kind])
		sheet.RoundRect(box.Grow(1), 1.5, &pen, nil)
	case Changed:
		Cloud(sheet, box.Grow(cloudReach-bulge))
	case Removed:
		around(box.Grow(0.7), crossStep, func(p, q scene.Point) { cross(sheet, p) })
	}
}

// Cloud draws lobes outwards along a box.
func Cloud(sheet *scene.Sheet, box scene.Rect) {
	pen := scene.Pen(symbol.ThinMM).In(changeColours[Changed])
	path := scene.Path{Stroke: &pen}
	path.MoveTo(scene.Point{X: box.X, Y: box.Y})
	const out = bulge / 0.75 // of the control points
	around(box, lobe, func(p, q scene.Point) {
		dx, dy := float64(cmp.Compare(q.Y, p.Y))*out, float64(cmp.Compare(p.X, q.X))*out
		path.CubicTo(scene.Point{X: p.X + dx, Y: p.Y + dy}, scene.Point{X: q.X + dx, Y: q.Y + dy}, q)
	})
	path.Close()
	sheet.Path(path)
}

// around goes clockwise round a box in steps of about a length.
func around(box scene.Rect, step float64, visit func(p, q scene.Point)) {
	corners := []scene.Point{{X: box.X, Y: box.Y}, {X: box.Right(), Y: box.Y}, {X: box.Right(), Y: box.Bottom()}, {X: box.X, Y: box.Bottom()}}
	for i, p := range corners {
		q := corners[(i+1)%4]
		n := max(math.Round((math.Abs(q.X-p.X)+math.Abs(q.Y-p.Y))/step), 1)
		for k := range int(n) {
			f, g := float64(k)/n, float64(k+1)/n
			visit(scene.Point{X: p.X + (q.X-p.X)*f, Y: p.Y + (q.Y-p.Y)*f}, scene.Point{X: p.X + (q.X-p.X)*g, Y: p.Y + (q.Y-p.Y)*g})
		}
	}
}
