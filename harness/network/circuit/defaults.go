package circuit

import (
	"math"

	"fusewright/harness/design"
	"fusewright/library"
)

// Figures used where neither the design nor the library gives one. A branch
// that rests on one says so in Branch.Assumed; a wire whose ambient does has
// AmbientKnown false. All are common practice without a published source
// unless the line says otherwise.
const (
	// DefaultAmbientC stands for a place whose ambient the design leaves out:
	// the base of the marine wire tables (33 CFR 183.425 Table 5, 30 °C).
	DefaultAmbientC = 30

	// ChargerOhm stands between the regulated voltage and the battery posts. It
	// is our choice: small, because the voltage that the design gives holds at
	// the posts (30 A through it is 0.03 V), and above zero, because two sources
	// without resistance across each other have no definite currents.
	ChargerOhm = 0.001

	// BatteryOhm is the internal resistance of a 12 V battery whose capacity or
	// chemistry is not known: a mid-sized motorcycle battery, from memory.
	BatteryOhm = 0.010

	// FrameOhm is the path from a frame stud through the frame and the strap to
	// battery negative: two bolted joints of 2.5 mΩ, the limit for a bond that
	// MIL-STD-464 sets (from memory); the frame's metal itself adds little.
	FrameOhm = 0.005

	// TapOhm is the factory loom and ignition contact from the battery to a tap.
	TapOhm = 0.030

	// SwitchA stands for the rating of a switch of which nothing is known, WayA for
	// the limit of a way of a block: of less, it has the same clips. The drop at
	// the rating is the library's.
	SwitchA = 10
	WayA    = 30

	// OwnSwitchOhm is the switch built into an accessory. Its rated power is
	// measured at its leads with this contact inside, so it is kept small.
	OwnSwitchOhm = 0.001

	// EndOhm is a crimped and mated wire end for which the library has no part.
	EndOhm = 0.0005

	// LeastOhm is what a path that the design calls free of resistance has, so
	// that its current is definite: 100 A through it is 0.1 mV. Our choice.
	LeastOhm = 1e-6

	// SuppressorOhm is the resistor across the coil of a 12 V relay: 560 to
	// 680 Ω in relay data sheets, 1.2 to 2.7 kΩ at 24 V (from memory). It goes
	// with the square of the coil voltage, so that its loss stays the same.
	SuppressorOhm = 680
)

// DefaultAmbientSource is where DefaultAmbientC is from.
var DefaultAmbientSource = library.Source{Text: "base of the marine wire tables, 33 CFR 183.425 Table 5; taken for places that the design leaves out",
	Certainty: library.CommonPractice}

// Terminal kinds where neither the design's part nor its type gives one; the
// terminal says so in KindAssumed. All are common practice, no source.
const (
	BusEnd    = "ring M5"           // input of a distribution block, and its ways above WayA
	WayEnd    = "tab 6.3"           // ways of a distribution block
	PostEnd   = "ring M6"           // battery posts of small vehicles
	GroundEnd = "ring M6"           // frame studs and ground blocks
	LeadEnd   = library.FlyingLeads // parts that come with their own leads, and factory loom
)

// BundleFactor makes a bundle's diameter from its wires':
// D = BundleFactor · √(Σ d²). The trade uses 1.2 to 1.25 (common practice, no
// source); 1.25 is never below the exact circle around 3 to 7 equal round wires
// (2.155, 2.414, 2.701, 3 and 3 wire diameters).
const BundleFactor = 1.25

// PlaceAmbientC is the ambient of a place, in °C: what the design gives, else
// the default; so of nil, a part whose place is not said.
func PlaceAmbientC(p *design.Place) float64 {
	if p == nil {
		return DefaultAmbientC
	}
	return p.AmbientC.Or(DefaultAmbientC)
}

// AmbientC is the ambient where a part stands, in °C; a nil part has the default.
func (p *Part) AmbientC() float64 {
	if p == nil {
		return DefaultAmbientC
	}
	return PlaceAmbientC(p.Place)
}

// AmbientKnown tells that the design gives the ambient where a part stands.
func (p *Part) AmbientKnown() bool {
	return p != nil && p.Place != nil && p.Place.AmbientC.Given()
}

// RunAmbientC is the hottest that a run meets, its ends included, in °C; the
// default when nothing says.
func RunAmbientC(r *design.Run) float64 {
	hot := max(endAmbientC(r.From), endAmbientC(r.To), r.AmbientC.Or(math.Inf(-1)))
	if math.IsInf(hot, -1) {
		return DefaultAmbientC
	}
	return hot
}

// endAmbientC is below all others where a run ends at no place.
func endAmbientC(p *design.Place) float64 {
	if p == nil {
		return math.Inf(-1)
	}
	return PlaceAmbientC(p)
}
