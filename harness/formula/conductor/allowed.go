package conductor

import (
	"fmt"
	"math"

	"fusewright/library"
)

// AllowedInput is a wire and its surroundings.
type AllowedInput struct {
	Type *library.WireType
	Size *library.WireSize
	// Material is the insulation of the type; nil = not in the library.
	Material *library.Insulation
	// AmbientC is the hottest place that the wire meets.
	AmbientC float64
	// Loaded is the number of wires in its fullest run that carry current at
	// once, itself included; 0 and 1 = alone.
	Loaded int
	// Loading is the share of the bundle's whole capacity in use, 0..1;
	// 0 = not known, which counts as all of it.
	Loading float64
	// Beside is what the wires beside it make of it, where that is worked out
	// (package bundle); none = by Loaded and Loading.
	Beside Beside
	// CoverFactor is the current factor of a sleeve or conduit, 0..1; 0 = none.
	CoverFactor float64
	AltitudeM   float64
	// MarginC is kept between the conductor and its insulation class.
	MarginC float64
	// Table is the practice's table of currents; nil = the practice has none.
	Table *library.CurrentTable
	// Bundling gives bundle and altitude factors where Table has none.
	Bundling *library.CurrentTable
}

// The words that say what governs.
const (
	GovernsHeat  = "heat balance"
	GovernsTable = "table"
)

// Allowed is the current a wire may carry for good.
type Allowed struct {
	// Known tells that there is a limit to judge by, be it zero: type, size and
	// diameters are in the library. Without it AllowedA is zero and says nothing.
	Known    bool
	AllowedA float64 // the smaller of the two below
	HeatA    float64 // by the heat balance, factors applied
	TableA   float64 // by the practice's table, factors applied; NaN when it has none
	// FirstRowA bounds a wire thinner than any of the table, before its time on; +Inf = it is not.
	FirstRowA float64
	Governs   string // GovernsHeat or GovernsTable
	Source    string // of what governs

	LimitC       float64               // conductor temperature that HeatA stands for: class less margin
	FreeAirA     float64               // heat balance of the wire alone, before factors
	TableBaseA   float64               // table value before factors; NaN when it has none
	TableHow     string                // the row and column used
	Table        *library.CurrentTable // nil when the practice has none for it
	Read         Reading               // by which TableBaseA is read
	TableClassC  float64               // of the column read
	AmbientShare float64               // applied to the table value
	BundleShare  float64               // applied to both
	BundleSource string
	Beside       Beside  // by which it is warmed; of a published factor by that alone
	CoverShare   float64 // applied to both
	AltShare     float64 // applied to both
	Missing      []string
}

// Disagreement is TableA / HeatA; NaN when one of them is not known or zero.
func (a Allowed) Disagreement() float64 {
	if !(a.HeatA > 0) {
		return math.NaN()
	}
	return a.TableA / a.HeatA
}

// Nothing tells that the wire may carry no current at all: its place leaves no
// room below its insulation class less the margin, or the table has none there.
// A wire of which nothing is known is not such a wire.
func (a Allowed) Nothing() bool { return a.Known && a.AllowedA <= 0 }

// HeatAccuracy is how near the heat balance comes to published curves, as a share of the
// current: in bundles of which all wires are loaded it is at most 6 % above or below them
// (docs/validation.md), and on the safe side by up to 14 % where a part of them is. A
// shortfall within it proves nothing.
const HeatAccuracy = 0.07

// ProvenA is the current above which the wire carries too much beyond the accuracy of what
// governs: that of a heat balance, none of a table.
func (a Allowed) ProvenA() float64 {
	if a.Governs != GovernsHeat {
		return a.AllowedA
	}
	most := a.AllowedA * (1 + HeatAccuracy)
	if a.TableA < most {
		return a.TableA
	}
	return most
}

// Share is what bundle, cover and altitude leave of the free-air current.
func (a Allowed) Share() float64 { return a.BundleShare * a.CoverShare * a.AltShare }

// ConductorC is the steady temperature at a current in amperes of a wire whose
// temperature by itself in free air is alone(current).
func (a Allowed) ConductorC(ambientC, currentA float64, alone func(amps float64) float64) float64 {
	return a.Beside.ConductorC(ambientC, currentA/(a.CoverShare*a.AltShare), alone)
}

// ServiceC is the conductor's temperature in full service: at its limit, or as hot as
// its place and the wires beside it make it.
func (a Allowed) ServiceC(ambientC float64) float64 {
	return math.Max(a.LimitC, ambientC+a.Beside.RiseK)
}

// For is the same wire for less than good: each current as a factor or a cycle has
// it. What goes into them stays.
func (a Allowed) For(most func(forGoodA float64) float64) Allowed {
	a.AllowedA, a.HeatA, a.TableA = most(a.AllowedA), most(a.HeatA), most(a.TableA)
	return a
}

// heatSource names the heat balance.
const heatSource = "heat balance of one wire in still air (Churchill-Chu 1975, IEC 60287 scheme)"

