package conductor

import (
	"fmt"
	"math"

	"fusewright/library"
)

// tableAmps is what a current table says of a size, before bundle, cover and
// altitude.
type tableAmps struct {
	read    Reading // gives the amperes
	factor  float64 // of the ambient
	classC  float64 // of the column read; of a table of rises the wire's
	how     string  // the row and column used, for the report
	missing string  // why there is no value; empty when there is one
}

// fromTable looks a size up: between two rows by straight line on log-log
// axes, since tables list other sizes than wire standards; the column of the
// highest class that the insulation reaches, never above it.
func fromTable(t *library.CurrentTable, areaMm2, classC, ambientC float64) tableAmps {
	if t.Kind == library.ByRise {
		return fromRises(t, areaMm2, classC, ambientC)
	}
	col := -1
	for i, c := range t.Columns {
		if c <= classC {
			col = i
		}
	}
	if col < 0 {
		return tableAmps{missing: fmt.Sprintf("%s has no column for insulation of %g °C", t.Name, classC)}
	}
	read, row, ok := rowAmps(t, areaMm2, col)
	if !ok {
		return tableAmps{missing: noRow(t, areaMm2)}
	}
	return tableAmps{read: read, factor: ambientFactor(t, col, ambientC), classC: t.Columns[col],
		how: fmt.Sprintf("%s, %s, %g °C column", t.Name, row, t.Columns[col])}
}

// Reading is how a value is read between two points of a table. Where X1 is X2 it is Y1.
type Reading struct {
	X, X1, Y1, X2, Y2 float64
	Root              bool     // beyond the table's columns: Y1 · √(X / X1)
	Low, High         *Reading // by which Y1 and Y2 are read in turn; nil = they stand there
}

// Value is what is read: on log-log axes, since tables list other sizes than wires have.
func (r Reading) Value() float64 {
	switch {
	case r.Root:
		return r.Y1 * math.Sqrt(r.X/r.X1)
	case r.X1 == r.X2:
		return r.Y1
	}
	return logLine(r.X1, r.Y1, r.X2, r.Y2, r.X)
}

// fromRises reads a free-air table: the current at the rise of the class above
// the ambient, between the columns by straight line on log-log axes and beyond
// them with the square root of the rise, the steeper of the usual laws below
// the first column and the flatter above the last. The ambient is in it.
func fromRises(t *library.CurrentTable, areaMm2, classC, ambientC float64) tableAmps {
	rise := classC - ambientC
	if !(rise > 0) {
		return tableAmps{factor: 1, classC: classC, how: t.Name + ", the ambient is at the class"}
	}
	n := len(t.Columns)
	read := Reading{X: rise}
	var row string
	var ok bool
	switch i := above(t.Columns, rise); i {
	case 0, n:
		col := min(i, n-1)
		var low Reading
		low, row, ok = rowAmps(t, areaMm2, col)
		read.Root, read.X1, read.Y1, read.Low = true, t.Columns[col], low.Value(), &low
	default:
		a, r, okA := rowAmps(t, areaMm2, i-1)
		b, _, okB := rowAmps(t, areaMm2, i)
		read.X1, read.Y1, read.Low = t.Columns[i-1], a.Value(), &a
		read.X2, read.Y2, read.High = t.Columns[i], b.Value(), &b
		row, ok = r, okA && okB
	}
	if !ok {
		return tableAmps{missing: noRow(t, areaMm2)}
	}
	return tableAmps{read: read, factor: 1, classC: classC, how: fmt.Sprintf("%s, %s, %.0f K rise", t.Name, row, rise)}
}

// sameSize is the share within which two areas are the same size: 18 AWG is
// 1 600 circular mils at the least in one standard and 1 620 by name in another.
const sameSize = 0.02

