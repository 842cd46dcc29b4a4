package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/remedy"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
)

// worst is the highest severity of a list.
func worst(list []*finding.Finding) (most finding.Severity) {
	for _, f := range list {
		most = max(most, f.Severity)
	}
	return most
}

// cause prints one with its findings: those of one rule are one entry. Beside dangers
// and faults advice is counted only.
func (x *Brief) cause(c *remedy.Cause, grave bool) {
	list := c.Findings
	x.in = ""
	guess := c.Remedy != nil && c.Remedy.Guess
	if at := slices.IndexFunc(list, func(f *finding.Finding) bool { return f.Meant != nil }); guess && at >= 0 {
		x.question(list[at], len(list)-1)
		list = slices.Delete(slices.Clone(list), at, at+1)
	}
	if grave {
		var advice []*finding.Finding
		list, advice = split(list)
		x.fold(advice)
	}
	groups := byRule(list)
	headed := c.Remedy != nil && len(groups) > 1 && !guess
	if headed {
		x.line("   ", aboutNow(c.Remedy), "")
	}
	for i, g := range groups {
		if guess {
			x.slipped(g)
		} else {
			x.entry(g)
			if c.Remedy == nil && i == 0 && len(groups) > 1 { // under its own finding, not after those of another rule
				x.decide(g[0])
			}
		}
	}
	x.remedies(c, headed || guess, len(groups) > 1)
	x.b.WriteByte('\n')
}

// split parts advice from what is graver.
func split(list []*finding.Finding) (grave, advice []*finding.Finding) {
	for _, f := range list {
		if f.Severity == finding.Advice {
			advice = append(advice, f)
		} else {
			grave = append(grave, f)
		}
	}
	return grave, advice
}

// byRule gathers the findings of a cause by rule, the gravest first.
func byRule(list []*finding.Finding) [][]*finding.Finding {
	var groups [][]*finding.Finding
	for _, f := range list {
		at := slices.IndexFunc(groups, func(g []*finding.Finding) bool { return g[0].Rule == f.Rule })
		if at < 0 {
			groups = append(groups, nil)
			at = len(groups) - 1
		}
		groups[at] = append(groups[at], f)
	}
	slices.SortStableFunc(groups, func(a, b []*finding.Finding) int { return cmp.Compare(b[0].Severity, a[0].Severity) })
	return groups
}

// aboutNow is what a remedy changes, as it is now.
func aboutNow(t *remedy.Trial) string {
	return strings.TrimSuffix(t.About+": "+t.Was, ": ")
}

// hang is the indent of what belongs to a finding's first line.
const hang = "           "

// question prints a figure that is hard to believe, and how much hangs on it.
func (x *Brief) question(f *finding.Finding, follow int) {
	row := x.row[f]
	x.line(lead(f)+fmt.Sprintf("%-8s", "?"), row.What+" ["+row.Rule+"]", position(row))
	if follow > 0 {
		x.prose(hang, wording.Count(follow, "more follows", "more follow")+" from this")
	}
}

// lead is a finding's number before its line.
func lead(f *finding.Finding) string { return fmt.Sprintf("%-2d ", f.Number) }

func position(f Finding) string { return fmt.Sprintf("%d:%d", f.Line, f.Col) }

// entry prints findings of one rule: the worst with its figures, the others in short.
func (x *Brief) entry(g []*finding.Finding) {
	f := x.row[g[0]]
	if in := f.Situation; in == x.in { // the one above has said it
		f.Situation = ""
	} else {
		x.in = in
	}
	x.line(lead(g[0])+fmt.Sprintf("%-8s", f.Severity), f.About()+": "+rules.Find(f.Rule).Says, position(f))
	text := cmp.Or(g[0].Short, f.brief())
	if text == "" {
		text = f.What
	}
	if f.NoMargin {
		text += "; " + unsourcedText(f.of)
	}
	if behind := g[0].Behind; behind != "" && f.brief() != "" {
		text += "; " + behind
	}
	x.prose(hang, text+" ["+f.Rule+"]")
	if len(g) > 1 {
		x.prose(hang, "likewise "+x.shortly(g[1:], g[0], g[0].Number))
	}
}

// slipped prints findings of one rule that follow from a slip: each with its figure.
func (x *Brief) slipped(g []*finding.Finding) {
	x.prose(lead(g[0])+fmt.Sprintf("%-8s", g[0].Severity), rules.Find(g[0].Rule).Says+": "+x.shortly(g, nil, g[0].Number)+" ["+g[0].Rule+"]")
}

