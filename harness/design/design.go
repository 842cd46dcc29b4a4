// Package design is a harness as its builder describes it: source, vehicle
// loads, places, runs, and parts that each name what feeds them and where they
// return. Read turns YAML text into it, keeping the line and column of every
// value and collecting every mistake. It knows no network and no physics.
//
// All quantities are SI (volts, amperes, ohms, watts, metres, seconds; areas in
// square metres are avoided: wire areas are in mm² as the trade prints them;
// temperatures in °C; engine speed in revolutions per minute; charge in Ah).
package design

import (
	"slices"
	"strings"

	"fusewright/harness/design/figure"
	"fusewright/harness/design/problem"
	"fusewright/library"
)

// Quantity is a value with its unit as it was read.
type Quantity struct {
	Value float64     // in the base unit named by the field that holds it
	Text  string      // as written; empty when not given
	Pos   problem.Pos // zero when not given
}

// Given tells whether the design says the value.
func (q Quantity) Given() bool { return q.Text != "" }

// Or is the value, or a fallback when it is not given.
func (q Quantity) Or(fallback float64) float64 {
	if q.Given() {
		return q.Value
	}
	return fallback
}

// Text is a word or sentence with its place in the file.
type Text struct {
	Value string
	Pos   problem.Pos
}

// Given tells whether the design says it.
func (t Text) Given() bool { return t.Pos.Line != 0 }

// Design is one harness.
type Design struct {
	File     string
	Title    Text
	Vehicle  Text
	Author   Text
	Revision Text
	Date     Text     // ISO 8601 day
	SystemV  Quantity // 6, 12, 24 or 48
	Practice *library.Practice
	Limits   Limits
	Notes    []Text

	Battery      Battery
	Batteries    []*Bank // further ones
	Charging     Charging
	VehicleLoads []*VehicleLoad

	Places []*Place
	Runs   []*Run
	Wire   WireSpec // defaults
	// AllSizes tells that sizing may choose sizes that no shop has.
	AllSizes bool

	Conditions []When // those that taps name, in the order of the file

	Taps     []*Tap
	Fuses    []*Fuse
	Relays   []*Relay
	Blocks   []*Block
	Switches []*Switch
	Diodes   []*Diode
	Loads    []*Load
	Grounds  []*Ground
	Splices  []*Splice

	Situations []*Situation // derived when none is given
	Rides      []*Ride
	Accepted   []*Acceptance
	Prices     []*Price
	Sheet      Sheet
	Numbers    Numbers

	Library *library.Library

	// OldKeys are keys by names that they had before, and short names with which several
	// rows of the library begin, one of each.
	OldKeys problem.List
}

// Limits override the practice's; see library.Practice.
type Limits struct {
	DropCritical, DropOther Quantity // share
	FuseDistanceM           Quantity
	StandbyA                Quantity // most the battery may lose with the key off
	StandbyDays             Quantity // least days to no start
	SpareA                  Quantity // least the charging system has to spare, engine running
}

// Battery is the stored source.
type Battery struct {
	Chemistry     *library.Chemistry
	CapacityAh    Quantity
	RateH         Quantity // hour rate of the capacity
	ResistanceOhm Quantity // internal
	At            *Place
	Pos           problem.Pos
}

// Charging is the engine-driven source.
type Charging struct {
	RegulatedV  Quantity
	Output      []OutputPoint // ascending by speed
	Curve       string        // what runs between the points: "straight" or "smooth"; "" = straight
	IdleRPM     Quantity
	CruiseRPM   Quantity
	HotDerating Quantity // share of output lost when hot, 0..1
	Pos         problem.Pos
}

// OutputPoint is what the charging system gives at an engine speed.
type OutputPoint struct {
	RPM      Quantity
	CurrentA Quantity

	inWatts bool // the design says a power at the regulated voltage
}

// Present tells whether the vehicle charges at all.
func (c Charging) Present() bool { return len(c.Output) > 0 }

// Smooth tells whether a smooth curve runs through the points of the output.
func (c *Charging) Smooth() bool { return c.Curve == "smooth" }

