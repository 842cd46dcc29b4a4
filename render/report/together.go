package report

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/study/together"
)

// Together is what may run at once, in print order.
type Together struct {
	Why     string           `json:"why,omitempty"`    // what stands in the way of an answer
	Always  []string         `json:"always,omitempty"` // on with the key and behind no switch
	AlwaysA *float64         `json:"always_a"`         // what these take, and coils that are on with the key
	Items   []TogetherItem   `json:"accessories"`
	Choices []TogetherChoice `json:"choices"`

	coils   bool     // are among what is always on
	charged []string // batteries whose loads are left out
}

// TogetherItem is what one hand switches; what is given up last stands first.
type TogetherItem struct {
	Name     string   `json:"name"`    // of one accessory its own, of several that of their switch with theirs
	Parts    []string `json:"parts"`   // its accessories
	Amperes  *float64 `json:"amperes"` // at the posts, duty counted, with the coils that it closes
	Priority int      `json:"priority"`
	Stated   bool     `json:"priority_stated"`
	Critical bool     `json:"critical"`
}

// TogetherChoice is what may run at once at idle, at cruise or in a situation.
type TogetherChoice struct {
	Name       string     `json:"name"`
	EngineRPM  float64    `json:"engine_rpm"`
	CapacityA  *float64   `json:"capacity_a"` // left for what is switched
	Count      int        `json:"sets_found"`
	Complete   bool       `json:"complete"`
	SameAs     string     `json:"same_sets_as,omitempty"` // an earlier choice with the same capacity
	Sets       [][]string `json:"sets"`                   // the first of them
	OverdrawA  *float64   `json:"overdraw_a,omitempty"`
	SwitchOff  []string   `json:"switch_off,omitempty"`
	UncoveredA *float64   `json:"uncovered_a,omitempty"`

	noun string // what the design is for
}

// mostSets is how many sets of a choice are listed.
const mostSets = 12

// newTogether makes the rows.
func newTogether(p *together.Plan, noun string) *Together {
	out := &Together{Why: p.Why, Always: loadNames(p.Always), AlwaysA: finite(p.AlwaysA), coils: p.Coils, charged: p.Charged, Items: []TogetherItem{}, Choices: []TogetherChoice{}}
	for _, i := range p.Items {
		out.Items = append(out.Items, TogetherItem{Name: i.Name, Parts: loadNames(i.Loads), Amperes: finite(i.CurrentA), Priority: i.Rank,
			Stated: i.Stated, Critical: i.Critical})
	}
	first := map[float64]string{}
	for _, c := range p.Choices {
		row := TogetherChoice{Name: c.Name, EngineRPM: c.EngineRPM, CapacityA: finite(c.CapacityA), Count: len(c.Sets),
			Complete: c.Complete, Sets: [][]string{}, SwitchOff: itemNames(c.SwitchOff), noun: noun}
		for _, s := range c.Sets[:min(len(c.Sets), mostSets)] {
			row.Sets = append(row.Sets, itemNames(p.Members(s)))
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

func itemNames(items []*together.Item) []string {
	out := []string{}
	for _, i := range items {
		out = append(out, i.Name)
	}
	return out
}

func loadNames(loads []*design.Load) []string {
	var out []string
	for _, l := range loads {
		out = append(out, l.Name)
	}
	return out
}

// AlwaysOn says what counts whatever is chosen; "" = nothing.
func (t *Together) AlwaysOn() string {
	if t.AlwaysA == nil || *t.AlwaysA == 0 {
		return ""
	}
	of := slices.Clone(t.Always)
	if t.coils {
		of = append(of, "the relay coils that the key closes")
	}
	text := "Counted throughout, with no switch to choose by: " + amps(t.AlwaysA) + " of " + wording.And(of) + "."
	if len(t.charged) > 0 {
		text += " The loads of " + wording.And(t.charged) + " are left out: the engine gives what the chargers take, as in the balance: with batteries as full as the situation says, " +
			"else full; one run down takes more."
	}
	return text
}

// write prints what may run at once.
func (t *Together) write(b *strings.Builder) {
	b.WriteString("load combinations, duty counted\n")
	if t.Why != "" {
		b.WriteString(wrap("  ", t.Why))
	}
	if text := t.AlwaysOn(); text != "" {
		b.WriteString(wrap("  ", text))
	}
	for _, c := range t.Choices {
		fmt.Fprintf(b, "\n%s, %s: %s for what is switched\n", c.Name, Engine(c.EngineRPM), amps(c.CapacityA))
		for _, line := range c.lines(len(t.Items)) {
			b.WriteString(wrapNames("  - ", line))
		}
		if text := c.overdrawText(); text != "" {
			b.WriteString(wrap("  over by ", text))
		}
	}
}

// setsShown is how many sets a cell of the table lists, and lettersShown how many
// letters of them, but for the first; the text has more.
const setsShown, lettersShown = 3, 250

// shown are the sets that a cell lists.
func (c TogetherChoice) shown() [][]string {
	letters := 0
	for i, s := range c.Sets[:min(len(c.Sets), setsShown)] {
		if letters += len(strings.Join(s, ", ")); i > 0 && letters > lettersShown {
			return c.Sets[:i]
		}
	}
	return c.Sets[:min(len(c.Sets), setsShown)]
}

// Table is what may run at once, a line for each choice; what was said in a line
// above is not said again.
func (t *Together) Table() *Table {
	out := newTable("situation", ">left to switch on", "combination", "short by; shed first")
	said := map[string]string{}
	for _, c := range t.Choices {
		some := c
		some.Sets = c.shown()
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

// lines says each set in words; all is the number of items.
func (c TogetherChoice) lines(all int) []string {
	switch {
	case all == 0:
		return []string{"there is nothing to choose"}
	case c.Complete && c.Count == 0:
		return []string{"nothing: the " + c.noun + " itself, with what is always on, takes more than the charging system gives"}
	case c.Complete && c.Count == 1 && len(c.Sets[0]) == all:
		return []string{"everything"}
	case c.SameAs != "":
		return []string{"as in " + c.SameAs}
	}
	var lines []string
	for _, s := range c.Sets {
		if len(s) == 0 {
			s = []string{"nothing that is switched"}
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
		text += fmt.Sprintf("; still %s short with all off but what is critical or always on: raise the engine speed",
			amps(c.UncoveredA))
	}
	return text
}
