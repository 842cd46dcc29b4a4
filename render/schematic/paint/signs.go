package paint

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// flag draws a numbered flag: danger filled, fault a thick ring, advice a thin
// ring, accepted a dashed ring.
func (a *painter) flag(number int, x, y float64) { sign.Draw(a.sheet, a.Signs.List[number-1], x, y) }

// bands marks the changed wires of the page, under everything else.
func (a *painter) bands() {
	if a.Signs.Changes == nil {
		return
	}
	for _, l := range a.on.Lines {
		if w := l.In.Wire; w != nil {
			var pts []scene.Point
			for _, s := range l.Pts {
				pts = append(pts, a.spot(s))
			}
			a.band(w.Number, pts)
		}
	}
}

// band marks an upright and level line: added with a plain band under it,
// changed with a broken one, removed with crosses.
func (a *painter) band(ref string, pts []scene.Point) {
	sign.Band(a.sheet, a.Signs.Kinds[ref], ref, pts)
}

// boxAt is a box in modules about a place of the page, on the sheet.
func (a *painter) boxAt(x, y int, r scene.Rect) scene.Rect {
	at := a.at(float64(x)+r.X, float64(y)+r.Y)
	return scene.Rect{X: at.X, Y: at.Y, W: r.W * symbol.M, H: r.H * symbol.M}
}

// surround marks a changed part round a box on the sheet.
func (a *painter) surround(p *circuit.Part, box scene.Rect) {
	if a.Signs.Surrounded(p) {
		sign.Surround(a.sheet, a.Signs.Kinds[p.Ref], p.Ref, box)
	}
}
