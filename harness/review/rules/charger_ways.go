package rules

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
)

// inputWay is the way from the battery that feeds a charger to its input, and back to the first battery.
func (f *facts) inputWay(in *circuit.Branch) (feed, back []*circuit.Branch) {
	return f.c.MainFeed(in.A).Branches, f.c.MainReturn(in.B, f.c.Negative()).Branches
}

// ratedInput is what a charger takes at its rated output where the engine holds its voltage, and the voltage that it
// has there; starved: its way loses so much that it takes less, rather than pull its input any lower. The way is as warm
// as that current makes it.
func (f *facts) ratedInput(x *design.Charger, in *circuit.Branch) (amps, volts float64, starved bool) {
	source := f.d.Charging.RegulatedV.Or(x.Type.StartsV)
	feed, back := f.inputWay(in)
	watts := x.Type.RatingA * x.HeldV() / x.Type.Efficiency
	amps = watts / source
	for range warmPasses {
		ohm := 0.0
		for _, b := range slices.Concat(feed, back) {
			ohm += f.laid.Ohm(b, amps)
		}
		// the upper of the two voltages at which (source − v) / ohm · v is that power
		volts = source/2 + math.Sqrt(math.Max(source*source/4-watts*ohm, 0))
		if starved = volts < x.Type.StopsV; starved {
			amps, volts = math.Max(source-x.Type.StopsV, 0)/ohm, x.Type.StopsV
		} else {
			amps = watts / volts
		}
	}
	return amps, volts, starved
}

// warmPasses bring current and warmth of a way together: each leaves a tenth of the difference or less.
const warmPasses = 6

// loaded is what a branch carries of a charger at its rated current.
type loaded struct {
	branch *circuit.Branch
	amps   float64
}

// chargerRated is what each branch on the ways of a charger carries while it gives all it can: its input, its output, and in
// a return that both share the difference.
func (f *facts) chargerRated(part *circuit.Part) (list []loaded) {
	at := map[*circuit.Branch]int{}
	add := func(way []*circuit.Branch, amps float64) {
		for _, b := range way {
			i, known := at[b]
			if !known {
				i = len(list)
				at[b], list = i, append(list, loaded{branch: b})
			}
			list[i].amps += amps
		}
	}
	out := part.Output()
	x := out.OfCharger()
	for _, b := range f.chargerCable(out) {
		amps := chargerA(x)
		if b.Returns() { // towards the charger
			amps = -amps
		}
		add([]*circuit.Branch{b}, amps)
	}
	if in := part.Converts(); in != nil {
		amps, _, _ := f.ratedInput(x, in)
		feed, back := f.inputWay(in)
		add(feed, amps)
		add(back, amps)
	}
	for i := range list {
		list[i].amps = math.Abs(list[i].amps)
	}
	return list
}

// judged tells whether some situation has a branch carry more than a limit at nominal, so that the rules of what
// flows in situations speak of it. What is only likely there they take as advice.
func (f *facts) judged(b *circuit.Branch, limit float64) bool {
	return over(f.cornerAmps(b)(corner.AtNominal).Nominal, limit)
}
