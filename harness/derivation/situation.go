package derivation

import (
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/study/budget"
)

// output is what charging gives at the engine speed of a situation.
func (b *book) output(l *budget.Line) *value {
	const label = "output of the charging system"
	ch := &b.d.Charging
	if l.OutputA == 0 {
		return solved(label, amps, 0, "it gives nothing here")
	}
	cold := b.coldOutput(l)
	lost := ch.HotLost()
	if lost == 0 {
		cold.label = label
		return cold
	}
	derating := given("hot derating", percent, ch.HotDerating)
	if !ch.HotDerating.Given() {
		derating = row("hot derating, "+ch.Kind.Name, percent, lost, ch.Kind.Source)
	}
	return of(label+", hot", amps, l.OutputA, "{} × (1 − {})", cold, derating).by(cold)
}

// coldOutput is read between the points of the design.
func (b *book) coldOutput(l *budget.Line) *value {
	ch := &b.d.Charging
	speed := l.Situation.EngineRPM
	cold := l.OutputA / (1 - ch.HotLost())
	label := "output at " + quantity.Plain(speed, quantity.Speed)
	points := ch.Output
	for i, p := range points {
		last := i == len(points)-1
		if p.RPM.Value == speed || last && speed > p.RPM.Value {
			return given(label, amps, p.CurrentA)
		}
		if i == 0 || speed > p.RPM.Value {
			continue
		}
		low, high := given("point below", amps, points[i-1].CurrentA), given("point above", amps, p.CurrentA)
		from, to := given("speed of the point below", rpm, points[i-1].RPM), given("speed of the point above", rpm, p.RPM)
		return of(label, amps, cold, "{} + ({} − {}) × ({} − {}) ÷ ({} − {})", low, high, low, b.speed(l), from, to, from).
			orSolved("by a smooth curve through the points of the design")
	}
	return solved(label, amps, cold, "below the first point of the design")
}

func (b *book) speed(l *budget.Line) *value {
	for _, q := range []design.Quantity{b.d.Charging.IdleRPM, b.d.Charging.CruiseRPM} {
		if q.Given() && q.Value == l.Situation.EngineRPM {
			return given("engine speed", rpm, q)
		}
	}
	return yours("engine speed", rpm, l.Situation.EngineRPM, l.Situation.Pos)
}

// spare is what charging has left over for a situation.
func (b *book) spare(l *budget.Line) *value {
	v := b.averageView(l.Held)
	var vehicle, accessory []*value
	for _, br := range l.Draws {
		if v.sol.BranchA[br.Index] == 0 {
			continue
		}
		if br.Load != nil && br.Load.Vehicle != nil {
			vehicle = append(vehicle, v.amps(br))
		} else {
			accessory = append(accessory, v.amps(br))
		}
	}
	from, formula := []*value{b.output(l)}, "{}"
	if len(vehicle) > 0 {
		from, formula = append(from, sumOf("the machine's own loads", l.VehicleA, vehicle)), formula+" − {}"
	}
	if len(accessory) > 0 {
		from, formula = append(from, sumOf("accessories and relay coils", l.AccessoryA, accessory)), formula+" − {}"
	}
	label := "to spare"
	if l.SpareA < 0 {
		label = "short"
	}
	return of(label, amps, l.SpareA, formula, from...)
}

func sumOf(label string, a float64, list []*value) *value {
	if len(list) == 1 {
		return list[0]
	}
	return sum(label, amps, a, list...)
}

// spareTree explains what is to spare in a situation.
func (b *book) spareTree(l *budget.Line) *Tree {
	t := &Tree{Situation: l.Situation.Name, File: l.Situation.Pos.File, Line: l.Situation.Pos.Line}
	t.finish(b.spare(l), nil)
	said := "has " + quantity.Format(l.SpareA, quantity.Current) + " to spare"
	if l.SpareA < 0 {
		said = "is " + quantity.Format(-l.SpareA, quantity.Current) + " short"
	}
	t.Answer = []string{fmt.Sprintf("%s: charging %s: it gives %s, and %s are drawn, each load at its average.", l.Situation.Name, said,
		quantity.Format(l.OutputA, quantity.Current), quantity.Format(l.OutputA-l.SpareA, quantity.Current)) +
		budget.BesideAt(budget.FurtherOf(l.Held.Circuit), budget.Uncounted, l.Situation.EngineRPM),
		b.evens(l)}
	t.Next = []string{fmt.Sprintf("why \"hours %s\"", during(l.Situation.Name))}
	return t
}