// shortly lists findings with their figures: "W25 deck wash (50 s), E3 work light
// (16 %) advice". What is the same as of the one before them is not said again; said is
// the finding's number that stands before them.
func (x *Brief) shortly(list []*finding.Finding, before *finding.Finding, said int) string {
	var texts []string
	for _, y := range list {
		row := x.row[y]
		if before != nil && y.Figure.Given() && y.Figure.Limit == before.Figure.Limit {
			row.Figure = quantity.Brief(y.Figure.Value, y.Figure.Of)
		}
		text := row.short()
		if y.Number != said {
			text, said = fmt.Sprintf("%d %s", y.Number, text), y.Number
		}
		if severity := cmp.Or(before, list[0]).Severity; y.Severity != severity {
			text += " " + y.Severity.String()
		}
		texts = append(texts, text)
	}
	return strings.Join(texts, ", ")
}

// kinds are the ends of the names of a figure's three values, with their words.
var kinds = []struct{ end, word string }{{" nominal", "nominal"}, {" likely", "likely"}, {" worst case", "at worst"}}

// brief is the figures that decide a finding: "26.2 A nominal, 29.9 A at worst; limit
// 26.8 A; night cutting"; "" without any. The likely one is left out unless it decides.
func (f Finding) brief() string {
	if len(f.Numbers) == 0 {
		return ""
	}
	texts := f.Figures()
	var values []string
	limit, said := "", map[string]bool{}
	for i, n := range f.Numbers {
		value := strings.TrimPrefix(texts[i], n.Name+" ")
		kind := slices.IndexFunc(kinds, func(k struct{ end, word string }) bool { return strings.HasSuffix(n.Name, k.end) })
		switch {
		case n.Name == "limit" && f.of.LimitSays != "":
			limit = f.of.LimitSays
		case n.Name == "limit":
			limit = "limit " + value
		case limit != "" || kind >= 0 && said[value] || kind == 1 && !f.decides(n):
		case kind >= 0:
			said[value] = true
			values = append(values, value+" "+kinds[kind].word)
		default:
			values = append(values, texts[i])
		}
	}
	if len(said) == 1 && len(values) == 1 { // all three are alike
		for value := range said {
			values[0] = value
		}
	}
	return wording.Present([]string{strings.Join(values, ", "), limit, f.Situation}, "; ")
}

// Brief is the figures that decide a finding in a line; "" without any.
func (f Finding) Brief() string { return f.brief() }

// decides tells whether a number is the one that the finding is judged by.
func (f Finding) decides(n Number) bool {
	return f.of != nil && n.Value != nil && quantity.In(*n.Value, n.Unit, f.of.Figure.Of) == f.of.Figure.Value
}

// fold counts advice; of rules that are named it keeps the findings.
func (x *Brief) fold(list []*finding.Finding) {
	for _, f := range list {
		if len(x.advised[f.Rule]) == 0 {
			x.advice = append(x.advice, f.Rule)
		}
		x.advised[f.Rule] = append(x.advised[f.Rule], f)
	}
}

// mostNamed is how many findings of a rule that is named are listed.
const mostNamed = 8

// folded is the advice that is counted, by rule, after what is named.
func (x *Brief) folded() {
	if len(x.advice) == 0 {
		return
	}
	slices.SortStableFunc(x.advice, func(a, b string) int { return len(x.advised[b]) - len(x.advised[a]) })
	lead := "   advice  "
	var counted []string
	for _, name := range x.advice {
		rule, list := rules.Find(name), x.advised[name]
		if !rule.Named {
			counted = append(counted, counting(name, len(list)))
			continue
		}
		text := x.shortly(list[:min(mostNamed, len(list))], nil, 0)
		if more := len(list) - mostNamed; more > 0 {
			text += fmt.Sprintf(" and %d more", more)
		}
		x.prose(lead, rule.Says+": "+text+" ["+name+"]")
		lead = hang
	}
	if len(counted) > 0 {
		x.prose(lead, strings.Join(counted, ", ")+"; -v says more")
	}
	x.b.WriteByte('\n')
}

func counting(name string, n int) string {
	if n == 1 {
		return name
	}
	return fmt.Sprintf("%d × %s", n, name)
}
