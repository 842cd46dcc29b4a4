package document

import (
	"fmt"
	"math"

	"fusewright/harness"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/study/budget"
	"fusewright/render/chart"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// The height of the picture on the budget page: as high as leaves the rest room on
// the same page, or the most where there is too much for one.
const (
	budgetChartMM      = 98.0
	leastBudgetChartMM = 58.0
	budgetChartStepMM  = 10.0
)

// Budget lays the charging budget on pages: output over engine speed with the
// demand of each situation across it, then the balance of each situation.
func Budget(r *harness.Review) ([]*scene.Sheet, error) {
	first, err := budgetPages(r, budgetChartMM)
	for mm := budgetChartMM - budgetChartStepMM; err == nil && len(first) == 2 && mm >= leastBudgetChartMM; mm -= budgetChartStepMM {
		if smaller, err := budgetPages(r, mm); err == nil && len(smaller) == 1 {
			return smaller, nil
		}
	}
	return first, err
}

func budgetPages(r *harness.Review, chartMM float64) ([]*scene.Sheet, error) {
	b := newBook("Charging budget", r)
	if r.Budget == nil {
		b.para("No budget could be made.", quiet)
		return b.finish(), nil
	}
	if len(r.Budget.Output) == 0 {
		b.para("The design gives no charging output: everything is drawn from the battery.", quiet)
	} else {
		plot := budgetPlot(r.Budget)
		at := scene.Rect{X: b.left(), Y: b.y, W: b.width(), H: chartMM}
		if err := plot.Draw(b.sheet(), at); err != nil {
			return nil, fmt.Errorf("charging budget: %w", err)
		}
		b.y += chartMM + 4
	}
	rep := report.NewBudget(r)
	b.lay(rep.Budget.Table())
	if t := rep.Together; t.Why == "" && len(t.Choices) > 0 {
		b.head("Load combinations")
		b.lay(t.Table())
		if text := t.AlwaysOn(); text != "" {
			b.y += 3
			b.para(text, plain)
		}
	}
	b.y += 3
	if text := rep.Budget.Starts(); text != "" {
		b.para(text, plain)
	}
	b.para(rep.Budget.Standby(), plain)
	b.para(rep.Budget.Basis(), quiet)
	return b.finish(), nil
}

// budgetPlot draws the demand of each running situation over the output curve.
func budgetPlot(bud *budget.Budget) *chart.Plot {
	p := &chart.Plot{
		ID: "budget", Desc: "Charging output over engine speed with the demand of each situation",
		Title: "Charging output and demand",
		X:     chart.Axis{Title: "Engine speed", Unit: "rpm"},
		Y:     chart.Axis{Title: "Current", Unit: "A", FromZero: true},
	}
	curve := chart.Curve{Name: "charging output", Heavy: true}
	for _, at := range bud.Output {
		curve.X, curve.Y = append(curve.X, at.RPM), append(curve.Y, at.CurrentA)
	}
	p.Curves = []chart.Curve{curve}
	for i, f := range bud.Further {
		curve := chart.Curve{Name: f.Charger.Name + " beside it, to " + wording.And(f.To), Look: i + 1}
		for _, at := range f.Output {
			curve.X, curve.Y = append(curve.X, at.RPM), append(curve.Y, at.CurrentA)
		}
		p.Curves = append(p.Curves, curve)
	}
	for _, l := range bud.Lines {
		if !l.Usable || l.Situation.EngineRPM == 0 {
			continue
		}
		demand := l.VehicleA + l.AccessoryA
		p.Levels = append(p.Levels, chart.Level{Name: l.Situation.Name, At: demand})
		p.Marks = append(p.Marks, chart.Mark{
			Text: quantity.Plain(math.Round(l.Situation.EngineRPM), quantity.Speed),
			X:    l.Situation.EngineRPM, Y: demand, Drop: true,
		})
	}
	return p
}

func ampere(a float64) string { return quantity.Format(a, quantity.Current) }
