package report

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

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
		Sections: []BenchSection{}, Missing: t.Missing, Caution: rep.Caution}
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

// expected is the expected reading in words.
func expected(kind bench.Kind, c *bench.Check) string {
	switch {
	case c.Text != "":
		return c.Text
	case c.Below:
		return quantity.Format(c.ShowsV, quantity.Voltage)
	case math.IsNaN(c.Nominal):
		return none
	case math.IsInf(c.Nominal, 1):
		return "open"
	case c.Quantity == quantity.Current:
		return quantity.Flow(c.Nominal)
	}
	return reading(kind, c.Nominal, c)
}

// allowed is what a reading may be, in words.
func allowed(kind bench.Kind, c *bench.Check) string {
	text := ""
	switch unit := readingUnit(kind, c); {
	case math.IsNaN(c.Low) && math.IsNaN(c.High):
		return ""
	case math.IsNaN(c.High):
		text = reading(kind, c.Low, c) + " min"
	case math.IsNaN(c.Low) || c.Low == 0:
		text = reading(kind, c.High, c) + " max"
	case unit != "":
		text = quantity.RangeIn(c.Low, c.High, c.Quantity, unit)
	default:
		text = quantity.Range(c.Low, c.High, c.Quantity)
	}
	if c.Below {
		text += " below"
	}
	if c.PlainHigh > 0 {
		text += fmt.Sprintf("; two-wire meter %s mΩ max", quantity.Fixed(1000*plainHighOhm(c), 0))
	}
	return text
}

// reading prints a figure of a check.
func reading(kind bench.Kind, v float64, c *bench.Check) string {
	if unit := readingUnit(kind, c); unit != "" {
		return quantity.FormatIn(v, c.Quantity, unit)
	}
	return quantity.Format(v, c.Quantity)
}

// readingUnit is the one unit of a column: milliohms for wires and returns, ohms
// for coils; "" where it goes by the figure.
func readingUnit(kind bench.Kind, c *bench.Check) string {
	switch {
	case c.Quantity != quantity.Resistance:
		return ""
	case kind == bench.Continuity || kind == bench.Polarity:
		return "mΩ"
	case kind == bench.Coils:
		return "Ω"
	}
	return ""
}

// plainHighOhm is the most that a two-wire meter may show, rounded up to what it
// shows.
func plainHighOhm(c *bench.Check) float64 { return math.Ceil(c.PlainHigh*100) / 100 }

// benchHeads are the columns of a kind of section, where they are not the usual ones.
var benchHeads = map[bench.Kind][]string{
	bench.Continuity: {"no.", "at", "its wires: contact, wire, far end", ">maximum each"},
	bench.Isolation:  {"no.", "from", "each to frame and battery −: terminal, wires", ">minimum each"},
	bench.Fuses:      {"no.", "fuse", "where", "must be"},
	bench.Switches:   {"no.", "switch", "position", "must be"},
	bench.FirstPower: {"no.", "in place of", "lamp", ">limit to set", ">expected", ">allowed"},
	bench.InUse:      {"no.", "part", "between", ">meter shows", ">allowed"},
	bench.Live:       {"no.", "part", "between", ">meter shows", ">allowed"},
	bench.Charging:   {"no.", "part", "between", ">meter shows", ">allowed"},
	bench.Parked:     {"no.", "part", "between", ">meter shows", ">allowed"},
}

// BenchTable is the readings of a section.
func BenchTable(s *bench.Section) *Table {
	heads := benchHeads[s.Kind]
	if heads == nil {
		heads = []string{"no.", "part", "where", ">expected", ">allowed"}
	}
	t := newTable(heads...)
	for _, g := range s.Groups {
		if s.Kind == bench.Continuity {
			t.add(plugRow(g)...)
			continue
		}
		t.group(g.Title)
		skip := 0
		for i, c := range g.Checks {
			if skip > 0 {
				skip--
				continue
			}
			if c.Text == bench.ByEye {
				if i == 0 || g.Checks[i-1].Text != bench.ByEye {
					t.Looks[len(t.Rows)] = true
					t.add(byEyeRow(g.Checks[i:])...)
				}
				continue
			}
			if s.Kind == bench.Isolation {
				if i == 0 || g.Checks[i-1].Ref != c.Ref {
					t.add(isolationRow(g.Checks[i:])...)
				}
				continue
			}
			if like := alike(s.Kind, g.Checks[i:]); like > 1 {
				t.add(likeRow(s.Kind, g.Checks[i:i+like])...)
				skip = like - 1
				continue
			}
			cells := []string{c.Number, c.Ref + " " + c.Name, c.Where}
			switch s.Kind {
			case bench.Fuses, bench.Switches:
				cells = append(cells, c.Text)
			case bench.FirstPower:
				limit := ""
				if c.SetA > 0 {
					limit = quantity.Format(c.SetA, quantity.Current)
				}
				cells = append(cells, limit, expected(s.Kind, c), allowed(s.Kind, c))
			default:
				cells = append(cells, expected(s.Kind, c), allowed(s.Kind, c))
			}
			t.add(cells...)
		}
	}
	return t
}

