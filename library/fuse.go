package library

import "math"

// FuseType finds a fuse type by name or alias; nil when there is none.
func (l *Library) FuseType(name string) *FuseType {
	return find(l.FuseTypes, name, fuseTypeNames)
}

func fuseTypeNames(t *FuseType) (string, []string) { return t.Name, t.Aliases }

// Rating finds a rating by its amperes; nil when the type has none of it.
func (t *FuseType) Rating(amperes float64) *FuseRating {
	for _, r := range t.Ratings {
		if math.Abs(r.RatingA-amperes) <= 1e-9*math.Max(1, amperes) {
			return r
		}
	}
	return nil
}

// RatingsA lists the ratings of the type in amperes, ascending.
func (t *FuseType) RatingsA() []float64 {
	out := make([]float64, len(t.Ratings))
	for i, r := range t.Ratings {
		out[i] = r.RatingA
	}
	return out
}

// BandFor is the opening-time band of one rating, ascending by multiple; the
// rows for all ratings and those whose range takes the rating in.
func (t *FuseType) BandFor(ratingA float64) []TimePoint {
	var out []TimePoint
	for _, p := range t.Band {
		if (p.FromA == 0 && p.ToA == 0) || (ratingA >= p.FromA && ratingA <= p.ToA) {
			out = append(out, p)
		}
	}
	return out
}

// BreakingAt is the breaking capacity in amperes on a system of a nominal
// voltage: of the lowest voltage published that is not below it.
func (t *FuseType) BreakingAt(systemV float64) float64 {
	for _, b := range t.Breaks {
		if systemV <= b.UpToV {
			return b.BreakingA
		}
	}
	return t.BreakingA
}

// End is the terminal kind at the ends of a rating, which may be nil.
func (t *FuseType) End(r *FuseRating) string {
	if r != nil && r.Mounting != "" {
		return r.Mounting
	}
	return t.Mounting
}

func (t *FuseType) check(m *row) {
	for _, r := range t.Ratings {
		band := t.BandFor(r.RatingA)
		m.r.ascending(m.node, "opens", len(band), func(i int) float64 { return band[i].Multiple })
	}
}

func (p *TimePoint) check(z *row) {
	if p.FromA > p.ToA {
		z.r.report(z.node, "\"from A\" is above \"to A\"", "", "")
	}
	if p.MaxS != 0 && p.MinS > p.MaxS {
		z.r.report(z.node, "\"min s\" is above \"max s\"", "", "")
	}
}
