package diagnosis

import (
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/library"
)

// world is one machine as made: everything that may be a little off is, by the bounds that the bench
// test itself allows, evenly; and one or two things may be wrong with it.
type world struct {
	c      *circuit.Circuit
	rng    *rand.Rand
	load   []float64 // by branch: factor of the power
	ohm    []float64 // by branch: as made, at 20 °C
	piece  map[*circuit.Wire]float64
	air    float64
	charge float64
	postsV map[float64]float64 // of a supply set to so many volts
	regV   float64
	faults []*fault
	solve  func(*design.Situation, solve.Options) *solve.Solution
}

func even(rng *rand.Rand, low, high float64) float64 { return low + (high-low)*rng.Float64() }

// evenly by the logarithm
func byLog(rng *rand.Rand, low, high float64) float64 {
	return math.Exp(even(rng, math.Log(low), math.Log(high)))
}

func newWorld(c *circuit.Circuit, rng *rand.Rand, faults ...*fault) *world {
	tol := corner.TolerancesOf(c.Design)
	w := &world{c: c, rng: rng, load: make([]float64, len(c.Branches)), ohm: make([]float64, len(c.Branches)), faults: faults,
		piece: map[*circuit.Wire]float64{}, air: even(rng, 10, 35), charge: even(rng, 0, bench.MostDischarge), postsV: map[float64]float64{}}
	m := &model{c: c, tol: tol}
	off := func() float64 { return byLog(rng, bench.ContactLow, bench.ContactHigh) }
	for i, b := range c.Branches {
		w.load[i], w.ohm[i] = 1, b.Ohm
		switch {
		case b.Load != nil:
			share := m.loadTolerance(b)
			w.load[i] = even(rng, 1-share, 1+share)
		case b.Wire != nil:
			w.ohm[i] = 0
			for _, p := range b.Wire.Cut() {
				made := conductor.AtTemperature(p.ConductorOhm20, w.air)*even(rng, 0.95, 1.05) + p.EndsOhm*off()
				w.piece[p] = made
				w.ohm[i] += made
			}
		case b.OfCoil():
			w.ohm[i] = b.Ohm * even(rng, 1-bench.CoilTolerance, 1+bench.CoilTolerance)
		case b.Kind == circuit.ContactBranch || b.Kind == circuit.FuseBranch: // the way through a frame is as the design has it: so are its bounds
			w.ohm[i] = b.Ohm * off()
		}
	}
	if v := c.Design.Charging.RegulatedV.Value; v > 0 {
		w.regV = v + even(rng, -tol.RegulatedV, tol.RegulatedV)
	}
	plan := solve.Prepare(c)
	w.solve = func(s *design.Situation, opt solve.Options) *solve.Solution { return plan.Network(s, opt).Solution() }
	return w
}

// options are those of a state of the test in this world.
func (w *world) options(opt solve.Options) solve.Options {
	tol := corner.TolerancesOf(w.c.Design)
	if opt.BatteryV > 0 {
		if w.postsV[opt.BatteryV] == 0 {
			w.postsV[opt.BatteryV] = opt.BatteryV + even(w.rng, -tol.RegulatedV, tol.RegulatedV)
		}
		opt.BatteryV = w.postsV[opt.BatteryV]
	} else {
		opt.Discharged = w.charge
		opt.BanksDischarged = w.charge * bench.FurtherMost / bench.MostDischarge
	}
	opt.RegulatedV = w.regV
	opt.LoadFactor = func(b *circuit.Branch) float64 { return w.load[b.Index] }
	changes := opt.Changes
	opt.Changes = nil
	for i, b := range w.c.Branches {
		if b.Wire != nil || b.Kind == circuit.ContactBranch || b.Kind == circuit.FuseBranch || b.Kind == circuit.ResistorBranch {
			opt.Changes = append(opt.Changes, solve.SetOhm(b, w.ohm[i]))
		}
	}
	opt = change(opt, w.faults, func(b *circuit.Branch) float64 { return w.ohm[b.Index] })
	opt.Changes = append(opt.Changes, changes...)
	return opt
}