func (b *book) evens(l *budget.Line) string {
	if math.IsInf(l.BatteryHours, 1) {
		return "The battery gives nothing; output and demand are even at " + l.BreaksEvenAt() + "."
	}
	return fmt.Sprintf("The battery gives the rest for %s; output and demand are even at %s.", quantity.Format(l.BatteryHours*3600, quantity.Duration), l.BreaksEvenAt())
}

// hoursTree explains how long the battery lasts in a situation.
func (b *book) hoursTree(l *budget.Line) *Tree {
	t := &Tree{Situation: l.Situation.Name, File: l.Situation.Pos.File, Line: l.Situation.Pos.Line}
	v := b.averageView(l.Mean)
	days := b.standing(l.BatteryA, v)
	t.finish(of("until a start is not sure", hours, l.BatteryHours, "24 × {}", days).by(days), nil)
	t.Answer = []string{fmt.Sprintf("%s: a full battery lasts %s until a start of the engine is not sure.", l.Situation.Name,
		quantity.Format(l.BatteryHours*3600, quantity.Duration)),
		fmt.Sprintf("It gives %s, each load at its average, at %s.", quantity.Format(l.BatteryA, quantity.Current), quantity.Format(l.BusV, quantity.Voltage))}
	return t
}

// daysTree explains how long the vehicle may stand.
func (b *book) daysTree() *Tree {
	t := &Tree{Situation: "key off"}
	t.finish(b.standing(b.r.Balanced().StandbyA, b.averageView(b.r.Balanced().Left)), nil)
	t.Answer = []string{fmt.Sprintf("A full battery starts the engine after %s with the key off.", quantity.Format(b.r.Balanced().StandbyDays*86400, quantity.Duration)),
		fmt.Sprintf("%s are drawn all the time, and the battery loses some by itself.", quantity.Format(b.r.Balanced().StandbyA, quantity.Current))}
	return t
}

// bankTree explains how long a further battery lasts in a situation.
func (b *book) bankTree(l *budget.Line, line budget.BankLine) *Tree {
	t := &Tree{Situation: l.Situation.Name, File: l.Situation.Pos.File, Line: l.Situation.Pos.Line}
	store := &line.Bank.Store
	bat := battery.New(store, b.d.NominalV())
	s := bat.Stand(line.Charge, budget.Reserve(line.Bank), line.A, battery.RatedC)
	from := exactly("full", plain, 1)
	if line.Charge != 1 {
		from = yours("charged in this situation", plain, line.Charge, l.Situation.Pos)
	}
	v := b.averageView(l.Mean)
	drain := solved("current out of it", amps, line.A, "solved together")
	for _, br := range b.c.Branches {
		if br.Kind == circuit.BatteryBranch && br.Part != nil && br.Part.Source == design.Part(line.Bank) {
			drain = v.givenA(br)
		}
	}
	if l.Day != nil {
		drain = b.overTheDay(l, line.Bank, drain)
	}
	days := standingOf(s, store, from, row("usual reserve of "+store.Chemistry.Name, plain, s.To, s.Source), drain)
	days.label = "days until it is down to its usual reserve"
	t.finish(of("until "+line.Bank.Name+" is down to its reserve", hours, line.Hours, "24 × {}", days).by(days), nil)
	down := fmt.Sprintf("down to its usual reserve of %.0f %%", 100*s.To)
	if s.To == 0 {
		down = "until it is empty: no usual reserve is known for its chemistry"
	}
	t.Answer = []string{fmt.Sprintf("%s: %s lasts %s, from %.0f %% charged %s.", l.Situation.Name, line.Bank.Name,
		quantity.Format(line.Hours*3600, quantity.Duration), 100*line.Charge, down),
		fmt.Sprintf("It gives %s, each load at its average.", quantity.Format(line.A, quantity.Current))}
	return t
}

