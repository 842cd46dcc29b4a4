package outlook

import (
	"maps"
	"math"
	"slices"

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
// wire, fewestCombos of each start of any.
const combosTimesWires, fewestCombos = 8192, 8

// TableOf reckons the table. It solves a few hundred states, in a tenth of a second.
func (p *Planner) TableOf() *Table {
	t := &Table{Hours: [][2]float64{}, Stand: [][2]float64{}, Starts: []Combos{}}
	d := p.Circuit.Design
	t.lasting(p)
	for _, s := range p.Starts[:len(d.Situations)] {
		t.Starts = append(t.Starts, p.combos(s, max(fewestCombos, combosTimesWires/max(1, len(p.Circuit.Wires))/len(d.Situations))))
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
	for i := range n {
		state := s.State
		state.Set = maps.Clone(words)
		k := i
		for _, x := range list {
			state.Set[x.ID] = x.Words[k%len(x.Words)]
			k /= len(x.Words)
		}
		p.combo(&c, state)
	}
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
func (p *Planner) combo(c *Combos, s State) {
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
	c.DemandA, c.VehicleA, c.StoppedA = append(c.DemandA, demand), append(c.VehicleA, vehicle), append(c.StoppedA, stopped)
	c.BatteryA = append(c.BatteryA, gives)
}

// Giving is what a full battery gives, in A; negative = it is charged.
type Giving struct {
	Stopped float64      `json:"stopped"`
	Running [][2]float64 `json:"running"` // by the output in A, which ascends
}