// gauge is a meter of a class: its share of error is one for all readings of a scale, or, when
// apart is set, another at each.
type gauge struct {
	rng   *rand.Rand
	class *library.Meter
	share [gains]float64
	apart bool
}

func newGauge(rng *rand.Rand, class *library.Meter, apart bool) *gauge {
	g := &gauge{rng: rng, class: class, apart: apart}
	g.draw()
	return g
}

func (g *gauge) draw() {
	for i, s := range [gains]float64{g.class.VoltShare, g.class.OhmShare, g.class.AmpShare, g.class.ClampShare, bench.SupplyShare} {
		g.share[i] = even(g.rng, -s, s)
	}
}

// shows is a value with the meter's error, in steps of its last place.
func (g *gauge) shows(scale int, v float64) float64 {
	if g.apart {
		g.draw()
	}
	if math.IsInf(v, 0) {
		return v
	}
	if scale == clamp {
		return math.Round((v*(1+g.share[scale])+even(g.rng, -g.class.ClampA, g.class.ClampA))*100) / 100
	}
	if scale == supply {
		return math.Round((v*(1+g.share[scale])+even(g.rng, -bench.SupplyFixedA, bench.SupplyFixedA))*1000) / 1000
	}
	digit := lastPlace(g.class, v, least[scale])
	x := v*(1+g.share[scale]) + even(g.rng, -g.class.Digits, g.class.Digits)*digit
	if scale == ohms {
		x = math.Max(0, x+even(g.rng, -touchOhm, touchOhm))
	}
	return math.Round(x/digit) * digit
}

// read takes the readings of the test that keep lets through, on a world.
func (w *world) read(t *bench.Test, g *gauge, keep func(*bench.Section) bool) []*readings.Reading {
	var list []*readings.Reading
	type key struct {
		s *design.Situation
		k string
	}
	solved := map[key]*solve.Solution{}
	for _, s := range t.Sections {
		if !keep(s) {
			continue
		}
		for _, grp := range s.Groups {
			for _, c := range grp.Checks {
				p := c.Probe
				if p == nil {
					continue
				}
				r := &readings.Reading{Check: c.Number, Quantity: c.Quantity}
				x := (&model{}).sensor(&readings.Placed{Reading: r, Section: s, Group: grp, Check: c}, &bench.Probe{Volts: p.Volts, Amps: p.Amps, Wire: p.Wire, Return: p.Return, Coil: p.Coil, Situation: p.Situation, Options: p.Options}, "")
				v := 0.0
				if p.Situation != nil {
					k := key{p.Situation, stateKey(p)}
					if solved[k] == nil {
						solved[k] = w.solve(p.Situation, w.options(p.Options))
					}
					v = x.seen(solved[k])
					if len(p.Volts) == 1 && drop(c) { // read whichever way the leads are
						v = math.Abs(v)
					}
				} else {
					v = x.ohmsOf(func(b *circuit.Branch, piece *circuit.Wire) float64 { return w.cold(b, piece) })
					if v >= x.most() {
						v = math.Inf(1)
					}
				}
				r.Value = g.shows(x.gain, v)
				list = append(list, r)
			}
		}
	}
	return list
}

func drop(c *bench.Check) bool { return !c.Below && c.Nominal > 0 && c.Nominal < 1 }

func (w *world) cold(b *circuit.Branch, piece *circuit.Wire) float64 {
	ohm := w.ohm[b.Index]
	if piece != nil {
		ohm = w.piece[piece]
	}
	if b.IsCoil() {
		ohm = conductor.AtTemperature(ohm, w.air)
	}
	return withOhm(w.faults, b, piece, ohm)
}

func load(t testing.TB, name string) (*circuit.Circuit, *bench.Test) {
	t.Helper()
	src, err := os.ReadFile("../../../designs/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read(name+".yaml", src, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return c, bench.Make(c)
}
