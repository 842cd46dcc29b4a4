package chart_test

import (
	"fmt"
	"math"

	"fusewright/render/chart"
	"fusewright/render/scene"
)

// The pictures that the program draws, here with invented numbers.
var samples = []struct {
	name          string
	width, height float64
	draw          func(sheet *scene.Sheet, in scene.Rect) error
}{
	{"budget", 180, 110, func(s *scene.Sheet, in scene.Rect) error { return budget().Draw(s, in) }},
	{"fuse", 150, 150, func(s *scene.Sheet, in scene.Rect) error { return fuse().Draw(s, in) }},
	{"ride", 180, 150, func(s *scene.Sheet, in scene.Rect) error { return ride().Draw(s, in) }},
	{"profile", 180, 100, func(s *scene.Sheet, in scene.Rect) error { return profile().Draw(s, in) }},
	{"loading", 160, 100, func(s *scene.Sheet, in scene.Rect) error { _, err := loading().Draw(s, in); return err }},
	{"crowd", 150, 100, func(s *scene.Sheet, in scene.Rect) error { return crowd().Draw(s, in) }},
}

// budget is charging output against engine speed with loads over it.
func budget() *chart.Plot {
	return &chart.Plot{
		ID: "budget", Title: "Charging output against engine speed",
		Desc: "Output rises from 13 A at 1300 rpm to 31 A at 6000 rpm.",
		X:    chart.Axis{Title: "Engine speed", Unit: "rpm"},
		Y:    chart.Axis{Title: "Current at the battery", Unit: "A", FromZero: true},
		Curves: []chart.Curve{
			{Name: "output, warm", X: []float64{1000, 1300, 2500, 4000, 6000}, Y: []float64{8, 13, 22, 28, 31}, Heavy: true, Markers: true},
			{Name: "output, hot", X: []float64{1000, 1300, 2500, 4000, 6000}, Y: []float64{7, 11.5, 19.4, 24.6, 27.3}},
		},
		Levels: []chart.Level{
			{Name: "night ride 24.6 A", At: 24.6},
			{Name: "day ride 15.2 A", At: 15.2},
			{Name: "vehicle alone 13.9 A", At: 13.9},
			{Name: "idle", At: 1300, OnX: true},
			{Name: "cruise", At: 4200, OnX: true},
		},
		Marks: []chart.Mark{
			{Text: "night ride breaks even at 3150 rpm", X: 3150, Y: 24.6, Drop: true},
			{Text: "day ride: 1593 rpm", X: 1593, Y: 15.2, Drop: true},
		},
		Note: "Invented figures. Output after the maker's curve; check against the machine in hand.",
	}
}

// fuse is a time-current picture in decades.
func fuse() *chart.Plot {
	times := func(currents []float64, rating, k float64) (xs, ys []float64) {
		for _, i := range currents {
			xs, ys = append(xs, i), append(ys, k/math.Pow(i/rating-1, 2))
		}
		return xs, ys
	}
	var currents []float64
	for i := 17.0; i < 400; i *= 1.05 {
		currents = append(currents, i)
	}
	x, low := times(currents, 15, 0.2)
	_, high := times(currents, 15, 6)
	var wireX, wireY []float64
	for i := 30.0; i < 1000; i *= 1.1 {
		wireX, wireY = append(wireX, i), append(wireY, 22000/(i*i))
	}
	return &chart.Plot{
		ID: "fuse", Title: "F3 15 A blade and the wire behind it",
		X:     chart.Axis{Title: "Current", Unit: "A", Log: true, Min: 10, Max: 1000},
		Y:     chart.Axis{Title: "Time", Unit: "s", Log: true, Min: 0.01, Max: 1000},
		Bands: []chart.Band{{Name: "F3 opens", X: x, Low: low, High: high}},
		Curves: []chart.Curve{
			{Name: "1.5 mm² wire to its limit", X: wireX, Y: wireY, Heavy: true},
			{Name: "lamp inrush", X: []float64{60, 40, 20, 14}, Y: []float64{0.01, 0.03, 0.1, 0.4}, Markers: true},
		},
		Levels: []chart.Level{{Name: "load 9.8 A", At: 9.8, OnX: true}, {Name: "fault 310 A", At: 310, OnX: true}},
		Marks:  []chart.Mark{{Text: "clears in 0.02 s at most", X: 310, Y: 0.0155}},
	}
}

