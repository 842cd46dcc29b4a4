package fusing

import (
	"fmt"
	"math"

	"fusewright/library"
)

// Device is one overcurrent device where it sits.
type Device struct {
	Type     *library.FuseType
	Rating   *library.FuseRating
	AmbientC float64

	ready *curve // see Prepared
}

// RatedC is the ambient at which bands and ratings are given: 23 °C for
// ISO 8820 fuse-links.
const RatedC = 23.0

// Opening is the time band in which a device opens at a current.
type Opening struct {
	CurrentA float64
	Multiple float64 // of the rating
	// FastS is the soonest it may open; +Inf when it is not to open at all.
	// FastKnown is false where no lower limit is published; FastS is then 0.
	FastS     float64
	FastKnown bool
	// SlowS is the latest; +Inf where it may never open. SlowKnown is false
	// where no upper limit is published; SlowS is then +Inf.
	SlowS     float64
	SlowKnown bool
	// Extended tells that the current lies above the published band, which is
	// carried on with its last I²t.
	Extended bool
	Note     string
}

// Open finds the opening band at a current. Between published multiples the
// limits run straight on log-log axes; above the last the last limit is carried
// on with constant I²t, since melting is adiabatic there; below the first upper
// limit the device may never open. A hot device may open as soon as its
// re-rated rating says, a cold one as late; the published limits at 23 °C
// always stay within the band.
func (d Device) Open(currentA float64) Opening {
	current := math.Abs(currentA)
	o := Opening{CurrentA: current, SlowS: math.Inf(1)}
	if d.Type == nil || d.Rating == nil || !(d.Rating.RatingA > 0) || math.IsNaN(current) {
		o.Note = "the device's type or rating is not known"
		return o
	}
	o.Multiple = current / d.Rating.RatingA
	c := d.curve()
	if len(c.band) == 0 {
		o.Note = fmt.Sprintf("no opening times published for %s", d.Type.Name)
		if o.Multiple <= 1 {
			o.FastS, o.FastKnown = math.Inf(1), true
		}
		return o
	}
	o.FastS, o.FastKnown = c.fast(current)
	o.SlowS, o.SlowKnown = c.slow(current)
	o.Extended = o.Multiple > c.band[len(c.band)-1].Multiple
	o.Note = c.note(o)
	return o
}

// Share is what the device carries for good at its ambient, as a share of its
// rating; known is false when the type has no re-rating table, and the share
// is then 1.
func (d Device) Share() (share float64, known bool) {
	if d.Type == nil {
		return 1, false
	}
	return rerated(d.Type.Rerating, d.AmbientC)
}

// SureA is the least current for which a latest opening is published; 0 = none is.
func (d Device) SureA() float64 {
	if !complete(d) {
		return 0
	}
	c := d.curve()
	for _, p := range c.band {
		if p.MaxS > 0 {
			return p.Multiple * c.coldA
		}
	}
	return 0
}

// rerated reads a re-rating table: straight between its rows; below the first
// as the first; above the last on along the last stretch, to zero at the least.
func rerated(rows []library.RatedAt, ambientC float64) (share float64, known bool) {
	n := len(rows)
	if n == 0 {
		return 1, false
	}
	if ambientC <= rows[0].AmbientC || n == 1 {
		return rows[0].Share, true
	}
	i := 1
	for i < n-1 && rows[i].AmbientC < ambientC {
		i++
	}
	a, b := rows[i-1], rows[i]
	f := (ambientC - a.AmbientC) / (b.AmbientC - a.AmbientC)
	s := a.Share + f*(b.Share-a.Share)
	if f > 1 {
		s = math.Min(s, b.Share)
	}
	return math.Max(0, s), true
}

