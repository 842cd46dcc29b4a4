package report

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/quantity"
)

// BudgetReport is the charging budget alone, in print order.
type BudgetReport struct {
	Fusewright int       `json:"fusewright_report"`
	Design     Heading   `json:"design"`
	Budget     *Budget   `json:"budget"`
	Together   *Together `json:"together"`
	Caution    string    `json:"caution"`
}

// NewBudget makes the budget report of a review.
func NewBudget(r *harness.Review) *BudgetReport {
	rep := &BudgetReport{Fusewright: Version, Design: heading(r.Design), Caution: CautionOf(r.Design)}
	if r.Budget != nil {
		rep.Budget = BudgetOf(r)
		rep.Together = newTogether(r.Together(), r.Design.Spoken().Noun)
	}
	return rep
}

// WriteBudget prints the charging budget as a table, then what may run together.
func WriteBudget(w io.Writer, rep *BudgetReport) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n", nameOf(rep.Design))
	if rep.Budget == nil {
		b.WriteString("no charging budget\n")
	} else {
		rep.Budget.Table().write(&b)
		b.WriteString("\n" + wrap("", rep.Budget.Starts()) + wrap("", rep.Budget.Standby()))
		b.WriteString(wrap("", rep.Budget.Basis()) + "\n")
		rep.Together.write(&b)
	}
	b.WriteString("\n" + wrap("", rep.Caution))
	_, err := io.WriteString(w, b.String())
	return err
}

// Table is the balance of each situation.
func (b *Budget) Table() *Table {
	t := newTable("situation", ">engine", ">output", ">"+b.spoken.Noun, ">accessories", ">spare", ">likely demand", ">breaks even at", ">battery gives", ">at peak")
	for _, l := range b.Lines {
		if l.OutputA == nil {
			t.add(l.Situation, Engine(l.EngineRPM), "no result", "", "", "", "", "", "", "")
			continue
		}
		t.add(l.Situation, Engine(l.EngineRPM), amps(l.OutputA), amps(l.VehicleA), amps(l.AccessoryA), amps(l.SpareA), amps(l.LikelyA),
			l.breaksEvenAt, l.Lasts(), l.atPeak())
	}
	return t
}

// atPeak says what the battery gives with all that is on drawing at once.
func (l BudgetLine) atPeak() string {
	if !(*l.PeakA > leastPeakA) {
		return "nothing"
	}
	return amps(l.PeakA)
}

// Lasts says what the battery gives, and for how long.
func (l BudgetLine) Lasts() string {
	switch {
	case l.BatteryA != nil && *l.BatteryA <= 0:
		return "nothing"
	case l.BatteryHours == nil:
		return amps(l.BatteryA)
	}
	if l.Opens {
		return offWords(l.BatteryA, l.PeakA)
	}
	return amps(l.BatteryA) + " for " + duration(l.BatteryHours, 3600)
}

// Starts says what a start of the engine takes and how long the engine runs until
// the battery has it back; "" where it does not run.
func (b *Budget) Starts() string {
	var back []string
	for _, l := range b.Lines {
		switch {
		case l.EngineRPM == 0 || l.SpareA == nil:
		case l.ReturnHours == nil:
			back = append(back, "never in "+l.Situation)
		default:
			back = append(back, duration(l.ReturnHours, 3600)+" in "+l.Situation)
		}
	}
	if len(back) == 0 || math.IsNaN(b.startBackAh) {
		return ""
	}
	by := b.start.Starter
	if b.start.Assumed {
		by += ", assumed by system voltage, engine, practice and battery"
	}
	return fmt.Sprintf("A long start of %s at %s (%s) takes %s; putting it back takes %s of charge: %s. Current: %s; time: "+
		"common practice, no source.", quantity.Format(b.start.Seconds, quantity.Duration),
		quantity.Format(b.start.CurrentA, quantity.Current), by, quantity.Format(b.start.Ah(), quantity.Charge), quantity.Format(b.startBackAh, quantity.Charge),
		strings.Join(back, "; "), b.start.Source)
}

// Standby says how long the battery lasts with the key off, left alone and in the
// situations that have something on.
func (b *Budget) Standby() string {
	text := b.leftAlone()
	for _, l := range b.KeyOff {
		switch {
		case l.BatteryA == nil:
			continue
		case l.BatteryHours == nil:
			text += fmt.Sprintf(" In %q it gives %s", l.Situation, amps(l.BatteryA))
		case l.Opens:
			text += fmt.Sprintf(" In %q it gives %s", l.Situation, offWords(l.BatteryA, l.PeakA))
		default:
			text += fmt.Sprintf(" In %q the engine still starts after %[3]s at %[2]s",
				l.Situation, amps(l.BatteryA), duration(l.BatteryHours, 3600))
		}
		if peaks(*l.PeakA, *l.BatteryA) {
			text += " (" + amps(l.PeakA) + " at peak)"
		}
		text += "."
	}
	return text + b.further()
}

