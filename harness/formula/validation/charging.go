package validation

import (
	"fmt"
	"strconv"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/formula/charging"
	"fusewright/library"
)

// chargingSystem compares battery volts, standby days and output curves.
func chargingSystem() []Comparison {
	return []Comparison{restingOwn(), restingOthers(), standbyDays(), leftOutOutput()}
}

// restingTables are the published tables by chemistry; own says that the
// chemistry's figures are taken from this table.
var restingTables = map[string]struct {
	chemistry string
	own       bool
}{
	"flooded_lead_acid": {"flooded", true}, "flooded_lead_acid_rule_of_thumb": {"flooded", false},
	"flooded_lead_acid_trade_table": {"flooded", false}, "agm_powersports": {"AGM", false},
	"agm_motorcycle": {"AGM", false}, "agm_trade_table": {"AGM", true}, "gel_trade_table": {"gel", true},
	"lifepo4_4s": {"LiFePO4", true}, "lifepo4_4s_alt": {"LiFePO4", false},
}

func restingOwn() Comparison {
	s := read("resting_volts")
	return compare(s.against("resting volts, the table each chemistry is taken from",
		"0.021 V: printed hundredths; the LiFePO4 row of 99 % is taken as full", Either), resting(s, true, 0, 0.021))
}

func restingOthers() Comparison {
	s := read("resting_volts")
	return compare(s.predicted("resting volts, other tables of the same chemistry from 60 % charge up",
		"0.14 V: the published tables differ that much among themselves", Either), resting(s, false, 60, 0.14))
}

func resting(s sheet, own bool, fromPct, withinV float64) []pair {
	var p []pair
	for _, r := range s.rows {
		table := restingTables[r["table"]]
		charge := r.number("charge_pct")
		if table.own != own || charge < fromPct {
			continue
		}
		d := design.Battery{Chemistry: library.Default().Chemistry(table.chemistry), CapacityAh: said(20)}
		got := battery.New(&d, 12).OpenCircuitV(charge/100, 25)
		low, high := r.number("volts_max"), r.number("volts_max")
		if r["volts_min"] != "" {
			low = r.number("volts_min")
		}
		// A printed range is met anywhere inside it.
		p = append(p, pair{fmt.Sprintf("%s %g %%", strings.ReplaceAll(r["table"], "_", " "), charge), got,
			min(max(got, low), high), withinV})
	}
	return p
}

func standbyDays() Comparison {
	s := read("standby_days")
	var p []pair
	for _, r := range s.rows {
		if r["misprint"] != "" {
			continue
		}
		noLoss := *library.Default().Chemistry("AGM")
		noLoss.SelfDischarge = 0
		d := design.Battery{Chemistry: &noLoss, CapacityAh: said(r.number("capacity_ah"))}
		got := battery.New(&d, 12).DaysBetween(r.number("from_charge"), r.number("to_charge"), r.number("drain_ma")/1000, 20)
		p = append(p, pair{r["example"], got, r.number("printed_days"), 1})
	}
	return compare(s.against("days of standby drain", "one day: whole days, and capacities rounded alike", OverBad), p)
}

// leftOutOutput leaves every inner point of a documented curve out in turn and
// asks the curve through the others for it.
func leftOutOutput() Comparison {
	s := read("output_curves")
	const name = "outboard_v6_52A"
	var points []design.OutputPoint
	for _, r := range s.rows {
		if r["curve"] == name {
			points = append(points, design.OutputPoint{RPM: said(r.number("rpm")), CurrentA: said(r.number("amps"))})
		}
	}
	var p []pair
	for i := 2; i+1 < len(points); i++ { // the steep first stretch is not left out
		without := append(append([]design.OutputPoint{}, points[:i]...), points[i+1:]...)
		at := points[i]
		p = append(p, pair{fmt.Sprintf("%g rpm", at.RPM.Value), charging.Of(&design.Charging{Output: without}).Amps(at.RPM.Value),
			at.CurrentA.Value, 0.1 * at.CurrentA.Value})
	}
	return compare(s.predicted("charging output between documented points, each left out in turn",
		"±10 %: as good as a value read off a chart", Either), p)
}

// said is a quantity as a design would give it.
func said(v float64) design.Quantity {
	return design.Quantity{Value: v, Text: strconv.FormatFloat(v, 'g', -1, 64)}
}
