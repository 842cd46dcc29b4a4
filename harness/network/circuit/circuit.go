// Package circuit is a design as an electrical network: parts with terminals,
// wires with lengths and bundles, nodes and branches. Build makes it from a
// design that read without problems. It knows no voltages: package solve finds
// them, and nothing here prints or draws.
package circuit

import (
	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/formula/fusing"
	"fusewright/library"
)

// Circuit is the whole network. Parts and bundles are in the order of the
// design, wires in that of their numbers, branches parts first and then wires;
// indices are stable for the same input.
type Circuit struct {
	Design   *design.Design
	Parts    []*Part
	Wires    []*Wire
	Nodes    []*Node   // Nodes[0] is battery negative, the reference
	Branches []*Branch // every two-terminal element, wires included
	Bundles  []*Bundle // one per run, in design order
	// Gone are the labels that the design holds for parts and wires that it no longer has.
	Gone []design.Number

	inlines []*Inline // see Inlines

	flow flow // directions of feeds and returns, made by Build; see Link
}

// Kind is what a part is.
type Kind string

// The kinds of parts; library designators give each a reference letter.
const (
	Battery      Kind = "battery"
	Bank         Kind = "further battery"
	Generator    Kind = "generator"
	VehicleLoads Kind = "vehicle loads" // all of the machine's own, one part
	Tap          Kind = "tap"
	Fuse         Kind = "fuse"
	Relay        Kind = "relay"
	Block        Kind = "block"
	Switch       Kind = "switch"
	Diode        Kind = "diode"
	Resistor     Kind = "resistor"
	Charger      Kind = "charger"
	Load         Kind = "load"
	Ground       Kind = "ground"
	Splice       Kind = "splice"
	Connector    Kind = "connector" // in the loom; see Inline
)

// Part is one component with its terminals and inner branches.
type Part struct {
	Index     int
	Kind      Kind
	Name      string // as in the design
	Ref       string // reference designation after IEC 81346: "F1"
	Label     string
	Place     *design.Place
	Pos       problem.Pos
	Terminals []*Terminal
	Branches  []*Branch // inside the part
	// Plug is the connector at which the part comes off the harness; nil = none.
	Plug *Plug
	// InReturn tells that it stands in a return: a fuse, or a contact that switches the ground side.
	InReturn bool
	// Fitted tells that the design says it is already there.
	Fitted bool
	// Source is the design part: *design.Fuse, *design.Relay, ... ; nil for
	// generator and vehicle loads.
	Source design.Part
}

// Plug is a connector between the harness and a part.
type Plug struct {
	Family *library.Connector
	Needed int // ways in use: one a wire that ends at the part
	Ways   int // of the housing: the family's smallest that is enough; 0 = none is
}

// Terminal is a connection point of a part.
type Terminal struct {
	Part  *Part
	Name  string // DIN 72552 number, "+", "-", way number, "in", "out"
	Node  *Node
	Kind  string // terminal kind for the crimp: "tab 6.3", "ring M6"; "" = not known
	Wires []*Wire
	// KindAssumed says that neither the design nor the library gives Kind.
	KindAssumed bool
	// LeadMm2 is the thickest that the lead can be which is spliced here; 0 = not known.
	LeadMm2 float64
	// Mark is what stands there on the part itself: "cavity 1" of its plug, a switch's "C";
	// "" = not known.
	Mark string
	// Jointed tells that one crimp part, Joint, takes all wires here; it is nil when
	// none in the library does.
	Jointed bool
	Joint   *library.Terminal
	// Fuse designation of a way that holds one: "F3"; "" otherwise.
	FuseRef string
}

// Node is a point of one potential.
type Node struct {
	Index     int
	Name      string // "K1:87"
	Terminals []*Terminal
	Branches  []*Branch

	fedBy, feeds []*Branch // of the feed network, towards and away from here
	backTo       []*Branch // of the return network, away from here
	turns        []*Branch // motors that it feeds the other way round
}

