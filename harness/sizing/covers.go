package sizing

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// covers are what meets the needs of a run, the one that costs least current
// first; a run that needs none stays bare.
func covers(d *design.Design, r *design.Run) []*library.Cover {
	moves := r.From != nil && r.From.Moves || r.To != nil && r.To.Moves
	hot := r.Near.Given() && r.AmbientC.Given()
	if !r.Flexes && !moves && !r.Chafes && !r.Pinches && !hot {
		return []*library.Cover{nil}
	}
	ambient := circuit.RunAmbientC(r)
	var list []*library.Cover
	for _, c := range d.Library.Covers {
		if r.Chafes && !c.Abrasion || r.Pinches && !c.Pinch || hot && !c.Heat || c.MaxC < ambient ||
			(r.Flexes || moves) && c.Stiff {
			continue
		}
		list = append(list, c)
	}
	return ascending(list, func(c *library.Cover) float64 { return -c.CurrentFactor })
}

// fewCovers puts first, among the covers of a run that cost the least current,
// the one that most runs have or could have: a sleeve less to buy.
func fewCovers(d *design.Design, slots []*slot) {
	runs := map[*library.Cover]int{}
	for _, r := range d.Runs {
		if !r.CoverAuto && r.Cover != nil {
			runs[r.Cover]++
		}
	}
	for _, s := range slots {
		for _, c := range s.covers {
			if c != nil && c.CurrentFactor == s.covers[0].CurrentFactor {
				runs[c]++
			}
		}
	}
	for _, s := range slots {
		if s.kind == RunCover && s.covers[0] != nil {
			most := s.covers[0].CurrentFactor
			ascending(s.covers, func(c *library.Cover) float64 {
				if c.CurrentFactor < most {
					return 1
				}
				return -float64(runs[c])
			})
		}
	}
}