// curve is the band of one device, ready to be asked often.
type curve struct {
	device   Device
	band     []library.TimePoint
	ratingA  float64
	carries  float64 // multiple that it carries for good, at least 1
	carriedS float64 // how long the test of that took; 0 = no test published
	hotA     float64 // rating that the fast edge counts from
	coldA    float64 // rating that the slow edge counts from
	meltFast float64 // A²s: never opens with less; 0 = not known
	meltSlow float64 // A²s: most that it lets through while clearing; 0 = not known

	unpublished, carriedOn string // notes, when written down already
}

// Typical melting I²t is an average; makers print no limits. A fifth either way
// for melting, twice for melting and arcing together. From memory: an
// engineering margin, not a standard.
const (
	meltLeast = 0.8
	meltMost  = 2.0
)

// workOut finds the band.
func (d Device) workOut() *curve {
	c := &curve{device: d, ratingA: d.Rating.RatingA, band: d.Type.BandFor(d.Rating.RatingA)}
	c.hotA, c.coldA, c.carries = c.ratingA, c.ratingA, 1
	for _, p := range c.band {
		if p.MinS >= carryS && p.Multiple >= c.carries {
			c.carries, c.carriedS = p.Multiple, p.MinS
		}
	}
	if at, ok := d.Share(); ok {
		base, _ := rerated(d.Type.Rerating, RatedC)
		if base > 0 {
			shift := at / base
			c.hotA = c.ratingA * math.Min(1, shift)
			c.coldA = c.ratingA * math.Max(1, shift)
		}
	}
	c.meltFast, c.meltSlow = d.Rating.MeltI2t*meltLeast, d.Rating.MeltI2t*meltMost
	return c
}

// fast is the soonest opening. Up to its carrying limit, and to its rating, the
// device carries the current for good. From a carrying test the edge runs straight
// to the first published lower limit, as between any two limits; without one it
// opens no sooner than that limit, since nothing more is published.
func (c *curve) fast(current float64) (float64, bool) {
	if !(c.hotA > 0) {
		return 0, true
	}
	m := current / c.hotA
	if m <= c.carries*(1+sameMultiple) {
		return math.Inf(1), true
	}
	e, state := edge(c.band, m, opensAfter)
	t := e.Seconds()
	switch state {
	case empty:
		return 0, false
	case below:
		return c.fromCarrying(m, firstLimit(c.band, opensAfter)), true
	case beyond:
		if c.meltFast > 0 {
			t = math.Min(t, c.meltFast/(current*current))
		}
	}
	return t, true
}

// fromCarrying is the soonest opening above the carrying limit and below the first
// lower limit.
func (c *curve) fromCarrying(m float64, first library.TimePoint) float64 {
	if c.carriedS == 0 {
		return first.MinS
	}
	f := math.Log(m/c.carries) / math.Log(first.Multiple/c.carries)
	return c.carriedS * math.Pow(first.MinS/c.carriedS, f)
}

// carryS is the time from which a lower limit is one of carrying for good:
// four hours, the shortest carrying test of the standards for fuse-links.
const carryS = 4 * 3600.0

// opensAfter is the lower limit of a point; zero for none and for carrying.
func opensAfter(p library.TimePoint) float64 {
	if p.MinS >= carryS {
		return 0
	}
	return p.MinS
}

// opensBefore is the upper limit of a point; zero for none.
func opensBefore(p library.TimePoint) float64 { return p.MaxS }

// slow is the latest opening; +Inf and false where no limit is published.
func (c *curve) slow(current float64) (float64, bool) {
	e, state := edge(c.band, current/c.coldA, opensBefore)
	if state == empty || state == below {
		return math.Inf(1), false
	}
	return e.Seconds(), true
}

// place says where a multiple lies against the published limits of one edge.
type place int

const (
	empty place = iota
	below
	inside
	beyond
)

// sameMultiple is the rounding of binary numbers: 1.35 · 3 A / 3 A is not 1.35.
const sameMultiple = 1e-9

// Reading is one edge of a band as it was read at a multiple of the rating: at a published
// point where M1 is M2, between two on log-log axes, or carried on from the last (M2 = 0)
// with constant I²t.
type Reading struct{ M, M1, S1, M2, S2 float64 }