// further says what the further batteries give, and for how long.
func (b *Budget) further() (text string) {
	text = b.FurtherParked()
	for _, l := range slices.Concat(b.KeyOff, b.Lines) {
		for _, x := range l.Further {
			text += fmt.Sprintf(" In %q %s ", l.Situation, x.Battery)
			switch {
			case x.BatteryA == nil:
				text += "has no result."
			case *x.BatteryA <= 0:
				text += "gives nothing; " + chargeWords(x) + ", it takes " + amps(negative(x.BatteryA)) + sunWords(x) + "."
			case x.Opens:
				text += "gives " + offWords(x.BatteryA, x.PeakA) + "."
			case x.Hours == nil:
				text += "gives " + amps(x.BatteryA) + x.peakWords() + "."
			default:
				text += fmt.Sprintf("gives %s%s%s: from %s to %s after %s.", amps(x.BatteryA), x.peakWords(), sunWords(x), chargeWords(x), reserveWords(x.Reserve), duration(x.Hours, 3600))
			}
		}
	}
	return text
}

// peakWords is what it gives with all that is on at once; "" where that is no more.
func (x BankLine) peakWords() string {
	if x.PeakA == nil || !peaks(*x.PeakA, *x.BatteryA) {
		return ""
	}
	return " (" + amps(x.PeakA) + " at peak)"
}

// chargeWords is how full a further battery is.
func chargeWords(x BankLine) string {
	if x.Charge == nil {
		return "full"
	}
	return quantity.Plain(*x.Charge, quantity.Share)
}

// sunWords is the sun that a current counts with.
func sunWords(x BankLine) string {
	if x.Sun == 0 {
		return ""
	}
	return ", with the sun at " + quantity.Format(x.Sun, quantity.Share) + " on average, night counted"
}

func negative(x *float64) *float64 { y := -*x; return &y }

// FurtherParked says what the further batteries give with the key off and nothing on, and
// for how long; "" where they give nothing.
func (b *Budget) FurtherParked() (text string) {
	for _, x := range b.Further {
		if x.gives() {
			text += fmt.Sprintf(" With the key off %s gives %s: from full to %s after %s.", x.Battery, amps(x.BatteryA),
				reserveWords(x.Reserve), duration(x.Hours, 3600))
		}
	}
	return text
}

// gives tells whether a further battery gives something for a time that is known.
func (x BankLine) gives() bool {
	return x.BatteryA != nil && *x.BatteryA > 0 && x.Hours != nil
}

// offWords is a current on which a protection switches its battery off.
func offWords(mean, peak *float64) string {
	most := max(*mean, *peak)
	return amps(&most) + " until its protection switches it off"
}

// banksGive says in a line what the further batteries give; "" where they give nothing.
func banksGive(list []BankLine) (text string) {
	for _, x := range list {
		switch {
		case x.gives() && x.Opens:
			text += "; " + x.Battery + " gives " + offWords(x.BatteryA, x.PeakA)
		case x.gives():
			text += "; " + x.Battery + " gives " + amps(x.BatteryA) + x.peakWords() + " for " + duration(x.Hours, 3600)
		}
	}
	return text
}

// reserveWords is down to where a further battery is used.
func reserveWords(charge float64) string {
	if charge == 0 {
		return "empty"
	}
	return "its reserve of " + quantity.Plain(charge, quantity.Share)
}

func (b *Budget) leftAlone() string {
	if b.StandbyA != nil && *b.StandbyA == 0 {
		return "With the key off nothing is drawn from the battery, as far as the design says."
	}
	last := "an unknown time"
	if b.StandbyDays != nil {
		last = duration(b.StandbyDays, 86400)
	}
	return "With the key off " + amps(b.StandbyA) + " is drawn: the engine still starts after " + last + " " + b.spoken.Parked + "."
}

// Basis says what the figures count with.
func (b *Budget) Basis() string {
	return b.basis + " The " + b.spoken.Noun + "'s own loads count with their duty, accessories with theirs, and what a situation has on for a while at " +
		"a time counts at least once in it, all at the regulated voltage. A situation is taken to last " + b.lasts + " with the key on and " +
		b.lastsOff + " with it off. " +
		"What the battery gives is on average, at the voltage it settles at, where constant-power loads draw more and " +
		"others less; times count from full down to the charge that still starts the engine; a battery gives less at a " +
		"high current, which is counted (Peukert's law); at peak is with all that is on drawing at once."
}
