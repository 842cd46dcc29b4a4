package sizing

import (
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/budget"
	"fusewright/library"
)

// shoreShare is the rating of a shore charger as a share of the capacity per hour: 0.1 to 0.2 of lead
// batteries (a maker's manual, one source); lithium would take more, and needs it as little overnight.
const shoreShare = 0.2

// chargers chooses the types of chargers that are left open, before what their currents decide: of one on
// panels the smallest that takes their power, of others the largest that the battery may take, and that the
// charging system has to spare where a battery feeds it.
func chargers(d *design.Design) (list []*Choice, err error) {
	for _, x := range d.Chargers {
		if !x.TypeAuto {
			continue
		}
		rows := d.ChargerRows(x)
		x.SetType(rows[0])
		c, err := circuit.Build(d)
		if err != nil {
			return nil, err
		}
		needs := needOf(c, x, rows[0])
		at := needs.choose(rows)
		x.SetType(rows[at])
		choice := &Choice{Kind: ChargerType, Part: x.Name, Pos: x.Pos, Value: rows[at].Name, Path: []string{"chargers", x.Name},
			Set: []Setting{{"type", rows[at].Name}}, Decided: needs.why}
		if next := at + needs.toward; next >= 0 && next < len(rows) {
			choice.RunnerUp, choice.Lost = rows[next].Name, needs.lost
		}
		list = append(list, choice)
	}
	return list, nil
}

// need is what decides a charger.
type need struct {
	amps   float64
	least  bool // the rating is to be that at least; else at most
	toward int  // from the choice to the one that just does not do
	why    string
	lost   string
}

// choose is the place of the charger among rows with ascending ratings; the nearest where none does.
func (n need) choose(rows []*library.ChargerType) int {
	for i, t := range rows {
		switch {
		case n.least && t.RatingA >= n.amps:
			return i
		case !n.least && t.RatingA > n.amps:
			return max(i-1, 0)
		}
	}
	return len(rows) - 1
}

func needOf(c *circuit.Circuit, x *design.Charger, t *library.ChargerType) need {
	if t.From == "panel" {
		amps := x.PanelW.Value * t.Efficiency / t.Volts
		return need{amps: amps, least: true, toward: -1, why: fmt.Sprintf("the power of its panels, %s at %s", ampsText(amps), quantity.Plain(t.Volts, quantity.Voltage)),
			lost: "it cuts off a part of the panels' power"}
	}
	part := c.PartOf(x)
	store, name := &c.Design.Battery, "the battery"
	if bank := c.Charged(part); bank != nil {
		store, name = &bank.Store, bank.Name
	}
	n := need{amps: math.Inf(1), toward: 1, why: "the largest of the library"}
	if b := battery.New(store, c.Design.NominalV()); b != nil {
		n.amps = b.MostChargeA(battery.RatedC)
		n.why = fmt.Sprintf("the most that %s should be charged with, %s", name, ampsText(n.amps))
		n.lost = "it gives " + name + " more than that"
		if a := shoreShare * b.CapacityAh(); t.From == "mains" && a < n.amps {
			n.amps = a
			n.why = fmt.Sprintf("a fifth of the capacity of %s per hour, %s", name, ampsText(a))
			n.lost = "it gives more than a night asks for"
		}
	}
	if amps, in := spareA(c, x, part); amps < n.amps {
		n.amps = amps
		n.why = fmt.Sprintf("what the charging system has to spare in %q, enough for %s", in, ampsText(amps))
		n.lost = "it takes more than is spare there"
	}
	return n
}

func ampsText(a float64) string { return quantity.Format(a, quantity.Current) }

// spareA is the charging current for which the charging system has power to spare in the situation with the
// engine running in which it has least; +Inf of a charger that takes nothing from it.
func spareA(c *circuit.Circuit, x *design.Charger, part *circuit.Part) (least float64, in string) {
	least = math.Inf(1)
	input := part.Converts()
	if input == nil || c.Design.Charging.RegulatedV.Value == 0 {
		return least, ""
	}
	sols := solve.All(c, solve.Options{})
	perA := x.HeldV() / (x.Type.Efficiency * c.Design.Charging.RegulatedV.Value)
	for _, l := range budget.Compute(c, sols).Lines {
		if !l.Usable || l.Situation.EngineRPM == 0 {
			continue
		}
		for _, s := range sols {
			if s.Situation != l.Situation {
				continue
			}
			if a := math.Max(l.SpareA+s.Amps(input), 0) / perA; a < least {
				least, in = a, l.Situation.Name
			}
		}
	}
	return least, in
}
