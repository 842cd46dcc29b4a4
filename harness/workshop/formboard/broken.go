package formboard

// Measures of a broken run in millimetres on the board. Our choice: the ends of a run are
// long enough to tie, cover and mark the loom by, the gap holds its length in words.
const (
	StubMm = 50.0 // what is kept at each end
	GapMm  = 16.0 // between the break lines

	// BreakFromMm is the length from which a run is broken; less would save too little.
	BreakFromMm = 200.0
)

// BrokenMm is how far apart the ends of a run are drawn where long runs are broken. A
// run is straight, of one cover, and nothing stands on it but at its ends.
func (r *Run) BrokenMm() float64 {
	if r.Length < BreakFromMm {
		return r.Length
	}
	return 2*StubMm + GapMm
}

// Broken tells whether a straight stretch of the run is left out.
func (l *Limb) Broken() bool { return l.DrawnMm < l.Run.Length }

// Pieces are the stretches that are drawn, in millimetres from the run's first place on
// the board: one, or two with the break between them.
func (l *Limb) Pieces() [][2]float64 {
	if !l.Broken() {
		return [][2]float64{{0, l.DrawnMm}}
	}
	return [][2]float64{{0, StubMm}, {l.DrawnMm - StubMm, l.DrawnMm}}
}

// Station is where a place on a run is drawn, both in millimetres from the run's first
// place; ok is false where the break leaves it out.
func (l *Limb) Station(mm float64) (drawnMm float64, ok bool) {
	switch {
	case !l.Broken() || mm <= StubMm:
		return mm, true
	case mm >= l.Run.Length-StubMm:
		return l.DrawnMm - (l.Run.Length - mm), true
	}
	return 0, false
}
