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
	Diodes      []*DiodeType
	Chargers    []*ChargerType
	Generators  []*GeneratorType
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
	// Interrupting is what devices of boats must break, ascending by the battery.
	Interrupting []*Interrupting
	// CurrentTables are the published tables of allowed wire current.
	CurrentTables []*CurrentTable
	// ShopSizes are the series of wire that a shop has.
	ShopSizes []*ShopSizes
	// ColourCodes say which circuit gets which colour.
	ColourCodes []*ColourCode
	// ContactDrops stand in for resistances that nothing gives.
	ContactDrops []*ContactDrop
	// Meters and Suspicions are what a diagnosis weighs readings by.
	Meters     []*Meter
	Suspicions []*Suspicion
	// Tolerances are how far the figures of a design may be off in use.
	Tolerances []*Tolerance
	// Verdicts are the figures against which limits hold.
	Verdicts []*Verdict
}

// WireType is a family of insulated wire after one standard: "SAE J1128 TXL",
// "ISO 6722 thin wall class B", "tinned marine 105 °C", "M22759/16".
type WireType struct {
	Name     string   `key:"name" need:""`
	Aliases  []string `key:"aliases"`
	Standard string   `key:"standard"`
	// ClassC is the continuous conductor temperature of the insulation.
	ClassC float64 `key:"continuous C" need:"" in:"40,400" show:"class *"`
	// OverloadC is the short-time overload limit and ShortC the short-circuit
	// limit of the insulation; zero means not known.
	OverloadC float64 `key:"overload C" in:"40,600" show:"overload *"`
	ShortC    float64 `key:"short circuit C" in:"40,600" show:"short circuit *"`
	Material  string  `key:"material" need:""` // insulation material, key into Insulations
	Tinned    bool    `key:"tinned" show:"tinned"`
	OwnSeries bool    `key:"own series" show:"in sizes of its own"` // a shop that has it has all its sizes, whatever those of ShopSizes
	// Cores are how many wires, each of the size, lie in one sheath; 0 = no sheath.
	Cores  int         `key:"cores" in:"2,12" show:"* cores in a sheath"`
	Sizes  []*WireSize // ascending by area
	Source Source
}

// WireSize is one conductor size of a wire type.
type WireSize struct {
	Label       string  `key:"size" need:""`                                  // as the trade says it: "16 AWG", "1.5 mm²"
	AreaMm2     float64 `key:"area mm2" need:"" in:"0.01,1000"`               // copper area
	MaxOhmPerM  float64 `key:"ohm per km" need:"" in:"0.001,2000" per:"1000"` // maximum resistance at 20 °C
	ConductorMm float64 `key:"conductor mm" need:"" in:"0.05,60"`             // diameter over the strands
	OuterMm     float64 `key:"outer mm" need:"" in:"0.1,100"`                 // diameter over the insulation
	GaugeSystem string  // "SAE", "AWG" or "metric": SAE sizes carry less copper than AWG
	Shop        bool    // a size that a shop has, by ShopSizes
	Source      Source
}

// ShopSizes is a series of wire sizes that a shop has.
type ShopSizes struct {
	Name   string   `key:"name" need:""` // "metric", "gauge"
	Sizes  []string `key:"sizes"`        // labels
	Source Source
}

