package report

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

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
	rep := &BudgetReport{Fusewright: Version, Design: heading(r.Design), Caution: Caution}
	if r.Budget != nil {
		rep.Budget = budgetOf(r)
		rep.Together = NewTogether(r.Together())
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
		writeBudget(&b, rep.Budget)
		b.WriteString("\n")
		if err := WriteTogether(&b, rep.Together); err != nil {
			return err
		}
	}
	b.WriteString("\n" + wrap("", Caution))
	_, err := io.WriteString(w, b.String())
	return err
}

func writeBudget(b *strings.Builder, budget *Budget) {
	t := tabwriter.NewWriter(b, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "situation\tengine\toutput\tvehicle\taccessories\tspare\tbreaks even at\tbattery gives\t")
	for _, l := range budget.Lines {
		fmt.Fprintf(t, "%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t\n", l.Situation, rpm(&l.EngineRPM),
			amperes(l.OutputA), amperes(l.VehicleA), amperes(l.AccessoryA), amperes(l.SpareA),
			l.breaksEvenAt, lasts(l))
	}
	t.Flush()
	fmt.Fprintf(b, "\nwith the key off: %s, the battery still starts the engine for %s\n",
		amperes(budget.StandbyA), duration(budget.StandbyDays, 86400))
	b.WriteString("spare: at the regulated voltage; battery: at the voltage that its posts settle at, from full down to the\n" +
		"charge that still starts the engine\n")
	b.WriteString(wrap("", budget.basis))
}

func lasts(l BudgetLine) string {
	if l.BatteryA != nil && *l.BatteryA <= 0 {
		return "nothing"
	}
	return amperes(l.BatteryA) + " for " + duration(l.BatteryHours, 3600)
}

// amperes prints a current with its unit; a dash when it is not known.
func amperes(v *float64) string {
	if v == nil {
		return "–"
	}
	return quantity.Format(*v, quantity.Current)
}

// duration prints a time given in units of so many seconds.
func duration(v *float64, unitS float64) string {
	if v == nil {
		return "–"
	}
	return quantity.Format(*v*unitS, quantity.Duration)
}

func rpm(v *float64) string {
	switch {
	case v == nil:
		return "never"
	case *v == 0:
		return "stopped"
	}
	return fmt.Sprintf("%.0f rpm", *v)
}

// unit prints a figure with its unit; a figure that has no finite value is a dash.
func unit(v *float64, u string) string {
	if v == nil {
		return "–"
	}
	return figureText(*v, u)
}
