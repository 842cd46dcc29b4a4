package paint

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/labels"
	"fusewright/render/symbol"
)

// partedLine draws the way of a wire that connectors part, broken at each pole: their signs
// stand on the level stretch before its label, which begins at a place on the sheet.
func (a *painter) partedLine(w *circuit.Wire, pts []scene.Point, label scene.Point) {
	var gaps []scene.Point // left ends
	for i := range w.Poles {
		gaps = append(gaps, scene.Point{X: label.X + (labels.PoleGap+labels.PoleM*float64(i))*symbol.M, Y: label.Y})
	}
	for _, piece := range broken(pts, gaps, symbol.M) {
		a.sheet.Polyline(piece, scene.Pen(symbol.WireMM))
	}
	backwards := len(pts) > 1 && pts[len(pts)-1].X < pts[len(pts)-2].X
	for i, at := range gaps {
		p := w.Poles[i]
		left := p.Near
		if backwards {
			p = w.Poles[len(w.Poles)-1-i]
			left = p.Far
		}
		kind := symbol.PlugBack
		if left.Socket() {
			kind = symbol.Plug
		}
		a.Set.Symbol(kind).Draw(symbol.NewPen(a.sheet, at), "")
	}
}

// broken takes stretches of a width out of the level pieces of a line, in mm.
func broken(pts, gaps []scene.Point, wide float64) (pieces [][]scene.Point) {
	piece := pts[:1:1]
	for i := 1; i < len(pts); i++ {
		from, to := pts[i-1], pts[i]
		for k := range gaps {
			near, far := gaps[k], scene.Point{X: gaps[k].X + wide, Y: gaps[k].Y}
			if to.X < from.X {
				far = gaps[len(gaps)-1-k]
				near = scene.Point{X: far.X + wide, Y: far.Y}
			}
			level := from.Y == to.Y && abs(near.Y-from.Y) < 1e-6
			if level && min(from.X, to.X) <= min(near.X, far.X)+1e-6 && max(near.X, far.X) <= max(from.X, to.X)+1e-6 {
				pieces = append(pieces, append(piece, near))
				piece = []scene.Point{far}
			}
		}
		piece = append(piece, to)
	}
	return append(pieces, piece)
}

func abs(x float64) float64 { return max(x, -x) }