// BranchKind is the law of a branch.
type BranchKind int

// The laws of branches.
const (
	WireBranch     BranchKind = iota // R from conductor and its two terminations
	ContactBranch                    // R when closed, open otherwise
	FuseBranch                       // R cold of fuse-link, breaker or PTC
	ResistorBranch                   // fixed R: coil, suppressor, frame path, resistor of its own
	LoadBranch                       // by design.Behaviour
	BatteryBranch                    // EMF behind R, from node B (-) to node A (+)
	DiodeBranch                      // one way, above a knee
	ChargerBranch                    // regulated voltage behind R up to a current limit
	OutputBranch                     // that of a charger at its battery: its law too, from node B (-) to node A (+)

	BranchKinds // how many there are
)

// Branch is a two-terminal element. Positive current flows from A to B.
type Branch struct {
	Index int
	Kind  BranchKind
	A, B  *Node
	Ohm   float64 // of wires: at 20 °C, terminations included
	Part  *Part   // nil for wires
	Wire  *Wire   // nil for parts
	Name  string  // "F1", "K1:30-87", "W7"

	// Assumed says in words what Ohm rests on when neither the design nor the
	// library gives it; empty when one of them does.
	Assumed string

	String []*Branch // of a load in series: the loads of its string from the source on, itself among them

	Closer *Closer // contacts: what closes them
	Fuse   *FuseSpec
	Load   *LoadSpec
	Diode  *design.Diode // of diodes; reversed, it passes current from B to A

	TimeOn TimeOn // of wires and fuses: how long at a time their current flows
}

// Closer says when a contact is closed. One field is set, KeyOff beside Key, Output only with Switch, Latch with Coil or Break.
type Closer struct {
	Coil      *Branch        // relay make contact: closed while the coil is energised
	Break     *Branch        // relay break contact: closed while it is not
	Latch     *design.Relay  // the relay, where it stays as a pulse left it, whatever its coil has
	Switch    *design.Switch // closed by hand
	Output    string         // of a switch with positions: closed in those that give it
	Key       design.When    // factory contact of a tap, or the key itself
	KeyOff    bool           // Key is a condition that a situation has with the key off
	OwnSwitch *design.Load   // the load's own switch
	Standby   *design.Load   // closed while the load is off: its standby draw
}

// FuseSpec is the protection in a branch, whether a fuse of its own or in a way.
type FuseSpec struct {
	Ref     string
	Type    *library.FuseType
	Rating  *library.FuseRating // of a tap's factory fuse: only RatingA known
	Factory bool
	Auto    bool // the design leaves the rating open
	Pos     problem.Pos
}

// Device is a branch's fuse where it stands, hotter by aboveK where the design
// does not give the ambient: what it gives is the highest that is expected. Of a
// factory fuse the type is not known.
func (b *Branch) Device(aboveK float64) fusing.Device {
	if b.Part.AmbientKnown() {
		aboveK = 0
	}
	return fusing.Device{Type: b.Fuse.Type, Rating: b.Fuse.Rating, AmbientC: b.Part.AmbientC() + aboveK}
}

// LoadSpec is the law of a load branch.
type LoadSpec struct {
	Behaves design.Behaviour
	PowerW  float64 // at RatedV
	RatedV  float64
	Duty    float64             // 0..1
	Load    *design.Load        // accessory, or nil
	Vehicle *design.VehicleLoad // the machine's own, or nil
	Standby bool                // what Load draws while it is live but off
	// StringA is the current at the nominal voltage of the string of loads in series in which it
	// is; 0 = it is in none.
	StringA float64
	// FanStall is how many times its running current a motor draws that stands, of one that is taken as a fan or
	// pump: torque by the square of its speed, so less of both behind a dropping resistor; 0 = of any other load.
	FanStall float64
	// Reverses tells of a motor between two halves of a reversing contactor: it runs
	// on either sign of its voltage.
	Reverses bool
}