// ride is three panels over time.
func ride() *chart.Panels {
	var minutes, charge, volts, amps []float64
	soc := 92.0
	for m := 0.0; m <= 95; m += 0.5 {
		i := 3.2
		switch {
		case m < 6:
			i = -9.5
		case m < 50:
			i = 4.5 * math.Exp(-(m-6)/30)
		case m < 62:
			i = -11
		}
		soc += i * 0.5 / 60 / 14 * 100
		minutes, charge, amps = append(minutes, m), append(charge, soc), append(amps, i)
		volts = append(volts, map[bool]float64{true: 14.2, false: 12.55 + soc/400}[i > 0])
	}
	spans := []chart.Span{{Name: "town", From: 0, To: 6}, {Name: "open road", From: 6, To: 50}, {Name: "at rest", From: 50, To: 62}, {Name: "home", From: 62, To: 95}}
	time := chart.Axis{Title: "Time", Unit: "min"}
	return &chart.Panels{ID: "ride", Plots: []*chart.Plot{
		{X: time, Spans: spans, Y: chart.Axis{Title: "State of charge", Unit: "%"}, Curves: []chart.Curve{{X: minutes, Y: charge}},
			Levels: []chart.Level{{Name: "start limit", At: 85}}},
		{Y: chart.Axis{Title: "Voltage at the battery", Unit: "V"}, Curves: []chart.Curve{{X: minutes, Y: volts}}},
		{Y: chart.Axis{Title: "Current into the battery", Unit: "A", FromZero: true}, Curves: []chart.Curve{{X: minutes, Y: amps}}},
	}, Note: "Invented ride."}
}

// profile is the voltage along a circuit from the battery and back.
func profile() *chart.Panels {
	names := []string{"battery +", "main fuse F1", "relay K1 30–87", "block way 1", "switch S1", "left lamp +", "left lamp −", "frame stud", "battery −"}
	var ticks []chart.Tick
	var at []float64
	for i, name := range names {
		ticks = append(ticks, chart.Tick{At: float64(i), Text: name})
		at = append(at, float64(i))
	}
	feed := []float64{13.9, 13.84, 13.79, 13.71, 13.6, 13.45}
	back := []float64{0.17, 0.05, 0}
	return &chart.Panels{ID: "profile", Plots: []*chart.Plot{
		{
			X: chart.Axis{Ticks: ticks, Min: -0.5, Max: 8.5}, Y: chart.Axis{Title: "Feed, against battery −", Unit: "V", Min: 13, Max: 14},
			Curves: []chart.Curve{{X: at[:6], Y: feed, Markers: true, Heavy: true}},
			Levels: []chart.Level{{Name: "3 % limit", At: 13.48}},
		},
		{
			Y:      chart.Axis{Title: "Return, against battery −", Unit: "V", FromZero: true},
			Curves: []chart.Curve{{X: at[6:], Y: back, Markers: true}},
		},
	}}
}

// loading is how far wires are loaded.
func loading() *chart.Bars {
	b := &chart.Bars{
		ID:   "loading",
		Axis: chart.Axis{Title: "Share of the allowed current", Unit: "%"}, Limit: 100, LimitName: "allowed",
	}
	for i, v := range []float64{112, 98.4, 95, 71, 55, 43, 41, 30, 22, 12, 3, 0} {
		b.Bars = append(b.Bars, chart.Bar{Name: fmt.Sprintf("W%d RD 1.5 mm²", i+1), Value: v, Text: fmt.Sprintf("%g %%", v)})
	}
	return b
}

// crowd is a picture with no room for its names.
func crowd() *chart.Plot {
	p := &chart.Plot{ID: "crowd", Title: "Crowded", X: chart.Axis{Title: "x", Min: 0, Max: 10}, Y: chart.Axis{Title: "y"}}
	for i := range 24 {
		c := chart.Curve{Name: fmt.Sprintf("curve number %d", i+1)}
		for x := 0.0; x < 12; x += 0.1 {
			c.X, c.Y = append(c.X, x), append(c.Y, math.Sin(x*3+float64(i)*0.5))
		}
		p.Curves = append(p.Curves, c)
	}
	return p
}
