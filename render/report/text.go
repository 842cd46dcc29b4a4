package report

import (
	"fmt"
	"io"
	"math"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
)

// textWidth is where prose is wrapped, for terminals of 100 columns.
const textWidth = 98

// WriteText prints the findings, most severe first, each with its place,
// numbers, reason and remedy, and a summary with the caution. Findings of one cause
// are one block. A reason, remedy or source that an earlier finding of the same
// rule has said is not said again.
func WriteText(w io.Writer, rep *Report) error {
	var b strings.Builder
	said := map[string]bool{}
	for _, f := range rep.Blocks() {
		writeFinding(&b, f, said)
	}
	writeSituations(&b, rep)
	if text := notChecked(rep.Findings); text != "" {
		b.WriteString(wrap("", text))
	}
	fmt.Fprintf(&b, "%s: %s\n", nameOf(rep.Design), rep.Counts)
	b.WriteString(wrap("", rep.Caution))
	_, err := io.WriteString(w, b.String())
	return err
}

// String says the counts in words: "1 danger · 0 fault · 2 advice · 1 accepted".
func (c Counts) String() string {
	return fmt.Sprintf("%d danger · %d fault · %d advice · %d accepted", c.Danger, c.Fault, c.Advice, c.Accepted)
}

func nameOf(h Heading) string {
	if h.Revision == "" {
		return h.Title
	}
	return h.Title + ", revision " + h.Revision
}

// notChecked says how many findings tell of checks that could not be made, or
// rest on an assumption; "" when there are none.
func notChecked(list []Finding) string {
	n := 0
	var fired []string
	for _, rule := range []string{"data-missing", "load-never-on", "situation-unsolved"} {
		before := n
		for _, f := range list {
			if f.Rule == rule {
				n++
			}
		}
		if n > before {
			fired = append(fired, rule)
		}
	}
	if n == 0 {
		return ""
	}
	return "Not checked, or based on an assumption: " + wording.Count(n, "point", "points") +
		" above (" + strings.Join(fired, ", ") + ")."
}

func writeFinding(b *strings.Builder, f Block, said map[string]bool) {
	severity := f.Severity
	if f.Accepted != "" {
		severity = "accepted " + severity
	}
	if f.Known {
		severity = "known " + severity
	}
	fmt.Fprintf(b, "%s:%d:%d: %s: %s [%s]\n", f.File, f.Line, f.Col, severity, f.What, f.Rule)
	if line := numbersLine(f.Finding); line != "" {
		b.WriteString(wrap("    ", line))
	}
	if f.Others != "" {
		b.WriteString(wrap("    ", f.Others))
	}
	for _, x := range []struct{ lead, text string }{
		{"    why:    ", f.Why}, {"    change: ", f.Change}, {"    source: ", f.Source}, {"    sure:   ", unsourcedText(f.of)},
	} {
		if key := f.Rule + x.lead + x.text; x.text != "" && !said[key] {
			said[key] = true
			b.WriteString(wrap(x.lead, x.text))
		}
	}
	if f.Accepted != "" {
		b.WriteString(wrap("    accepted because: ", f.Accepted))
	}
	b.WriteByte('\n')
}

func numbersLine(f Finding) string {
	parts := append([]string{fmt.Sprintf("finding %d", f.Number), f.About()}, f.Figures()...)
	if f.Situation != "" {
		parts = append(parts, "worst in "+f.Situation)
	}
	return strings.Join(parts, " · ")
}

// String is the figure with its unit as the finding's own words have it, or
// "none" when it has no finite value.
func (n Number) String() string {
	switch {
	case n.Value == nil:
		return "none"
	case n.Unit == "m":
		return n.lengths.Text(*n.Value)
	}
	return figureText(*n.Value, n.Unit)
}

// Figures are the finding's numbers with their names, "current 30.04 A", a limit
// and what stands before it with the digits that tell them apart.
func (f Finding) Figures() []string {
	list, texts := f.Numbers, make([]string, len(f.Numbers))
	for i, n := range list {
		texts[i] = n.String()
		dim := quantity.OfUnit(n.Unit)
		if i == 0 || n.Name != "limit" || n.Value == nil || list[i-1].Value == nil || dim == "" || n.Unit == "m" {
			continue
		}
		texts[i-1], texts[i] = quantity.Against(quantity.In(*list[i-1].Value, n.Unit, dim), quantity.In(*n.Value, n.Unit, dim), dim)
	}
	for i, n := range list {
		texts[i] = n.Name + " " + texts[i]
	}
	return texts
}

// writeSituations prints one line per situation, what the source gives, and one of the engine's start.
func writeSituations(b *strings.Builder, rep *Report) {
	for _, s := range rep.Situations {
		fmt.Fprintf(b, "%-28s %s\n", s.Name+":", rep.given(s))
	}
	if start := startShort(rep.starts, true); start != "" {
		fmt.Fprintf(b, "%-28s %s\n", "start:", start)
	}
	if len(rep.Situations) > 0 {
		b.WriteString(wrap("", "("+givenNote+")") + "\n")
	}
}