// AllowedCurrent is the current a wire may carry for good: the smaller of the
// heat balance, with the conductor at its insulation class less the margin, and
// the practice's table corrected for the ambient; both reduced for wires loaded
// together, for a cover and for altitude. What is not known is said in Missing
// and never taken as allowed. More ambient, more loaded wires or more altitude
// never raise it.
func AllowedCurrent(in AllowedInput) Allowed {
	a := Allowed{TableA: math.NaN(), TableBaseA: math.NaN(), AmbientShare: 1,
		BundleShare: 1, Beside: Alike(1), CoverShare: 1, AltShare: 1}
	if in.Type == nil || in.Size == nil {
		a.miss("the wire type or size is not in the library")
		return a
	}
	a.shares(in)
	a.byHeat(in, a.Share())
	a.byTable(in, a.Share())
	a.govern(in)
	return a
}

// govern takes the smaller of the two reckonings.
func (a *Allowed) govern(in AllowedInput) {
	a.AllowedA, a.Governs, a.Source = a.HeatA, GovernsHeat, heatSource
	if a.TableA < a.HeatA {
		a.AllowedA, a.Governs, a.Source = a.TableA, GovernsTable, in.Table.Source.String()
	}
	if a.FirstRowA = a.firstRowA(in); a.FirstRowA < a.AllowedA {
		most := a.FirstRowA
		a.AllowedA, a.Governs, a.Source = most, GovernsTable, in.Table.Source.String()
	}
}

// firstRowA bounds a wire thinner than any of its table: it carries no more than
// the table's thinnest.
func (a *Allowed) firstRowA(in AllowedInput) float64 {
	if in.Table == nil || len(in.Table.Rows) == 0 || in.Size.AreaMm2 >= in.Table.Rows[0].AreaMm2 {
		return math.Inf(1)
	}
	t := fromTable(in.Table, in.Table.Rows[0].AreaMm2, in.Type.ClassC, in.AmbientC)
	if t.missing != "" {
		return math.Inf(1)
	}
	return t.read.Value() * t.factor * a.Share()
}

// beside takes another share for the wires beside it.
func (a *Allowed) beside(in AllowedInput) {
	a.Beside, a.BundleShare, a.BundleSource = in.Beside, in.Beside.Share, ""
	a.HeatA = a.FreeAirA * a.Share()
	a.TableA = a.TableBaseA * a.AmbientShare * a.Share()
	a.govern(in)
}

func (a *Allowed) miss(format string, args ...any) {
	a.Missing = append(a.Missing, fmt.Sprintf(format, args...))
}

// shares finds the factors that hold for heat balance and table alike.
func (a *Allowed) shares(in AllowedInput) {
	if in.CoverFactor > 0 {
		a.CoverShare = math.Min(1, in.CoverFactor)
	}
	if in.Beside.Known() {
		a.Beside, a.BundleShare = in.Beside, in.Beside.Share
	} else if t := firstWith(in, func(t *library.CurrentTable) bool { return len(t.Bundle) > 0 }); t != nil {
		loading := in.Loading
		if !(loading > 0) {
			loading = 1
		}
		a.BundleShare, a.BundleSource = BundleFactor(t, in.Loaded, loading), t.BundleSource.String()
		a.Beside = Alike(a.BundleShare)
	} else if in.Loaded > 1 {
		a.miss("no bundle factors for %d loaded wires", in.Loaded)
	}
	if in.AltitudeM <= 0 {
		return
	}
	if t := firstWith(in, func(t *library.CurrentTable) bool { return len(t.Altitude) > 0 }); t != nil {
		a.AltShare = altitudeFactor(t, in.AltitudeM)
	} else {
		a.miss("no altitude factor for %.0f m", in.AltitudeM)
	}
}

func firstWith(in AllowedInput, has func(*library.CurrentTable) bool) *library.CurrentTable {
	for _, t := range []*library.CurrentTable{in.Table, in.Bundling} {
		if t != nil && has(t) {
			return t
		}
	}
	return nil
}

func (a *Allowed) byHeat(in AllowedInput, share float64) {
	a.LimitC = in.Type.ClassC - math.Max(0, in.MarginC)
	if in.Material == nil {
		a.miss("no thermal data for insulation %q: the worst of the usual plastics is taken", in.Type.Material)
	}
	w := InsulatedWire(in.Size, in.Material)
	if !w.valid() {
		a.miss("no diameters for %s %s", in.Type.Name, in.Size.Label)
		return
	}
	a.Known = true
	b := NewBalance(w, StillAir{AmbientC: in.AmbientC})
	a.FreeAirA = b.CurrentA(a.LimitC)
	a.HeatA = a.FreeAirA * share
}

func (a *Allowed) byTable(in AllowedInput, share float64) {
	if in.Table == nil {
		return
	}
	t := fromTable(in.Table, in.Size.AreaMm2, in.Type.ClassC, in.AmbientC)
	if t.missing != "" {
		a.miss("%s", t.missing)
		return
	}
	a.TableBaseA, a.AmbientShare, a.TableHow = t.read.Value(), t.factor, t.how
	a.TableA = a.TableBaseA * t.factor * share
	a.Table, a.Read, a.TableClassC = in.Table, t.read, t.classC
}
