package paint

import (
	"reflect"
	"testing"

	"fusewright/render/scene"
)

// TestBrokenByHand: a line down and to the right with two gaps of 2 in its level stretch, the
// same from right to left, and one without a level stretch that is long enough.
func TestBrokenByHand(t *testing.T) {
	at := func(xy ...float64) (list []scene.Point) {
		for i := 0; i < len(xy); i += 2 {
			list = append(list, scene.Point{X: xy[i], Y: xy[i+1]})
		}
		return list
	}
	gaps := at(3, 5, 6, 5)
	for _, c := range []struct {
		name string
		line []scene.Point
		want [][]scene.Point
	}{
		{"to the right", at(0, 0, 0, 5, 10, 5), [][]scene.Point{at(0, 0, 0, 5, 3, 5), at(5, 5, 6, 5), at(8, 5, 10, 5)}},
		{"to the left", at(10, 5, 0, 5, 0, 9), [][]scene.Point{at(10, 5, 8, 5), at(6, 5, 5, 5), at(3, 5, 0, 5, 0, 9)}},
		{"too short for the second", at(0, 5, 7.9, 5), [][]scene.Point{at(0, 5, 3, 5), at(5, 5, 7.9, 5)}},
		{"on another row", at(0, 4, 10, 4), [][]scene.Point{at(0, 4, 10, 4)}},
	} {
		if got := broken(c.line, gaps, 2); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}