// FuseType is a kind of overcurrent device: "blade C", "blade F", "strip SF51",
// "breaker type I", "PTC".
type FuseType struct {
	Name      string        `key:"name" need:""`
	Aliases   []string      `key:"aliases"`
	Standard  string        `key:"standard"`
	Kind      string        `key:"kind" words:"fuse|breaker|ptc"` // "fuse", "breaker", "ptc"
	MaxV      float64       `key:"max V" need:"" in:"1,2000" show:"up to *"`
	BreakingA float64       `key:"breaking A" need:"" in:"1,1e6" show:"breaks *"` // at MaxV
	Breaks    []BreaksAt    `key:"breaks" ascending:"UpToV" show:"(*)"`           // below MaxV, ascending by volts
	Reset     string        `key:"reset" words:"|automatic|power removed|manual"` // breakers: "automatic", "power removed", "manual"; fuses: ""
	Ratings   []*FuseRating `key:"ratings" need:"" ascending:"RatingA"`           // ascending
	// Band is the opening-time band, ascending by Multiple.
	Band []TimePoint `key:"opens"`
	// Rerating is the permitted share of the rating at an ambient, ascending.
	Rerating []RatedAt `key:"carries" ascending:"AmbientC"`
	Mounting string    `key:"mounting" need:""`       // terminal kind at its ends: "fuse contact C", "ring M5"
	Afloat   bool      `key:"afloat" show:"of boats"` // fitted on boats alone
	// IgnitionProtected: see RelayForm.
	IgnitionProtected bool `key:"ignition protected" show:"ignition protected"`
	// OnPost: it is made to be bolted on a battery's post.
	OnPost bool `key:"on post" show:"on a battery's post"`
	Source Source
}

// BreaksAt is the breaking capacity up to a voltage of the sheet; one of 14 V
// is for a 12 V system, 28 or 32 V for 24 V.
type BreaksAt struct {
	BreakingA float64 `key:"breaking A" need:"" in:"1,1e6" show:"*"`
	UpToV     float64 `key:"up to V" need:"" in:"1,2000" show:"up to *"`
}

// FuseRating is one rating of a fuse type.
type FuseRating struct {
	RatingA  float64 `key:"rating A" need:"" in:"0.01,2000"`
	Mounting string  `key:"mounting"`                            // terminal kind at its ends where the type's is another
	Colour   string  `key:"colour"`                              // body colour in English; empty when the standard gives none
	ColdOhm  float64 `key:"cold mohm" in:"0.001,1e5" per:"1000"` // cold resistance; zero when not known
	DropV    float64 `key:"drop mV" in:"0.1,1e4" per:"1000"`     // voltage drop at rated current; zero when not known
	MeltI2t  float64 `key:"melting A2s" in:"1e-6,1e9"`           // typical melting I²t in A²s; zero when not known
	Source   Source
}

// TimePoint is the band of opening times at a multiple of the rating.
// MinS 0 means no lower limit is published, MaxS 0 no upper limit.
type TimePoint struct {
	FromA    float64 `key:"from A" in:"0,2000"` // the ratings the row is for, inclusive; 0,0 = all
	ToA      float64 `key:"to A" in:"0,2000"`   // the ratings the row is for, inclusive; 0,0 = all
	Multiple float64 `key:"multiple" need:"" in:"0.1,100"`
	MinS     float64 `key:"min s" in:"0,1e7"`
	MaxS     float64 `key:"max s" in:"0,1e7"`
	Source   Source
}

// RatedAt is a share (0..1) at a temperature.
type RatedAt struct {
	AmbientC float64 `key:"ambient C" need:"" in:"-100,400"`
	Share    float64 `key:"share" need:"" in:"0,2"`
}

