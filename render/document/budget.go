package document

import (
	"fmt"
	"math"

	"fusewright/harness"
	"fusewright/harness/design/quantity"
	"fusewright/harness/study/budget"
	"fusewright/render/chart"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// budgetChartMM is the height of the picture on the budget page.
const budgetChartMM = 98.0

// Budget lays the charging budget on pages: output over engine speed with the
// demand of each situation across it, then the balance of each situation.
func Budget(r *harness.Review) ([]*scene.Sheet, error) {
	b := newBook("Charging budget", r)
	quiet := scene.TextStyle{SizeMM: textSizeMM, Colour: grey}
	if r.Budget == nil {
		b.para("No budget could be made.", quiet)
		return b.finish(), nil
	}
	if len(r.Budget.Output) == 0 {
		b.para("The design gives no charging output: everything is drawn from the battery.", quiet)
	} else {
		plot := budgetPlot(r.Budget)
		at := scene.Rect{X: b.left(), Y: b.y, W: b.width(), H: budgetChartMM}
		if err := plot.Draw(b.sheet(), at); err != nil {
			return nil, fmt.Errorf("charging budget: %w", err)
		}
		b.y += budgetChartMM + 4
	}
	budgetTable(b, r.Budget)
	togetherSection(b, r)
	b.y += 3
	b.para(standbyText(r.Budget), scene.TextStyle{SizeMM: textSizeMM, Colour: ink})
	b.para(budget.OutputBasis(r.Design)+" The vehicle's own "+
		"loads count with their duty, accessories with theirs, all at the regulated voltage. What the battery gives is at the voltage that its posts "+
		"settle at, where loads that keep their power take more and others less; times count from a full one down to the "+
		"charge that still starts the engine; a battery gives less at a high current, which is counted (Peukert's law).", quiet)
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

func budgetTable(b *book, bud *budget.Budget) {
	t := b.newTable([]column{
		{head: "situation", wide: 40, face: scene.Bold},
		{head: "engine", wide: 19, align: scene.Right},
		{head: "output", wide: 18, align: scene.Right},
		{head: "vehicle", wide: 18, align: scene.Right},
		{head: "accessories", wide: 22, align: scene.Right},
		{head: "spare", wide: 18, align: scene.Right, face: scene.Bold},
		{head: "breaks even at", wide: 24, align: scene.Right},
		{head: "battery gives", wide: 25, align: scene.Right},
	})
	for _, l := range bud.Lines {
		if !l.Usable {
			t.row(l.Situation.Name, engine(l.Situation.EngineRPM), "no result", "", "", "", "", "")
			continue
		}
		t.row(l.Situation.Name, engine(l.Situation.EngineRPM), ampere(l.OutputA), ampere(l.VehicleA),
			ampere(l.AccessoryA), ampere(l.SpareA), l.BreaksEvenAt(), lasts(l))
	}
}

func engine(rpm float64) string {
	if rpm == 0 {
		return "stopped"
	}
	return quantity.Plain(math.Round(rpm), quantity.Speed)
}

func ampere(a float64) string { return quantity.Format(a, quantity.Current) }

func lasts(l *budget.Line) string {
	switch {
	case l.BatteryA <= 0:
		return "nothing"
	case math.IsNaN(l.BatteryHours):
		return ampere(l.BatteryA)
	}
	return ampere(l.BatteryA) + " for " + quantity.Format(l.BatteryHours*3600, quantity.Duration)
}

func standbyText(bud *budget.Budget) string {
	if bud.StandbyA == 0 {
		return "With the key off nothing is drawn from the battery, as far as the design says."
	}
	return fmt.Sprintf("With the key off the battery loses %s and still starts the engine for %s.",
		quantity.Format(bud.StandbyA, quantity.Current), quantity.Format(bud.StandbyDays*86400, quantity.Duration))
}

// choicesShown is how many sets a cell lists; the command prints more.
const choicesShown = 3

// togetherSection lists what may run at once in each situation.
func togetherSection(b *book, r *harness.Review) {
	plan := report.NewTogether(r.Together())
	if plan.Why != "" || len(plan.Choices) == 0 {
		return
	}
	b.head("What may run together")
	t := b.newTable([]column{
		{head: "situation", wide: 34, face: scene.Bold},
		{head: "for accessories", wide: 24, align: scene.Right},
		{head: "together", wide: 78},
		{head: "short by; switch off first", wide: 48},
	})
	for _, c := range plan.Choices {
		t.row(c.Name, ampereOrNone(c.CapacityA), c.SetsText(len(plan.Items), choicesShown), c.OverdrawText())
	}
}

func ampereOrNone(a *float64) string {
	if a == nil {
		return "–"
	}
	return ampere(*a)
}
