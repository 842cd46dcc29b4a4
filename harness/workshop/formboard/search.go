package formboard

import "math"

// mostChecks bounds the search of one try; a section is small, so that a
// crowded one gives up within a few milliseconds.
const mostChecks = 3000

// search places the side branches of a section one after the other and takes
// back what leaves no room for the next.
type search struct {
	s      *Section
	try    try
	roomMm float64
	jobs   []*job
	placed []*Limb
	apart  [][]float64 // between spots along the loom, mm
	checks int
}

// job is a limb to place, after the one it hangs on.
type job struct {
	limb *Limb
	base *Spot // already placed when its turn comes
	on   *Limb // whose heading it turns from; nil = the trunk
	side float64
	turn []float64 // headings relative to it, preferred first
}

// Turns off the trunk, and on from a branch for its main and its other limbs.
var (
	offTrunk = []float64{45, 60, 90, 30, 120, 135, 150, 75, 105, 15, 165}
	goOn     = []float64{0, 30, 45, 60, 90, 15, 75}
	offLimb  = []float64{45, 60, 30, 90, 120, 75, 15, 105}
)

func newSearch(s *Section, trunk []*Spot, t try) *search {
	f := &search{s: s, try: t}
	x := 0.0
	trunk[0].At = Point{}
	onTrunk := map[*Spot]bool{trunk[0]: true}
	for i := 1; i < len(trunk); i++ {
		l := between(trunk[i-1], trunk[i])
		x += l.DrawnMm
		trunk[i].At = Point{X: x}
		l.HeadingDeg = 0
		onTrunk[trunk[i]] = true
		f.placed = append(f.placed, l)
	}
	f.roomMm = t.room * x
	for i, spot := range trunk {
		n := 0
		for _, l := range spot.Limbs {
			if !onTrunk[l.Far(spot)] {
				side := 1.0
				if (i+n)%2 == 0 {
					side = -1
				}
				f.add(l, spot, nil, side, offTrunk)
				n++
			}
		}
	}
	f.measure()
	return f
}

// add lists a limb and what hangs on it, its main limb first.
func (f *search) add(l *Limb, base *Spot, on *Limb, side float64, turn []float64) {
	f.jobs = append(f.jobs, &job{l, base, on, side, turn})
	tip := l.Far(base)
	var main *Limb
	for _, next := range tip.Limbs {
		if next != l && (main == nil || len(next.Run.Bundle.Wires) > len(main.Run.Bundle.Wires)) {
			main = next
		}
	}
	if main != nil {
		f.add(main, tip, l, side, goOn)
	}
	for _, next := range tip.Limbs {
		if next != l && next != main {
			f.add(next, tip, l, side, offLimb)
			side = -side
		}
	}
}

// measure finds the distance along the loom between all spots.
func (f *search) measure() {
	f.apart = make([][]float64, len(f.s.Spots))
	for i := range f.apart {
		f.apart[i] = make([]float64, len(f.s.Spots))
		var walk func(at *Spot, came *Limb, mm float64)
		walk = func(at *Spot, came *Limb, mm float64) {
			f.apart[i][at.index] = mm
			for _, l := range at.Limbs {
				if l != came {
					walk(l.Far(at), l, mm+l.DrawnMm)
				}
			}
		}
		walk(f.s.Spots[i], nil, 0)
	}
}

// run tells whether everything found a place.
func (f *search) run() bool { return f.place(0) }

func (f *search) place(i int) bool {
	if i == len(f.jobs) {
		return true
	}
	j := f.jobs[i]
	for _, side := range []float64{j.side, -j.side} {
		for _, turn := range j.turn {
			if f.checks++; f.checks > mostChecks {
				return false
			}
			if turn == 0 && side != j.side {
				continue
			}
			heading := side * turn
			if j.on != nil {
				heading += j.on.HeadingDeg
			}
			j.limb.point(j.base, heading)
			if f.free(j.limb) {
				f.placed = append(f.placed, j.limb)
				if f.place(i + 1) {
					return true
				}
				f.placed = f.placed[:len(f.placed)-1]
			}
		}
	}
	return false
}

// point lays a limb from a spot in a direction.
func (l *Limb) point(base *Spot, headingDeg float64) {
	l.HeadingDeg = headingDeg
	sin, cos := sinCos(headingDeg)
	l.Far(base).At = Point{base.At.X + l.DrawnMm*cos, base.At.Y - l.DrawnMm*sin}
}

// sinCos is exact at quarter turns, so that upright limbs stay upright.
func sinCos(degrees float64) (sin, cos float64) {
	switch math.Mod(math.Mod(degrees, 360)+360, 360) {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case 180:
		return 0, -1
	case 270:
		return -1, 0
	}
	return math.Sincos(degrees * math.Pi / 180)
}

// free tells whether a limb keeps its distance from all that are placed. Limbs
// that are near along the loom may be near on the board.
func (f *search) free(l *Limb) bool {
	for _, p := range f.placed {
		if base := shared(l, p); base != nil {
			if angleDeg(base, l.Far(base), p.Far(base)) < f.try.angle-1e-6 {
				return false
			}
			continue
		}
		need := math.Min(f.roomMm, 0.4*f.along(l, p))
		if Distance(l, p) < need {
			return false
		}
	}
	return true
}

// along is the shortest way along the loom from one limb to another.
func (f *search) along(a, b *Limb) float64 {
	least := math.Inf(1)
	for _, p := range []*Spot{a.From, a.To} {
		for _, q := range []*Spot{b.From, b.To} {
			least = math.Min(least, f.apart[p.index][q.index])
		}
	}
	return least
}

// shared is the spot at which two limbs meet; nil when they do not.
func shared(a, b *Limb) *Spot {
	switch {
	case a.From == b.From || a.From == b.To:
		return a.From
	case a.To == b.From || a.To == b.To:
		return a.To
	}
	return nil
}

func angleDeg(at, a, b *Spot) float64 {
	first := math.Atan2(a.At.Y-at.At.Y, a.At.X-at.At.X)
	second := math.Atan2(b.At.Y-at.At.Y, b.At.X-at.At.X)
	turn := math.Abs(math.Mod(first-second, 2*math.Pi)) * 180 / math.Pi
	return math.Min(turn, 360-turn)
}