// RelayForm is a relay after a standard outline with DIN 72552 terminals.
type RelayForm struct {
	Name       string             `key:"name" need:""`
	Aliases    []string           `key:"aliases"`
	Family     string             `key:"family"` // the same form with other coil voltages: "mini make"
	Standard   string             `key:"standard"`
	CoilV      float64            `key:"coil V" need:"" in:"1,120" show:"coil *"`            // nominal
	ClosedA    float64            `key:"closed mA" in:"0,10000" per:"1000"`                  // of one that senses: its own draw while it is closed
	CoilOhm    float64            `key:"coil ohm" need:"" in:"1,100000" show:"of *"`         // at 20 °C
	PullInV    float64            `key:"pull in V" need:"" in:"0.5,120"`                     // highest pull-in voltage at 20 °C
	DropOutV   float64            `key:"drop out V" need:"" in:"0.05,120"`                   // lowest release voltage at 20 °C
	Senses     bool               `key:"senses" show:"senses its feed"`                      // worked by the voltage of its own feed; the limits are those at which it closes and opens
	Bistable   bool               `key:"bistable" show:"latches"`                            // each pulse at its coil turns it over, and it stays so
	Changeover bool               `key:"changeover"`                                         // has a break contact 87a
	Reversing  bool               `key:"reversing" show:"reversing, two halves in one case"` // two changeover contacts with a coil each; feed and return are shared
	Contactor  bool               `key:"contactor" show:"contactor"`                         // a switching device for power by standard: drawn with a contactor's contact
	MakeA      float64            `key:"make A" need:"" in:"0.1,2000" show:"make *"`         // resistive load, contact 30-87
	MakingA    float64            `key:"making A" in:"0.1,2000"`                             // most that the contact may close on, 30-87; 0 = not published
	BreakA     float64            `key:"break A" in:"0.1,2000" show:"break *"`               // resistive load, contact 30-87a; zero when it has none
	LampA      float64            `key:"lamp A" in:"0.1,2000" show:"lamps *"`                // filament lamp load, make contact
	MotorA     float64            `key:"motor A" in:"0.1,2000" show:"motors *"`              // motor (inductive) load, make contact
	ContactOhm float64            `key:"contact mohm" need:"" in:"0.01,1000" per:"1000"`
	MaxC       float64            `key:"max C" need:"" in:"20,300"`    // highest ambient
	Derating   []RatedAt          `key:"carries" ascending:"AmbientC"` // of MakeA against ambient
	TabMm      map[string]float64 // tab width by DIN terminal number
	// ContactEnd and CoilEnd are the terminal kinds of what has no tabs: "ring M8".
	ContactEnd string       `key:"contact end"`
	CoilEnd    string       `key:"coil end"`
	ShortTime  []CarriesFor `key:"short time" ascending:"S" show:"*"`                  // more than MakeA for a while, ascending by time
	CoilOnS    float64      `key:"coil on s" in:"0.1,3600" show:"coil live for * max"` // longest that the coil may be live; zero: for good
	Sealed     bool         `key:"sealed" show:"sealed"`                               // bears spray
	// IgnitionProtected: no spark of it lights vapour around it (33 CFR 183.410).
	IgnitionProtected bool `key:"ignition protected" show:"ignition protected"`
	Source            Source
}

// CarriesFor is a current that a contact carries for a time and no longer.
type CarriesFor struct {
	CurrentA float64 `key:"A" need:"" in:"0.1,1e5" show:"*"`
	S        float64 `key:"s" need:"" in:"0.001,1e5" show:"for *"`
}

// BlockType is a distribution block: one input stud and ways with fuses.
type BlockType struct {
	Name       string   `key:"name" need:""`
	Aliases    []string `key:"aliases"`
	Ways       int      `key:"ways" need:"" in:"1,100" show:"* ways"`
	WayA       float64  `key:"way A" need:"" in:"0.1,2000" show:"each *"`
	TotalA     float64  `key:"total A" need:"" in:"0.1,5000" show:"in total *"`
	FuseType   string   `key:"fuse type" show:"*"` // name of the fuse type its ways take; "" for none
	Mounting   string   `key:"mounting" need:""`   // terminal kind of the input: "ring M5"
	WayEnd     string   `key:"way end" need:""`    // terminal kind of each way: "tab 6.3", "ring M4"
	ContactOhm float64  `key:"contact mohm" need:"" in:"0.001,1000" per:"1000"`
	Sealed     bool     `key:"sealed" show:"sealed"`
	Source     Source
}

// FlyingLeads is the terminal kind of parts that come with leads of their own.
const FlyingLeads = "splice"