// overTheDay is what comes out of a further battery over day and night, of what the sun puts in only what it stores.
func (b *book) overTheDay(l *budget.Line, bank *design.Bank, night *value) *value {
	const label, how = "current out of it over day and night", "(1 − {}) × {} + {} × {}"
	lit := yours("share of the day with the sun on the panels", plain, l.Situation.Sunlit(), l.Situation.Pos)
	night.label = "current out of it at night"
	sun := 0.0
	for _, br := range b.c.Branches {
		if br.Kind == circuit.BatteryBranch && br.Part != nil && br.Part.Source == design.Part(bank) {
			sun = l.Day.Given(br)
		}
	}
	day := solved("current out of it in the sun", amps, sun, "solved together")
	worth := battery.New(&bank.Store, b.d.NominalV()).WorthA(sun)
	if sun < 0 {
		c := bank.Store.Chemistry
		day = of("the same, what it stores of it", amps, worth, "{} × {}", day, row("charge efficiency", plain, worth/sun, c.Source))
	}
	return of(label, amps, (1-lit.v)*night.v+lit.v*worth, how, lit, night, lit, day)
}

// standing is the days that a full battery takes to its start reserve.
func (b *book) standing(drainA float64, v *view) *value {
	bat := battery.Of(b.d)
	s := bat.Stand(1, bat.StartReserve(battery.RatedC), drainA, battery.RatedC)
	drain := v.givenA(v.batteryBranch())
	if math.Abs(drain.v-drainA) > 1e-9 {
		drain = solved("current out of the battery", amps, drainA, "solved together")
	}
	return standingOf(s, &b.d.Battery, exactly("full", plain, 1), row("charge that a start needs", plain, s.To, s.Source), drain)
}

// standingOf is the days that a drain and self-discharge take from one charge to another.
func standingOf(s battery.Standing, store *design.Battery, from, to, drain *value) *value {
	fact := func(label string, dim *dimension, x float64) *value { return row(label, dim, x, s.Source) }
	capacity := given("capacity", ampH, store.CapacityAh)
	taken := of("of the capacity taken in a day", plain, s.DrainPerDay, "24 × {} ÷ {}", drain, capacity)
	if s.Weight != 1 {
		weight := of("how much more a drain above the rated one takes (Peukert)", plain, s.Weight, "({} ÷ {})^({} − 1)", drain,
			of("rated drain", amps, s.RatedA, "{} ÷ {}", capacity, rateH(s, store)), fact("Peukert's exponent", plain, s.Peukert))
		taken = of("of the capacity taken in a day", plain, s.DrainPerDay, "24 × {} × {} ÷ {}", drain, weight, capacity)
	}
	label := "days until a start is not sure"
	if s.LostPerDay < 1e-9*s.DrainPerDay {
		return of(label, days, s.Days, "({} − {}) ÷ {}", from, to, taken)
	}
	lost := of("of its charge lost by itself in a day", plain, s.LostPerDay, "−ln(1 − {}) ÷ 30 × 2^(({} − 20) ÷ 10)",
		fact("of its charge lost in 30 days at 20 °C", percent, s.LostPerMonth), assumed("where it stands", celsius, s.Celsius, "a battery that is cared for; doubled every 10 K"))
	if s.DrainPerDay == 0 {
		return of(label, days, s.Days, "ln({} ÷ {}) ÷ {}", from, to, lost)
	}
	return of(label, days, s.Days, "ln(({} + {} ÷ {}) ÷ ({} + {} ÷ {})) ÷ {}", from, taken, lost, to, taken, lost, lost)
}

func rateH(s battery.Standing, store *design.Battery) *value {
	if q := store.RateH; q.Given() {
		return given("hours of the rating", hours, q)
	}
	return row("hours of the rating", hours, s.CapacityAh/s.RatedA, s.Source)
}
