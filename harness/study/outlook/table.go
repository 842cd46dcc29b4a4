package outlook

import (
	"maps"
	"math"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"fusewright/harness/formula/battery"
	"fusewright/harness/formula/charging"
	"fusewright/harness/study/budget"
)

// Table is what the planner says of every combination of what hands switch, reckoned beforehand
// for a reader who has no program: solved for each combination, so that nothing is added up that
// does not add up.
//
// Exact, but for some ten-thousandths by which wires are warmer in one state than in another: demand and vehicle current of each combination, engine running or
// stopped, and with them what is to spare at any speed and the speed at which output meets
// demand (with `curve: smooth` the output itself runs straight between the points drawn). Not exact,
// and within some thousandths: what the battery gives between two outputs, and the hours between two
// currents of Hours; both run straight between points that are solved. Left out: other air and
// charge than 25 °C and full, volts and loading of states that are not a start's own, legs of rides.
type Table struct {
	Hours  [][2]float64 `json:"hours"`  // current out of a full battery in A, hours until it no longer starts; none without a capacity
	Stand  [][2]float64 `json:"stand"`  // hours parked, charge left 0..1
	Starts []Combos     `json:"starts"` // by situation
}

// Combos are all combinations of the controls of a start. Combination n has control i at word
// (n / product of the words of the controls before it) mod its own number of words.
type Combos struct {
	Start    string     `json:"start"`
	Controls []string   `json:"controls"` // IDs
	Held     []string   `json:"held"`     // controls that stay as in the start: there would be too many combinations
	DemandA  []*float64 `json:"demandA"`  // engine running, or with the key off; null = no operating point
	VehicleA []*float64 `json:"vehicleA"`
	StoppedA []*float64 `json:"stoppedA"` // demand, engine stopped
	BatteryA []Giving   `json:"batteryA"`
}

// combosTimesWires is how many combinations of all starts together are solved of a harness of one
// wire; of one start at least fewestCombos of any, and at most mostCombos.
const combosTimesWires, fewestCombos, mostCombos = 8192, 8, 128

// TableOf reckons the table, on all processors, in some tenths of a second; it does not depend on how many
// there are.
func (p *Planner) TableOf() *Table {
	t := &Table{Hours: [][2]float64{}, Stand: [][2]float64{}, Starts: []Combos{}}
	d := p.Circuit.Design
	t.lasting(p)
	for _, s := range p.Starts[:len(d.Situations)] {
		most := combosTimesWires / max(1, len(p.Circuit.Wires)) / len(d.Situations)
		if !s.State.KeyOn { // solved once each, not at six speeds
			most *= 6
		}
		t.Starts = append(t.Starts, p.combos(s, min(max(most, fewestCombos), mostCombos)))
	}
	return t
}

// lasting tabulates hours by current, and charge by hours parked.
func (t *Table) lasting(p *Planner) {
	b := battery.Of(p.Circuit.Design)
	if b == nil {
		return
	}
	full := State{Charge: 1, AirC: battery.RatedC}
	rated := b.CapacityAh()
	for i := range 101 { // a millionth of the capacity to five times it
		a := rated * 1e-6 * math.Pow(5e6, float64(i)/100)
		t.Hours = append(t.Hours, [2]float64{a, p.hoursLeft(full, a)})
	}
	for h := 0.0; h <= 60*24; h += 48 {
		t.Stand = append(t.Stand, [2]float64{h, b.ChargeAfter(1, p.budget.StandbyA, battery.RatedC, h/24)})
	}
}

// combos solves all combinations of a start, those of the controls that switch most.
func (p *Planner) combos(s *Start, most int) Combos {
	c := Combos{Start: s.ID, Controls: []string{}, Held: []string{}}
	order := slices.Clone(p.Controls)
	slices.SortStableFunc(order, func(a, b *Control) int { return cmpWatts(b, a) })
	n, chosen := 1, map[*Control]bool{}
	for _, x := range order {
		if n*len(x.Words) <= most {
			n *= len(x.Words)
			chosen[x] = true
		} else {
			c.Held = append(c.Held, x.ID)
		}
	}
	var list []*Control
	for _, x := range p.Controls {
		if chosen[x] {
			list, c.Controls = append(list, x), append(c.Controls, x.ID)
		}
	}
	words := p.Words(s.State)
	c.DemandA, c.VehicleA, c.StoppedA, c.BatteryA = make([]*float64, n), make([]*float64, n), make([]*float64, n), make([]Giving, n)
	next := atomic.Int64{}
	var wait sync.WaitGroup
	one := func(i int) {
		state := s.State
		state.Set = maps.Clone(words)
		k := i
		for _, x := range list {
			state.Set[x.ID] = x.Words[k%len(x.Words)]
			k /= len(x.Words)
		}
		p.combo(&c, i, state)
	}
	for range min(runtime.GOMAXPROCS(0), n) {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				one(i)
			}
		})
	}
	wait.Wait()
	return c
}

func cmpWatts(a, b *Control) int {
	sum := func(x *Control) (w float64) {
		for _, l := range x.Loads {
			w += l.PowerW
		}
		return w
	}
	switch wa, wb := sum(a), sum(b); {
	case wa < wb:
		return -1
	case wa > wb:
		return 1
	}
	return 0
}

// shares of the demand at which the battery's part is solved: it runs nearly straight over the output
// until it is nothing.
var shares = []float64{0, 0.3, 0.6, 0.9}

// combo solves one combination: with the engine stopped or the key off, at cruise, and where the
// output is a share of the demand.
func (p *Planner) combo(c *Combos, i int, s State) {
	var demand, vehicle, stopped *float64
	gives := Giving{Running: [][2]float64{}}
	at := func(rpm float64) *budget.Line {
		s.SpeedPerMin = rpm
		if l, _ := p.balance(s, p.situation(s)); l != nil && !l.CutOff {
			return l
		}
		return nil
	}
	ch := &p.Circuit.Design.Charging
	if l := at(0); l != nil {
		a, v := l.VehicleA+l.AccessoryA, l.VehicleA
		stopped, gives.Stopped = &a, l.BatteryA
		if !s.KeyOn {
			demand, vehicle = &a, &v
		}
	}
	if s.KeyOn && ch.Present() {
		if l := at(ch.CruiseRPM.Value); l != nil {
			a, v := l.VehicleA+l.AccessoryA, l.VehicleA
			demand, vehicle = &a, &v
			for _, share := range shares {
				x := at(math.Max(charging.Of(ch).Speed(share*a, 0), 1))
				if x == nil {
					break
				}
				gives.Running = append(gives.Running, [2]float64{x.OutputA, x.BatteryA})
			}
		}
	}
	c.DemandA[i], c.VehicleA[i], c.StoppedA[i], c.BatteryA[i] = demand, vehicle, stopped, gives
}

// Giving is what a full battery gives, in A; negative = it is charged.
type Giving struct {
	Stopped float64      `json:"stopped"`
	Running [][2]float64 `json:"running"` // by the output in A, which ascends
}