// SwitchType is a manual switch with ratings by kind of load.
type SwitchType struct {
	Name       string   `key:"name" need:""`
	Aliases    []string `key:"aliases"`
	ResistiveA float64  `key:"resistive A" need:"" in:"0.01,2000" show:"resistive *"`
	LampA      float64  `key:"lamp A" in:"0.01,2000" show:"lamps *"`
	MotorA     float64  `key:"motor A" in:"0.01,2000" show:"motors *"`
	ContactOhm float64  `key:"contact mohm" need:"" in:"0.001,10000" per:"1000"`
	Sealed     bool     `key:"sealed" show:"sealed"`
	Isolates   bool     `key:"isolates" show:"isolates"`             // parts the battery from all it feeds; opened on leaving
	Key        bool     `key:"key" show:"worked by a key"`           // what it feeds the machine's key feeds
	Float      bool     `key:"float"`                                // closed by rising water
	Pressure   bool     `key:"pressure" show:"worked by pressure"`   // closed by falling or rising pressure
	Machine    bool     `key:"machine" show:"worked by the machine"` // by a door, the gear lever or a brake
	Held       bool     `key:"held" show:"held"`                     // closed only while it is held
	// BreakV is the highest voltage of direct current that it may break; above the
	// 12 V class its ratings shrink unless FullV says up to where they hold.
	BreakV            float64 `key:"break V" in:"6,1000" usual:"32"`
	FullV             float64 `key:"full V" in:"6,1000" usual:"16"`
	IgnitionProtected bool    `key:"ignition protected" show:"ignition protected"` // see RelayForm
	End               string  `key:"end" need:""`                                  // terminal kind: "tab 6.3"; or FlyingLeads
	InMark            string  `key:"in mark"`                                      // what stands at the terminal that is fed: "C"
	OutMark           string  `key:"out mark" show:"to *"`                         // and at that which it feeds: "NO"
	Source            Source
}

// Terminal is a crimp part that ends a wire.
type Terminal struct {
	Name       string   `key:"name" need:""` // "ring M6 1.5-2.5 mm²"
	Aliases    []string `key:"aliases"`
	Kind       string   `key:"kind" need:"" show:"*"` // "ring M6", "tab 6.3", "bullet 4", "splice", "ferrule", "pin 1.5"
	MinMm2     float64  `key:"min mm2" need:"" in:"0.01,1000" show:"*"`
	MaxMm2     float64  `key:"max mm2" need:"" in:"0.01,1000" show:"to *"`
	MaxA       float64  `key:"max A" need:"" in:"0.1,5000" show:"up to *"`
	StripMm    float64  `key:"strip mm" need:"" in:"1,100" show:"strip *"`
	ContactOhm float64  `key:"new mohm" need:"" in:"0.001,1000" per:"1000"`  // new, crimp and contact together
	AgedOhm    float64  `key:"aged mohm" need:"" in:"0.001,1000" per:"1000"` // aged
	Sealed     bool     `key:"sealed" show:"sealed"`
	SoldPer    int      `key:"sold per" need:"" in:"1,100000"` // pieces in a pack
	Source     Source
}

// Connector is a multi-way connector family.
type Connector struct {
	Name       string   `key:"name" need:""`
	Aliases    []string `key:"aliases"`
	Ways       []int    `key:"ways" need:"" in:"1,1000" show:"* ways"`
	PinKind    string   `key:"pin kind" need:"" show:"contact *"` // terminal kind of its pins: "pin 1.5"
	MinMm2     float64  `key:"min mm2" need:"" in:"0.01,1000" show:"*"`
	MaxMm2     float64  `key:"max mm2" need:"" in:"0.01,1000" show:"to *"`
	MaxA       float64  `key:"max A" need:"" in:"0.1,5000" show:"up to *"`
	ContactOhm float64  `key:"contact mohm" need:"" in:"0.001,1000" per:"1000"`
	Sealed     bool     `key:"sealed" show:"sealed"`
	Sockets    bool     `key:"sockets" show:"its contacts are sockets"` // the kind's contacts are those of the socket half
	// MaxC is the hottest that its contacts may get, RiseK how much hotter than the air
	// its ratings make them; 0 = not known, see Share.
	MaxC     float64 `key:"max C" in:"40,300" show:"to *"`
	RiseK    float64 `key:"rise K" in:"1,200"`
	SealsPer int     `key:"seals per" in:"1,100000"` // wire seals and blanking plugs in a pack; 1 = singly, 0 = not known
	Source   Source
}

