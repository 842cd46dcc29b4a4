package column

import (
	"math"
	"slices"
	"strings"

	"fusewright/render/scene"
)

// Slot is a free column of a sheet into which lists are put from the top.
type Slot struct {
	x, first, y, bottom float64 // y is where the next list may begin
	lists               []*List
}

// NewSlot is an empty column from a top to a bottom edge, in mm.
func NewSlot(x, top, bottom float64) *Slot { return &Slot{x: x, first: top, y: top, bottom: bottom} }

// Place puts lists into slots from the top and returns what was placed and what
// found no room. A list stands whole in one slot if any takes it, else in
// columns side by side, else in pieces; torn tells of the last.
func Place(lists []*List, slots []*Slot) (placed, left []*List, torn bool) {
	for _, p := range lists {
		if putWhole(p, slots) || putWide(p, slots) {
			placed = append(placed, p)
			continue
		}
		if p.Whole || p.Untorn {
			left = append(left, p)
			continue
		}
		rest := p
		for _, s := range slots {
			var piece *List
			if piece, rest = s.take(rest); piece != nil {
				placed = append(placed, piece)
				torn = true
			}
			if rest == nil {
				break
			}
		}
		if rest != nil {
			left = append(left, rest)
		}
	}
	return placed, left, torn
}

// Put stands a list in neighbouring slots at a height.
func Put(p *List, slots []*Slot, y, height float64) {
	p.area = scene.Rect{X: slots[0].x, Y: y, W: float64(len(slots)-1)*Step + Width - 4, H: height}
	for _, s := range slots {
		s.lists = append(s.lists, p)
		s.y = y + height + Gap
	}
}

func putWhole(p *List, slots []*Slot) bool {
	p.cuts = nil
	for i, s := range slots {
		if h := p.Height(); s.y+h <= s.bottom {
			Put(p, slots[i:i+1], s.y, h)
			return true
		}
	}
	return false
}

// putWide stands a list in two or more neighbouring slots, where it leaves most
// room.
func putWide(p *List, slots []*Slot) bool {
	if p.Whole {
		return false
	}
	for n := 2; n <= min(len(slots), len(p.Rows)); n++ {
		best, most := 0, -1.0
		for i := 0; i+n <= len(slots); i++ {
			if room := roomFor(p, slots[i:i+n]); room > most {
				best, most = i, room
			}
		}
		if most >= 0 {
			some := slots[best : best+n]
			cuts, high := balance(p.Rows, capacities(some))
			p.cuts = cuts
			Put(p, some, topOf(some), Head+high)
			return true
		}
	}
	return false
}

// roomFor is the height that a list in columns leaves free; negative when it
// does not fit.
func roomFor(p *List, slots []*Slot) float64 {
	if !neighbours(slots) {
		return -1
	}
	cuts, high := balance(p.Rows, capacities(slots))
	if len(cuts) != len(slots)-1 {
		return -1
	}
	return max(slices.Min(capacities(slots))-high, 0)
}

func topOf(slots []*Slot) (top float64) {
	for _, s := range slots {
		top = max(top, s.y)
	}
	return top
}

// capacities are the heights of columns below one common heading.
func capacities(slots []*Slot) (list []float64) {
	top := topOf(slots)
	for _, s := range slots {
		list = append(list, s.bottom-top-Head)
	}
	return list
}

func neighbours(slots []*Slot) bool {
	for i := 1; i < len(slots); i++ {
		if math.Abs(slots[i].x-slots[i-1].x-Step) > 0.01 {
			return false
		}
	}
	return true
}

// balance cuts rows into columns of given room, as even as can be and none of
// them empty, and returns the height of the highest; no cuts when they do not
// fit.
func balance(rows []Row, room []float64) (cuts []int, high float64) {
	most := slices.Max(room) // a higher limit changes nothing
	for limit := HeightOf(rows) / float64(len(room)); ; limit++ {
		cuts, high = nil, 0
		sum, col := 0.0, 0
		for i, r := range rows {
			if sum+r.Height > min(limit, room[col])+1e-9 {
				col++
				sum = 0
				if cuts = append(cuts, i); col == len(room) {
					break
				}
			}
			sum += r.Height
			if sum > room[col] {
				return nil, 0
			}
			high = max(high, sum)
		}
		if len(cuts) == len(room)-1 {
			return cuts, high
		}
		if len(cuts) < len(room)-1 || limit > most {
			return nil, 0
		}
	}
}

// Continued ends the heading of a further piece of a list.
const Continued = ", continued"

// take puts as many rows of a list into the slot as it has room for: all, or at
// least three, and never all but one or two.
func (s *Slot) take(p *List) (piece, rest *List) {
	room := s.bottom - s.y - Head
	n := 0
	for n < len(p.Rows) && room >= p.Rows[n].Height {
		room -= p.Rows[n].Height
		n++
	}
	if n < len(p.Rows) {
		n = min(n, len(p.Rows)-3)
	}
	if n < len(p.Rows) && n < 3 {
		return nil, p
	}
	first, further := *p, *p
	piece, first.Rows, further.Rows = &first, p.Rows[:n], p.Rows[n:]
	Put(piece, []*Slot{s}, s.y, piece.Height())
	if n == len(p.Rows) {
		return piece, nil
	}
	further.Title = strings.TrimSuffix(p.Title, Continued) + Continued
	return piece, &further
}
