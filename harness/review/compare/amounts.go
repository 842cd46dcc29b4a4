package compare

import (
	"math"

	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/study/budget"
	"fusewright/harness/workshop/purchase"
)

// least is the difference below which two figures of the budget count as equal:
// a milliampere, or a tenth of a day, and half a per cent of the figure, so that
// no change is listed that three printed digits do not show.
const (
	leastA     = 1e-3
	leastDays  = 0.1
	leastShare = 0.005
)

// budgets compares the balance of situations of the same name, and standby.
func budgets(old, changed *budget.Budget, parked string) []Amount {
	var list []Amount
	if old == nil || changed == nil {
		return nil
	}
	before := map[string]float64{}
	for _, l := range old.Lines {
		before[l.Situation.Name] = spare(l)
	}
	seen := map[string]bool{}
	for _, l := range changed.Lines {
		name := l.Situation.Name
		seen[name] = true
		was, ok := before[name]
		if !ok {
			was = math.NaN()
		}
		list = addAmount(list, Amount{Name: "spare current, " + name, Old: was, New: spare(l), Unit: "A"}, leastA, -1)
	}
	for _, l := range old.Lines {
		if !seen[l.Situation.Name] {
			list = addAmount(list, Amount{Name: "spare current, " + l.Situation.Name, Old: spare(l),
				New: math.NaN(), Unit: "A"}, leastA, -1)
		}
	}
	list = addAmount(list, Amount{Name: "drawn with the key off", Old: old.StandbyA, New: changed.StandbyA,
		Unit: "A"}, leastA, +1)
	list = addAmount(list, Amount{Name: "engine still starts, " + parked, Old: old.StandbyDays,
		New: changed.StandbyDays, Unit: "days"}, leastDays, -1)
	return byConcern(list, func(a Amount) float64 { return a.Concern })
}

// spare is what a situation leaves over; NaN when it could not be solved.
func spare(l *budget.Line) float64 {
	if !l.Usable {
		return math.NaN()
	}
	return l.SpareA
}

// addAmount appends a figure that differs by at least so much.
func addAmount(list []Amount, a Amount, least float64, risk float64) []Amount {
	gone, none := math.IsNaN(a.New), math.IsNaN(a.Old)
	switch {
	case gone && none, a.Old == a.New:
		return list
	case none:
		a.What = Added
	case gone:
		a.What = Removed
	case least > 0 && math.Abs(a.New-a.Old) < math.Max(least, leastShare*math.Abs(a.Old)):
		return list
	default:
		a.What = Changed
		a.Concern = risk * (a.New - a.Old)
	}
	return append(list, a)
}

// purchases compares what is to be bought, line by line.
func purchases(old, changed *circuit.Circuit) []Amount {
	was, is := purchase.List(old).Lines, purchase.List(changed).Lines
	before := map[string]*purchase.Line{}
	for _, l := range was {
		before[lineName(l)] = l
	}
	seen := map[string]bool{}
	var list []Amount
	for _, l := range is {
		name := lineName(l)
		seen[name] = true
		a := Amount{Name: name, Old: math.NaN(), New: l.Buy, Unit: l.SoldAs}
		if o := before[name]; o != nil {
			a.Old = o.Buy
		}
		list = addAmount(list, a, 0, 0)
	}
	for _, l := range was {
		if name := lineName(l); !seen[name] {
			list = addAmount(list, Amount{Name: name, Old: l.Buy, New: math.NaN(), Unit: l.SoldAs}, 0, 0)
		}
	}
	return list
}

// lineName tells every line from all others: covers of one kind by their size.
func lineName(l *purchase.Line) string {
	name := string(l.Group) + ": " + l.Item
	if mm := l.SizeMm(); mm > 0 {
		name += ", bundle up to " + quantity.Format(mm/1000, quantity.Length)
	}
	return name
}