// Cover is a sleeve or conduit over a run.
type Cover struct {
	Name          string   `key:"name" need:""`
	Aliases       []string `key:"aliases"`
	Kind          string   `key:"kind" words:"sleeve|conduit|loom tape" show:"*"` // "sleeve", "conduit", "loom tape"
	MaxC          float64  `key:"max C" need:"" in:"40,1200" show:"up to *"`
	Abrasion      bool     `key:"abrasion" show:"against chafing"`   // protects against chafing
	Pinch         bool     `key:"pinch" show:"against pinching"`     // protects against pinching
	Heat          bool     `key:"heat" show:"against heat"`          // protects against radiant heat
	Stiff         bool     `key:"stiff" show:"stiff"`                // bears no bending in use
	Absorbs       bool     `key:"absorbs" show:"not in the wet"`     // takes up water
	CurrentFactor float64  `key:"current factor" need:"" in:"0.1,1"` // reduction of the allowed current inside it, 0..1
	Spans         float64  `key:"spans" in:"1,1000"`                 // largest over least bundle that one size takes; zero = sold in close steps
	Source        Source
}

// LoadType is a typical accessory or vehicle load.
type LoadType struct {
	Name              string    `key:"name" need:""`
	Aliases           []string  `key:"aliases"`
	Behaves           string    `key:"behaves" need:"" words:"resistor|filament lamp|constant power|motor" show:"*"` // see design.Behaviour
	PowerW            float64   `key:"power W" in:"0.001,1e5" show:"*"`
	CurrentA          float64   `key:"current A" in:"0.001,1e4" show:"*"`
	RatedV            float64   `key:"rated V" need:"" in:"1,120" show:"at *"`           // voltage at which PowerW or CurrentA holds
	MinV              float64   `key:"min V" in:"0.5,120"`                               // zero when not known
	Bilge             bool      `key:"bilge pump"`                                       // a bilge pump, which must run on a boat that is left
	Light             string    `key:"light" words:"|side|stern|steaming|all-round"`     // which of a boat's navigation lights it is; "" = none
	Watches           bool      `key:"watches"`                                          // keeps watch while nobody is there: fed before the key
	StopsWithEngine   bool      `key:"stops with the engine"`                            // must not run while the engine stands: a fuel pump
	MustBurn          bool      `key:"must burn" show:"must burn"`                       // a lamp that others steer or keep clear by
	Stands            string    `key:"stands" words:"|front|dash|rear|inside|bilge|top"` // where on a vehicle it usually is; "" = in front
	CriticalAfloat    bool      `key:"critical afloat" show:"critical on boats"`         // held to the tighter drop on boats
	Protected         bool      `key:"protected motor" show:"protected motor"`           // withstands being stalled
	Starter           bool      `key:"starts the engine"`                                // with CurrentA for OnForS
	Practices         []string  `key:"practices"`                                        // of a starter: of whose vehicles it is usual; none = of any
	FromAh            float64   `key:"from Ah" in:"1,10000"`                             // of a starter: the smallest battery beside it
	FromA             float64   `key:"from A" in:"1,10000"`                              // of a starter: the smallest charging output, at its most, beside it
	Engine            string    `key:"engine" words:"|petrol|diesel|outboard"`           // of a starter: that it is for; "" = any
	Duty              float64   `key:"duty" in:"0,1" usual:"1"`                          // 0..1
	Highest           bool      `show:"the most it draws"`                               // PowerW or CurrentA is that, not the usual
	Most              MostPower `key:"highest" show:"*"`
	OnForS            float64   `key:"on for s" in:"0.1,1e5" show:"on for *"` // longest that it is on; zero: for good
	EveryS            float64   `key:"every s" in:"0.1,1e6" show:"every *"`   // how often
	Turns             []string  `key:"turns"`                                 // what its two directions are called, of a motor that is reversed in use; none = it turns one way
	IgnitionProtected bool      `key:"ignition protected"`                    // no spark of it lights vapour around it
	Lead              Lead      `key:"lead"`
	MostFuseA         float64   `key:"most fuse A" in:"0.1,2000"` // largest fuse that the maker allows; zero when not known
	Aim               DropAim   `key:"drop aim"`
	Fuse              UsualFuse `key:"usual fuse"`
	Wire              LeastWire `key:"least wire"`
	Inrush            Inrush    `key:"inrush"`
	Sign              string    `key:"sign" words:"|lamp|LED|heater|motor|pump|horn|socket|electronics|sensor|voltmeter|converter"` // see design.Sign; empty when not said
	Short             string    `key:"short"`                                                                                       // in the box of an electronic unit on the drawing, up to four capitals
	End               string    `key:"end"`                                                                                         // terminal kind of its leads: "splice", "pin 1.5"
	PlusCavity        int       `key:"plus cavity" in:"1,2" usual:"1"`                                                              // of a plug with two
	StandbyA          float64   `key:"standby mA" in:"0,1e4" per:"1000"`                                                            // draw while live but off; zero when not known
	Source            Source
}

