package chart_test

import (
	"fmt"

	"fusewright/render/chart"
	"fusewright/render/scene"
)

func ExamplePlot_Draw() {
	plot := &chart.Plot{
		X:      chart.Axis{Title: "Engine speed", Unit: "rpm"},
		Y:      chart.Axis{Title: "Current", Unit: "A", FromZero: true},
		Curves: []chart.Curve{{Name: "output", X: []float64{1300, 4000}, Y: []float64{13, 28}}},
		Levels: []chart.Level{{Name: "night ride", At: 24.6}},
	}
	sheet := scene.NewSheet(210, 148, "Budget")
	fmt.Println(plot.Draw(sheet, scene.Rect{X: 15, Y: 15, W: 180, H: 118}))
	// Output: <nil>
}