// Average is a load's average draw as a share of what it takes while it draws:
// its duty, 1 when none is said.
func (l *LoadSpec) Average() float64 {
	switch {
	case l.Standby:
		return 1
	case l.Duty > 0, l.Vehicle != nil && l.Vehicle.Duty.Given(), l.Load != nil && l.Load.Duty.Given():
		return l.Duty
	}
	return 1
}

// RatedA is a load's current at its rated voltage, or that of the string in which it is; 0 when
// that is not known.
func (l *LoadSpec) RatedA() float64 {
	if l.StringA > 0 {
		return l.StringA
	}
	if l.RatedV <= 0 {
		return 0
	}
	return l.PowerW / l.RatedV
}

// DrawA is the rated current of a load's branch, or that of a coil's at the
// nominal voltage of what feeds it.
func (c *Circuit) DrawA(b *Branch) float64 {
	switch {
	case b.Load != nil:
		return b.Load.RatedA()
	case b.Ohm > 0:
		return c.NominalAt(b.A) / b.Ohm
	}
	return 0
}

// Role is what a wire is for.
type Role string

// The roles of wires.
const (
	FeedWire       Role = "feed"
	ReturnWire     Role = "return"
	CoilFeedWire   Role = "coil feed"
	CoilReturnWire Role = "coil return"
	// LinkWire joins batteries in series: it is inside the source, and neither feeds nor returns.
	LinkWire Role = "link"
)

// Wire is one cut piece of wire.
type Wire struct {
	Index          int
	Number         string // "W1"
	Role           Role
	From, To       *Terminal // From is towards the source; of returns: towards the load
	Spec           design.WireSpec
	LengthM        float64 // of the finished wire, slack of both ends included; cutting.LengthM is what is cut
	LengthGiven    bool
	Route          []*Bundle         // runs it lies in, in order; empty within one place
	AmbientC       float64           // hottest place or run it meets
	AmbientAt      string            // where
	AmbientKnown   bool              // false = no place or run it meets gives one as hot: AmbientC is a default
	ConductorOhm20 float64           // at 20 °C, by the standard's maximum resistance
	EndsOhm        float64           // both terminations, and the contacts of connectors on the way
	FromEnd, ToEnd *library.Terminal // chosen crimp parts; nil = none in the library fits
	Branch         *Branch
	Pos            problem.Pos // of the feed or return in the design
	ColourShared   bool        // colours ran out: another circuit has the same one where it goes

	colourHeld bool // by `numbers` of the design
	// Poles are the inline connectors on its way, in order, and Pieces what they part it into,
	// nil of an unparted wire; Whole is the wire of which a piece is one.
	Poles  []*Pole
	Pieces []*Wire
	Whole  *Wire
}

// ToMake lists the wires that are not there yet; ToCut has the pieces of parted ones.
func (c *Circuit) ToMake() []*Wire { return toMake(c.Wires) }

// ToMake lists those of a run.
func (b *Bundle) ToMake() []*Wire { return toMake(b.Wires) }

// ToCut lists what is to be cut: the wires that are not there yet, parted ones in pieces.
func (c *Circuit) ToCut() (list []*Wire) {
	for _, w := range c.ToMake() {
		list = append(list, w.Cut()...)
	}
	return list
}

// FittedWires are the numbers of the wires that are there already.
func (c *Circuit) FittedWires() (numbers []string) {
	for _, w := range c.Wires {
		if w.Spec.Fitted {
			numbers = append(numbers, w.Number)
		}
	}
	return numbers
}

func toMake(wires []*Wire) (list []*Wire) {
	for _, w := range wires {
		if !w.Spec.Fitted {
			list = append(list, w)
		}
	}
	return list
}

// Bundle is the wires that lie in one run.
type Bundle struct {
	Run     *design.Run
	Wires   []*Wire
	Loaded  int     // most wires that heat it in a situation
	OuterMm float64 // of the bundle
	heat    bundleHeat
}