// MostPower is the most that a load of a type may draw at its rated voltage, as
// a regulation has it; zero when nothing says.
type MostPower struct {
	PowerW float64 `key:"power W" need:"" in:"0.001,1e5" show:"* max"`
	Source Source
}

// UsualFuse is the fuse that makers fit before a load at its rated voltage; zero when not known.
type UsualFuse struct {
	RatingA float64 `key:"rating A" need:"" in:"0.1,2000"`
	Source  Source
}

// LeastWire is the thinnest conductor that makers of a device ask for or fitters lay to it, however short, at its rated
// voltage: as such, or for each ampere that it draws; zero when not known.
type LeastWire struct {
	Mm2    float64 `key:"mm2" in:"0.05,500"`
	PerA   float64 `key:"mm2 per A" in:"0.01,10"` // of a load
	Source Source
}

// DropAim is what makers let the wires of a load lose, as a share of the system
// voltage, feed and return together; zero = as the practice has it.
type DropAim struct {
	Share  float64 `key:"value" need:"" in:"0.001,0.5"`
	Source Source
}

// Lead is the lead that a load comes with; zero when not known.
type Lead struct {
	AreaMm2 float64 `key:"mm2" need:"" in:"0.05,200"`
	LengthM float64 `key:"length m" in:"0.01,20"`
}

// Inrush is a load's starting current: Peak times the running current,
// decaying with the time constant.
type Inrush struct {
	PeakRatio float64 `key:"peak ratio" need:"" in:"1,200"` // 1 = none
	TauS      float64 `key:"tau s" need:"" in:"1e-6,1e4"`
	Source    Source
}

// Colour is a wire colour after IEC 60757.
type Colour struct {
	Code   string   `key:"code" need:""` // "RD", "GNYE" is green-and-yellow
	Name   string   `key:"name" need:"" show:"*"`
	RGB    [3]uint8 // for drawings; our choice
	Source Source
}

