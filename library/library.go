// Package library holds the parts data of Fusewright: generic parts by
// standard, never by brand, as embedded YAML files. Each row carries its source
// and how sure it is. A user's own files of the same shape add to it.
//
// It knows no design and computes nothing: formulas are in harness packages.
// Lengths of parts are in millimetres and areas in square millimetres, as the
// standards print them; everything else is in SI units, temperatures in °C.
package library

// Source says where a row's numbers come from.
type Source struct {
	// Text names the published document with table or clause, or says
	// "common practice, no source" or "from memory".
	Text string
	// Certainty is one of Certainties: "two sources", "one source", "computed",
	// "from memory", "common practice, no source" or "user data".
	Certainty string
}

// Library is all parts data of a run, each list in file order with the
// embedded rows first. Look parts up with the methods beside each type.
type Library struct {
	WireTypes   []*WireType
	FuseTypes   []*FuseType
	RelayForms  []*RelayForm
	Blocks      []*BlockType
	Switches    []*SwitchType
	Terminals   []*Terminal
	Connectors  []*Connector
	Covers      []*Cover
	Loads       []*LoadType
	Colours     []*Colour
	Practices   []*Practice
	Batteries   []*Chemistry
	Designators []*Designator
	// Insulations are the thermal data of insulation materials.
	Insulations []*Insulation
	// CurrentTables are the published tables of allowed wire current.
	CurrentTables []*CurrentTable
	// ShopSizes are the series of wire that a shop has.
	ShopSizes []*ShopSizes
	// ContactDrops stand in for resistances that nothing gives.
	ContactDrops []*ContactDrop
	// Tolerances are how far the figures of a design may be off in use.
	Tolerances []*Tolerance
}

// WireType is a family of insulated wire after one standard: "SAE J1128 TXL",
// "ISO 6722 thin wall class B", "tinned marine 105 °C", "M22759/16".
type WireType struct {
	Name     string
	Aliases  []string
	Standard string
	// ClassC is the continuous conductor temperature of the insulation.
	ClassC float64
	// OverloadC is the short-time overload limit and ShortC the short-circuit
	// limit of the insulation; zero means not known.
	OverloadC, ShortC float64
	Material          string // insulation material, key into Insulations
	Tinned            bool
	Sizes             []*WireSize // ascending by area
	Source            Source
}

// WireSize is one conductor size of a wire type.
type WireSize struct {
	Label       string  // as the trade says it: "16 AWG", "1.5 mm²"
	AreaMm2     float64 // copper area
	MaxOhmPerM  float64 // maximum resistance at 20 °C
	ConductorMm float64 // diameter over the strands
	OuterMm     float64 // diameter over the insulation
	GaugeSystem string  // "SAE", "AWG" or "metric": SAE sizes carry less copper than AWG
	Shop        bool    // a size that a shop has, by ShopSizes
	Source      Source
}

// ShopSizes is a series of wire sizes that a shop has.
type ShopSizes struct {
	Name   string   // "metric", "gauge"
	Sizes  []string // labels
	Source Source
}

// FuseType is a kind of overcurrent device: "blade C", "blade F", "strip SF51",
// "breaker type I", "PTC".
type FuseType struct {
	Name      string
	Aliases   []string
	Standard  string
	Kind      string // "fuse", "breaker", "ptc"
	MaxV      float64
	BreakingA float64       // at MaxV
	Breaks    []BreaksAt    // below MaxV, ascending by volts
	Reset     string        // breakers: "automatic", "power removed", "manual"; fuses: ""
	Ratings   []*FuseRating // ascending
	// Band is the opening-time band, ascending by Multiple.
	Band []TimePoint
	// Rerating is the permitted share of the rating at an ambient, ascending.
	Rerating []RatedAt
	Mounting string // terminal kind at its ends: "fuse contact C", "ring M5"
	Source   Source
}

// BreaksAt is the breaking capacity up to a voltage of the sheet; one of 14 V
// is for a 12 V system, 28 or 32 V for 24 V.
type BreaksAt struct{ UpToV, BreakingA float64 }

// FuseRating is one rating of a fuse type.
type FuseRating struct {
	RatingA  float64
	Mounting string  // terminal kind at its ends where the type's is another
	Colour   string  // body colour in English; empty when the standard gives none
	ColdOhm  float64 // cold resistance; zero when not known
	DropV    float64 // voltage drop at rated current; zero when not known
	MeltI2t  float64 // typical melting I²t in A²s; zero when not known
	Source   Source
}

