package design

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/library"
)

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
	LeastMm2  Quantity // thinnest wire that its maker asks for
	DropAim   Quantity // share of the system voltage that its wires may lose; not given = the practice's
	Priority  int      // 1 = given up last; 0 = not said
	OwnSwitch bool     // has its own switch, so it is off unless a situation says on
	StandbyA  Quantity // draw while live but off
	MaxV      Quantity
	Polarised bool // suffers when reversed
	Protected bool // the design says so of its motor; see ProtectedMotor
	Inrush    library.Inrush
	// StartAssumed: a motor of which neither design nor type says how it starts.
	StartAssumed bool
	FedBy        []Feed
	Returns      []Feed
	// Before and Next are its neighbours in a string of loads in series, towards the source and
	// away from it; nil = none.
	Before, Next *Load

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

// loadFigures are what the design says of a load's draw, before it is worked
// out to a power at a voltage.
type loadFigures struct {
	power, current, resistance, rated, inrushTime Quantity

	critical bool // the design says whether
}

// usualSign stands for a load whose sign neither the design nor its type gives.
var usualSign = map[Behaviour]Sign{Resistor: SignHeater, FilamentLamp: SignLamp, Motor: SignMotor,
	ConstantPower: SignElectronics}

var behaviours, signs = words(Behaviours), words(Signs)

func words[S ~string](kinds []S) (list []string) {
	for _, k := range kinds {
		list = append(list, string(k))
	}
	return list
}

var loadSection = section[Load]{
	Section: Section{Name: "load", Shape: KindNamed,
		Doc: "An accessory. A type of the library brings its usual figures; what the design says goes first.",
		Example: "loads:\n  left lamp: {power: 24 W, behaves: constant power, at: fork, fed by: lamps,\n" +
			"    returns to: frame stud, critical: yes}\n" +
			"  grips: {power: 42 W, rated at: 13.5 V, behaves: resistor, at: handlebar, fed by: rear 2,\n" +
			"    returns to: frame stud}\n"},
	keys: withCommon(loadKeys()...),
	finish: func(r *reader, x *Load, f field) {
		r.later = append(r.later, func() { // what feeds it says for which voltage
			x.figures(r, f)
			x.character()
			x.assumeStart(r.d.Library)
		})
		r.fedOrInSeries(f)
	},
}

func loadKeys() []key[Load] {
	keys := append(append(loadFigureKeys(), loadTimeKeys()...), loadUseKeys()...)
	keys = append(keys, feedKeys(func(x *Load) *[]Feed { return &x.FedBy })...)
	keys = append(keys, seriesKey())
	return append(keys, returnKeys(func(x *Load) *[]Feed { return &x.Returns })...)
}

