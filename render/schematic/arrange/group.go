package arrange

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/cell"
)

// group is what hangs together on a page: wired there, or fed by the same flag.
type group struct {
	cells []*cell.Cell
	rows  int // as estimated
}

// groups are the groups of a page, in its order; those behind one flag together or each alone.
func (a *Arrangement) groups(p *Page, together bool) (list []group) {
	of := map[*cell.Cell]int{}
	join := func(a, b *cell.Cell) {
		if from, to := max(of[a], of[b]), min(of[a], of[b]); from != to {
			for c, i := range of {
				if i == from {
					of[c] = to
				}
			}
		}
	}
	parts := partsOf(p)
	behind := map[*circuit.Terminal]*cell.Cell{} // first behind each flag
	for i, c := range parts {
		of[c] = i
	}
	for _, c := range parts {
		for _, in := range c.Inlets {
			switch first := behind[in.Source]; {
			case !a.ComesByFlag(p, in):
				join(c, a.Outs[in.Source])
			case first != nil && together:
				join(c, first)
			default:
				behind[in.Source] = c
			}
		}
	}
	for i := range parts {
		var g group
		for _, c := range parts {
			if of[c] != i {
				continue
			}
			g.cells = append(g.cells, c)
			if in := primary(c); in == nil || a.ComesByFlag(p, in) {
				g.rows += a.fullOf(c)
			}
		}
		if len(g.cells) > 0 {
			list = append(list, g)
		}
	}
	return list
}