// TimePoint is the band of opening times at a multiple of the rating.
// MinS 0 means no lower limit is published, MaxS 0 no upper limit.
type TimePoint struct {
	FromA, ToA float64 // the ratings the row is for, inclusive; 0,0 = all
	Multiple   float64
	MinS, MaxS float64
	Source     Source
}

// RatedAt is a share (0..1) at a temperature.
type RatedAt struct {
	AmbientC float64
	Share    float64
}

// RelayForm is a relay after a standard outline with DIN 72552 terminals.
type RelayForm struct {
	Name       string
	Aliases    []string
	Family     string // the same form with other coil voltages: "mini make"
	Standard   string
	CoilV      float64 // nominal
	CoilOhm    float64 // at 20 °C
	PullInV    float64 // highest pull-in voltage at 20 °C
	DropOutV   float64 // lowest release voltage at 20 °C
	Changeover bool    // has a break contact 87a
	MakeA      float64 // resistive load, contact 30-87
	MakingA    float64 // most that the contact may close on, 30-87; 0 = not published
	BreakA     float64 // resistive load, contact 30-87a; zero when it has none
	LampA      float64 // filament lamp load, make contact
	MotorA     float64 // motor (inductive) load, make contact
	ContactOhm float64
	MaxC       float64            // highest ambient
	Derating   []RatedAt          // of MakeA against ambient
	TabMm      map[string]float64 // tab width by DIN terminal number
	// ContactEnd and CoilEnd are the terminal kinds of what has no tabs: "ring M8".
	ContactEnd, CoilEnd string
	ShortTime           []CarriesFor // more than MakeA for a while, ascending by time
	CoilOnS             float64      // longest that the coil may be live; zero: for good
	Source              Source
}

// CarriesFor is a current that a contact carries for a time and no longer.
type CarriesFor struct{ S, CurrentA float64 }

// BlockType is a distribution block: one input stud and ways with fuses.
type BlockType struct {
	Name       string
	Aliases    []string
	Ways       int
	WayA       float64
	TotalA     float64
	FuseType   string // name of the fuse type its ways take; "" for none
	Mounting   string // terminal kind of the input: "ring M5"
	WayEnd     string // terminal kind of each way: "tab 6.3", "ring M4"
	ContactOhm float64
	Sealed     bool
	Source     Source
}

// SwitchType is a manual switch with ratings by kind of load.
type SwitchType struct {
	Name       string
	Aliases    []string
	ResistiveA float64
	LampA      float64
	MotorA     float64
	ContactOhm float64
	Sealed     bool
	Isolates   bool   // parts the battery from all it feeds; opened on leaving
	Float      bool   // closed by rising water
	End        string // terminal kind: "tab 6.3"; "splice" for flying leads
	Source     Source
}

// Terminal is a crimp part that ends a wire.
type Terminal struct {
	Name           string // "ring M6 1.5-2.5 mm²"
	Aliases        []string
	Kind           string // "ring M6", "tab 6.3", "bullet 4", "splice", "ferrule", "pin 1.5"
	MinMm2, MaxMm2 float64
	MaxA           float64
	StripMm        float64
	ContactOhm     float64 // new, crimp and contact together
	AgedOhm        float64 // aged
	Sealed         bool
	SoldPer        int // pieces in a pack
	Source         Source
}

// Connector is a multi-way connector family.
type Connector struct {
	Name           string
	Aliases        []string
	Ways           []int
	MinMm2, MaxMm2 float64
	MaxA           float64
	ContactOhm     float64
	Sealed         bool
	PinKind        string // terminal kind of its pins: "pin 1.5"
	SealsPer       int    // wire seals and blanking plugs in a pack; 1 = singly, 0 = not known
	Source         Source
}

// Cover is a sleeve or conduit over a run.
type Cover struct {
	Name          string
	Aliases       []string
	Kind          string // "sleeve", "conduit", "loom tape"
	MaxC          float64
	Abrasion      bool    // protects against chafing
	Pinch         bool    // protects against pinching
	Heat          bool    // protects against radiant heat
	Stiff         bool    // bears no bending in use
	CurrentFactor float64 // reduction of the allowed current inside it, 0..1
	Source        Source
}

// LoadType is a typical accessory or vehicle load.
type LoadType struct {
	Name     string
	Aliases  []string
	Behaves  string // see design.Behaviour
	PowerW   float64
	CurrentA float64
	RatedV   float64 // voltage at which PowerW or CurrentA holds
	MinV     float64 // zero when not known
	Bilge    bool    // a bilge pump, which must run on a boat that is left
	Duty     float64 // 0..1
	Highest  bool    // PowerW or CurrentA is the most it draws, not the usual
	Most     MostPower
	// OnForS is the longest that it is on, EveryS how often; zero: for good.
	OnForS, EveryS float64
	LeadMm2, LeadM float64 // of its own lead; zero when not known
	MostFuseA      float64 // largest fuse that the maker allows; zero when not known
	Inrush         Inrush
	Sign           string  // see design.Sign; empty when not said
	End            string  // terminal kind of its leads: "splice", "pin 1.5"
	StandbyA       float64 // draw while live but off; zero when not known
	Source         Source
}