// Practice is a field of use with its limits.
type Practice struct {
	Name string `key:"name" need:""` // "motorcycle", "off-road", "camper", "marine"
	// Like is the practice, above this one, of which all holds that this one does not say.
	Like         string  `key:"like" show:"else as *"`
	DropCritical float64 `limit:"drop critical" in:"0.001,0.5" show:"drop, critical *%"` // share of the system voltage, feed and return together
	DropOther    float64 `limit:"drop other" in:"0.001,0.5" show:"drop, other *%"`
	// DropAim is what is aimed at in the wires of what is on for long.
	DropAim float64 `limit:"drop aim" in:"0.001,0.5"`
	// DropAimConverters is the same for what draws constant power, and ConvertersA
	// or more of it: its electronics cut out on low volts.
	DropAimConverters     float64 `limit:"drop aim converters" in:"0.001,0.5"`
	ConvertersA           float64 `limit:"converters from A" in:"1,1000"`
	FuseDistanceM         float64 `limit:"fuse distance mm" in:"1,5000" per:"1000" show:"fuse within *"` // from the source to the first fuse, bare conductor
	FuseDistanceSheathedM float64 `limit:"fuse distance sheathed mm" in:"1,5000" per:"1000"`
	// From there to MostFuseDistanceSheathedM it is advice from a battery post, away from petrol.
	MostFuseDistanceSheathedM float64 `limit:"most fuse distance sheathed mm" in:"1,5000" per:"1000"`
	// Beyond MostFuseDistanceM a bare one is a fault, beyond GraveFuseDistanceM a danger.
	MostFuseDistanceM  float64 `limit:"most fuse distance mm" in:"1,5000" per:"1000"`
	GraveFuseDistanceM float64 `limit:"grave fuse distance mm" in:"1,10000" per:"1000"`
	FuseLoadShare      float64 `limit:"load share of fuse" in:"0.1,1"` // continuous load as a share of the rating
	FuseWireShare      float64 `limit:"fuse share of wire" in:"0.1,2"` // rating as a share of the wire's allowed current
	// MostFuseWireShare is the same where nothing in the circuit overloads the wire.
	MostFuseWireShare float64 `limit:"most fuse share of wire" in:"1,3"`
	FuseRatio         float64 `limit:"fuse ratio" in:"1,10"`                            // least ratio of upstream to downstream rating
	MinMm2            float64 `limit:"least mm2" in:"0.05,10" show:"least conductor *"` // smallest conductor
	MinFlexMm2        float64 `limit:"least flexing mm2" in:"0.05,10"`                  // smallest conductor in a flexing run
	HotSpotMarginC    float64 `limit:"margin to class K" in:"0,100"`                    // kept below the insulation class
	Ampacity          string  `limit:"current table" show:"currents from *"`            // name of the current table that governs
	UsualWire         string  `key:"usual wire" show:"usual wire *"`                    // wire type of a design that names none; "" = none is usual
	Afloat            bool    `key:"afloat" need:"" show:"boats"`                       // of boats: the rules of boats hold
	// LongestRunM and MostChargingA, the latter of a 12 V system, are what no vehicle of
	// the kind has more of: beyond them a figure is asked about.
	LongestRunM   float64           `key:"longest run m" in:"0.1,1000" usual:"40"`
	MostChargingA float64           `key:"most charging A" in:"1,10000" usual:"400"`
	Source        map[string]Source // by the yaml key of the limit
}

