package report

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"fusewright/harness/design/wording"
	"fusewright/harness/remedy"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
)

// Brief is a review on a terminal: findings under what causes them, at most three lines
// each, with what was tried against them. Beside dangers and faults advice is counted.
type Brief struct {
	*Report
	Plan  *remedy.Plan
	Width int // of the terminal, in characters

	b   strings.Builder
	row map[*finding.Finding]Finding
	// advice are the rules of advice that is counted, advised the findings of each.
	advice  []string
	advised map[string][]*finding.Finding
	tried   map[string]bool // changes that were shown
	in      string          // the situation said last in a cause
}

// leastWidth is the narrowest terminal for which lines are folded.
const leastWidth = 60

// WriteBrief prints the findings for a terminal.
func WriteBrief(w io.Writer, rep *Report, plan *remedy.Plan, width int) error {
	x := &Brief{Report: rep, Plan: plan, Width: max(width, leastWidth), row: map[*finding.Finding]Finding{}, advised: map[string][]*finding.Finding{}, tried: map[string]bool{}}
	for _, f := range rep.Findings {
		x.row[f.of] = f
	}
	x.line("", nameOf(rep.Design), "")
	x.b.WriteByte('\n')
	grave := slices.ContainsFunc(plan.Causes, func(c *remedy.Cause) bool { return worst(c.Findings) > finding.Advice })
	for _, c := range plan.Causes {
		if grave && worst(c.Findings) == finding.Advice && (c.Remedy == nil || !c.Remedy.Guess) {
			x.fold(c.Findings)
			continue
		}
		x.cause(c, grave)
	}
	x.folded()
	x.settled()
	x.situations(grave)
	x.foot()
	_, err := io.WriteString(w, x.b.String())
	return err
}

// settled lists what the design accepts and what a baseline has, a line each.
func (x *Brief) settled() {
	any := false
	for _, f := range x.Findings {
		word := ""
		switch {
		case f.Accepted != "":
			word = "accepted"
		case f.Known:
			word = "known"
		default:
			continue
		}
		any = true
		x.line(lead(f.of)+fmt.Sprintf("%-9s", word), fmt.Sprintf("%-8s", f.Severity)+f.About()+": "+rules.Find(f.Rule).Says, fmt.Sprintf("%d:%d", f.Line, f.Col))
		if f.Accepted != "" {
			x.prose("            ", f.Accepted+" ["+f.Rule+"]")
		}
	}
	if any {
		x.b.WriteByte('\n')
	}
}

// situations says what charging and battery give in each, all that is on drawing at
// once, beside what is graver only where a battery gives; and what a start of the engine leaves.
func (x *Brief) situations(grave bool) {
	const label = "start"
	most, start := 0, startShort(x.starts, !grave)
	if start != "" {
		most = len(label)
	}
	var list []Situation
	for _, s := range x.Situations {
		if grave && s.BatteryA != nil && *s.BatteryA <= 0 && banksGive(x.furtherIn(s)) == "" {
			continue
		}
		list = append(list, s)
		most = max(most, min(utf8.RuneCountInString(s.Name), x.Width/3))
	}
	for _, s := range list {
		x.prose(fmt.Sprintf("%-*s  ", most, s.Name), x.givenShort(s))
	}
	if start != "" {
		x.prose(fmt.Sprintf("%-*s  ", most, label), start)
	}
	if most > 0 {
		x.b.WriteByte('\n')
	}
}

// foot is what was tried, what rests on assumptions, the verdict and the caution.
func (x *Brief) foot() {
	if t := x.Plan.Together; t != nil {
		x.prose("", fmt.Sprintf("Each %q was tried in a copy; with all of them %d of %d findings remain%s.",
			"fix", x.open()-len(t.Mends), x.open(), brought(t)))
	}
	if x.Plan.Cut {
		x.prose("", "The design is large: not every change was tried.")
	}
	if text := notChecked(x.Findings); text != "" {
		x.prose("", strings.Replace(text, " above", "", 1))
	}
	x.prose("", x.Caution)
	x.b.WriteByte('\n')
	x.prose("", conclusion(x.Counts)+": "+x.Counts.String()+x.from())
}

// open is how many findings are open.
func (x *Brief) open() int {
	n := 0
	for _, c := range x.Plan.Causes {
		n += len(c.Findings)
	}
	return n
}

// from says from how many causes the findings come.
func (x *Brief) from() string {
	if n := len(x.Plan.Causes); n > 0 && n < x.open() {
		return ", from " + wording.Count(n, "cause", "causes")
	}
	return ""
}

// conclusion is what the counts come to.
func conclusion(c Counts) string {
	switch {
	case c.Danger > 0:
		return "Do not build"
	case c.Fault > 0:
		return "Not ready to build"
	case c.Advice > 0:
		return "No danger or fault found"
	}
	return "Nothing found"
}

// line is one line with what stands at its right end; folded where it does not fit.
func (x *Brief) line(lead, text, right string) {
	room := x.Width - utf8.RuneCountInString(lead) - utf8.RuneCountInString(right) - 1
	for i, part := range fold(text, room, false) {
		if i > 0 {
			lead, right = strings.Repeat(" ", utf8.RuneCountInString(lead)), ""
		}
		gap := max(1, x.Width-utf8.RuneCountInString(lead+part+right))
		if right == "" {
			gap = 0
		}
		x.b.WriteString(lead + part + strings.Repeat(" ", gap) + right + "\n")
	}
}

// prose folds text below its first word.
func (x *Brief) prose(lead, text string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(lead))
	for _, part := range fold(text, x.Width-len(indent), false) {
		x.b.WriteString(strings.TrimRight(lead+part, " ") + "\n")
		lead = indent
	}
}