// Seconds is the time read.
func (e Reading) Seconds() float64 {
	switch {
	case e.M2 == 0:
		return e.S1 * e.M1 * e.M1 / (e.M * e.M)
	case e.M1 == e.M2:
		return e.S2
	}
	return e.S1 * math.Pow(e.S2/e.S1, math.Log(e.M/e.M1)/math.Log(e.M2/e.M1))
}

// LatestEdge is how the latest opening at a current is read, and the rating that its
// multiples are of; false where none is published.
func (d Device) LatestEdge(currentA float64) (e Reading, ratingA float64, ok bool) {
	if !complete(d) {
		return e, 0, false
	}
	c := d.curve()
	e, state := edge(c.band, math.Abs(currentA)/c.coldA, opensBefore)
	return e, c.coldA, state == inside || state == beyond
}

// edge reads one edge of a band at a multiple. Limits of zero are not
// published and are passed over. A limit that grows with the multiple, which a
// table of rounded values can show, is held at the one before.
func edge(band []library.TimePoint, m float64, limit func(library.TimePoint) float64) (Reading, place) {
	e := Reading{M: m}
	for _, p := range band {
		t2 := limit(p)
		if t2 <= 0 {
			continue
		}
		if e.S1 > 0 {
			t2 = math.Min(t2, e.S1)
		}
		if m <= p.Multiple*(1+sameMultiple) {
			switch {
			case m >= p.Multiple*(1-sameMultiple):
				return Reading{m, p.Multiple, t2, p.Multiple, t2}, inside
			case e.S1 == 0:
				return e, below
			}
			e.M2, e.S2 = p.Multiple, t2
			return e, inside
		}
		e.M1, e.S1 = p.Multiple, t2
	}
	if e.S1 == 0 {
		return e, empty
	}
	return e, beyond
}

func firstLimit(band []library.TimePoint, limit func(library.TimePoint) float64) library.TimePoint {
	for _, p := range band {
		if limit(p) > 0 {
			return p
		}
	}
	return library.TimePoint{}
}

// note says what a reader of the numbers must know.
func (c *curve) note(o Opening) string {
	t := c.device.Type
	switch {
	case !o.SlowKnown && c.unpublished != "":
		return c.unpublished
	case !o.SlowKnown:
		return c.noteUnpublished()
	case o.Extended && c.carriedOn != "":
		return c.carriedOn
	case o.Extended:
		return c.noteCarriedOn()
	case t.Kind == "breaker" && t.Reset == "automatic":
		return "resets by itself while the fault remains"
	case t.Kind == "ptc":
		return "does not isolate the circuit: a holding current still flows"
	}
	return ""
}

func (c *curve) noteUnpublished() string {
	first := firstLimit(c.band, opensBefore)
	if first.Multiple == 0 {
		return "no upper limit published for " + c.device.Type.Name
	}
	return fmt.Sprintf("no upper limit published below %g %% of the rating", 100*first.Multiple)
}

func (c *curve) noteCarriedOn() string {
	if len(c.band) == 0 {
		return ""
	}
	return fmt.Sprintf("above the published band (%g %%): carried on with constant I²t",
		100*c.band[len(c.band)-1].Multiple)
}

// OpenAt is Open for a type, a rating in amperes and an ambient.
func OpenAt(t *library.FuseType, ratingA, currentA, ambientC float64) Opening {
	return Device{Type: t, Rating: RatingOf(t, ratingA), AmbientC: ambientC}.Open(currentA)
}

// RatingOf is the type's rating of so many amperes, or one of which only the
// amperes are known; nil for a type of nil or no rating.
func RatingOf(t *library.FuseType, ratingA float64) *library.FuseRating {
	if t == nil || !(ratingA > 0) {
		return nil
	}
	if r := t.Rating(ratingA); r != nil {
		return r
	}
	return &library.FuseRating{RatingA: ratingA}
}