// loadFigureKeys say how much a load draws and how.
func loadFigureKeys() []key[Load] {
	return []key[Load]{
		libraryKey(Key{Name: "type", Library: "loads", Doc: "typical load of the library",
			Example: "heated grips"},
			(*library.Library).Load, func(x *Load) **library.LoadType { return &x.Type }),
		quantityKey(Key{Name: "power", Unit: quantity.Power, Min: 0, Max: 100_000,
			Doc: "power at `rated at`; this, `current` or `resistance`, unless the type has it"},
			func(x *Load) *Quantity { return &x.given.power }),
		quantityKey(Key{Name: "current", Unit: quantity.Current, Min: 0, Max: 2000,
			Doc: "current at `rated at`"}, func(x *Load) *Quantity { return &x.given.current }),
		quantityKey(Key{Name: "resistance", Unit: quantity.Resistance, Min: 1e-3, Max: 1e6,
			Doc: "resistance, for a load that behaves as one", Example: "3.4 Ω"},
			func(x *Load) *Quantity { return &x.given.resistance }),
		quantityKey(Key{Name: "rated at", Unit: quantity.Voltage, Min: 1, Max: 100,
			Doc: "voltage at which power or current holds", Default: "the type's, else the system voltage",
			Example: "13.5 V"}, func(x *Load) *Quantity { return &x.given.rated }),
		choiceKey(Key{Name: "behaves", Choices: behaviours,
			Doc:     "how its current follows the voltage",
			Default: "the type's; of a resistance, resistor; of a sign of motor or pump, motor; else constant power", Example: "motor"},
			func(x *Load) *Behaviour { return &x.Behaves }),
		recordKey(Key{Name: "inrush", Doc: "what it draws when switched on", Default: "the type's; else a motor's is assumed, others have none",
			Example: "{peak: 8, time: 20 ms}"}, &inrushSection,
			func(_ *reader, x *Load, _ field) *Load { return x }),
		quantityKey(Key{Name: "standby", Unit: quantity.Current, Min: 0, Max: 100,
			Doc: "what it draws while it is live but off", Default: "the type's, else none", Example: "15 mA"},
			func(x *Load) *Quantity { return &x.StandbyA }),
		quantityKey(Key{Name: "duty", Unit: quantity.Share, Min: 0, Max: 1, Default: "by `on for` and `every`, else the type's, else 100 %",
			Doc: "share of the time it draws while on; loads in series draw together, as long as the least of them"}, func(x *Load) *Quantity { return &x.Duty }),
		quantityKey(Key{Name: "tolerance", Unit: quantity.Share, Min: 0, Max: 1,
			Doc: "how far its power may be off", Default: "by `figure` and behaviour", Example: "10 %"},
			func(x *Load) *Quantity { return &x.Tolerance }),
		choiceKey(Key{Name: "figure", Choices: []string{"typical", "highest"}, Example: "highest",
			Default: "the type's, of the design's own power or current too, else typical",
			Doc: "whether the power is the usual one or the most it draws, as makers' \"max amp draw\"; " +
				"the most has no tolerance above it"}, func(x *Load) *string { return &x.Figure }),
	}
}

// loadTimeKeys say how long a load is on, and what its maker asks for.
func loadTimeKeys() []key[Load] {
	return []key[Load]{
		quantityKey(Key{Name: "on for", Unit: quantity.Duration, Min: 0.1, Max: 86_400,
			Doc: "longest time that it is on at once; a situation or leg that lists it counts it at least once for so long", Default: "the type's; of a motor with a `duty`, that share of 10 min; else continuous", Example: "1 min"},
			func(x *Load) *Quantity { return &x.OnForS }),
		quantityKey(Key{Name: "every", Unit: quantity.Duration, Min: 0.1, Max: 604_800,
			Doc: "how often it is on for so long, from start to start; where nothing says so, what heats up counts as continuous", Default: "by `on for` and `duty`, else the type's", Example: "10 min"},
			func(x *Load) *Quantity { return &x.EveryS }),
		recordKey(Key{Name: "lead", Doc: "the lead that it comes with", Default: "the type's",
			Example: "{size: 1 mm², length: 300 mm}"}, &leadSection,
			func(_ *reader, x *Load, _ field) *Lead { return &x.Lead }),
		quantityKey(Key{Name: "maximum fuse", Was: "most fuse", Unit: quantity.Current, Min: 0.1, Max: 2000,
			Doc: "maximum fuse that its maker allows", Default: "the type's", Example: "5 A"},
			func(x *Load) *Quantity { return &x.MostFuseA }),
		leastWireKey(func(x *Load) *Quantity { return &x.LeastMm2 }),
	}
}

// leastWireKey is the thinnest wire that the maker of a part asks for.
func leastWireKey[T any](of func(x *T) *Quantity) key[T] {
	return quantityKey(Key{Name: "least wire", Unit: quantity.Area, Min: 0.05, Max: 500, Default: "the type's", Example: "2.5 mm²",
		Doc: "thinnest wire that its maker asks for, however short the way; an AWG size counts as the metric one it is taken for"}, of)
}