// When says in which key states something draws or is live, or names a condition in
// which alone it does: see Condition.
type When string

// The key states of taps and vehicle loads.
const (
	WhenRunning When = "running" // engine running
	WhenKey     When = "key"     // key on, engine running or not
	WhenAlways  When = "always"
)

// VehicleLoad is what the machine itself draws.
type VehicleLoad struct {
	Name     string
	PowerW   Quantity // at the system's regulated voltage
	CurrentA Quantity
	Duty     Quantity // share of time, 0..1
	When     When     // default running; "" where it draws in situations
	// In are the situations in which alone it draws, While the conditions; none of
	// either = by When.
	In    []*Situation
	While []When
	Pos   problem.Pos

	in []Text // the names of In and While
}

// Place is somewhere on the vehicle.
type Place struct {
	Name     string
	AmbientC Quantity
	Wet      bool
	Moves    bool // handlebar, fork, hinged panel
	// PetrolVapour can gather there; VapourGiven = the design says whether.
	PetrolVapour, VapourGiven bool
	Pos                       problem.Pos
}

// Run is a stretch of loom between two places.
type Run struct {
	Name     string // "battery tray - under seat" when not given
	From, To *Place
	LengthM  Quantity
	AmbientC Quantity // of what it passes near, when given
	Near     Text     // what it passes near
	Flexes   bool
	Chafes   bool // abrasion risk
	Pinches  bool // pinch risk
	Cover    *library.Cover
	// CoverAuto tells that the cover is left to package sizing.
	CoverAuto bool
	Pos       problem.Pos
}

// WireSpec is what the design says of a wire; the reader fills what is left
// out from the defaults, so that Type, Size and Colour are set on every wire
// (Size stays nil only when the library has none, which is a problem).
type WireSpec struct {
	Type   *library.WireType
	Size   *library.WireSize
	Colour Colour
	// ColourAuto tells that the colour is left to package circuit: Colour is the usual one
	// until then.
	ColourAuto bool
	LengthM    Quantity          // given length, else from the runs
	SlackM     Quantity          // allowance per end
	Fitted     bool              // already there: neither cut nor bought
	Sheathed   bool              // inside a sheath or conduit from end to end
	FromEnd    *library.Terminal // nil = by the part's terminal and the size
	ToEnd      *library.Terminal
	// SizeAuto tells that neither the wire nor the defaults give a size: Size is
	// then the practice's smallest until package sizing chooses. FromKind and
	// ToKind are the kinds of crimp parts asked for where no part is named.
	SizeAuto         bool
	FromKind, ToKind string
	// TypeAuto tells that neither names an insulation: Type is then the practice's usual
	// one until sizing chooses.
	TypeAuto bool
	// FromAuto and ToAuto tell that the design asks for a crimp part to be chosen.
	FromAuto, ToAuto bool
	Pos              problem.Pos
}

// Colour is one or two colours: base and tracer.
type Colour struct {
	Base, Tracer *library.Colour // Tracer nil for one colour
}

// Code is the IEC 60757 code, such as "BK" or "YERD".
func (c Colour) Code() string {
	switch {
	case c.Base == nil:
		return ""
	case c.Tracer == nil:
		return c.Base.Code
	}
	return c.Base.Code + c.Tracer.Code
}

// Feed is one connection by a wire to the part that supplies it, or, as a
// return, to the part that takes the current back.
type Feed struct {
	From Ref
	Wire WireSpec
}

// Ref names an output or ground: a part and, where it has several, the
// terminal: way of a block, contact of a relay.
type Ref struct {
	Text     string // as written
	Part     Part   // the part named; nil only after a reported problem
	Terminal string // "87", "87a", way number; "" = the part's only output
	Pos      problem.Pos
}

// Part is anything that stands in the circuit and can be named.
type Part interface {
	PartName() string
	PartPos() problem.Pos
	PartPlace() *Place
}

