package handbook

import (
	"strconv"

	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
)

// BatteryInput asks how long a battery lasts at a steady current.
type BatteryInput struct {
	CapacityAh float64
	RateH      float64 // hours of discharge that the capacity is rated for
	Peukert    float64 // 1 = no rate effect
	CurrentA   float64
	// KeepShare is left in the battery, 0..1: the reserve for starting.
	KeepShare float64
	Chemistry string // what the figures are of; "" = not said
}

// Battery answers by Peukert's law with the rated hour:
// t = H · (C / (I · H))^n. Currents below the rated one give no bonus: n = 1
// there. Constant current and temperature, new battery.
func Battery(in BatteryInput) (*Answer, error) {
	var k check
	k.positive("the capacity", in.CapacityAh, 1e5, "Ah")
	k.positive("the hour rate", in.RateH, 1000, "h")
	k.between("the Peukert exponent", in.Peukert, 1, 2, "")
	k.positive("the current", in.CurrentA, mostA, "A")
	k.between("the share kept", 100*in.KeepShare, 0, 99, "%")
	if err := k.err(); err != nil {
		return nil, err
	}
	a := newAnswer("battery", "How long a battery lasts")
	if in.Chemistry != "" {
		a.inText("chemistry", in.Chemistry)
	}
	a.in("capacity", in.CapacityAh, quantity.Charge)
	a.in("rated over", in.RateH*3600, quantity.Duration)
	a.Inputs = append(a.Inputs, Value{Name: "Peukert exponent", Number: in.Peukert,
		Text: strconv.FormatFloat(in.Peukert, 'g', 6, 64)})
	a.in("current", in.CurrentA, quantity.Current)
	hours := battery.PeukertHours(in.CapacityAh, in.RateH, in.Peukert, in.CurrentA)
	rated := in.CapacityAh / in.RateH
	n := in.Peukert
	if in.CurrentA < rated {
		n = 1
		a.warn("the current is below the rated %.3g A: no rate effect and no bonus counted", rated)
	}
	a.step("t = H · (C / (I · H))^n", "t = %g h · (%g Ah / (%g A · %g h))^%g = %.4g h",
		in.RateH, in.CapacityAh, in.CurrentA, in.RateH, n, hours)
	a.step("Q = I · t", "Q = %g A · %.4g h = %.4g Ah", in.CurrentA, hours, in.CurrentA*hours)
	a.out("time to empty", hours*3600, quantity.Duration)
	a.out("charge given", in.CurrentA*hours, quantity.Charge)
	a.out("share of the capacity", in.CurrentA*hours/in.CapacityAh, quantity.Share)
	if in.KeepShare > 0 {
		a.in("kept in the battery", in.KeepShare, quantity.Share)
		a.out("time to the reserve", hours*3600*(1-in.KeepShare), quantity.Duration)
	}
	a.source("Peukert's law; no bonus below the rated current as in battery monitor manuals")
	a.warn("cold, age and sulphation take more: half the capacity is common in winter (common practice, no source)")
	return a, nil
}