// Chemistry is a battery chemistry.
type Chemistry struct {
	Name    string   `key:"name" need:""` // "flooded", "AGM", "gel", "LiFePO4"
	Aliases []string `key:"aliases"`
	Peukert float64  `key:"peukert" need:"" in:"1,2" show:"Peukert *"`
	RatedH  float64  `key:"rated h" need:"" in:"0.1,200"` // hour rate used when the design gives none
	// CrankingRated tells that such batteries are sold by cold-cranking current.
	CrankingRated bool `key:"cranking rated"`
	// OpenCircuit is volts per 12 V class battery at a state of charge 0..1, ascending.
	OpenCircuit []VoltsAt `key:"open circuit" ascending:"Charge"`
	// OhmAh is internal resistance times capacity for a 12 V class battery, see Ohm.
	OhmAh float64 `key:"ohm Ah" need:"" in:"0.001,10"`
	// From HouseAh a battery is a house pack with a board in series that switches it off;
	// BoardOhm is what the board adds. 0 = none has one.
	HouseAh  float64 `key:"house from Ah" in:"0.1,10000"`
	BoardOhm float64 `key:"board mohm" in:"0.01,100" per:"1000"`
	// BoardShare is the current that the board lets through for good, as a share of the capacity per hour; it
	// opens on a discharge below BoardLowV and on a charge above BoardHighV at the posts, of a 12 V class battery.
	BoardShare       float64 `key:"board A per Ah" in:"0.1,10"`
	BoardLowV        float64 `key:"board opens below V" in:"1,100"`
	BoardHighV       float64 `key:"board opens above V" in:"1,100"`
	ChargeShare      float64 `key:"charge share" need:"" in:"0.01,10"` // highest charging current as a share of capacity per hour
	ChargeEfficiency float64 `key:"charge efficiency" need:"" in:"0.1,1"`
	StartReserve     float64 `key:"start reserve" need:"" in:"0,1" show:"start reserve *%"` // state of charge below which starting is not sure
	// DeepBelow is the state of charge below which a discharge shortens its life; 0 = none.
	DeepBelow float64 `key:"deep below" in:"0,1"`
	// OpenCircuitVPerC is how the resting voltage of a 12 V class battery
	// changes with temperature, from 25 °C.
	OpenCircuitVPerC float64 `key:"open circuit volts per C" in:"-0.1,0.1"`
	// EmptyOhmRatio is the internal resistance empty over full; ColdOhmRatio
	// that at −18 °C over that at 25 °C.
	EmptyOhmRatio float64 `key:"empty ohm ratio" in:"1,20" usual:"1"`
	ColdOhmRatio  float64 `key:"cold ohm ratio" in:"1,20" usual:"1"`
	// CapacityAt is the share of the rated capacity at a temperature, ascending.
	CapacityAt []ShareAtC `key:"capacity at" ascending:"Celsius"`
	// Acceptance is the charging current taken at 14.4 V of a 12 V class
	// battery, as a share of capacity per hour, ascending by state of charge.
	Acceptance []AcceptedAt `key:"acceptance" ascending:"Charge"`
	// NoChargeBelowC is the temperature below which it must not be charged;
	// -273 when there is none.
	NoChargeBelowC float64 `key:"no charge below C" in:"-273,60" usual:"-273"`
	// MostChargeV is the highest charging voltage of a 12 V class battery; 0
	// when the library gives none.
	MostChargeV float64 `key:"most charge V" in:"1,100"`
	// KgPerAh is the mass of a 12 V class battery over its capacity.
	KgPerAh float64 `key:"kg per Ah" in:"0.01,5"`
	// EmptyV is what a 12 V class battery has at its posts, its rated current flowing at 25 °C, when its
	// rated capacity is out: what "empty" and a charge of 0 mean.
	EmptyV float64 `key:"empty V" in:"5,14" show:"empty at *"`
	// SelfDischarge is the share of its charge lost in 30 days at 20 °C.
	SelfDischarge float64 `key:"self discharge" in:"0,0.9"`
	Source        Source
}

// ShareAtC is a share of the rated value at a temperature.
type ShareAtC struct {
	Celsius float64 `key:"celsius" need:"" in:"-60,80"`
	Share   float64 `key:"share" need:"" in:"0.01,2"`
}

// AcceptedAt is what a battery accepts at a state of charge (0..1), as a share
// of its capacity per hour.
type AcceptedAt struct {
	Charge float64 `key:"charge" need:"" in:"0,1"`
	Share  float64 `key:"share" need:"" in:"1e-4,10"`
}

// VoltsAt is a voltage at a state of charge (0..1).
type VoltsAt struct {
	Charge float64 `key:"charge" need:"" in:"0,1"`
	Volts  float64 `key:"volts" need:"" in:"1,100"`
}

// Designator is a reference letter after IEC 81346-2 for a kind of part.
type Designator struct {
	Kind   string `key:"kind" need:""` // circuit.Kind text
	Letter string `key:"letter" need:""`
	Source Source
}

// Insulation is an insulating material with what the heat balance needs of it.
type Insulation struct {
	Name string `key:"name" need:""` // "PVC", "XLPE", "ETFE"
	// ResistivityKmPerW is the thermal resistivity in K·m/W.
	ResistivityKmPerW float64 `key:"resistivity K m per W" need:"" in:"0.5,20"`
	Emissivity        float64 `key:"emissivity" need:"" in:"0.05,1"` // of its surface, long wave, 0..1
	ShortC            float64 `key:"short circuit C" in:"50,500"`    // short-circuit limit; zero when none is published
	Source            Source
}