var leadSection = section[Lead]{
	Section: Section{Name: "lead", Shape: KindRecord,
		Doc:     "The lead that an accessory comes with, up to where the harness begins.",
		Example: "lead: {size: 1 mm², length: 300 mm}\n"},
	keys: []key[Lead]{
		quantityKey(Key{Name: "size", Unit: quantity.Area, Min: 0.05, Max: 200, Required: true,
			Doc: "conductor size", Example: "1 mm²"}, func(x *Lead) *Quantity { return &x.AreaMm2 }),
		quantityKey(Key{Name: "length", Unit: quantity.Length, Min: 0.01, Max: 20,
			Doc: "length, from the harness to the accessory; without it the lead counts for heat and fuse, not for the drop", Example: "300 mm"}, func(x *Lead) *Quantity { return &x.LengthM }),
	},
}

// loadUseKeys say what a load is for and what it needs.
func loadUseKeys() []key[Load] {
	return []key[Load]{
		plugKey[Load](),
		choiceKey(Key{Name: "symbol", Was: "sign", Choices: signs, Default: "the type's, else by behaviour",
			Doc: "its symbol on the drawing", Example: "heater"}, func(x *Load) *Sign { return &x.Sign }),
		saidKey(yesKey(Key{Name: "critical", Default: "no; on boats the wires of what the library calls critical afloat are held to that limit too", Doc: "held to the tighter limit of voltage drop",
			Example: "yes"}, func(x *Load) *bool { return &x.Critical }), func(x *Load) { x.given.critical = true }),
		quantityKey(Key{Name: "drop aim", Unit: quantity.Share, Min: 0.001, Max: 0.5,
			Doc:     "the maximum drop in its wires, feed and return, as a share of the system voltage, that its maker asks for; held as advice, like the practice's aim",
			Default: "the type's, else the practice's", Example: "2 %"}, func(x *Load) *Quantity { return &x.DropAim }),
		quantityKey(Key{Name: "minimum voltage", Unit: quantity.Voltage, Min: 0.1, Max: 100,
			Doc: "lowest voltage at which it works", Default: "the type's", Example: "10.5 V"},
			func(x *Load) *Quantity { return &x.MinV }),
		quantityKey(Key{Name: "maximum voltage", Unit: quantity.Voltage, Min: 0.1, Max: 100,
			Doc: "maximum voltage it withstands", Example: "16 V"}, func(x *Load) *Quantity { return &x.MaxV }),
		numberKey(Key{Name: "priority", Min: 1, Max: 99, Whole: true, Example: "1",
			Doc: "order in which loads are given up; 1 is kept longest"},
			func(x *Load, v float64) { x.Priority = int(v) }),
		yesKey(Key{Name: "own switch", Default: "no", Example: "yes",
			Doc: "has a switch of its own, so that it draws only where a situation says it is on"},
			func(x *Load) *bool { return &x.OwnSwitch }),
		yesKey(Key{Name: "polarised", Default: "no", Doc: "suffers when its wires are swapped",
			Example: "yes"}, func(x *Load) *bool { return &x.Polarised }),
		yesKey(Key{Name: "protected motor", Default: "the type's, else no", Example: "yes",
			Doc: "its motor withstands being stalled: it has a thermal switch or electronics of its own"},
			func(x *Load) *bool { return &x.Protected }),
	}
}

var inrushSection = section[Load]{
	Section: Section{Name: "inrush", Shape: KindRecord,
		Doc:     "The current of a load when it is switched on: so many times the running current, dying away.",
		Example: "inrush: {peak: 8, time: 20 ms}\n"},
	keys: []key[Load]{
		numberKey(Key{Name: "peak", Min: 1, Max: 100, Required: true, Example: "8",
			Doc: "times the running current"}, func(x *Load, v float64) { x.Inrush.PeakRatio = v }),
		quantityKey(Key{Name: "time", Unit: quantity.Duration, Min: 1e-5, Max: 60, Required: true,
			Doc: "time constant of its decay", Example: "20 ms"},
			func(x *Load) *Quantity { return &x.given.inrushTime }),
	},
}

