package column

import (
	"fmt"
	"testing"

	"fusewright/render/scene"
)

func rowsOf(heights ...float64) (list []Row) {
	for _, h := range heights {
		list = append(list, Row{Height: h, Draw: func(*scene.Sheet, float64, float64) {}})
	}
	return list
}

func TestBalance(t *testing.T) {
	cases := []struct {
		name string
		rows []Row
		room []float64
		want string
	}{
		{"even", rowsOf(5, 5, 5, 5), []float64{30, 30}, "[2] 10"},
		{"odd", rowsOf(5, 5, 5, 5, 5), []float64{30, 30}, "[3] 15"},
		{"little room on the right", rowsOf(5, 5, 5, 5, 5), []float64{30, 5}, "[4] 20"},
		{"too much", rowsOf(5, 5, 5, 5, 5), []float64{10, 10}, "[] 0"},
		{"three columns", rowsOf(5, 5, 5, 5, 5, 5, 5), []float64{15, 15, 5}, "[3 6] 15"},
		{"one high row", rowsOf(20, 5, 5), []float64{30, 30}, "[1] 20"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			cuts, high := balance(c.rows, c.room)
			if got := fmt.Sprint(cuts, high); got != c.want {
				t.Errorf("%s, want %s", got, c.want)
			}
		})
	}
}

// A list stands whole where it can, in columns where it must, and is torn last.
func TestPlace(t *testing.T) {
	slots := func(rooms ...float64) (list []*Slot) {
		for i, r := range rooms {
			list = append(list, NewSlot(float64(i)*Step, 0, r))
		}
		return list
	}
	cases := []struct {
		name            string
		list            *List
		slots           []*Slot
		pieces, columns int
		left, torn      bool
	}{
		{"whole", &List{Rows: rowsOf(5, 5, 5, 5)}, slots(20, 40), 1, 1, false, false},
		{"wide", &List{Rows: rowsOf(5, 5, 5, 5)}, slots(20, 20), 1, 2, false, false},
		{"whole only", &List{Whole: true, Rows: rowsOf(5, 5, 5, 5)}, slots(20, 20), 0, 0, true, false},
		{"torn", &List{Rows: rowsOf(5, 5, 5, 5, 5, 5, 5, 5)}, []*Slot{NewSlot(0, 0, 30), NewSlot(200, 0, 40)}, 2, 1, false, true},
		{"never torn", &List{Untorn: true, Rows: rowsOf(5, 5, 5, 5, 5, 5, 5, 5)}, []*Slot{NewSlot(0, 0, 30), NewSlot(200, 0, 40)}, 0, 0, true, false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			placed, left, torn := Place([]*List{c.list}, c.slots)
			if len(placed) != c.pieces || (len(left) > 0) != c.left || torn != c.torn {
				t.Fatalf("%d pieces, %d left, torn %v", len(placed), len(left), torn)
			}
			if len(placed) > 0 && len(placed[0].columns()) != c.columns {
				t.Errorf("%d columns, want %d", len(placed[0].columns()), c.columns)
			}
		})
	}
}
