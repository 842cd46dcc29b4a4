package circuit

import (
	"fmt"
	"math"

	"fusewright/harness/design"
)

// layWires gives every wire its length, its runs, its ambient and its
// resistance.
func (b *builder) layWires() {
	for _, run := range b.c.Design.Runs {
		b.c.Bundles = append(b.c.Bundles, &Bundle{Run: run})
	}
	r := newRoutes(b.c)
	for _, w := range b.c.Wires {
		b.layWire(r, w)
		w.findAmbient()
		if w.Spec.Size == nil {
			b.report(w.Pos, fmt.Sprintf("the wire from %s to %s has no size", address(w.From),
				address(w.To)), "a size of its wire type")
			continue
		}
		w.ConductorOhm20 = w.Spec.Size.MaxOhmPerM * w.LengthM
		w.Branch.Ohm = w.ConductorOhm20 + w.EndsOhm
	}
}

func (b *builder) layWire(r *routes, w *Wire) {
	from, to := w.From.Part.Place, w.To.Part.Place
	lengthM, way, ok := r.between(from, to)
	w.Route, w.LengthGiven = way, w.Spec.LengthM.Given()
	for _, bundle := range way {
		bundle.Wires = append(bundle.Wires, w)
	}
	b.passConnectors(w)
	switch {
	case w.LengthGiven:
		w.LengthM = w.Spec.LengthM.Value
	case ok:
		w.LengthM = lengthM + 2*float64(len(w.Poles)+1)*w.Spec.SlackM.Value
	case from == nil || to == nil:
		b.report(w.Pos, fmt.Sprintf("the wire from %s to %s has no length, since the design does not "+
			"say where both stand", address(w.From), address(w.To)), "\"at\" at both, or a length")
	default:
		b.report(w.Pos, fmt.Sprintf("the wire from %s to %s has no length, since no run joins %q and %q",
			address(w.From), address(w.To), from.Name, to.Name), "runs that join the places, or a length")
	}
}

// SlackOnly tells whether both ends of a wire are at one place and the design
// gives no length: what it has is its slack, the way between the parts left out.
func (w *Wire) SlackOnly() bool { return !w.LengthGiven && len(w.Route) == 0 }

// ApartM is how far apart its ends are by the runs, at least, and how far along them, m.
// A connector that parts it holds it to its place: the pieces count one by one.
func (w *Wire) ApartM() (apart, way float64) {
	for _, piece := range w.Cut() {
		longest, along := 0.0, 0.0
		for _, b := range piece.Route {
			along += b.Run.LengthM.Value
			longest = math.Max(longest, b.Run.LengthM.Value)
		}
		apart, way = apart+2*longest-along, way+along
	}
	return apart, way
}

// TooShort tells whether a wire whose length is given does not reach between its places,
// by more than the rounding of the arithmetic.
func (w *Wire) TooShort() bool {
	apart, _ := w.ApartM()
	return w.LengthGiven && apart > w.LengthM*(1+1e-9)
}

// address names a terminal in a message: the part's name and the terminal.
func address(t *Terminal) string { return fmt.Sprintf("%q (%s)", t.Part.Name, t.Name) }

// findAmbient takes the hottest of the places and runs that a wire meets. A
// place without an ambient counts with the default; so does a wire that meets
// none.
func (w *Wire) findAmbient() {
	w.AmbientC, w.AmbientAt, w.AmbientKnown = math.Inf(-1), "", false
	w.meetPlace(w.From.Part.Place)
	w.meetPlace(w.To.Part.Place)
	for _, b := range w.Route {
		w.meetPlace(b.Run.From)
		w.meetPlace(b.Run.To)
		if b.Run.AmbientC.Given() {
			w.meet(b.Run.AmbientC.Value, b.Run.Name, true)
		}
	}
	if w.AmbientAt == "" {
		w.AmbientC = DefaultAmbientC
	}
}

func (w *Wire) meetPlace(p *design.Place) {
	if p != nil {
		w.meet(PlaceAmbientC(p), p.Name, p.AmbientC.Given())
	}
}

// meet keeps the hotter of two ambients; of equal ones, the one that is given.
func (w *Wire) meet(ambientC float64, at string, known bool) {
	if ambientC > w.AmbientC || (ambientC == w.AmbientC && known && !w.AmbientKnown) {
		w.AmbientC, w.AmbientAt, w.AmbientKnown = ambientC, at, known
	}
}
