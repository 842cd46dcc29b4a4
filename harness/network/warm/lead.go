package warm

import (
	"math"

	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Lead is the lead that an accessory comes with.
type Lead struct {
	*Laid
	// StandsS is how long it stands a current, in seconds; +Inf for good.
	StandsS func(amps float64) float64
}

// Lead rates a lead of a conductor size, in the open in a place. What it is made of
// is not known: it is taken as of the type of the wire that feeds it, in the next
// size down. One thinner than all sizes of the type carries, and stands, the same
// current density as the thinnest, which is less than it may.
func (m *Model) Lead(feed *circuit.Wire, ambientC, areaMm2 float64) Lead {
	as := *feed
	as.Route, as.AmbientC, as.AmbientKnown = nil, ambientC, true
	as.Spec.Size = sizeUpTo(as.Spec.Type, areaMm2)
	if m.rater == nil || as.Spec.Size == nil {
		return Lead{Laid: &Laid{Wire: feed}}
	}
	l := m.layWire(&as)
	part := math.Min(1, areaMm2/as.Spec.Size.AreaMm2)
	l.Allowed, l.ToClassA = l.For(func(a float64) float64 { return part * a }), part*l.ToClassA
	damage := m.rater.Damage(as.InPlace(m.rater, as.Spec.Size, 0).At)
	return Lead{&l, func(amps float64) float64 { return damage.FaultTimeS(amps / part) }}
}

// ToClassS is in what time a current brings a wire, as warm as its place, to its class; +Inf = never, or not known.
func (m *Model) ToClassS(w *circuit.Wire, amps float64) float64 {
	if m.rater == nil {
		return math.Inf(1)
	}
	return m.rater.Damage(w.InPlace(m.rater, w.Spec.Size, 0).At).ToClassS(amps)
}

// sizeUpTo is the thickest size of a type up to an area, else its thinnest.
func sizeUpTo(t *library.WireType, areaMm2 float64) *library.WireSize {
	var best *library.WireSize
	for _, s := range t.Sizes {
		fits := s.AreaMm2 <= areaMm2*1.001
		if best == nil || fits && (s.AreaMm2 > best.AreaMm2 || best.AreaMm2 > areaMm2*1.001) ||
			!fits && s.AreaMm2 < best.AreaMm2 {
			best = s
		}
	}
	return best
}