// contactKinds says which of a contact's ratings holds for a behaviour: resistive,
// of lamps or of motors. Electronics count as resistive.
var contactKinds = map[Behaviour]int{Resistor: 0, FilamentLamp: 1, ConstantPower: 0, Motor: 2}

// ContactA is a contact's rating for a load of a behaviour, of its resistive rating
// and those for lamps and motors, all in A. One that is not given, 0, falls back on
// the resistive one.
func (b Behaviour) ContactA(resistiveA, lampA, motorA float64) float64 {
	if own := [...]float64{resistiveA, lampA, motorA}[contactKinds[b]]; own > 0 {
		return own
	}
	return resistiveA
}

// figures sets power and rated voltage from what is given.
func (x *Load) figures(r *reader, f field) {
	t := x.Type
	if t == nil {
		t = &library.LoadType{}
	}
	x.RatedV = r.d.SystemV.Value
	if x.Converter != nil {
		x.RatedV = x.Converter.Type.Volts
	}
	if x.given.rated.Given() {
		x.RatedV = x.given.rated.Value
	} else if t.RatedV > 0 {
		x.RatedV = t.RatedV
	}
	switch {
	case x.given.power.Given():
		x.PowerW = x.given.power.Value
	case x.given.current.Given():
		x.PowerW = x.given.current.Value * x.RatedV
	case x.given.resistance.Given():
		x.PowerW = x.RatedV * x.RatedV / x.given.resistance.Value
	case t.PowerW > 0:
		x.PowerW = t.PowerW
	default:
		x.PowerW = t.CurrentA * x.RatedV * classV(t.RatedV) / classV(x.RatedV) // half the amperes on 24 V
	}
	if x.Figure == "" {
		x.Figure = "typical"
		if t.Highest {
			x.Figure = "highest"
		}
	}
	if !ownFigure(f) {
		x.MostW = t.Most.PowerW
	}
	if ownFigure(f) || (x.PowerW == 0 && !f.has["type"]) {
		r.exactlyOne(f, "power", "current", "resistance")
	}
	if x.given.resistance.Given() && x.Behaves != "" && x.Behaves != Resistor {
		r.report(r.pos(f.node), fmt.Sprintf("%s has a resistance but behaves as %s", f.where, x.Behaves),
			"power or current, or behaves: resistor")
	}
	if x.EveryS.Given() && !x.OnForS.Given() {
		r.report(x.EveryS.Pos, f.where.String()+": \"every\" says how often, but not for how long", "\"on for\" beside it")
	}
	if x.OnForS.Given() && x.EveryS.Given() && x.OnForS.Value > x.EveryS.Value {
		r.add(problem.Problem{Pos: x.OnForS.Pos, Also: &x.EveryS.Pos,
			What: f.where.String() + ": it is on for longer than from one start to the next"})
	}
	if duty := x.Duty; duty.Given() && x.OnForS.Given() && x.EveryS.Given() && duty.Value*x.EveryS.Value > sameDuty*x.OnForS.Value {
		r.add(problem.Problem{Pos: duty.Pos, Also: &x.OnForS.Pos,
			What:     fmt.Sprintf("%s: it cannot draw for %s of the time and be on for %s every %s", f.where, duty.Text, x.OnForS.Text, x.EveryS.Text),
			Expected: "a duty of at most " + quantity.Format(x.OnForS.Value/x.EveryS.Value, quantity.Share)})
	}
	if x.MinV.Given() && x.MaxV.Given() && x.MinV.Value >= x.MaxV.Value {
		r.add(problem.Problem{Pos: x.MinV.Pos, Also: &x.MaxV.Pos,
			What: f.where.String() + ": the minimum voltage is not below the maximum"})
	}
}

// sameDuty is how far a duty may be rounded up from on for and every: 5 % are said of 5 s in 2 min.
const sameDuty = 1.5