// rowAmps reads one column at an area; ok is false outside the table.
func rowAmps(t *library.CurrentTable, areaMm2 float64, col int) (read Reading, row string, ok bool) {
	for i, r := range t.Rows {
		if math.Abs(areaMm2-r.AreaMm2) <= sameSize*r.AreaMm2 {
			return Reading{X: areaMm2, X1: r.AreaMm2, Y1: r.Amps[col], X2: r.AreaMm2, Y2: r.Amps[col]}, r.Label, true
		}
		if r.AreaMm2 > areaMm2 {
			if i == 0 {
				return Reading{}, "", false
			}
			p := t.Rows[i-1]
			return Reading{X: areaMm2, X1: p.AreaMm2, Y1: p.Amps[col], X2: r.AreaMm2, Y2: r.Amps[col]},
				"between " + p.Label + " and " + r.Label, true
		}
	}
	return Reading{}, "", false
}

func noRow(t *library.CurrentTable, areaMm2 float64) string {
	if len(t.Rows) == 0 {
		return t.Name + " has no rows"
	}
	return fmt.Sprintf("%s lists %s to %s, not %.3g mm²", t.Name,
		t.Rows[0].Label, t.Rows[len(t.Rows)-1].Label, areaMm2)
}

// ambientFactor corrects a class table for another ambient than its own:
// √((class − T)/(class − T0)), the law behind the published ambient factors
// (NEC Table 310.15(B)(2)(a) follows it to its last digit), and no more than
// the table's own factor at its hot place. A cooler place gives no bonus.
func ambientFactor(t *library.CurrentTable, col int, ambientC float64) float64 {
	class := t.Columns[col]
	switch {
	case ambientC <= t.AmbientC:
		return 1
	case ambientC >= class:
		return 0
	}
	f := math.Sqrt((class - ambientC) / (class - t.AmbientC))
	if col < len(t.HotShares) && t.HotC > t.AmbientC {
		share := (ambientC - t.AmbientC) / (t.HotC - t.AmbientC)
		f = math.Min(f, 1-(1-t.HotShares[col])*math.Min(1, share))
	}
	return f
}

// BundleFactor is the share left with a number of wires loaded together. The
// loading is the share of the bundle's whole capacity in use, where the table
// tells loadings apart: between its columns by straight line, below the first
// as the first.
func BundleFactor(t *library.CurrentTable, loaded int, loading float64) float64 {
	f := 1.0
	for _, b := range t.Bundle {
		if loaded >= b.From {
			f = shareAt(t.Loadings, b.Shares, loading)
		}
	}
	return f
}

func shareAt(xs, ys []float64, x float64) float64 {
	if len(ys) == 1 || len(xs) != len(ys) {
		return ys[0]
	}
	i := above(xs, x)
	switch i {
	case 0:
		return ys[0]
	case len(xs):
		return ys[len(ys)-1]
	}
	return ys[i-1] + (ys[i]-ys[i-1])*(x-xs[i-1])/(xs[i]-xs[i-1])
}

// altitudeFactor is the table's share at an altitude, by straight line; beyond
// its last row that row holds.
func altitudeFactor(t *library.CurrentTable, altitudeM float64) float64 {
	for i, a := range t.Altitude {
		if a.AltitudeM >= altitudeM {
			if i == 0 {
				return a.Share
			}
			p := t.Altitude[i-1]
			return p.Share + (a.Share-p.Share)*(altitudeM-p.AltitudeM)/(a.AltitudeM-p.AltitudeM)
		}
	}
	if n := len(t.Altitude); n > 0 {
		return t.Altitude[n-1].Share
	}
	return 1
}

// above is the index of the first value at or over x; the count when none is.
func above(xs []float64, x float64) int {
	for i, v := range xs {
		if v >= x {
			return i
		}
	}
	return len(xs)
}

// logLine is the point at x of the straight line through two points on log-log
// axes; all values must be over zero.
func logLine(x1, y1, x2, y2, x float64) float64 {
	return y1 * math.Pow(x/x1, math.Log(y2/y1)/math.Log(x2/x1))
}
