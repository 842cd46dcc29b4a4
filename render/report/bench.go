package report

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"text/tabwriter"

	"fusewright/harness/design/quantity"
	"fusewright/harness/workshop/bench"
)

// BenchReport is the bench test of a design, in print order.
type BenchReport struct {
	Fusewright int            `json:"fusewright_report"`
	Design     Heading        `json:"design"`
	Cautions   []string       `json:"cautions"`
	Tools      []string       `json:"tools"`
	Bounds     []string       `json:"bounds"`
	Sections   []BenchSection `json:"sections"`
	Missing    []string       `json:"missing,omitempty"`
	Caution    string         `json:"caution"`
}

// BenchSection is one part of the test.
type BenchSection struct {
	Number    int          `json:"number"`
	Kind      string       `json:"kind"`
	Title     string       `json:"title"`
	Situation string       `json:"situation,omitempty"`
	Setup     []string     `json:"setup"`
	Trouble   string       `json:"trouble,omitempty"`
	Readings  []BenchCheck `json:"readings"`
	Wrong     []BenchHint  `json:"wrong_readings"`
}

// BenchCheck is one reading; null = no such bound. Values are in the unit.
type BenchCheck struct {
	Number  string   `json:"number"`
	Group   string   `json:"group,omitempty"`
	Ref     string   `json:"ref"`
	Name    string   `json:"name"`
	Where   string   `json:"where"`
	Unit    string   `json:"unit"`
	Nominal *float64 `json:"nominal"`
	Low     *float64 `json:"low"`
	High    *float64 `json:"high"`
	// BelowBattery says that the values are how far the reading lies below the
	// battery voltage read before; ShowsV is the reading itself, nominally.
	BelowBattery bool     `json:"below_battery,omitempty"`
	ShowsV       *float64 `json:"shows_v,omitempty"`
	PlainHigh    *float64 `json:"two_wire_meter_high,omitempty"`
	LimitA       *float64 `json:"supply_limit_a,omitempty"`
	See          string   `json:"see,omitempty"`
	Basis        string   `json:"basis"`
}

// BenchHint is what a wrong reading usually means.
type BenchHint struct {
	Reading string `json:"reading"`
	Means   string `json:"means"`
	Source  string `json:"source"`
}

// HintSource is said beside what a wrong reading means.
const HintSource = "common practice, no source"

// NewBench makes the report of a bench test.
func NewBench(rep *Report, t *bench.Test) *BenchReport {
	out := &BenchReport{Fusewright: Version, Design: rep.Design, Cautions: t.Cautions, Tools: t.Tools, Bounds: t.Bounds,
		Sections: []BenchSection{}, Missing: t.Missing, Caution: Caution}
	for _, s := range t.Sections {
		row := BenchSection{Number: s.Number, Kind: string(s.Kind), Title: s.Title, Setup: s.Setup, Trouble: s.Trouble,
			Readings: []BenchCheck{}, Wrong: []BenchHint{}}
		if s.Situation != nil {
			row.Situation = s.Situation.Name
		}
		for _, g := range s.Groups {
			for _, c := range g.Checks {
				row.Readings = append(row.Readings, benchCheck(g.Title, c))
			}
		}
		for _, h := range s.Wrong {
			row.Wrong = append(row.Wrong, BenchHint{h.Reading, h.Means, HintSource})
		}
		out.Sections = append(out.Sections, row)
	}
	return out
}

func benchCheck(group string, c *bench.Check) BenchCheck {
	row := BenchCheck{Number: c.Number, Group: group, Ref: c.Ref, Name: c.Name, Where: c.Where,
		Unit: quantity.Base(c.Quantity), Nominal: finite(c.Nominal), Low: finite(c.Low), High: finite(c.High),
		BelowBattery: c.Below, See: c.Text, Basis: c.Basis}
	if c.Below {
		row.ShowsV = finite(c.ShowsV)
	}
	if c.PlainHigh > 0 {
		row.PlainHigh = finite(c.PlainHigh)
	}
	if c.SetA > 0 {
		row.LimitA = finite(c.SetA)
	}
	return row
}

// BenchExpect is the expected reading in words.
func BenchExpect(c *bench.Check) string {
	switch {
	case c.Text != "":
		return c.Text
	case c.Below:
		return quantity.Format(c.ShowsV, quantity.Voltage)
	case math.IsNaN(c.Nominal):
		return "–"
	case math.IsInf(c.Nominal, 1):
		return "open"
	}
	return quantity.Format(c.Nominal, c.Quantity)
}

