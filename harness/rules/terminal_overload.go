package rules

import (
	"fmt"

	"fusewright/harness/circuit"
	"fusewright/harness/finding"
	"fusewright/library"
)

var terminalOverload = &Rule{
	Name:  "terminal-overload",
	Title: "a terminal carries more than its rating",
	Doc: "The largest current of each wire over all situations against the rating of the terminals that " +
		"end it. One finding a wire, for its weaker end.",
	Formula:  "current ≤ rating of the terminal",
	Limits:   "the terminal's rating in the library",
	Why:      "the crimp or the tab heats, loses its spring and chars the housing",
	Change:   "use a terminal of a larger size or another kind",
	Severity: "fault",
	Source:   "IEC 61210 guide for tabs (one source); others from memory",
	Bad: `
relays:
  heat relay: {form: micro make, at: battery tray, fed by: heat fuse, wire: {size: 4 mm², length: 100 mm, ends: {to: tab 2.8 yellow}}, coil: {fed by: pilot, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
`,
	Good: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
`,
	Run: func(p *Pass) {
		for _, w := range p.c.Wires {
			end := weaker(w.FromEnd, w.ToEnd)
			i := p.wireWorst[w.Index]
			if end == nil || i.A <= end.MaxA {
				continue
			}
			p.reportTerminal(w, end, i)
		}
	},
}

// weaker is the end with the lower rating; nil when no rating is known.
func weaker(a, b *library.Terminal) *library.Terminal {
	switch {
	case a == nil || a.MaxA <= 0:
		if b == nil || b.MaxA <= 0 {
			return nil
		}
		return b
	case b == nil || b.MaxA <= 0 || a.MaxA <= b.MaxA:
		return a
	}
	return b
}

func (p *Pass) reportTerminal(w *circuit.Wire, end *library.Terminal, i worst) {
	fin := ofWire(finding.Fault, w)
	fin.What = fmt.Sprintf("%s carries %s; its terminal %s is rated %s",
		wireText(w), amps(i.A), end.Name, rated(end.MaxA))
	fin.Numbers = limited("current", i.A, end.MaxA, "A")
	fin.Situation = i.situation()
	fin.Source = end.Source.String()
	p.report(fin)
}
