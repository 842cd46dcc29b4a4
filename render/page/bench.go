package page

import (
	"math"
	"strconv"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/render/report"
)

// Bench is what the workshop sees on a phone: the bench test with a field for each
// reading, and the cut list.
type Bench struct {
	Cautions []string       `json:"cautions"`
	Tools    []string       `json:"tools"`
	Bounds   []string       `json:"bounds"` // how they are made
	Missing  []string       `json:"missing,omitempty"`
	Sections []BenchSection `json:"sections"`
	Cut      []CutRow       `json:"cut"`
}

// BenchSection is one part of the test.
type BenchSection struct {
	Number  int          `json:"number"`
	Title   string       `json:"title"`
	In      string       `json:"in"` // as readings.Key has it
	Setup   []string     `json:"setup"`
	Trouble string       `json:"trouble,omitempty"` // why there are no readings
	Checks  []BenchCheck `json:"checks"`
	Wrong   []WrongHint  `json:"wrong,omitempty"`
	WrongIn int          `json:"wrongIn"` // the section that holds the hints
}

// WrongHint is what a wrong reading usually means.
type WrongHint struct {
	Reading string `json:"reading"`
	Means   string `json:"means"`
}

// BenchCheck is one reading, or with See one thing to look at. Low and High are as they are
// printed, in the unit of the field; nil = no such bound. With Against they are how far the
// reading lies below the one of that number, which is read before it, and not rounded.
type BenchCheck struct {
	Number   string   `json:"number"`
	Of       string   `json:"of"` // as readings.Key has it
	Part     string   `json:"part"`
	Name     string   `json:"name"`
	Where    string   `json:"where"`
	Group    string   `json:"group,omitempty"`
	See      string   `json:"see,omitempty"`
	Unit     string   `json:"unit,omitempty"`
	Low      *float64 `json:"low,omitempty"`
	High     *float64 `json:"high,omitempty"`
	Against  string   `json:"against,omitempty"`
	Allowed  string   `json:"allowed,omitempty"` // in words
	Expected string   `json:"expected,omitempty"`
	SetTo    string   `json:"setTo,omitempty"` // current limit of the supply
	Basis    string   `json:"basis,omitempty"`
}

// BenchOf makes it of a review.
func BenchOf(r *harness.Review) *Bench {
	test := bench.Make(r.Circuit)
	out := &Bench{Cautions: test.Cautions, Tools: test.Tools, Bounds: append(test.Bounds, report.BenchBases(test)...), Missing: test.Missing,
		Sections: []BenchSection{}, Cut: cutRows(r)}
	for _, s := range test.Sections {
		row := BenchSection{Number: s.Number, Title: s.Title, Setup: s.Setup, Trouble: s.Trouble, Checks: []BenchCheck{}, WrongIn: s.WrongIn}
		row.In, _ = readings.Key(s, &bench.Group{}, &bench.Check{})
		for _, h := range s.Wrong {
			row.Wrong = append(row.Wrong, WrongHint{h.Reading, h.Means})
		}
		posts := map[*circuit.Node]string{} // numbers of readings by the post
		for _, g := range s.Groups {
			for _, c := range g.Checks {
				check := checkOf(s, g, c)
				switch {
				case c.Below:
					check.Against = posts[c.Supply]
				case c.Posts():
					posts[c.Probe.Volts[0].Plus] = c.Number
				}
				row.Checks = append(row.Checks, check)
			}
		}
		out.Sections = append(out.Sections, row)
	}
	return out
}

func checkOf(s *bench.Section, g *bench.Group, c *bench.Check) BenchCheck {
	row := BenchCheck{Number: c.Number, Part: c.Ref, Name: c.Name, Where: c.Where, Group: g.Title, See: c.Text, Basis: c.Basis}
	_, row.Of = readings.Key(s, g, c)
	if c.SetA > 0 {
		row.SetTo = quantity.Format(c.SetA, quantity.Current)
	}
	if c.Text != "" {
		return row
	}
	low, high := c.Low, c.High
	if c.PlainHigh > 0 {
		low, high = math.NaN(), c.PlainHigh
	}
	if low == 0 { // nothing reads less
		low = math.NaN()
	}
	row.Unit = meterUnit(s.Kind, c)
	if !math.IsNaN(c.Nominal) && !math.IsInf(c.Nominal, 0) {
		row.Expected = quantity.FormatIn(c.Nominal, c.Quantity, row.Unit)
	}
	if c.Below {
		row.Expected = quantity.Format(c.ShowsV, quantity.Voltage)
		row.High, row.Allowed = &high, quantity.Format(high, quantity.Voltage)+" at most"
		if !math.IsNaN(low) {
			row.Low, row.Allowed = &low, quantity.Range(low, high, quantity.Voltage)
		}
		return row
	}
	row.bounds(low, high, c.Quantity)
	return row
}

// bounds sets the bounds as they are printed, so that a reading of just what stands there passes.
func (b *BenchCheck) bounds(low, high float64, of quantity.Dimension) {
	most := high
	if math.IsNaN(high) {
		most = low
	}
	if math.IsNaN(most) {
		return
	}
	text := quantity.FormatIn(most, of, b.Unit)
	number, _, _ := strings.Cut(text, " ")
	decimals := 0
	if _, after, found := strings.Cut(number, "."); found {
		decimals = len(after)
	}
	printed := func(v float64) *float64 {
		if math.IsNaN(v) {
			return nil
		}
		shown, _ := strconv.ParseFloat(strconv.FormatFloat(v/quantity.In(1, b.Unit, of), 'f', decimals, 64), 64)
		return &shown
	}
	b.Low, b.High = printed(low), printed(high)
	switch {
	case b.High == nil:
		b.Allowed = text + " min"
	case b.Low == nil:
		b.Allowed = text + " max"
	default:
		b.Allowed = quantity.RangeIn(low, high, of, b.Unit)
	}
}

// meterUnit is the unit in which a usual meter shows a reading: ohms of wires in ohms, volts that
// are read beside the battery's in volts.
func meterUnit(kind bench.Kind, c *bench.Check) string {
	switch {
	case c.Quantity == quantity.Resistance && kind != bench.Isolation:
		return "Ω"
	case c.Below:
		return "V"
	}
	most := c.High
	if math.IsNaN(most) {
		most = c.Low
	}
	words := strings.Fields(quantity.Format(most, c.Quantity))
	return words[len(words)-1]
}