// plugRow is the wires of a plug or part in one row: the bound is of a two-wire
// meter for the longest of them.
func plugRow(g *bench.Group) []string {
	var ways []string
	most := 0.0
	for _, c := range g.Checks {
		near, far, _ := strings.Cut(c.Where, " to ")
		ways = append(ways, near+": "+c.Ref+" to "+far)
		most = max(most, plainHighOhm(c))
	}
	return []string{numbersOf(g.Checks[0], g.Checks[len(g.Checks)-1]), g.Title, strings.Join(ways, " · "), quantity.Fixed(most, 2) + " Ω"}
}

// alike is how many of the first of some checks are of the same figures at the same place of
// several parts, such as three lamps on one splice.
func alike(kind bench.Kind, checks []*bench.Check) int {
	first, n := checks[0], 1
	for first.Below && n < len(checks) && checks[n].Below && checks[n].Where == first.Where &&
		expected(kind, checks[n]) == expected(kind, first) && allowed(kind, checks[n]) == allowed(kind, first) {
		n++
	}
	return n
}

// likeRow is such checks in one row: each is read, the worst is written.
func likeRow(kind bench.Kind, checks []*bench.Check) []string {
	first, last := checks[0], checks[len(checks)-1]
	var refs []string
	for _, c := range checks {
		refs = append(refs, c.Ref)
	}
	return []string{numbersOf(first, last), strings.Join(refs, " "), first.Where + " of each, the worst", expected(kind, first), allowed(kind, first)}
}

// byEyeRow is what is only looked at in one row: the checks up to the next reading.
func byEyeRow(checks []*bench.Check) []string {
	var looks []string
	last := 0
	for i, c := range checks {
		if c.Text != bench.ByEye {
			break
		}
		last, looks = i, append(looks, c.Ref+": "+c.Where)
	}
	return []string{numbersOf(checks[0], checks[last]), "by eye", strings.Join(looks, " · "), "", ""}
}

// isolationRow is the stretches that begin at one part in one row: the checks up to
// the next part's.
func isolationRow(checks []*bench.Check) []string {
	last := 0
	for last+1 < len(checks) && checks[last+1].Ref == checks[0].Ref {
		last++
	}
	var ways []string
	for _, c := range checks[:last+1] {
		terminal := c.Name[strings.LastIndex(c.Name, ", ")+1:]
		where := strings.TrimPrefix(strings.TrimPrefix(strings.TrimSuffix(c.Where, " to frame"), "wires "), "wire ")
		ways = append(ways, strings.TrimSpace(terminal)+": "+where)
	}
	name, _, _ := strings.Cut(checks[0].Name, ", ")
	return []string{numbersOf(checks[0], checks[last]), checks[0].Ref + " " + name, strings.Join(ways, " · "),
		quantity.Format(checks[0].Low, checks[0].Quantity)}
}

// numbersOf are the numbers of a row of several checks: "1.2–4".
func numbersOf(first, last *bench.Check) string {
	if first == last {
		return first.Number
	}
	return first.Number + "–" + last.Number[strings.IndexByte(last.Number, '.')+1:]
}

// BenchBases lists what the bounds of a test rest on, each once.
func BenchBases(test *bench.Test) []string {
	var list []string
	for _, s := range test.Sections {
		for _, basis := range benchBases(s) {
			if !slices.Contains(list, basis) {
				list = append(list, basis)
			}
		}
	}
	return list
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
	benchList(&b, "What the bounds rest on", BenchBases(t))
	benchList(&b, "Not known", t.Missing)
	fmt.Fprintf(&b, "\n%s\n", rep.Caution)
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
	if len(s.Checks()) > 0 {
		BenchTable(s).write(b)
	}
	if s.WrongIn != s.Number {
		fmt.Fprintf(b, "   Wrong readings: see section %d.\n", s.WrongIn)
	}
	for _, h := range s.Wrong {
		fmt.Fprintf(b, "   %s: %s (%s)\n", h.Reading, h.Means, HintSource)
	}
}

// benchBases lists what the bounds of a section rest on, each once.
func benchBases(s *bench.Section) []string {
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