// MostPower is the most that a load of a type may draw at its rated voltage, as
// a regulation has it; zero when nothing says.
type MostPower struct {
	PowerW float64
	Source Source
}

// Inrush is a load's starting current: Peak times the running current,
// decaying with the time constant.
type Inrush struct {
	PeakRatio float64 // 1 = none
	TauS      float64
	Source    Source
}

// Colour is a wire colour after IEC 60757.
type Colour struct {
	Code   string // "RD", "GNYE" is green-and-yellow
	Name   string
	RGB    [3]uint8 // for drawings; our choice
	Source Source
}

// Practice is a field of use with its limits.
type Practice struct {
	Name                  string  // "motorcycle", "off-road", "marine"
	Afloat                bool    // of boats: the rules of boats hold
	UsualWire             string  // wire type of a design that names none; "" = none is usual
	DropCritical          float64 // share of the system voltage, feed and return together
	DropOther             float64
	FuseDistanceM         float64 // from the source to the first fuse, bare conductor
	FuseDistanceSheathedM float64
	FuseLoadShare         float64           // continuous load as a share of the rating
	FuseWireShare         float64           // rating as a share of the wire's allowed current
	FuseRatio             float64           // least ratio of upstream to downstream rating
	MinMm2                float64           // smallest conductor
	MinFlexMm2            float64           // smallest conductor in a flexing run
	HotSpotMarginC        float64           // kept below the insulation class
	Ampacity              string            // name of the current table that governs
	Source                map[string]Source // by the yaml key of the limit
}

// Chemistry is a battery chemistry.
type Chemistry struct {
	Name    string // "flooded", "AGM", "gel", "LiFePO4"
	Aliases []string
	Peukert float64
	RatedH  float64 // hour rate used when the design gives none
	// OpenCircuit is volts per 12 V class battery at a state of charge 0..1, ascending.
	OpenCircuit []VoltsAt
	// OhmAh is internal resistance times capacity for a 12 V class battery:
	// R = OhmAh / capacityAh.
	OhmAh            float64
	ChargeShare      float64 // highest charging current as a share of capacity per hour
	ChargeEfficiency float64
	StartReserve     float64 // state of charge below which starting is not sure
	// OpenCircuitVPerC is how the resting voltage of a 12 V class battery
	// changes with temperature, from 25 °C.
	OpenCircuitVPerC float64
	// EmptyOhmRatio is the internal resistance empty over full; ColdOhmRatio
	// that at −18 °C over that at 25 °C.
	EmptyOhmRatio, ColdOhmRatio float64
	// CapacityAt is the share of the rated capacity at a temperature, ascending.
	CapacityAt []ShareAtC
	// Acceptance is the charging current taken at 14.4 V of a 12 V class
	// battery, as a share of capacity per hour, ascending by state of charge.
	Acceptance []AcceptedAt
	// NoChargeBelowC is the temperature below which it must not be charged;
	// -273 when there is none.
	NoChargeBelowC float64
	// MostChargeV is the highest charging voltage of a 12 V class battery; 0
	// when the library gives none.
	MostChargeV float64
	// SelfDischarge is the share of its charge lost in 30 days at 20 °C.
	SelfDischarge float64
	Source        Source
}

// ShareAtC is a share of the rated value at a temperature.
type ShareAtC struct {
	Celsius float64
	Share   float64
}

// AcceptedAt is what a battery accepts at a state of charge (0..1), as a share
// of its capacity per hour.
type AcceptedAt struct {
	Charge float64
	Share  float64
}

// VoltsAt is a voltage at a state of charge (0..1).
type VoltsAt struct {
	Charge float64
	Volts  float64
}

// Designator is a reference letter after IEC 81346-2 for a kind of part.
type Designator struct {
	Kind   string // circuit.Kind text
	Letter string
	Source Source
}

// Insulation is an insulating material with what the heat balance needs of it.
type Insulation struct {
	Name string // "PVC", "XLPE", "ETFE"
	// ResistivityKmPerW is the thermal resistivity in K·m/W.
	ResistivityKmPerW float64
	Emissivity        float64 // of its surface, long wave, 0..1
	ShortC            float64 // short-circuit limit; zero when none is published
	Source            Source
}