// cycleS is the cycle of duty type S3 in IEC 60034-1 (from memory): a motor of a
// stated duty is on for that share of ten minutes.
const cycleS = 600.0

// times fills in how long it is on at once and how much of the time, each by the
// other, the design before the type. A duty of the type is an average of many days
// and says nothing of how long at once.
func (x *Load) times(t *library.LoadType, fill func(*Quantity, float64, quantity.Dimension)) {
	duty := x.Duty.Or(1)
	switch {
	case x.OnForS.Given() && !x.EveryS.Given() && duty > 0 && duty < 1:
		fill(&x.EveryS, x.OnForS.Value/duty, quantity.Duration)
	case x.OnForS.Given():
	case t.OnForS > 0:
		every := t.EveryS
		if x.Duty.Given() && duty > 0 { // the design has it on more often
			every = math.Min(every, t.OnForS/duty)
		}
		fill(&x.OnForS, t.OnForS, quantity.Duration)
		fill(&x.EveryS, every, quantity.Duration)
		fill(&x.Duty, t.Duty, quantity.Share)
	case x.Behaves == Motor && duty > 0 && duty < 1:
		fill(&x.OnForS, duty*cycleS, quantity.Duration)
		fill(&x.EveryS, cycleS, quantity.Duration)
		x.Cycles = true
	}
	if x.EveryS.Given() {
		fill(&x.Duty, x.OnForS.Value/x.EveryS.Value, quantity.Share)
	}
	fill(&x.Duty, t.Duty, quantity.Share)
	if !x.Duty.Given() {
		x.Duty.Value = 1
	}
}

// longestOnS is from how long at once a load counts as continuous. Source: NFPA 70
// article 100, three hours or more (from memory).
const longestOnS = 3 * 3600.0

// HeatShare is the part of the time that it heats a fuse: 1 for what is on for good, or
// for so long at once that the fuse is as warm as if it were.
func (x *Load) HeatShare() float64 {
	switch {
	case x.OnForS.Given() && x.OnForS.Value >= longestOnS:
		return 1
	case x.OnForS.Given() && x.EveryS.Given():
		return math.Min(1, x.OnForS.Value/x.EveryS.Value)
	case x.OnForS.Given():
		return 0
	}
	return x.Duty.Or(1)
}

// ProtectedMotor tells whether its motor withstands being stalled.
func (x *Load) ProtectedMotor() bool { return x.Protected || x.Type != nil && x.Type.Protected }

// UsualFuseA is the least rating of the fuse right before it on a system of so many volts, as its makers fit it: a
// compressor that starts against pressure takes more than its label. 0 = nothing says.
func (x *Load) UsualFuseA(systemV float64) float64 {
	if x.Type == nil || x.Type.Fuse.RatingA == 0 {
		return 0
	}
	return math.Min(x.Type.Fuse.RatingA*x.Type.RatedV/systemV, x.MostFuseA.Or(math.Inf(1)))
}

// NeedsV is the lowest voltage at which it works: the design's, else the library's; zero
// when neither says.
func (x *Load) NeedsV() float64 {
	if x.MinV.Given() || x.Type == nil {
		return x.MinV.Value
	}
	return x.Type.MinV
}

// Starts tells of a starter.
func (x *Load) Starts() bool { return x.Type != nil && x.Type.Starter }

// MustBurn tells whether it is a lamp that must not go out with something else: of
// a type that has to burn, or a lamp that the design calls critical.
func (x *Load) MustBurn() bool {
	return x.Type != nil && x.Type.MustBurn || x.Critical && x.IsLamp()
}

// IsLamp tells whether it gives light, by its symbol.
func (x *Load) IsLamp() bool { return x.Sign == SignLamp || x.Sign == SignLED }

// LongestS is the longest time that it is on at once, in s; +Inf = for good.
func (x *Load) LongestS() float64 {
	if x.OnForS.Given() {
		return x.OnForS.Value
	}
	return math.Inf(1)
}

