package conductor

import (
	"math"
	"sync"

	"fusewright/library"
)

// bundlingTable is the table whose bundle and altitude curves hold where a
// practice's own table has none.
const bundlingTable = "AC 43.13-1B"

// Rater answers AllowedCurrent for the wires of one design under one practice.
// It remembers answers, since a harness has few kinds of wire and place; it may
// be used by several goroutines.
type Rater struct {
	lib      *library.Library
	margin   float64
	table    *library.CurrentTable
	bundling *library.CurrentTable
	tableWas string // name that the library does not hold
	mu       sync.Mutex
	known    map[Conditions]Allowed
	curves   map[curveKey]*Damage
	kept     sync.Map
}

// Conditions are what changes from wire to wire; comparable, so that answers
// can be remembered.
type Conditions struct {
	Type        *library.WireType
	Size        *library.WireSize
	AmbientC    float64
	Loaded      int
	Loading     float64 // see AllowedInput
	Beside      Beside  // see AllowedInput
	CoverFactor float64
	AltitudeM   float64
}

// NewRater takes the practice's margin and table; a nil practice has neither.
// A practice whose table is not in the library is said in each answer.
func NewRater(lib *library.Library, practice *library.Practice) *Rater {
	r := &Rater{lib: lib, known: map[Conditions]Allowed{}, curves: map[curveKey]*Damage{},
		bundling: lib.CurrentTable(bundlingTable)}
	if practice != nil {
		r.margin = practice.HotSpotMarginC
		if practice.Ampacity != "" && practice.Ampacity != NoTable {
			if r.table = lib.CurrentTable(practice.Ampacity); r.table == nil {
				r.tableWas = practice.Ampacity
			}
		}
	}
	return r
}

// Published is the practice's factor for wires laid together, and whether it
// differs by how far they are loaded; NaN where it has none.
func (r *Rater) Published() (factor func(wires int, loading float64) float64, byLoading bool) {
	in := r.input(Conditions{}, 0)
	t := firstWith(in, func(t *library.CurrentTable) bool { return len(t.Bundle) > 0 })
	if t == nil {
		return func(int, float64) float64 { return math.NaN() }, false
	}
	return func(wires int, loading float64) float64 { return BundleFactor(t, wires, loading) }, len(t.Loadings) > 1
}

// NoTable is the word of a practice that has no table of currents of its own:
// road practice goes by the class of ISO 6722, which is the heat balance.
const NoTable = "heat balance"

// Kept is what another package derives from the library under a key of its own
// type: made once and given again, so that designs judged one after another with
// the same rater share it. What make gives must hang on the key alone.
func (r *Rater) Kept(key any, make func() any) any {
	if v, ok := r.kept.Load(key); ok {
		return v
	}
	v, _ := r.kept.LoadOrStore(key, make())
	return v
}

// Allowed is AllowedCurrent under the practice.
func (r *Rater) Allowed(c Conditions) Allowed {
	if c.Beside.Known() { // many wires, each with its own share of one free-air current
		alone := c
		alone.Beside = Beside{}
		a := r.Allowed(alone)
		if a.Known {
			a.beside(r.input(c, r.margin))
		}
		return a
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	if a, ok := r.known[c]; ok {
		return a
	}
	a := AllowedCurrent(r.input(c, r.margin))
	if r.tableWas != "" {
		a.miss("the practice's table %q is not in the library", r.tableWas)
	}
	r.known[c] = a
	return a
}

func (r *Rater) input(c Conditions, marginC float64) AllowedInput {
	return AllowedInput{Type: c.Type, Size: c.Size, Material: r.material(c.Type), AmbientC: c.AmbientC,
		Loaded: c.Loaded, Loading: c.Loading, Beside: c.Beside, CoverFactor: c.CoverFactor, AltitudeM: c.AltitudeM,
		MarginC: marginC, Table: r.table, Bundling: r.bundling}
}

// ToClassA is the current that brings a wire to its class for good, with no margin,
// by the heat balance; 0 where its place or the wires beside it are as hot.
func (r *Rater) ToClassA(c Conditions) float64 {
	type toClass Conditions
	return r.Kept(toClass(c), func() any {
		a := AllowedCurrent(r.input(c, 0))
		if !a.Known {
			return 0.0
		}
		alone := NewBalance(InsulatedWire(c.Size, r.material(c.Type)), StillAir{AmbientC: c.AmbientC})
		open := a.Beside.held() * a.CoverShare * a.AltShare
		return Outlet{Share: a.Beside.Own * open, BesideK: a.Beside.RiseK, Cold: a.Beside.Cold * open}.CurrentA(alone, a.LimitC)
	}).(float64)
}

// AllowedAtWorst is Allowed where the ambient is already that of the worst case.
// The margin to the class is there for a place hotter than was said, so it is not
// taken a second time: in a place that eats into it the wire may carry what warms
// it by the margin, but nothing that takes it past its class. LimitC is then the
// conductor's temperature at HeatA. More ambient never raises it either.
func (r *Rater) AllowedAtWorst(c Conditions) Allowed {
	a := r.Allowed(c)
	cooler := c
	cooler.AmbientC = a.LimitC - r.margin
	if !a.Known || c.AmbientC <= cooler.AmbientC {
		return a
	}
	toClass := AllowedCurrent(r.input(c, 0)).HeatA
	heat := math.Min(r.Allowed(cooler).HeatA, toClass)
	if heat <= a.HeatA {
		return a
	}
	a.HeatA, a.FreeAirA = heat, heat/a.Share()
	a.LimitC = r.ConductorC(c, heat)
	a.govern(r.input(c, 0))
	return a
}

// ConductorC is the steady temperature of a wire alone in still air at a
// current; +Inf when none lies below the melting point. In a cover or thin
// air the current counts as if raised by the inverse of the reduction; for a bundle
// see Beside.ConductorC.
func (r *Rater) ConductorC(c Conditions, currentA float64) float64 {
	a := r.Allowed(c)
	if c.Type == nil || c.Size == nil {
		return c.AmbientC
	}
	w := InsulatedWire(c.Size, r.lib.Insulation(c.Type.Material))
	return a.ConductorC(c.AmbientC, currentA, NewBalance(w, StillAir{AmbientC: c.AmbientC}).ConductorC)
}

type curveKey struct {
	wire     *library.WireType
	size     *library.WireSize
	ambientC float64
	out      Outlet
	startC   float64
}

// Damage is the damage curve of a wire in its surroundings that starts at its
// class less the margin: a wire in full service when the fault comes.
func (r *Rater) Damage(c Conditions) *Damage {
	a := r.Allowed(c)
	key := curveKey{c.Type, c.Size, c.AmbientC, a.Outlet(c.AmbientC), a.ServiceC(c.AmbientC)}
	r.mu.Lock()
	defer r.mu.Unlock()
	if d, ok := r.curves[key]; ok {
		return d
	}
	d := NewDamage(DamageInput{Type: c.Type, Size: c.Size, Material: r.material(c.Type),
		AmbientC: c.AmbientC, StartC: key.startC, Outlet: key.out})
	r.curves[key] = d
	return d
}

// Insulated is a wire with the thermal data of its insulation.
func (r *Rater) Insulated(t *library.WireType, size *library.WireSize) Insulated {
	return InsulatedWire(size, r.material(t))
}

func (r *Rater) material(t *library.WireType) *library.Insulation {
	if t == nil {
		return nil
	}
	return r.lib.Insulation(t.Material)
}