const givenNote = "output: the most that charging gives at the engine speed, as in the budget; used, and battery at peak: " +
	"with all that is on drawing at once; on average: duty counted"

// given is what charging and battery give in a situation.
func (r *Report) given(s Situation) string {
	if s.BatteryA == nil || s.ChargingA == nil {
		return "no result, " + s.Status + " " + s.Why
	}
	output := "output " + amps(s.ChargingA)
	if l := r.budgetLine(s.Name); l != nil && l.OutputA != nil && *l.OutputA > 0 {
		output = "output " + amps(l.OutputA) + ", " + amps(s.ChargingA) + " used"
	}
	return output + ", battery " + r.ofBattery(s, " on average") + banksGive(r.furtherIn(s))
}

// givenShort is the same in a line.
func (r *Report) givenShort(s Situation) string {
	if s.BatteryA == nil || s.ChargingA == nil {
		return r.given(s)
	}
	text := "battery " + r.ofBattery(s, "")
	if l := r.budgetLine(s.Name); l != nil && l.OutputA != nil && *l.OutputA > 0 {
		switch all := amps(l.OutputA); {
		case all == amps(s.ChargingA): // at peak, as the battery's figure says
			text += "; charging all " + all
		case l.SpareA != nil && peaks(*s.ChargingA, *l.OutputA-*l.SpareA):
			text += "; charging peak " + amps(s.ChargingA) + " of " + all
		default:
			text += "; charging " + amps(s.ChargingA) + " of " + all
		}
	}
	return text + banksGive(r.furtherIn(s))
}

// furtherIn are the further batteries in a situation.
func (r *Report) furtherIn(s Situation) []BankLine {
	switch l := r.budgetLine(s.Name); {
	case l != nil:
		return l.Further
	case s.Key == string(design.KeyOff) && r.Budget != nil: // left alone
		return r.Budget.Further
	}
	return nil
}

// ofBattery is what the battery of a solved situation gives or takes: by the budget, duty
// counted, which is said to be so, and at peak where that is more.
func (r *Report) ofBattery(s Situation, said string) string {
	mean := *s.BatteryA
	switch l := r.budgetLine(s.Name); {
	case l != nil && l.BatteryA != nil:
		mean = *l.BatteryA
	case l == nil && s.Key == string(design.KeyOff) && r.Budget != nil && r.Budget.StandbyA != nil: // left alone
		mean = *r.Budget.StandbyA
	}
	switch text := quantity.BatteryFlow(mean); {
	case !peaks(*s.BatteryA, mean):
		return text
	case mean < 0:
		return text + said + ", gives " + amps(s.BatteryA) + " at peak"
	default:
		return text + said + ", " + amps(s.BatteryA) + " at peak"
	}
}

// samePeak and leastPeakA are up to what a peak is the average: rounding, and warm wires.
const samePeak, leastPeakA = 1.02, 1e-3

// peaks tells whether the battery gives more with all that is on at once than on average.
func peaks(peakA, meanA float64) bool {
	return peakA > leastPeakA && peakA > samePeak*math.Max(meanA, 0)
}

// budgetLine is the budget's line of a situation; nil = none.
func (r *Report) budgetLine(situation string) *BudgetLine {
	if r.Budget == nil {
		return nil
	}
	for _, list := range [][]BudgetLine{r.Budget.Lines, r.Budget.KeyOff} {
		for i := range list {
			if list[i].Situation == situation {
				return &list[i]
			}
		}
	}
	return nil
}

// wrap folds prose at textWidth; following lines are indented below the first
// word after the lead.
func wrap(lead, text string) string { return wrapAt(textWidth, lead, text) }

// wrapAt is wrap at a width of its own.
func wrapAt(width int, lead, text string) string {
	return hanging(lead, fold(text, width-len([]rune(lead)), false))
}

// wrapNames is wrap of a list of names, each of which stays on one line: a switch and its position.
func wrapNames(lead, list string) string {
	var names []string
	for _, name := range strings.SplitAfter(list, ", ") {
		head, of, _ := strings.Cut(name, " (")
		if of != "" {
			of = "(" + of
		}
		for _, whole := range []string{strings.TrimSpace(head), strings.TrimSpace(of)} {
			if len([]rune(lead+whole)) > textWidth {
				names = append(names, quantity.Words(whole)...)
			} else if whole != "" {
				names = append(names, whole)
			}
		}
	}
	return hanging(lead, foldWords(names, textWidth-len([]rune(lead)), false))
}

// hanging puts a lead before the first of some lines, and as much room before the others.
func hanging(lead string, lines []string) string {
	indent := strings.Repeat(" ", len(lead))
	var b strings.Builder
	for _, line := range lines {
		b.WriteString(strings.TrimRight(lead+line, " ") + "\n")
		lead = indent
	}
	return b.String()
}

// Prose folds a text that stands by itself, indented, for the terminal.
func Prose(text string) string { return wrap("  ", text) }
