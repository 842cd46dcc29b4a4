package ride

import (
	"math"

	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
)

// bus is the balance at the battery posts in one leg.
type bus struct {
	bat        *battery.Battery
	demand     *demand
	celsius    float64
	regulatedV float64
	chargerOhm float64
	limitA     float64
	floorV     float64 // below it no load works: the posts are not followed further
	lastV      float64 // where the search for the next balance begins
}

func newBus(c *circuit.Circuit, bat *battery.Battery, l *Leg, d *demand) *bus {
	b := &bus{bat: bat, demand: d, celsius: l.BatteryC, limitA: l.OutputA,
		regulatedV: c.Design.Charging.RegulatedV.Value, chargerOhm: circuit.ChargerOhm}
	b.floorV = c.Design.NominalV() / 2
	for _, branch := range c.Branches {
		if branch.Kind == circuit.ChargerBranch && branch.Ohm > 0 {
			b.chargerOhm = branch.Ohm
		}
	}
	return b
}

func (b *bus) troubleAt(volts float64) string { return b.demand.troubleAt(volts) }

func (b *bus) moved(Point, float64) bool { return false }

func (b *bus) light(bool) {} // a leg with sun is followed by its network

func (b *bus) warm(celsius float64) { b.celsius = celsius }

func (b *bus) take(Point, float64) bool { return false }

// chargingA is what the charging system gives at a voltage of the posts.
func (b *bus) chargingA(volts float64) float64 {
	return math.Min(math.Max((b.regulatedV-volts)/b.chargerOhm, 0), b.limitA)
}

// missing is what sources give less what loads take; it falls with voltage.
func (b *bus) missing(bat battery.State, volts float64) float64 {
	return bat.Amps(volts) + b.chargingA(volts) - b.demand.at(volts)
}

// balance finds the state of the posts at a state of charge. ok is false when
// the loads ask for more than the sources give at any voltage that matters.
func (b *bus) balance(charge float64, _ []float64) (p Point, ok bool) {
	bat := b.bat.At(charge, b.celsius)
	low, high, ok := b.bracket(bat, charge)
	low, high = b.narrow(bat, low, high)
	for range 60 {
		mid := low + (high-low)/2
		if mid <= low || mid >= high {
			break
		}
		if b.missing(bat, mid) > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	b.lastV = high
	p = Point{Charge: charge, BusV: high, BatteryA: bat.Amps(high),
		LoadA: b.demand.at(high)}
	// The charging system is stiff: its current follows from the balance and not
	// from the last bits of the voltage.
	p.ChargingA = math.Min(math.Max(p.LoadA-p.BatteryA, 0), b.limitA)
	return p, ok
}

// narrow brings voltages on both sides of the balance close together. Between the
// bends of its curve the balance is straight, so that a line through two points
// mostly hits it; halving, which comes after, then has little left to do.
func (b *bus) narrow(bat battery.State, low, high float64) (_, _ float64) {
	above, below := b.missing(bat, low), b.missing(bat, high)
	for range 6 {
		hit := low + (high-low)*above/(above-below)
		around := 4 * (math.Nextafter(hit, math.Inf(1)) - hit)
		if !(above > 0 && below <= 0 && high-low > 4*around) {
			break
		}
		for _, v := range [2]float64{hit - around, hit + around} {
			if v <= low || v >= high {
				continue
			}
			if a := b.missing(bat, v); a > 0 {
				low, above = v, a
			} else {
				high, below = v, a
			}
		}
	}
	return low, high
}

// bracket finds voltages below and above the balance, near the last one, so that
// few voltages of the network have to be solved.
func (b *bus) bracket(bat battery.State, charge float64) (low, high float64, ok bool) {
	emf := b.bat.OpenCircuitV(charge, b.celsius)
	top := emf + 0.01
	if b.limitA > 0 {
		top = math.Max(top, b.regulatedV+0.01)
	}
	from := b.lastV
	if from == 0 { // a leg begins at the regulated voltage, if the output can hold it
		from = top
	}
	from = math.Min(math.Max(from, b.floorV), top)
	low, high = from, from
	for width := 0.01; b.missing(bat, low) <= 0; width *= 2 {
		if low <= b.floorV {
			return b.floorV, b.floorV, false
		}
		high, low = low, math.Max(low-width, b.floorV)
	}
	for width := 0.01; high < top && b.missing(bat, high) > 0; width *= 2 {
		low, high = high, math.Min(high+width, top)
	}
	return low, high, true
}