// Common is what every part has.
type Common struct {
	Name      string
	Label     string // longer wording for drawings; the name when empty
	At        *Place
	StaysLive Text // reason why it may be live with the key off
	Fitted    bool // the design says that it is already there; see Fitted
	// SparkProof: the design says that it is ignition protected; SparkGiven: or that it is not.
	SparkProof, SparkGiven bool
	Pos                    problem.Pos

	kind string // "a relay", as messages say it
}

// PartName is the name in the design.
func (c *Common) PartName() string { return c.Name }

// PartPos is where the design defines it.
func (c *Common) PartPos() problem.Pos { return c.Pos }

// PartPlace is where it stands; nil when not said.
func (c *Common) PartPlace() *Place { return c.At }

// SaidSparkProof tells whether the design says that it is ignition protected.
func (c *Common) SaidSparkProof() bool { return c.SparkProof }

// SaidUnprotected tells whether the design says that it is not ignition protected.
func (c *Common) SaidUnprotected() bool { return c.SparkGiven && !c.SparkProof }

// SaidFitted tells whether the design says that it is already there.
func (c *Common) SaidFitted() bool { return c.Fitted }

// LiveReason is why it may be live with the key off; "" when the design gives none.
func (c *Common) LiveReason() string { return c.StaysLive.Value }

// BatteryPart is the battery's positive post, named "battery" in feeds.
type BatteryPart struct{ Common }

// NegativePart is the battery's negative post, named "battery negative" in returns.
type NegativePart struct{ Common }

// Tap is a point of the factory loom used as a trigger or a feed.
type Tap struct {
	Common
	Hot             When
	FuseA           Quantity // the factory fuse before it
	SpareA          Quantity // what may be drawn from it
	Supervised      bool     // watched by a data-bus module
	SupervisedGiven bool     // false = the design does not say
}

// Fuse is an overcurrent device on its own.
type Fuse struct {
	Common
	Type   *library.FuseType
	Rating *library.FuseRating
	// TypeAuto and RatingAuto tell that they are left to package sizing; until
	// then they are the usual type and its largest rating.
	TypeAuto, RatingAuto bool
	FedBy                []Feed
	Returns              []Feed // where it stands in a return
}

// Relay is a coil with contacts; contact feed is terminal 30.
type Relay struct {
	Common
	Form *library.RelayForm
	// FormAuto tells that the form is left to package sizing; until then it is
	// the usual one with the contacts in use.
	FormAuto bool
	FedBy    []Feed
	Returns  []Feed // of contacts that stand in a return, from terminal 30; see Rests
	Coil     Coil
	// Rests tells that it is half of a reversing contactor: its feed is on 87, what
	// hangs on it is on 30, and that rests on 87a, from where Returns lead.
	Rests bool
	// Half is the relay in whose case it is: it has that one's form and place, and
	// its feed and return; nil = it has a case of its own.
	Half *Relay

	halfOf Text // Half before it is looked up
}

// Wired is the relay of the case at whose terminals the feed and return of the
// contacts are: itself, or the other half.
func (r *Relay) Wired() *Relay {
	if r.Half != nil {
		return r.Half
	}
	return r
}

// Coil is terminals 86 (fed) and 85 (return).
type Coil struct {
	FedBy      []Feed
	Returns    []Feed
	Suppressed string // "none", "resistor", "diode", "zener"; "" = not said
	Pos        problem.Pos
}

// Block is a distribution block.
type Block struct {
	Common
	Type *library.BlockType // nil when the design gives its figures only
	// TypeAuto tells that type and figures are left to package sizing.
	TypeAuto bool
	WayA     Quantity // limit of each way
	TotalA   Quantity
	FedBy    []Feed
	Ways     []*Way
}

// Way is one output of a block.
type Way struct {
	Number   string
	FuseType *library.FuseType
	Fuse     *library.FuseRating // nil = no fuse in this way
	// FuseAuto and TypeAuto tell that rating and type are left to package sizing.
	FuseAuto, TypeAuto bool
	Spare              bool
	Pos                problem.Pos
}

