package document

import (
	"fmt"
	"math"

	"fusewright/harness"
	"fusewright/harness/study/ride"
	"fusewright/render/chart"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// rideChartMM is the least height of a ride's picture: two rides go on a page. That of the last
// ride grows into what its page leaves, to mostRideMM.
const rideChartMM, mostRideMM = 74.0, 150.0

// The looks of what is no battery; those have the first ones, the same in every picture.
const lookReserve, lookLoads, lookCharging = 4, 5, 6

// Rides lays the rides on pages, two on each where their legs leave the room: charge,
// voltage and currents over time, then the legs in numbers.
func Rides(r *harness.Review, list []*ride.Result) ([]*scene.Sheet, error) {
	return pulledBack(func() *book { return newBook("Rides", r) }, func(b *book) error {
		b.para("Loads count with their duty, those that a leg lists at least once for as long as they are on at "+
			"once; the charging system with its hot output. The battery is new, and follows "+
			"published tables of its chemistry; age and neglect reduce all of them. The numbers along the top of a chart are the legs in its table.", smallQuiet)
		for i, result := range list {
			row := report.RideOf(result, r.Cranking)
			b.head("Ride: " + result.Ride.Name)
			below := 14 + 4.7*float64(len(row.Legs)*(1+len(row.Further)))
			b.need(rideChartMM + below)
			high := rideChartMM
			if i == len(list)-1 {
				high = min(max(high, b.bottom()-b.y-below-wordsMM(b, &row)), mostRideMM)
			}
			at := scene.Rect{X: b.left(), Y: b.y, W: b.width(), H: high}
			if err := ridePanels(i, result).Draw(b.sheet(), at); err != nil {
				return fmt.Errorf("ride %s: %w", result.Ride.Name, err)
			}
			b.y += high + 2
			b.lay(row.Table())
			b.y += 1
			rideWords(b, &row)
		}
		if len(list) == 0 {
			b.para("The design has no rides.", quiet)
		}
		return nil
	})
}

// timeAxis chooses minutes or hours.
func timeAxis(r *ride.Result) (axis chart.Axis, seconds float64) {
	last := r.Points[len(r.Points)-1].TimeS
	if last > 5*3600 {
		return chart.Axis{Title: "Time", Unit: "h"}, 3600
	}
	return chart.Axis{Title: "Time", Unit: "min"}, 60
}

// ridePanels draws three pictures over one time axis.
func ridePanels(place int, r *ride.Result) *chart.Panels {
	axis, seconds := timeAxis(r)
	series := func(name string, look int, value func(ride.Point) float64) chart.Curve {
		c := chart.Curve{Name: name, Heavy: look < lookReserve, Look: look}
		for _, p := range r.Points {
			if y := value(p); !math.IsNaN(y) { // of a battery that is empty
				c.X, c.Y = append(c.X, p.TimeS/seconds), append(c.Y, y)
			}
		}
		return c
	}
	charge := &chart.Plot{X: axis, Y: chart.Axis{Title: "Charge", Unit: "%"},
		Curves: []chart.Curve{series(first(r, "charge"), 1, func(p ride.Point) float64 { return 100 * p.Charge }),
			reserveCurve(r, seconds)}}
	for i, l := range r.Legs {
		charge.Spans = append(charge.Spans, chart.Span{Name: fmt.Sprint(i + 1), From: l.FromS / seconds, To: l.ToS / seconds})
	}
	if !math.IsNaN(r.ReserveS) {
		charge.Marks = []chart.Mark{{Text: "start not certain", X: r.ReserveS / seconds, Y: chargeAt(r, r.ReserveS), Drop: true}}
	}
	posts := &chart.Plot{X: axis, Y: postsAxis(r),
		Curves: []chart.Curve{series(first(r, "battery posts"), 1, func(p ride.Point) float64 { return p.BusV })}}
	amps := &chart.Plot{X: axis, Y: chart.Axis{Title: "Current", Unit: "A", FromZero: true},
		Curves: []chart.Curve{
			series("into "+first(r, "the battery"), 1, func(p ride.Point) float64 { return -p.BatteryA }),
			series("charging system", lookCharging, func(p ride.Point) float64 { return p.ChargingA }),
			series("loads", lookLoads, func(p ride.Point) float64 { return p.LoadA })}}
	for i, b := range r.Banks {
		of := func(value func(ride.BankPoint) float64) func(ride.Point) float64 {
			return func(p ride.Point) float64 { return value(p.Banks[i]) }
		}
		charge.Curves = append(charge.Curves, series(b.Bank.Name, i+2, of(func(p ride.BankPoint) float64 { return 100 * p.Charge })))
		posts.Curves = append(posts.Curves, series(b.Bank.Name, i+2, of(func(p ride.BankPoint) float64 { return p.V })))
		amps.Curves = append(amps.Curves, series("into "+b.Bank.Name, i+2, of(func(p ride.BankPoint) float64 { return -p.A })))
	}
	return &chart.Panels{ID: fmt.Sprintf("ride-%d", place+1),
		Desc:  "State of charge, voltage of the battery posts and currents over the ride " + r.Ride.Name,
		Plots: []*chart.Plot{charge, posts, amps}}
}

// first is how a curve of the first battery is called: where it is not the only one, as such.
func first(r *ride.Result, alone string) string {
	if len(r.Banks) > 0 {
		return "first battery"
	}
	return alone
}

// reserveCurve is the start reserve, leg by leg.
func reserveCurve(r *ride.Result, seconds float64) chart.Curve {
	c := chart.Curve{Name: "start reserve", Look: lookReserve}
	for _, p := range r.Points {
		c.X, c.Y = append(c.X, p.TimeS/seconds), append(c.Y, 100*p.Reserve)
	}
	return c
}

// chargeAt is the charge in per cent at a moment.
func chargeAt(r *ride.Result, timeS float64) float64 {
	at := r.Points[0]
	for _, p := range r.Points {
		if p.TimeS > timeS {
			break
		}
		at = p
	}
	return 100 * at.Charge
}

// wordsMM is the height of rideWords.
func wordsMM(b *book, r *report.Ride) float64 {
	high := 0.0
	add := func(text string, style scene.TextStyle) {
		high += scene.LineHeightMM(style.SizeMM)*float64(len(scene.Wrap(text, style.SizeMM, b.width(), style.Face))) + 2
	}
	add(r.Outcome(), bold)
	for _, text := range r.Remarks() {
		add(text, smallQuiet)
	}
	return high
}

// rideWords says what comes of it and what it rests on.
func rideWords(b *book, r *report.Ride) {
	b.para(r.Outcome(), bold)
	for _, text := range r.Remarks() {
		b.para(text, smallQuiet)
	}
}

// leastPostsV is the least range of the voltage axis: a picture that spreads a
// few millivolts over its height shows drama where there is none.
const leastPostsV = 1.0

// postsAxis spans the voltages of the ride, in whole half volts.
func postsAxis(r *ride.Result) chart.Axis {
	axis := chart.Axis{Title: "Posts", Unit: "V"}
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range r.Points {
		low, high = math.Min(low, p.BusV), math.Max(high, p.BusV)
		for _, b := range p.Banks {
			if !math.IsNaN(b.V) {
				low, high = math.Min(low, b.V), math.Max(high, b.V)
			}
		}
	}
	if high-low >= leastPostsV || math.IsInf(low, 0) || math.IsNaN(high-low) {
		return axis
	}
	middle := (low + high) / 2
	axis.Min = math.Floor(2*(middle-leastPostsV/2)) / 2
	axis.Max = math.Ceil(2*(middle+leastPostsV/2)) / 2
	return axis
}
