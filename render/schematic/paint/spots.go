package paint

import (
	"fusewright/render/scene"
)

// spots are where parts and wires of a drawing can be pointed at, and the way of the current
// through each: "F1", a way without a fuse "X2:3", a relay's coil "K1:coil", the battery's
// posts "G1:+", "G1:-". They lie under everything, and on white paper they cannot be seen.
// Nil draws none.
type spots struct {
	order []string
	ways  map[string][][]scene.Point
	boxes map[string][]scene.Rect
}

func newSpots() *spots {
	return &spots{ways: map[string][][]scene.Point{}, boxes: map[string][]scene.Rect{}}
}

func (s *spots) note(of string) {
	if s.ways[of] == nil && s.boxes[of] == nil {
		s.order = append(s.order, of)
	}
}

// way notes the way of the current through something, in the direction of the wire.
func (s *spots) way(of string, pts ...scene.Point) {
	if s == nil || of == "" || len(pts) < 2 {
		return
	}
	s.note(of)
	s.ways[of] = append(s.ways[of], pts)
}

// box notes an area that stands for something.
func (s *spots) box(of string, r scene.Rect) {
	if s == nil || of == "" {
		return
	}
	s.note(of)
	s.boxes[of] = append(s.boxes[of], r)
}

// spotMM is the width of a way: a finger finds it when the drawing fills a tablet.
const spotMM = 3.4

// draw puts the spots on a sheet: a group each, its areas filled, its ways as lines.
func (s *spots) draw(sheet *scene.Sheet) {
	white := scene.RGB{R: 255, G: 255, B: 255}
	line := scene.Stroke{WidthMM: spotMM, Colour: white, Round: true}
	for _, of := range s.order {
		sheet.Begin(scene.Group{ID: sheet.UniqueID("spot-" + of), Class: "spot", Of: of})
		for _, r := range s.boxes[of] {
			sheet.Rect(r, nil, scene.Paint(white))
		}
		for _, pts := range s.ways[of] {
			sheet.Polyline(pts, line)
		}
		sheet.End()
	}
}