// Plugged is the connector at which a part comes off the harness: the wires
// that the design ends at the part end in contacts of the family.
type Plugged struct {
	// Plug is the connector family; nil = the part has no plug, or its choice is
	// left to package sizing, which PlugAuto tells.
	Plug     *library.Connector
	PlugAuto bool
	// PlugKind is the kind of crimp part that the `ends` of its wires ask for; ""
	// when they ask for none. The family's pin kind must be the same.
	PlugKind string
}

// PlugSpec is what the design says of the plug; it may be changed in place.
func (p *Plugged) PlugSpec() *Plugged { return p }

// Pluggable is a part that can have a plug: *Load and *Switch.
type Pluggable interface {
	Part
	PlugSpec() *Plugged
}

// Switch is a contact worked by hand, or by water or pressure, or one pole of several.
type Switch struct {
	Common
	Plugged
	Type      *library.SwitchType // nil when the design gives its rating only
	RatingA   Quantity
	FedBy     []Feed
	Returns   []Feed // where it stands in a return
	Momentary bool   // closed only while it is held; by the type or the design
	// KeyOperated: worked by the ignition key; by the type or the design.
	KeyOperated bool
	// Positions are those of its handle, in order; none = a plain contact. Each output is a
	// terminal that loads name, as a way of a block.
	Positions []*Position
	// Pole is the switch whose handle moves it: type, rating and place are that one's; nil =
	// it has a handle of its own.
	Pole *Switch

	poleOf Text // Pole before it is looked up
}

// Behaviour is how a load's current follows its voltage.
type Behaviour string

// The load behaviours. Filament current goes with V^0.55.
const (
	Resistor      Behaviour = "resistor"
	FilamentLamp  Behaviour = "filament lamp"
	ConstantPower Behaviour = "constant power"
	Motor         Behaviour = "motor"
)

// Behaviours are all of them, as the design may name them.
var Behaviours = []Behaviour{Resistor, FilamentLamp, ConstantPower, Motor}

// Sign is which symbol stands for a load on the drawing.
type Sign string

// The signs of loads.
const (
	SignLamp        Sign = "lamp"
	SignLED         Sign = "LED"
	SignHeater      Sign = "heater"
	SignMotor       Sign = "motor"
	SignPump        Sign = "pump"
	SignHorn        Sign = "horn"
	SignSocket      Sign = "socket"
	SignElectronics Sign = "electronics"
	SignSensor      Sign = "sensor"
	SignVoltmeter   Sign = "voltmeter"
	SignConverter   Sign = "converter" // to other volts, or to alternating current
)

// Signs are all of them, as the design may name them.
var Signs = []Sign{SignLamp, SignLED, SignHeater, SignMotor, SignPump, SignHorn, SignSocket, SignElectronics,
	SignSensor, SignVoltmeter, SignConverter}

// Electronic tells whether it stands for electronics inside.
func (s Sign) Electronic() bool {
	return s == SignElectronics || s == SignVoltmeter || s == SignConverter
}

// Load is an accessory.
type Load struct {
	Common
	Plugged
	Type     *library.LoadType // nil when the design gives its own figures
	Sign     Sign
	Behaves  Behaviour
	PowerW   float64 // at RatedV; set from power, current or resistance
	RatedV   float64
	Critical bool
	// TightDrop: the library calls its type critical on boats, this is one, and the
	// design says nothing of it.
	TightDrop bool
	MinV      Quantity
	Duty      Quantity // share of time, 0..1; 1 when not given
	Tolerance Quantity // of its power, share
	Figure    string   // "highest": PowerW is the most it draws; "typical": the usual
	MostW     float64  // the most that its type may draw at RatedV; 0 when nothing says
	OnForS    Quantity // longest that it is on; not given = for good
	EveryS    Quantity // how often it is on for so long
	Cycles    bool     // both are assumed, of a motor's duty
	Lead      Lead     // its own lead
	MostFuseA Quantity // largest fuse that its maker allows
	DropAim   Quantity // share of the system voltage that its wires may lose; not given = the practice's
	Priority  int      // 1 = given up last; 0 = not said
	OwnSwitch bool     // has its own switch, so it is off unless a situation says on
	StandbyA  Quantity // draw while live but off
	MaxV      Quantity
	Polarised bool // suffers when reversed
	Protected bool // the design says so of its motor; see ProtectedMotor
	Inrush    library.Inrush
	FedBy     []Feed
	Returns   []Feed

	given loadFigures // as the design says them
}

