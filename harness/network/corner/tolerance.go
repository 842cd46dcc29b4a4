package corner

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/warm"
	"fusewright/library"
)

// Tolerances are the library's figures as a corner takes them.
type Tolerances struct {
	LowestV, HighestV float64 // bounds of the supply, of the design's system voltage
	RegulatedV        float64 // below and above the regulated voltage
	Power             map[design.Behaviour]float64
	AmbientK          float64
	Relay, Switch     float64 // aged over new contact resistance
	HotFuse           float64 // hot over cold resistance
	// Rows are what the figures come from, for printing.
	Rows []*library.Tolerance
}

// TolerancesOf takes the tolerances for a design out of its library; a nil
// library is the built-in one. Volts are in proportion to the system voltage.
func TolerancesOf(d *design.Design) *Tolerances {
	lib := library.Default()
	class := 1.0
	if d != nil {
		class = d.NominalV() / 12
		if d.Library != nil {
			lib = d.Library
		}
	}
	t := &Tolerances{Power: map[design.Behaviour]float64{}, Rows: lib.Tolerances}
	value := func(name string, usual float64) float64 {
		if row := lib.Tolerance(name); row != nil {
			return row.Value
		}
		return usual
	}
	t.LowestV = class * value("lowest supply", 0)
	t.HighestV = class * value("highest supply", 1e3)
	t.RegulatedV = class * value("regulated voltage", 0)
	for _, b := range design.Behaviours {
		t.Power[b] = value("power of "+string(b), 0)
	}
	t.AmbientK = value("ambient", 0)
	t.Relay, t.Switch = value("aged relay contact", 1), value("aged switch contact", 1)
	t.HotFuse = value("hot fuse", 1)
	return t
}

// PowerFactor is the power of a load high over nominal: by the design's tolerance
// of the load, else by the most that it draws, else by the tolerance of its
// behaviour.
func (t *Tolerances) PowerFactor(b *circuit.Branch) float64 {
	switch l := b.Load.Load; {
	case l == nil:
	case l.Tolerance.Given():
		return 1 + l.Tolerance.Value
	case b.Load.Standby:
	case l.Figure == "highest":
		return 1
	case l.MostW > l.PowerW:
		return l.MostW / l.PowerW
	}
	return 1 + t.Power[b.Load.Behaves]
}

// Ageing is the resistance of a contact or fuse in use over that of a new one.
type Ageing struct {
	Row   string  // of the library's tolerances; "" = it stays as new
	Times float64 // by that row
	// Of a fuse: how hot it is, as a share of the heat at its rating, from its current at
	// nominal; of contacts Share is 1 and the others are zero.
	Share             float64
	NominalA, RatingA float64
}

// Factor is what multiplies the resistance.
func (a Ageing) Factor() float64 { return 1 + (a.Times-1)*a.Share }

// Aged is that of a branch, with the currents of nominal. A fuse is hot as at its rating by
// the share of that heat: the square of its current over its rating. A resistance that is
// assumed is an upper figure already and stays.
func (t *Tolerances) Aged(b *circuit.Branch, nominal *warm.Result) Ageing {
	switch {
	case b.Assumed != "":
	case b.Kind == circuit.FuseBranch:
		a := Ageing{Row: "hot fuse", Times: t.HotFuse, Share: 1}
		a.heat(b, nominal)
		return a
	case b.Kind != circuit.ContactBranch || b.Closer == nil:
	case b.Closer.Coil != nil || b.Closer.Break != nil:
		return Ageing{Row: "aged relay contact", Times: t.Relay, Share: 1}
	case b.Closer.Switch != nil, b.Part != nil && b.Part.Kind == circuit.Switch:
		return Ageing{Row: "aged switch contact", Times: t.Switch, Share: 1}
	}
	return Ageing{Times: 1, Share: 1}
}

// MostGain is how far the current of a corner may be above nominal: 20 % of power
// for a motor, or 10 % at 12 V instead of 14.4 V.
const MostGain = 4.0 / 3

// heat is that of a fuse as a share of that at its rating; all of it
// where rating or current are not known.
func (a *Ageing) heat(b *circuit.Branch, nominal *warm.Result) {
	if b.Fuse == nil || b.Fuse.Rating == nil || !(b.Fuse.Rating.RatingA > 0) || !nominal.Usable() {
		return
	}
	a.NominalA, a.RatingA = math.Abs(nominal.Solution.BranchA[b.Index]), b.Fuse.Rating.RatingA
	share := MostGain * a.NominalA / a.RatingA
	a.Share = math.Min(share*share, 1)
}
