package ride

import (
	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
)

// Frost is a leg in which a battery that something charges takes no charge, because the air is too cold for its chemistry.
type Frost struct {
	Leg     int    // from 0
	Battery string // "the battery", or the name of a further one
	AirC    float64
	LeastC  float64 // from which on it is charged
}

// offeredV is how far posts stand above the resting voltage where something charges; our choice.
const offeredV = 0.1

// frosts finds these, battery by battery.
func frosts(d *design.Design, r *Result) (list []Frost) {
	add := func(name string, store *design.Battery, b *battery.Battery, at func(*Leg) (charge, highestV float64)) {
		if store.Chemistry == nil {
			return
		}
		for i, l := range r.Legs {
			if charge, highestV := at(l); l.AmbientC < store.Chemistry.NoChargeBelowC && highestV >= b.OpenCircuitV(charge, l.AmbientC)+offeredV {
				list = append(list, Frost{i, name, l.AmbientC, store.Chemistry.NoChargeBelowC})
			}
		}
	}
	add("the battery", &d.Battery, battery.Of(d), func(l *Leg) (float64, float64) { return l.FromCharge, l.HighestV })
	for i, b := range r.Banks {
		add(b.Bank.Name, &b.Bank.Store, battery.New(&b.Bank.Store, d.NominalV()), func(l *Leg) (float64, float64) { return l.Banks[i].FromCharge, l.Banks[i].HighestV })
	}
	return list
}
