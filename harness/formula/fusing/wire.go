package fusing

import (
	"math"
	"sort"
)

// Curve is a damage curve: the time a wire stands a current, +Inf for good. It
// must not rise with the current. *conductor.Damage gives one by FaultTimeS.
type Curve func(currentA float64) float64

// Protection is whether a device opens before a wire is hurt.
type Protection struct {
	// Protects is true when at every current from the rating to the fault the
	// latest opening comes before the damage.
	Protects bool
	// Ratio is damage time over opening time at the worst current; +Inf when
	// the wire carries every current for which the device may never open and
	// is hurt by none other; 0 when the device may never open and the wire is
	// hurt.
	Ratio     float64
	WorstA    float64 // the current with the least ratio
	OpenS     float64 // latest opening there
	DamageS   float64 // damage there
	FromA     float64 // the range that was compared
	ToA       float64
	OpenKnown bool   // false when the worst lies where no upper limit is published
	Note      string // what the opening at the worst current says
	// KnownRatio and KnownWorstA are the same over those currents alone for
	// which an upper limit is published; +Inf and 0 when there are none.
	KnownRatio  float64
	KnownWorstA float64
	// HurtS is the shortest that the wire stands any of those currents at which
	// the opening comes too late, HurtA; +Inf and 0 when there are none. The least
	// ratio may lie at a smaller current, which the wire stands for longer.
	HurtS float64
	HurtA float64
}

// ProtectsWire compares a device with a wire at every current from the rating
// up to the bolted-fault current. A fault that is not above the rating leaves
// the one current of the fault.
func ProtectsWire(d Device, damage Curve, faultA float64) Protection {
	p := Protection{Protects: true, Ratio: math.Inf(1), KnownRatio: math.Inf(1), HurtS: math.Inf(1), OpenKnown: true}
	if d.Type == nil || d.Rating == nil || !(d.Rating.RatingA > 0) {
		p.Protects, p.Ratio, p.OpenKnown = false, 0, false
		p.OpenS, p.DamageS, p.Note = math.Inf(1), damage(faultA), "the device's type or rating is not known"
		return p
	}
	c := d.curve()
	p.FromA, p.ToA = math.Min(d.Rating.RatingA, faultA), faultA
	for _, i := range c.currents(p.FromA, p.ToA) {
		p.compare(c, i, damage(i))
	}
	if p.WorstA > 0 {
		p.Note = d.Open(p.WorstA).Note
	}
	return p
}

// DamagedIn is the shortest that a wire stands a current, of those from one to another at
// which the latest opening comes too late; +Inf where there are none.
func DamagedIn(d Device, damage Curve, fromA, toA float64) float64 {
	least := math.Inf(1)
	if !complete(d) || toA < fromA {
		return least
	}
	c := d.curve()
	for _, i := range c.currents(fromA, toA) {
		if open, known := c.slow(i); known && damage(i) <= open {
			least = math.Min(least, damage(i))
		}
	}
	return least
}

// compare takes one current in. Of equal ratios the first stands, so that the
// result does not hang on rounding further up.
func (p *Protection) compare(c *curve, currentA, damageS float64) {
	open, known := c.slow(currentA)
	r := math.Inf(1)
	switch {
	case math.IsInf(damageS, 1):
	case math.IsInf(open, 1):
		r = 0
	default:
		r = damageS / open
	}
	if r <= 1 {
		p.Protects = false
	}
	if known && r <= 1 && damageS < p.HurtS {
		p.HurtS, p.HurtA = damageS, currentA
	}
	if known && (p.KnownWorstA == 0 || r < p.KnownRatio) {
		p.KnownRatio, p.KnownWorstA = r, currentA
	}
	if p.WorstA == 0 || r < p.Ratio {
		p.Ratio, p.WorstA, p.OpenS, p.DamageS, p.OpenKnown = r, currentA, open, damageS, known
	}
}

// stepsPerDecade is how closely currents are compared between the corners of a
// band, where both curves run smooth.
const stepsPerDecade = 24

// currents are those to compare: the ends, the corners of the band from both
// sides, and steps between.
func (c *curve) currents(from, to float64) []float64 {
	if !(to > from) {
		return []float64{to}
	}
	out := []float64{from, to}
	for _, p := range c.band {
		corner := p.Multiple * c.coldA
		for _, i := range []float64{corner * (1 - 10*sameMultiple), corner} {
			if i > from && i < to {
				out = append(out, i)
			}
		}
	}
	n := int(math.Ceil(math.Log10(to/from) * stepsPerDecade))
	for k := 1; k < min(n, 1000); k++ {
		out = append(out, from*math.Pow(to/from, float64(k)/float64(n)))
	}
	sort.Float64s(out)
	return out
}

// Point is a time at a current, for drawing.
type Point struct{ CurrentA, FastS, SlowS float64 }

// Band is the opening band of a device at the currents worth drawing between
// two limits; times that are not known or never are +Inf or 0 as in Opening.
func (d Device) Band(fromA, toA float64) []Point {
	if d.Type == nil || d.Rating == nil || !(d.Rating.RatingA > 0) || !(fromA > 0) {
		return nil
	}
	c := d.curve()
	var out []Point
	for _, i := range c.currents(fromA, toA) {
		o := d.Open(i)
		out = append(out, Point{i, o.FastS, o.SlowS})
	}
	return out
}
