package library

import "math"

// FuseType finds a fuse type by name or alias; nil when there is none.
func (l *Library) FuseType(name string) *FuseType {
	return find(l.FuseTypes, name, fuseTypeNames)
}

// FuseTypeNames lists the fuse types in file order.
func (l *Library) FuseTypeNames() []string { return namesOf(l.FuseTypes, fuseTypeNames) }

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

func readFuseType(m *row, s Source) {
	t := &FuseType{
		Name:      m.needText("name"),
		Aliases:   m.texts("aliases"),
		Standard:  m.text("standard"),
		Kind:      m.choice("kind", "fuse", "breaker", "ptc"),
		MaxV:      m.needNumber("max V", 1, 2000),
		BreakingA: m.needNumber("breaking A", 1, 1e6),
		Reset:     m.choice("reset", "", "automatic", "power removed", "manual"),
		Mounting:  m.needText("mounting"),
		Source:    s,
	}
	m.r.sourced(m.node, s)
	m.each("ratings", s, func(z *row, s Source) { t.Ratings = append(t.Ratings, readRating(z, s)) })
	if len(t.Ratings) == 0 {
		m.missing("ratings")
	}
	m.r.ascending(m.node, "ratings", len(t.Ratings), func(i int) float64 { return t.Ratings[i].RatingA })
	m.each("breaks", s, func(z *row, _ Source) {
		t.Breaks = append(t.Breaks, BreaksAt{z.needNumber("up to V", 1, 2000), z.needNumber("breaking A", 1, 1e6)})
	})
	m.r.ascending(m.node, "breaks", len(t.Breaks), func(i int) float64 { return t.Breaks[i].UpToV })
	m.each("opens", s, func(z *row, s Source) { t.Band = append(t.Band, readTimePoint(z, s)) })
	for _, r := range t.Ratings {
		band := t.BandFor(r.RatingA)
		m.r.ascending(m.node, "opens", len(band), func(i int) float64 { return band[i].Multiple })
	}
	t.Rerating = m.ratedAt("carries", s)
	m.r.lib.FuseTypes = add(m, "fuse types", m.r.lib.FuseTypes, t, t.Name, t.Aliases)
}

func readRating(z *row, s Source) *FuseRating {
	return &FuseRating{
		RatingA:  z.needNumber("rating A", 0.01, 2000),
		Mounting: z.text("mounting"),
		Colour:   z.text("colour"),
		ColdOhm:  z.number("cold mohm", 0.001, 1e5) / 1e3,
		DropV:    z.number("drop mV", 0.1, 1e4) / 1e3,
		MeltI2t:  z.number("melting A2s", 1e-6, 1e9),
		Source:   s,
	}
}

func readTimePoint(z *row, s Source) TimePoint {
	p := TimePoint{
		FromA:    z.number("from A", 0, 2000),
		ToA:      z.number("to A", 0, 2000),
		Multiple: z.needNumber("multiple", 0.1, 100),
		MinS:     z.number("min s", 0, 1e7),
		MaxS:     z.number("max s", 0, 1e7),
		Source:   s,
	}
	if p.FromA > p.ToA {
		z.r.report(z.node, "\"from A\" is above \"to A\"", "", "")
	}
	if p.MaxS != 0 && p.MinS > p.MaxS {
		z.r.report(z.node, "\"min s\" is above \"max s\"", "", "")
	}
	return p
}

// ratedAt reads shares of a rating at ambients, ascending by ambient.
func (m *row) ratedAt(key string, s Source) []RatedAt {
	var out []RatedAt
	m.each(key, s, func(z *row, _ Source) {
		out = append(out, RatedAt{
			AmbientC: z.needNumber("ambient C", -100, 400),
			Share:    z.needNumber("share", 0, 2),
		})
	})
	m.r.ascending(m.node, key, len(out), func(i int) float64 { return out[i].AmbientC })
	return out
}
