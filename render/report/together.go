package report

import (
	"fmt"
	"strings"

	"fusewright/harness/design/wording"
	"fusewright/harness/study/together"
)

// Together is what may run at once, in print order.
type Together struct {
	Why     string           `json:"why,omitempty"` // what stands in the way of an answer
	Items   []TogetherItem   `json:"accessories"`
	Choices []TogetherChoice `json:"choices"`
}

// TogetherItem is an accessory; what is given up last stands first.
type TogetherItem struct {
	Part     string   `json:"part"`
	Amperes  *float64 `json:"amperes"` // at the posts, duty counted
	Priority int      `json:"priority"`
	Stated   bool     `json:"priority_stated"`
	Critical bool     `json:"critical"`
}

// TogetherChoice is what may run at once at idle, at cruise or in a situation.
type TogetherChoice struct {
	Name       string     `json:"name"`
	EngineRPM  float64    `json:"engine_rpm"`
	CapacityA  *float64   `json:"capacity_a"` // left for accessories
	Count      int        `json:"sets_found"`
	Complete   bool       `json:"complete"`
	SameAs     string     `json:"same_sets_as,omitempty"` // an earlier choice with the same capacity
	Sets       [][]string `json:"sets"`                   // the first of them
	OverdrawA  *float64   `json:"overdraw_a,omitempty"`
	SwitchOff  []string   `json:"switch_off,omitempty"`
	UncoveredA *float64   `json:"uncovered_a,omitempty"`
}

// mostSets is how many sets of a choice are listed.
const mostSets = 12

// newTogether makes the rows.
func newTogether(p *together.Plan) *Together {
	out := &Together{Why: p.Why, Items: []TogetherItem{}, Choices: []TogetherChoice{}}
	for _, i := range p.Items {
		out.Items = append(out.Items, TogetherItem{Part: i.Load.Name, Amperes: finite(i.CurrentA), Priority: i.Rank,
			Stated: i.Stated, Critical: i.Load.Critical})
	}
	first := map[float64]string{}
	for _, c := range p.Choices {
		row := TogetherChoice{Name: c.Name, EngineRPM: c.EngineRPM, CapacityA: finite(c.CapacityA), Count: len(c.Sets),
			Complete: c.Complete, Sets: [][]string{}, SwitchOff: partNames(c.SwitchOff)}
		for _, s := range c.Sets[:min(len(c.Sets), mostSets)] {
			row.Sets = append(row.Sets, partNames(p.Members(s)))
		}
		if c.OverdrawA > 0 {
			row.OverdrawA, row.UncoveredA = finite(c.OverdrawA), finite(c.UncoveredA)
		}
		if row.SameAs = first[c.CapacityA]; row.SameAs == "" {
			first[c.CapacityA] = c.Name
		}
		out.Choices = append(out.Choices, row)
	}
	return out
}

func partNames(items []*together.Item) []string {
	out := []string{}
	for _, i := range items {
		out = append(out, i.Load.Name)
	}
	return out
}

// write prints what may run at once.
func (t *Together) write(b *strings.Builder) {
	b.WriteString("load combinations, duty counted\n")
	if t.Why != "" {
		b.WriteString(wrap("  ", t.Why))
	}
	for _, c := range t.Choices {
		fmt.Fprintf(b, "\n%s, %s: %s for accessories\n", c.Name, Engine(c.EngineRPM), amps(c.CapacityA))
		for _, line := range c.lines(len(t.Items)) {
			b.WriteString(wrap("  - ", line))
		}
		if text := c.overdrawText(); text != "" {
			b.WriteString(wrap("  over by ", text))
		}
	}
}

// setsShown is how many sets a cell of the table lists; the text has more.
const setsShown = 3

// Table is what may run at once, a line for each choice; what was said in a line
// above is not said again.
func (t *Together) Table() *Table {
	out := newTable("situation", ">for accessories", "combination", "short by; shed first")
	said := map[string]string{}
	for _, c := range t.Choices {
		some := c
		some.Sets = c.Sets[:min(len(c.Sets), setsShown)]
		sets := strings.ReplaceAll(strings.Join(some.lines(len(t.Items)), "; or "), "; or and ", "; and ")
		if as := said[sets]; as != "" && len(sets) > len("as in ")+len(as) {
			sets = "as in " + as
		} else {
			said[sets] = c.Name
		}
		out.add(c.Name, amps(c.CapacityA), sets, c.overdrawText())
	}
	return out
}

// lines says each set in words; all is the number of accessories.
func (c TogetherChoice) lines(all int) []string {
	switch {
	case c.Complete && c.Count == 0:
		return []string{"nothing: the vehicle itself takes more than the charging system gives"}
	case c.Complete && c.Count == 1 && len(c.Sets[0]) == all:
		return []string{"everything"}
	case c.SameAs != "":
		return []string{"as in " + c.SameAs}
	}
	var lines []string
	for _, s := range c.Sets {
		if len(s) == 0 {
			s = []string{"no accessory at all"}
		}
		lines = append(lines, strings.Join(s, ", "))
	}
	if more := c.Count - len(c.Sets); more > 0 {
		lines = append(lines, "and "+wording.Count(more, "more choice", "more choices"))
	}
	if !c.Complete {
		lines = append(lines, "and others that were not searched for")
	}
	return lines
}

// overdrawText says how much a situation asks for too much and what to switch
// off for it; "" when it does not.
func (c TogetherChoice) overdrawText() string {
	if c.OverdrawA == nil {
		return ""
	}
	text := amps(c.OverdrawA) + " at the regulated voltage"
	if len(c.SwitchOff) > 0 {
		text += "; shed first: " + strings.Join(c.SwitchOff, ", then ")
	}
	if c.UncoveredA != nil && *c.UncoveredA > 0 {
		text += fmt.Sprintf("; still %s short with all but the critical loads off: raise the engine speed",
			amps(c.UncoveredA))
	}
	return text
}
