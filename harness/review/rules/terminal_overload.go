package rules

import (
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

var terminalOverload = &Rule{
	Name:  "terminal-overload",
	Title: "a terminal carries more than its rating",
	Says:  "more current than the terminal may carry",
	Doc: "The largest current of each wire over all situations, at nominal values, as is likely and in the worst case, " +
		"against the rating of the terminals that " +
		"end it; of loads that are on for a time only, as much more as the wire it ends may carry then, up to half as much again. " +
		"One finding per wire, for its weaker end. Contacts of plugs are judged by plug-overload.",
	Formula:  "current ≤ rating of the terminal",
	Limits:   "the terminal's rating in the library",
	Why:      "the crimp or the tab heats, loses its spring and chars the housing",
	Change:   "use a terminal of a larger size or another kind",
	Severity: "fault; advice when only the worst case exceeds the rating",
	Source:   "IEC 61210 guide for tabs (one source); others from memory",
	Mend:     MendWire,
	Bad: `
fuses:
  heat fuse: {type: blade C, rating: 20 A, at: battery tray, fed by: keyed feed, wire: {size: 2.5 mm², length: 100 mm}}
blocks:
  rear: {way limit: 20 A, total limit: 30 A, at: rear, fed by: heat fuse, wire: {size: 2.5 mm², ends: {to: ring M5 blue}}, ways: {1: {fuse: none}}}
loads:
  warm seat: {power: 145 W, behaves: resistor, at: rear, fed by: rear 1, wire: {size: 1.5 mm², length: 300 mm, ends: {from: receptacle 2.8}}, returns to: frame, return wire: {size: 2.5 mm²}}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 32 A, spare: 20 A, supervised: no}
charging: {regulated: 14.3 V, output: {1300 rpm: 22 A, 3000 rpm: 30 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
`,
	Good: `
fuses:
  heat fuse: {type: blade C, rating: 20 A, at: battery tray, fed by: keyed feed, wire: {size: 2.5 mm², length: 100 mm}}
loads:
  warm seat: {power: 145 W, behaves: resistor, at: rear, fed by: heat fuse, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 32 A, spare: 20 A, supervised: no}
charging: {regulated: 14.3 V, output: {1300 rpm: 22 A, 3000 rpm: 30 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
`,
	Run: func(p *Pass) {
		for _, w := range p.c.Wires {
			if end := weaker(unplugged(w.From, w.FromEnd), unplugged(w.To, w.ToEnd)); end != nil {
				p.judgeTerminal(w, end)
			}
		}
	},
}

// terminalA is what a terminal bears at the end of a wire: its rating, and of a current
// that flows for a time only as much as heats the wire no more than that does for good,
// since what is crimped on a wire heats no faster than the wire; no more than
// mostForATime of it, since a contact's small spot does (common practice, no source).
func (p *Pass) terminalA(w *circuit.Wire, end *library.Terminal) float64 {
	if pulse := p.allowed(w).Pulse; pulse.Gain > 1 {
		return max(end.MaxA, min(pulse.MostA(end.MaxA), mostForATime*end.MaxA))
	}
	return end.MaxA
}

const mostForATime = 1.5

// unplugged is a wire's end unless it is in a plug, which plug-overload judges.
func unplugged(at *circuit.Terminal, end *library.Terminal) *library.Terminal {
	if at.Part.Plug != nil {
		return nil
	}
	return end
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

func (p *Pass) judgeTerminal(w *circuit.Wire, end *library.Terminal) {
	most := p.terminalA(w, end)
	v := p.held("terminal rating", p.cornerAmps(w.Branch), figure.Larger, most, most, always(finding.Fault))
	if v.severity == 0 {
		return
	}
	fin := ofWire(v.severity, w)
	v.decides(&fin, "current", figure.Larger, 1, most, "A")
	fin.Source = end.Source.String()
	bears := ""
	if most > end.MaxA {
		bears = ", and good for " + amps(most) + p.allowed(w).timeOn()
	}
	p.say(fin, "%s carries %s; its terminal %s is rated %s%s",
		w.Text(), v.split(against(most, quantity.Current)), end.Name, rated(end.MaxA), bears)
}
