// Package symbol holds the circuit symbols of the drawings, each on a grid of
// one module M = 2.5 mm. Conductors run from left to right and end on the grid; the
// row of the main conductor is y = 0 and its left end is at 0,0. A symbol knows its
// body and how to draw itself into a scene; it knows no circuit and carries no
// reference text.
package symbol

import "fusewright/render/scene"

// M is the grid module in mm (IEC 60617 practice, from memory).
const M = 2.5

// Line widths in mm.
const (
	LineMM     = 0.35 // symbols
	ThinMM     = 0.25 // links, hatching, actuators
	WireMM     = 0.5
	BarMM      = 1.2 // bus bars
	DotMM      = 0.6 // radius of a junction dot
	ShortSign  = 2.95
	LetterSize = 4.2
)

// Kind names a symbol.
type Kind string

// The kinds of symbols.
const (
	Battery        Kind = "battery"
	Bank           Kind = "further battery"
	String         Kind = "batteries in series"
	BankString     Kind = "further batteries in series"
	Generator      Kind = "generator with rectifier"
	Alternator     Kind = "generator with rectifier, at its own stud"
	Fuse           Kind = "fuse"
	Breaker        Kind = "circuit breaker"
	PTC            Kind = "resettable fuse (PTC)"
	Coil           Kind = "relay coil"
	LatchCoil      Kind = "coil of a relay that latches"
	OffCoil        Kind = "coil of a relay with off delay"
	OnCoil         Kind = "coil of a relay with on delay"
	DelayCoil      Kind = "coil of a relay with on and off delay"
	Make           Kind = "make contact"
	Changeover     Kind = "changeover contact"
	Contactor      Kind = "contactor's contact"
	ContactorCO    Kind = "contactor's changeover contact"
	Resistor       Kind = "resistor"
	Diode          Kind = "diode"
	FeedDiode      Kind = "diode in a feed"
	Zener          Kind = "zener diode"
	Switch         Kind = "manual switch"
	PushSwitch     Kind = "push-button"
	FloatSwitch    Kind = "float switch"
	PressureSwitch Kind = "pressure switch"
	Positions      Kind = "multi-position switch, a contact"

	BatterySwitch Kind = "battery switch"

	Lamp         Kind = "filament lamp"
	LED          Kind = "LED lamp"
	Heater       Kind = "heater"
	Motor        Kind = "motor"
	Pump         Kind = "pump"
	Horn         Kind = "horn"
	Socket       Kind = "socket outlet"
	Electronics  Kind = "electronic unit"
	Sensor       Kind = "sensor"
	Voltmeter    Kind = "voltmeter"
	Converter    Kind = "converter"
	Solar        Kind = "solar panel with controller"
	Rectifier    Kind = "charger on the mains"
	Plug         Kind = "plug connection"
	PlugBack     Kind = "plug connection, harness at the right"
	Frame        Kind = "frame or chassis ground"
	GroundBar    Kind = "ground bar"
	Negative     Kind = "battery negative"
	Junction     Kind = "joined wires"
	Splice       Kind = "splice"
	Tap          Kind = "point of the factory wiring"
	Incoming     Kind = "from elsewhere"
	Outgoing     Kind = "to elsewhere"
	SpareWay     Kind = "spare way"
	VehicleLoads Kind = "vehicle's own loads"
)

// own are the kinds for which neither standard has a sign, from memory: the shape is
// that of these drawings.
var own = map[Kind]bool{Tap: true, SpareWay: true, Splice: true, VehicleLoads: true, Pump: true, Solar: true, Incoming: true, Outgoing: true}

// Own tells whether a kind has no sign in the standards.
func (k Kind) Own() bool { return own[k] }

// Symbol is one shape. Measures are in M.
type Symbol struct {
	Kind Kind
	Body scene.Rect  // everything drawn, its conductors included
	Link scene.Point // where a mechanical link meets it; zero when none does
	// Draw draws it; text is the short sign inside, used by few.
	Draw func(p *Pen, text string)
}

// shape is a symbol with its body in M.
func shape(k Kind, x, y, w, h float64, draw func(*Pen, string)) *Symbol {
	return &Symbol{Kind: k, Body: scene.Rect{X: x, Y: y, W: w, H: h}, Draw: draw}
}

// twoPole is a symbol 4 M long in the conductor.
func twoPole(k Kind, top, bottom float64, draw func(*Pen, string)) *Symbol {
	return shape(k, 0, -top, 4, top+bottom, draw)
}

// linked says where a mechanical link meets the symbol.
func (s *Symbol) linked(x, y float64) *Symbol {
	s.Link = scene.Point{X: x, Y: y}
	return s
}
