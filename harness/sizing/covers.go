package sizing

import (
	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// leastMarginC is how much hotter than the air a cover can be, in K: beside warm
// metal the air's figure is not the cover's (common practice, no source).
const leastMarginC = 30

// needs is what a run asks of its cover.
type needs struct {
	feed, chafes, pinches, bends, hot, wet bool
	ambientC                               float64
}

func needsOf(d *design.Design, r *design.Run) needs {
	ends := func(has func(*design.Place) bool) bool {
		return r.From != nil && has(r.From) || r.To != nil && has(r.To)
	}
	return needs{chafes: r.Chafes, pinches: r.Pinches, hot: r.Near.Given() && r.AmbientC.Given(),
		feed:     ends(func(p *design.Place) bool { return p == d.Battery.At }),
		bends:    r.Flexes || ends(func(p *design.Place) bool { return p.Moves }),
		wet:      ends(func(p *design.Place) bool { return p.Wet }),
		ambientC: circuit.RunAmbientC(r)}
}

// any tells that a run must not be bare. What leaves the battery carries the most
// current behind the fewest fuses (common practice, no source).
func (n needs) any() bool { return n.feed || n.chafes || n.pinches || n.bends || n.hot }

// serves tells that a cover does, made for as much more than the air.
func (n needs) serves(c *library.Cover, marginC float64) bool {
	return (c.Abrasion || !n.chafes && !n.feed) && (c.Pinch || !n.pinches) && (c.Heat || !n.hot) &&
		!(c.Absorbs && n.wet) && !(c.Stiff && n.bends) && c.MaxC >= n.ambientC+marginC
}

// String says why a run is covered, as a fitter would.
func (n needs) String() string {
	var list []string
	for _, x := range []struct {
		is   bool
		text string
	}{{n.feed, "carries the battery's feed"}, {n.chafes, "may chafe"}, {n.pinches, "may be pinched"}, {n.bends, "bends"},
		{n.hot, "passes something hot"}, {n.wet, "gets wet"}} {
		if x.is {
			list = append(list, x.text)
		}
	}
	return "the run " + wording.And(list)
}

// covers are what meets the needs of a run, the one that costs least current
// first; a run that needs none stays bare.
func covers(d *design.Design, r *design.Run) []*library.Cover {
	n := needsOf(d, r)
	if !n.any() {
		return []*library.Cover{nil}
	}
	for _, marginC := range []float64{leastMarginC, 0} {
		var list []*library.Cover
		for _, c := range d.Library.Covers {
			if n.serves(c, marginC) {
				list = append(list, c)
			}
		}
		if len(list) > 0 {
			return ascending(list, func(c *library.Cover) float64 { return -c.CurrentFactor })
		}
	}
	return nil
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
