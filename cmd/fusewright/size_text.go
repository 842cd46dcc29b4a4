package main

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/review/rules"
	"fusewright/harness/sizing"
	"fusewright/render/report"
)

// writeSizing prints a plan for people, what the library lacks before the choices.
func writeSizing(b *bytes.Buffer, p *sizing.Plan) {
	if len(p.Choices) == 0 {
		fmt.Fprintf(b, "%s: nothing is left open\n", p.Design.Title.Value)
		return
	}
	for _, text := range p.Lacking {
		fmt.Fprintf(b, "%s\n", text)
	}
	for _, e := range alike(p.Choices) {
		e.write(b)
	}
	fmt.Fprintf(b, "\ncopper of these wires: %s; in the whole harness, left over of the wire bought: %s, "+
		"wire sizes: %d, crimp parts: %d, connector families: %d; %s\n",
		grams(p.Cost.CopperG), grams(p.LeftG), p.Cost.Sizes, p.Cost.Terminals, p.Cost.Plugs, certainty(p))
	if n := len(p.AsIfOn); n > 0 {
		fmt.Fprintf(b, "no situation turns on %s: sized as if on at cruise, with what shares the fuse; "+
			"list what is on together with the most else\n", wording.And(p.AsIfOn))
	}
	writeRemaining(b, p)
	last := ""
	for _, f := range p.Elsewhere {
		text := fmt.Sprintf("%s: %s: %s [%s]\n    no size mends this: %s\n", f.Pos, f.Severity, f.What, f.Rule, cmp.Or(f.Change, rules.Find(f.Rule).Change))
		if text != last { // two outputs of one switch read alike
			b.WriteString(text)
		}
		last = text
	}
	fmt.Fprintf(b, "%s\n", report.CautionOf(p.Design))
}

// entry is choices that came out alike for the same reason.
type entry []*sizing.Choice

// alike gathers choices, in the order of their first.
func alike(choices []*sizing.Choice) []entry {
	type key struct {
		kind                     sizing.Kind
		value, decided, runnerUp string
		usual                    string
		allowed                  bool
	}
	at := map[key]int{}
	var list []entry
	for _, c := range choices {
		k := key{c.Kind, c.Value, c.Decided, c.RunnerUp, c.Usual, c.MoreG != 0}
		i, ok := at[k]
		if !ok {
			i = len(list)
			at[k] = i
			list = append(list, nil)
		}
		list[i] = append(list[i], c)
	}
	return list
}

func (e entry) write(b *bytes.Buffer) {
	first := e[0]
	if len(e) == 1 {
		fmt.Fprintf(b, "%s %s: %s\n", first.Kind, first.Part, first.Value)
	} else {
		fmt.Fprintf(b, "%d %ss: %s\n", len(e), first.Kind, first.Value)
		parts := make([]string, len(e))
		for i, c := range e {
			parts[i] = c.Part
		}
		fmt.Fprintf(b, "    for %s\n", strings.Join(parts, "; "))
	}
	if first.Usual != "" {
		fmt.Fprintf(b, "    in place of: %s, the usual insulation, in such heat\n", first.Usual)
	}
	fmt.Fprintf(b, "    decided by: %s\n", inWords(first.Decided))
	if first.RunnerUp != "" {
		fmt.Fprintf(b, "    next: %s, but %s\n", first.RunnerUp, e.lost())
	}
}

// inWords adds to the name of a rule what it is about.
func inWords(decided string) string {
	if r := rules.Find(decided); r != nil {
		return r.Name + ", " + r.Title
	}
	return decided
}

// lost is why the second choice lost, for all of an entry.
func (e entry) lost() string {
	first := e[0]
	same := true
	for _, c := range e {
		same = same && c.Lost == first.Lost
	}
	switch {
	case same:
		return first.Lost
	case first.MoreG != 0:
		return fmt.Sprintf("for one of them alone, %s: %s", first.Part, first.Lost)
	}
	return fmt.Sprintf("%s; the other %d likewise", first.Lost, len(e)-1)
}

// writeRemaining prints what no choice meets, what stands against mending it,
// and the ways out.
func writeRemaining(b *bytes.Buffer, p *sizing.Plan) {
	for _, f := range p.Remaining {
		fmt.Fprintf(b, "%s: %s: %s [%s]\n", f.Pos, f.Severity, f.What, f.Rule)
		for _, c := range p.Conflicts {
			if c.Of == f {
				fmt.Fprintf(b, "    %s would fix it, but then: %s [%s]\n", c.Mend, c.Against.What, c.Against.Rule)
			}
		}
	}
	if len(p.Remaining) > 0 {
		writeWaysOut(b, p)
	}
}

// certainty says how sure it is that nothing cheaper does.
func certainty(p *sizing.Plan) string {
	others := slices.ContainsFunc(p.Choices, func(c *sizing.Choice) bool { return c.Kind == sizing.RelayForm || c.Kind == sizing.BlockType })
	switch {
	case p.Proven && others:
		return "no cheaper choice does with these relays and blocks"
	case p.Proven:
		return "no cheaper choice does"
	}
	return "the best found, not proven to be the cheapest"
}

func writeWaysOut(b *bytes.Buffer, p *sizing.Plan) {
	if len(p.WaysOut) == 0 {
		fmt.Fprintf(b, "no single change that was tried mends this\n")
		return
	}
	fmt.Fprintf(b, "ways out, tried one at a time:\n")
	for _, o := range p.WaysOut {
		left := "nothing is left"
		if o.Left > 0 {
			left = fmt.Sprintf("%d of these findings or others are left", o.Left)
		}
		fmt.Fprintf(b, "    %s (%s; %s)\n", o.What, left, dearer(o.ExtraG))
	}
}

func grams(g float64) string { return quantity.Format(g, quantity.Mass) }

// dearer says what a way out adds to the cost.
func dearer(g float64) string {
	switch {
	case g > 0.5:
		return "costs more"
	case g < -0.5:
		return "costs less"
	}
	return "costs the same"
}