// BenchBounds is what a reading may be, in words.
func BenchBounds(c *bench.Check) string {
	low, high := quantity.Format(c.Low, c.Quantity), quantity.Format(c.High, c.Quantity)
	if c.Quantity == quantity.Resistance && c.Low >= 1e6 {
		low = fmt.Sprintf("%g MΩ", c.Low/1e6)
	}
	var text string
	switch {
	case math.IsNaN(c.Low) && math.IsNaN(c.High):
		return ""
	case math.IsNaN(c.High):
		text = "at least " + low
	case math.IsNaN(c.Low) || c.Low == 0:
		text = "at most " + high
	default:
		text = inOneUnit(c.Low, low, high)
	}
	return text
}

// unitOf is the base units in a printed unit.
var unitOf = map[string]float64{"V": 1, "mV": 1e-3, "A": 1, "mA": 1e-3, "µA": 1e-6, "kΩ": 1e3, "Ω": 1, "mΩ": 1e-3}

// inOneUnit prints a range in the unit of its upper end: "0.20 to 0.48 V".
func inOneUnit(value float64, low, high string) string {
	number, unit, _ := strings.Cut(high, " ")
	lowNumber, lowUnit, _ := strings.Cut(low, " ")
	if lowUnit != unit && unitOf[unit] > 0 {
		_, decimals, _ := strings.Cut(number, ".")
		lowNumber = strconv.FormatFloat(value/unitOf[unit], 'f', len(decimals), 64)
	}
	return lowNumber + " to " + high
}

// WriteBench prints the test as text.
func WriteBench(w io.Writer, rep *BenchReport, t *bench.Test) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s · bench test\n", nameOf(rep.Design))
	benchList(&b, "Cautions", t.Cautions)
	benchList(&b, "What you need", t.Tools)
	benchList(&b, "How the bounds are made", t.Bounds)
	for _, s := range t.Sections {
		writeBenchSection(&b, s)
	}
	benchList(&b, "Not known", t.Missing)
	fmt.Fprintf(&b, "\n%s\n", Caution)
	_, err := io.WriteString(w, b.String())
	return err
}

func benchList(b *strings.Builder, title string, lines []string) {
	if len(lines) == 0 {
		return
	}
	fmt.Fprintf(b, "\n%s\n", title)
	for _, line := range lines {
		fmt.Fprintf(b, "  - %s\n", line)
	}
}

func writeBenchSection(b *strings.Builder, s *bench.Section) {
	fmt.Fprintf(b, "\n%d  %s\n", s.Number, s.Title)
	for _, line := range s.Setup {
		fmt.Fprintf(b, "   %s\n", line)
	}
	if s.Trouble != "" {
		fmt.Fprintf(b, "   %s\n", s.Trouble)
	}
	tab := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	for _, g := range s.Groups {
		if g.Title != "" {
			fmt.Fprintf(tab, "   %s:\n", g.Title)
		}
		for _, c := range g.Checks {
			bounds := BenchBounds(c)
			if c.Below {
				bounds += " below the battery"
			}
			if c.PlainHigh > 0 {
				bounds += "; two-wire meter at most " + quantity.Format(c.PlainHigh, c.Quantity)
			}
			if c.SetA > 0 {
				bounds += "; limit " + quantity.Format(c.SetA, quantity.Current)
			}
			fmt.Fprintf(tab, "   %s\t%s %s\t%s\t%s\t%s\n", c.Number, c.Ref, c.Name, c.Where, BenchExpect(c), bounds)
		}
	}
	_ = tab.Flush() // into memory: cannot fail
	for _, basis := range BenchBases(s) {
		fmt.Fprintf(b, "   Bounds: %s.\n", basis)
	}
	if s.WrongIn != s.Number {
		fmt.Fprintf(b, "   Wrong readings: see section %d.\n", s.WrongIn)
	}
	for _, h := range s.Wrong {
		fmt.Fprintf(b, "   %s: %s (%s)\n", h.Reading, h.Means, HintSource)
	}
}

// BenchBases lists what the bounds of a section rest on, each once.
func BenchBases(s *bench.Section) []string {
	var list []string
	seen := map[string]bool{}
	for _, c := range s.Checks() {
		if c.Basis != "" && !seen[c.Basis] {
			seen[c.Basis] = true
			list = append(list, c.Basis)
		}
	}
	return list
}
