package page

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/outlook"
)

func rpm(v float64) string { return quantity.Plain(math.Round(v), quantity.Speed) }

func hours(h float64) string { return quantity.Format(h*3600, quantity.Duration) }

// split parts a figure from its unit.
func split(text string) (value, unit string) {
	value, unit, _ = strings.Cut(text, " ")
	return value, unit
}

// sentences say what the picture shows.
func sentences(r *harness.Review, f *outlook.Figures) (says []string) {
	switch running := f.State.SpeedPerMin > 0; {
	case !r.Design.Charging.Present():
		return []string{"The design gives no charging output; all comes from the battery: " + amps(f.BatteryA) + "."}
	case f.CutOff:
		return []string{"Nothing from the engine reaches the battery: its cable is open or blocked."}
	case running:
		says = append(says, fmt.Sprintf("At %s the charging system gives %s and %s is drawn.", rpm(f.State.SpeedPerMin), amps(f.OutputA), amps(f.VehicleA+f.AccessoryA)))
	default:
		of := "battery"
		if len(f.Banks) > 0 {
			of = "batteries"
		}
		says = append(says, fmt.Sprintf("With the engine stopped %s comes out of the %s.", amps(outlook.OutA(f.Line)), of))
	}
	switch {
	case math.IsNaN(f.RunningA):
	case math.IsNaN(f.BreakEvenRPM):
		says = append(says, fmt.Sprintf("With it running %s is drawn, which no speed covers.", amps(f.RunningA)))
	case f.BreakEvenRPM <= r.Design.Charging.IdleRPM.Value:
		says = append(says, "Output meets demand from idle on.")
	default:
		says = append(says, fmt.Sprintf("Output meets demand from %s.", rpm(f.BreakEvenRPM)))
	}
	if f.State.SpeedPerMin > 0 {
		says = append(says, fmt.Sprintf("With the tolerances of the loads the demand is likely to reach %s.", amps(f.LikelyA)))
	}
	return says
}

// bigs are the large figures, the first of them the answer.
func bigs(r *harness.Review, f *outlook.Figures) (list []Big) {
	running := f.State.SpeedPerMin > 0 && r.Design.Charging.Present()
	add := func(label, text, tone, note string) {
		value, unit := split(text)
		list = append(list, Big{label, value, unit, note, tone})
	}
	switch {
	case running && f.SpareA < 0:
		add("Short", amps(f.SpareA), "short", "")
	case running:
		add("To spare", amps(f.SpareA), "spare", "")
	case len(f.Banks) > 0:
		add("Out of all batteries", amps(outlook.OutA(f.Line)), "", "")
	default:
		add("Out of the battery", amps(math.Max(f.BatteryA, 0)), "", "")
	}
	list = append(list, banks(f)...)
	battery := "A full battery"
	if len(f.Banks) > 0 {
		battery = "The starting battery, full,"
	}
	if f.State.Charge < 1 {
		battery = "The battery at " + quantity.Format(f.State.Charge, quantity.Share)
	}
	switch {
	case f.Opens:
		list = append(list, Big{Label: battery + " covers it for", Value: "no time", Note: "its protection switches it off", Tone: "short"})
	case f.BatteryA > 0 && math.IsNaN(f.Hours):
		list = append(list, Big{Label: battery + " covers it", Value: "not known", Note: "the design gives no capacity"})
	case f.BatteryA > 0 && f.Hours == 0:
		list = append(list, Big{Label: battery, Value: "may not start", Tone: "short", Note: reserve(f)})
	case f.BatteryA > 0:
		add(battery+" covers it for", hours(f.Hours), "", "then it may not start: "+reserve(f))
	case running && f.ReturnHours > 0 && !math.IsInf(f.ReturnHours, 0):
		add("A start is given back in", hours(f.ReturnHours), "", "the battery holds "+quantity.Format(f.BusV, quantity.Voltage))
	}
	if running && f.SpareA < 0 {
		list = append(list, even(f))
	}
	if r.Design.Charging.Present() && f.State.KeyOn {
		for _, e := range f.Elsewhere {
			tone := "spare"
			if e.SpareA < 0 {
				tone = "short"
			}
			list = append(list, Big{Label: fmt.Sprintf("The same at %s, %s", e.Name, rpm(e.SpeedPerMin)), Value: signed(e.SpareA), Tone: tone})
		}
	}
	return append(list, parkedBig(r, f.State, f.Parked))
}

// banks are what further batteries give, the one that is down first before the others.
func banks(f *outlook.Figures) (list []Big) {
	lines := slices.Clone(f.Banks)
	slices.SortStableFunc(lines, func(a, b budget.BankLine) int { return cmp.Compare(a.Hours, b.Hours) })
	for _, b := range lines {
		switch {
		case b.A <= 0:
		case b.Opens:
			list = append(list, Big{Label: b.Bank.Name + " gives " + amps(max(b.A, b.PeakA)) + " for", Value: "no time", Note: "its protection switches it off", Tone: "short"})
		case math.IsNaN(b.Hours):
			list = append(list, Big{Label: b.Bank.Name + " gives " + amps(b.A) + " for", Value: "not known", Note: "the design gives no capacity"})
		default:
			value, unit := split(hours(b.Hours))
			note := "from " + quantity.Format(b.Charge, quantity.Share) + " until it is empty"
			if down := budget.Reserve(b.Bank); down > 0 {
				note = fmt.Sprintf("from %s down to %s: below that a discharge shortens its life", quantity.Format(b.Charge, quantity.Share), quantity.Format(down, quantity.Share))
			}
			list = append(list, Big{b.Bank.Name + " gives " + amps(b.A) + " for", value, unit, note, ""})
		}
	}
	return list
}

func reserve(f *outlook.Figures) string {
	return fmt.Sprintf("%s is kept for that at %s", quantity.Format(f.Reserve, quantity.Share), quantity.Format(f.State.AirC, quantity.Temperature))
}

// even says what brings demand and output together.
func even(f *outlook.Figures) Big {
	b := Big{Label: "To come even", Value: "drive faster", Note: "at no speed"}
	var off []string
	for _, s := range f.Shed {
		if s.Off {
			break
		}
		if off = append(off, s.Name); s.LeftA >= 0 {
			b.Value = wording.Some(off, 3) + " off"
			b.Note = ""
			break
		}
	}
	covered := b.Note == ""
	switch {
	case math.IsNaN(f.BreakEvenRPM) && !covered:
		b.Value, b.Note = "not by switching off", "what may be switched off is not enough, and no speed covers it"
	case math.IsNaN(f.BreakEvenRPM):
		b.Note = "no speed covers it"
	case covered:
		b.Note = "or keep above " + rpm(f.BreakEvenRPM)
	default:
		b.Value, b.Note = "keep above "+rpm(f.BreakEvenRPM), "what may be switched off is not enough"
	}
	return b
}

func parkedBig(r *harness.Review, s outlook.State, left outlook.Parked) Big {
	b := Big{Label: "After " + hours(s.ParkedH) + " " + r.Design.Spoken().Parked, Value: "not known", Note: "the design gives no capacity"}
	if math.IsNaN(left.Charge) {
		return b
	}
	rest := quantity.Format(left.Charge, quantity.Share) + " left"
	if left.Starts {
		b.Value = "starts, " + rest
	} else {
		b.Value, b.Tone = "may not start, "+rest, "short"
	}
	b.Note = "everything off, " + amps(left.DrainA) + " drawn: starts for " + hours(24*left.Days) + " from full"
	return b
}
