// Package symbol holds the circuit symbols of the drawings, each on a grid of
// one module M = 2.5 mm with its pins on the grid. Conductors run from left to
// right; the row of the main conductor is y = 0 and the first pin is at 0,0.
// A symbol knows its body, its pins and how to draw itself into a scene; it
// knows no circuit and carries no reference text.
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
	Battery      Kind = "battery"
	Generator    Kind = "generator with rectifier"
	Fuse         Kind = "fuse"
	Breaker      Kind = "circuit breaker"
	PTC          Kind = "resettable fuse (PTC)"
	Coil         Kind = "relay coil"
	Make         Kind = "make contact"
	Changeover   Kind = "changeover contact"
	Resistor     Kind = "resistor"
	Diode        Kind = "diode"
	Zener        Kind = "zener diode"
	Switch       Kind = "manual switch"
	PushSwitch   Kind = "push-button"
	Lamp         Kind = "filament lamp"
	LED          Kind = "LED lamp"
	Heater       Kind = "heater"
	Motor        Kind = "motor"
	Pump         Kind = "pump"
	Horn         Kind = "horn"
	Socket       Kind = "socket outlet"
	Electronics  Kind = "electronic unit"
	Sensor       Kind = "sensor"
	Plug         Kind = "plug connection"
	PlugBack     Kind = "plug connection, harness at the right"
	Frame        Kind = "frame or chassis ground"
	GroundBar    Kind = "ground bar"
	Negative     Kind = "battery negative"
	Junction     Kind = "joined wires"
	Splice       Kind = "splice"
	Tap          Kind = "point of the factory loom"
	Incoming     Kind = "from another sheet"
	Outgoing     Kind = "to another sheet"
	SpareWay     Kind = "spare way"
	VehicleLoads Kind = "vehicle's own loads"
)

// Dir is the side to which a pin looks.
type Dir int

// The sides.
const (
	West Dir = iota
	East
	North
	South
)

// Pin is a connection point, on the grid, in M.
type Pin struct {
	Name string
	At   scene.Point
	Dir  Dir
}

// Symbol is one shape. Measures are in M.
type Symbol struct {
	Kind Kind
	Body scene.Rect // everything drawn, pins included
	Pins []Pin
	Link scene.Point // where a mechanical link meets it; zero when none does
	// Draw draws it; text is the short sign inside, used by few.
	Draw func(p *Pen, text string)
}

// Pin returns a pin by name; the zero Pin when there is none.
func (s *Symbol) Pin(name string) Pin {
	for _, p := range s.Pins {
		if p.Name == name {
			return p
		}
	}
	return Pin{}
}

// Set is a family of symbols after one standard.
type Set interface {
	// Name is the standard's name, as the drawing's notes print it.
	Name() string
	// Symbol returns the shape of a kind; every kind has one.
	Symbol(Kind) *Symbol
	// Kinds lists all kinds in catalogue order.
	Kinds() []Kind
}

// twoPole is the body and pins of a symbol 4 M long in the conductor.
func twoPole(k Kind, top, bottom float64, draw func(*Pen, string)) *Symbol {
	return &Symbol{
		Kind: k,
		Body: scene.Rect{X: 0, Y: -top, W: 4, H: top + bottom},
		Pins: []Pin{{"in", scene.Point{}, West}, {"out", scene.Point{X: 4}, East}},
		Draw: draw,
	}
}
