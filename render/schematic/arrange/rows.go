package arrange

import (
	"cmp"
	"math"
	"slices"

	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/route"
)

// bound says that a row lies at least a distance below another one.
type bound struct {
	from, to int
	gap      int
}

// tierGap is the room between what stands in one tier and the next, in modules.
const tierGap = 3

// solver finds the highest place of each row under bounds. Wishes are added one
// by one and dropped again when they cannot be met.
type solver struct {
	y      []int
	bounds [][]bound // by from
	limit  int       // a row below this cannot be meant
}

// add takes a group of bounds if all can hold together with the others, and
// tells whether it did.
func (s *solver) add(group ...bound) bool {
	saved := slices.Clone(s.y)
	var queue []int
	for _, b := range group {
		s.bounds[b.from] = append(s.bounds[b.from], b)
		queue = append(queue, b.from)
	}
	if s.relax(queue) {
		return true
	}
	s.y = saved
	for i := len(group) - 1; i >= 0; i-- {
		list := s.bounds[group[i].from]
		s.bounds[group[i].from] = list[:len(list)-1]
	}
	return false
}

// relax pushes rows down until all bounds hold; false when they never do.
func (s *solver) relax(queue []int) bool {
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		for _, b := range s.bounds[at] {
			if low := s.y[at] + b.gap; s.y[b.to] < low {
				if low > s.limit {
					return false
				}
				s.y[b.to] = low
				queue = append(queue, b.to)
			}
		}
	}
	return true
}

// solveRows places the rows of a page: in the order of the columns with room
// for everything, and as many wires straight as can be. air is added between
// cells, in modules.
func (p *Page) solveRows(air int) {
	index, rows := p.indexRows()
	tiers := p.tiers()
	// behind the rows the top of the sheet, and above each further tier the floor of those over it
	s := &solver{y: make([]int, len(rows)+len(tiers)), bounds: make([][]bound, len(rows)+len(tiers))}
	if p.was != nil {
		air = 0
	}
	for i, r := range rows {
		s.y[i] = int(math.Ceil(r.Top))
		if p.Outlined {
			s.y[i] += 2 // for the name in an outline
		}
		s.limit += int(math.Ceil(r.Top+r.Bottom)) + air + placeGap + 2
	}
	for _, column := range p.Columns {
		var above *cell.Row
		for _, c := range column {
			for i, r := range c.Rows {
				if above != nil {
					gap := int(math.Ceil(above.Bottom + r.Top))
					if i == 0 && above.Cell.Kind != cell.Pass && c.Kind != cell.Pass {
						gap += air
					}
					if i > 0 && p.slot > 0 && p.was == nil && len(c.Ways) > 0 {
						gap = max(gap, p.slot+air)
					}
					if i == 0 && p.Outlined && placeOf(above.Cell) != placeOf(c) {
						gap += placeGap
					}
					s.add(bound{index[above], index[r], gap})
				}
				above = r
			}
		}
	}
	for i, t := range tiers[:len(tiers)-1] {
		floor := len(rows) + 1 + i
		s.limit += tierGap
		for col := range p.Columns[:tiers[i+1].end] {
			for _, c := range p.Columns[col] {
				for _, r := range c.Rows {
					if col < t.end {
						s.add(bound{index[r], floor, int(math.Ceil(r.Bottom)) + tierGap})
					} else {
						s.add(bound{floor, index[r], int(math.Ceil(r.Top))})
					}
				}
			}
		}
	}
	if p.Cellar[0] != nil {
		a, b := index[p.Cellar[0]], index[p.Cellar[1]]
		s.add(bound{a, b, 0}, bound{b, a, 0})
	}
	for i, r := range rows { // as they stood; the last of all is the top of the sheet
		if y, stood := p.stood(r); stood && !p.loose && y >= s.y[i] {
			s.add(bound{len(rows), i, y}, bound{i, len(rows), -y})
		}
	}
	for _, w := range p.wishes() {
		a, b := index[w.a.Row], index[w.b.Row]
		shift := w.a.Off - w.b.Off // b = a + shift
		if w.level {
			s.add(bound{a, b, shift}, bound{b, a, -shift})
		} else {
			s.add(bound{a, b, shift})
		}
	}
	p.Height = 0
	for i, r := range rows {
		r.Y = s.y[i]
		p.Height = max(p.Height, r.Y+int(math.Ceil(r.Bottom)))
	}
}

func (p *Page) indexRows() (map[*cell.Row]int, []*cell.Row) {
	index := map[*cell.Row]int{}
	var rows []*cell.Row
	for _, column := range p.Columns {
		for _, c := range column {
			for _, r := range c.Rows {
				index[r] = len(rows)
				rows = append(rows, r)
			}
		}
	}
	return index, rows
}

// wish is that two ends of a hop be level, or that the second be not above the
// first.
type wish struct {
	a, b   route.End
	level  bool
	weight int
}

// wishes lists what would make the page calm, the most important first: long
// wires straight, then the first wire of each net, then the others; and wires
// that branch off go down rather than up.
func (p *Page) wishes() []wish {
	var list, later []wish
	for _, n := range p.nets {
		for _, h := range n.Hops {
			for k, to := range h.To {
				w := wish{a: h.From, b: to, level: true}
				switch {
				case n.CoilsOnly():
					w.weight = 0
				case to.Cell.Kind == cell.Pass || h.From.Cell.Kind == cell.Pass:
					w.weight = 4
				case to.In != nil && to.In == primary(to.Cell) && k == 0:
					w.weight = 3
				case k == 0:
					w.weight = 2
				default:
					w.weight = 1
				}
				list = append(list, w)
				later = append(later, wish{a: h.From, b: to})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b wish) int { return cmp.Compare(b.weight, a.weight) })
	return append(list, later...)
}