// Reverses tells whether its motor can run either way: it lies between two relays
// that rest.
func (l *Load) Reverses() bool {
	rests := func(list []Feed) bool {
		return slices.ContainsFunc(list, func(f Feed) bool { r, ok := f.From.Part.(*Relay); return ok && r.Rests })
	}
	return rests(l.FedBy) && rests(l.Returns)
}

// Lead is the lead that an accessory comes with.
type Lead struct{ AreaMm2, LengthM Quantity }

// GroundKind says what a ground point is.
type GroundKind string

// The kinds of ground points.
const (
	FrameStud   GroundKind = "frame stud"   // bolted to the frame, current goes through metal
	GroundBlock GroundKind = "ground block" // a bus bar, wired on
)

// Ground is a point where returns meet.
type Ground struct {
	Common
	Kind     GroundKind
	LimitA   Quantity
	FrameOhm Quantity // frame stud: through the frame to battery negative
	Returns  []Feed   // ground block: the wire onwards
	// Supervised says that a data-bus module measures through this return.
	Supervised bool
}

// Splice joins feeds.
type Splice struct {
	Common
	FedBy []Feed
}

// KeyState is the ignition key and engine.
type KeyState string

// The key states of situations.
const (
	KeyOff KeyState = "off"
	KeyOn  KeyState = "on"
)

// Situation is what is on at once.
type Situation struct {
	Name      string
	Key       KeyState
	EngineRPM float64   // 0 = stopped
	On        []*Load   // loads on
	All       bool      // on are all, of the design's own word or because the reader made it
	Reversed  []*Load   // of those on, the motors that run the other way round
	Closed    []*Switch // switches closed besides those the loads need
	Open      []*Switch // switches left open though a load needs them, as one tries each of two feeds
	With      []When    // the conditions that hold
	Set       []Setting // switches in a position that the design says; others follow what is on
	// As is the situation that this one is like, as a leg of a ride; nil = none. The
	// machine's own loads draw as there.
	As      *Situation
	Derived bool // made by the reader
	Pos     problem.Pos
}

// Ride is a sequence of legs.
type Ride struct {
	Name        string
	StartCharge Quantity // share, default 1
	Legs        []*Leg
	Pos         problem.Pos
}

// Compare puts situations in an order that does not hang on the file: those of the
// design by name, then those made by the reader as they are.
func (s *Situation) Compare(t *Situation) int {
	switch {
	case s.Derived && t.Derived:
		return 0
	case s.Derived != t.Derived:
		return map[bool]int{true: 1, false: -1}[s.Derived]
	}
	return strings.Compare(s.Name, t.Name)
}

// Leg is a time at an engine speed with loads on.
type Leg struct {
	Lasts     Quantity   // seconds
	As        *Situation // the situation it is like; nil = none
	EngineRPM float64
	Key       KeyState
	On        []*Load
	With      []When // the conditions that hold
	AmbientC  Quantity
	Pos       problem.Pos
}

// Acceptance takes a finding as it is, with a reason.
type Acceptance struct {
	Rule     Text
	Part     Text
	Wire     string         // which wire of the part; "" = any, or the part itself
	Severity string         // the gravest taken; "" = fault
	Figure   *figure.Figure // without its sense; nil = any
	Reason   Text
}

// Price is what something costs; Item is the text of a purchase line.
type Price struct {
	Item     Text
	Each     float64
	Currency string
}

// Sheet is how the design wants to be drawn.
type Sheet struct {
	Size       string // "A4", "A3", "Letter", "Tabloid"; "" = A4
	PlaceBoxes bool
	Symbols    string // "IEC", "IEEE"; "" = IEC
	Relays     string // "assembled", "detached"; "" = assembled
	Lengths    string // "m", "ft"; "" = m
}