// tightDrops holds what is critical on boats to the tighter drop, unless the design
// says whether it is.
func (r *reader) tightDrops() {
	p := r.d.Practice
	for _, x := range r.d.Loads {
		x.TightDrop = !x.given.critical && x.Type != nil && x.Type.CriticalAfloat && p != nil && p.Afloat
	}
}

// ownFigure tells whether the design gives the draw itself.
func ownFigure(f field) bool { return f.has["power"] || f.has["current"] || f.has["resistance"] }

// character sets the behaviour, symbol and other traits that are left out.
func (x *Load) character() {
	t := x.Type
	if t == nil {
		t = &library.LoadType{}
	}
	switch {
	case x.Behaves != "":
	case x.given.resistance.Given():
		x.Behaves = Resistor
	case t.Behaves != "":
		x.Behaves = Behaviour(t.Behaves)
	case x.Sign == SignMotor || x.Sign == SignPump:
		x.Behaves = Motor
	default:
		x.Behaves = ConstantPower
	}
	if x.Sign == "" {
		x.Sign = Sign(t.Sign)
	}
	if x.Sign == "" {
		x.Sign = usualSign[x.Behaves]
	}
	fill := func(q *Quantity, value float64, dim quantity.Dimension) {
		if !q.Given() && value > 0 {
			*q = Quantity{Value: value, Text: quantity.Plain(value, dim)}
		}
	}
	fill(&x.MinV, t.MinV*classV(x.RatedV)/classV(t.RatedV), quantity.Voltage)
	standby := t.StandbyA
	if x.given.power.Given() && x.RatedV > 0 { // one that takes less in use takes no more at rest
		standby = min(standby, x.given.power.Value/x.RatedV)
	}
	fill(&x.StandbyA, standby, quantity.Current)
	fill(&x.Lead.AreaMm2, t.Lead.AreaMm2, quantity.Area)
	fill(&x.Lead.LengthM, t.Lead.LengthM, quantity.Length)
	fill(&x.MostFuseA, t.MostFuseA, quantity.Current)
	fill(&x.LeastMm2, t.Wire.Mm2*classV(t.RatedV)/classV(x.RatedV)+t.Wire.PerA*x.PowerW/x.RatedV, quantity.Area)
	fill(&x.DropAim, t.Aim.Share, quantity.Share)
	x.times(t, fill)
	if x.given.inrushTime.Given() {
		x.Inrush.TauS = x.given.inrushTime.Value
		x.Inrush.Source = library.Source{Text: "the design"}
	} else if x.Inrush.PeakRatio == 0 {
		x.Inrush = t.Inrush
	}
	if x.Inrush.PeakRatio == 0 {
		x.Inrush.PeakRatio = 1
	}
}

// assumeStart takes a motor that nothing says the start of to start as the library's tolerances say. What swings, as a
// horn does, has nothing to run up.
func (x *Load) assumeStart(lib *library.Library) {
	if x.Behaves != Motor || x.Sign == SignHorn || x.Inrush.TauS > 0 {
		return
	}
	times, tau := lib.Tolerance("motor start"), lib.Tolerance("time constant of motor start")
	if times != nil && tau != nil {
		x.Inrush, x.StartAssumed = library.Inrush{PeakRatio: times.Value, TauS: tau.Value, Source: times.Source}, true
	}
}

// SaidOhm is the resistance that the design gives for it; 0 = it gives another figure.
func (l *Load) SaidOhm() float64 { return l.given.resistance.Value }

// SaidA is the current that the design gives for it; 0 = it gives another figure.
func (l *Load) SaidA() float64 { return l.given.current.Value }

// Said are the figures of its draw that the design gives itself; the type has the others.
func (x *Load) Said() (power, current, resistance, rated Quantity) {
	return x.given.power, x.given.current, x.given.resistance, x.given.rated
}
