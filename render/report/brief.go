package report

import (
	"cmp"
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

// Brief is a review on a terminal: findings under what causes them, two lines each,
// with what was tried against them.
type Brief struct {
	*Report
	Plan  *remedy.Plan
	Width int // of the terminal, in characters

	b   strings.Builder
	row map[*finding.Finding]Finding
}

// leastWidth is the narrowest terminal for which lines are folded.
const leastWidth = 60

// WriteBrief prints the findings for a terminal.
func WriteBrief(w io.Writer, rep *Report, plan *remedy.Plan, width int) error {
	x := &Brief{Report: rep, Plan: plan, Width: max(width, leastWidth), row: map[*finding.Finding]Finding{}}
	for _, f := range rep.Findings {
		x.row[f.of] = f
	}
	x.line("", nameOf(rep.Design), "")
	x.b.WriteByte('\n')
	for i, c := range plan.Causes {
		x.cause(Letter(i), c)
	}
	x.settled()
	x.situations()
	x.foot()
	_, err := io.WriteString(w, x.b.String())
	return err
}

// Letter names the causes A to Z, then AA and so on.
func Letter(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return Letter(i/26-1) + Letter(i%26)
}

// cause prints one with its findings: those of one rule are one entry.
func (x *Brief) cause(name string, c *remedy.Cause) {
	var list [][]*finding.Finding
	for _, f := range c.Findings {
		at := slices.IndexFunc(list, func(g []*finding.Finding) bool { return g[0].Rule == f.Rule })
		if at < 0 {
			list = append(list, nil)
			at = len(list) - 1
		}
		list[at] = append(list[at], f)
	}
	lead := fmt.Sprintf("%-3s", name)
	about := ""
	if c.Remedy != nil && len(list) > 1 {
		about = aboutNow(c.Remedy)
		x.line(lead, about, "")
		lead = "   "
	}
	slices.SortStableFunc(list, func(a, b []*finding.Finding) int { return cmp.Compare(b[0].Severity, a[0].Severity) })
	for _, g := range list {
		x.entry(lead, g)
		lead = "   "
	}
	x.remedies(c, about != "")
	x.b.WriteByte('\n')
}

// aboutNow is what a remedy changes, as it is now.
func aboutNow(t *remedy.Trial) string {
	return strings.TrimSuffix(t.About+": "+t.Was, ": ")
}

// hang is the indent of what belongs to a finding's first line.
const hang = "           "

// entry prints findings of one rule: the worst with its figures, the others in short.
func (x *Brief) entry(lead string, g []*finding.Finding) {
	f := x.row[g[0]]
	says := rules.Find(f.Rule).Says
	x.line(lead+fmt.Sprintf("%-8s", f.Severity), f.About()+": "+says, fmt.Sprintf("%d:%d", f.Line, f.Col))
	text := f.brief()
	if text == "" {
		text = f.What
	}
	x.prose(hang, text+" ["+f.Rule+"]")
	if len(g) == 1 {
		return
	}
	var others []string
	for _, y := range g[1:] {
		other := x.row[y].short()
		if y.Severity != g[0].Severity {
			other += " " + y.Severity.String()
		}
		others = append(others, other)
	}
	x.prose(hang, "likewise "+strings.Join(others, ", "))
}

// brief is the figures that decide a finding: "26.2 A nominal, 29.9 A at worst; limit
// 26.8 A; night cutting"; "" without any.
func (f Finding) brief() string {
	if len(f.Numbers) == 0 {
		return ""
	}
	texts := f.Figures()
	var values []string
	limit := ""
	for i, n := range f.Numbers {
		value := strings.TrimPrefix(texts[i], n.Name+" ")
		word, three := "", false
		for _, w := range []struct{ end, word string }{{" nominal", " nominal"}, {" likely", " likely"}, {" worst case", " at worst"}} {
			if strings.HasSuffix(n.Name, w.end) {
				word, three = w.word, true
			}
		}
		switch {
		case n.Name == "limit":
			limit = "limit " + value
		case limit != "":
		case three:
			values = append(values, value+word)
		default:
			values = append(values, texts[i])
		}
	}
	return wording.Present([]string{strings.Join(values, ", "), limit, f.Situation}, "; ")
}

// remedies prints what was tried against a cause.
func (x *Brief) remedies(c *remedy.Cause, headed bool) {
	say := func(word string, t *remedy.Trial) {
		text := t.Will
		if !headed || t.About != c.Remedy.About {
			text = t.About + ": " + t.Will
		}
		x.prose(hang[:len(hang)-8]+fmt.Sprintf("%-8s", word), text+effect(t))
	}
	switch {
	case c.Remedy != nil && c.Remedy.Guess:
		say("meant?", c.Remedy)
	case c.Remedy != nil:
		say("mended", c.Remedy)
	default:
		x.prose(hang[:len(hang)-8]+"decide  ", x.row[c.Findings[0]].Change)
	}
	for _, t := range c.Tried {
		say("tried", t)
	}
}

// effect is what came of a change.
func effect(t *remedy.Trial) string {
	var parts []string
	if n := len(t.Mends); n > 0 {
		parts = append(parts, fmt.Sprintf("mends %d", n))
	}
	if n := len(t.Eases); n > 0 {
		parts = append(parts, fmt.Sprintf("eases %d", n))
	}
	if n := len(t.Worsens); n > 0 {
		parts = append(parts, fmt.Sprintf("worsens %d", n))
	}
	if n := len(t.Breaks); n > 0 {
		parts = append(parts, fmt.Sprintf("brings %d (%s)", n, strings.Join(brings(t), ", ")))
	}
	return ", " + strings.Join(parts, ", ")
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
		x.line(fmt.Sprintf("%-9s", word), fmt.Sprintf("%-8s", f.Severity)+f.About()+": "+rules.Find(f.Rule).Says, fmt.Sprintf("%d:%d", f.Line, f.Col))
		if f.Accepted != "" {
			x.prose("         ", f.Accepted+" ["+f.Rule+"]")
		}
	}
	if any {
		x.b.WriteByte('\n')
	}
}

// situations says what charging and battery give in each, all that is on drawing at
// once.
func (x *Brief) situations() {
	most := 0
	for _, s := range x.Situations {
		most = max(most, min(utf8.RuneCountInString(s.Name), x.Width/3))
	}
	for _, s := range x.Situations {
		x.prose(fmt.Sprintf("%-*s  ", most, s.Name), x.given(s))
	}
	if len(x.Situations) > 0 {
		x.prose("", givenNote)
		x.b.WriteByte('\n')
	}
}

// foot is what was tried, what rests on assumptions, the verdict and the caution.
func (x *Brief) foot() {
	if t := x.Plan.Together; t != nil {
		x.prose("", fmt.Sprintf("Nothing was changed: each change was put into a copy and checked. All %q together%s; %d of %d findings are left.",
			"mended", effect(t), x.open()-len(t.Mends), x.open()))
	}
	if x.Plan.Cut {
		x.prose("", "The design is large: not every change was tried.")
	}
	if text := notChecked(x.Findings); text != "" {
		x.prose("", text)
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
