package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var returnOnSupervised = &Rule{
	Name:  "return-on-supervised",
	Title: "a part returns through a supervised circuit",
	Says:  "returns through a supervised circuit",
	Doc: "A load or a relay's coil whose return leads to a ground that the design calls supervised: a " +
		"return of the factory wiring through which a data-bus module measures. Grounds that lead on to " +
		"such a ground count too. A ground of which nothing is said is taken as a plain one.",
	Formula: "none: it is a question of topology",
	Limits:  "none",
	Why: "the module measures the added current as its own lamp's: it stores a fault code, switches the " +
		"circuit off, or no longer sees a lamp that failed",
	Change:   "run the return to a frame stud or ground block of its own",
	Severity: "fault",
	Source:   "common practice, no source",
	Bad: `
grounds:
  frame: {kind: frame stud, at: battery tray, limit: 60 A, frame resistance: 2 mΩ, supervised: yes}
`,
	Mended: []string{"supervised: yes", "supervised: no"},
	Run: func(p *Pass) {
		for _, part := range p.c.Parts {
			ground := supervisedReturn(returnsOf(part), 0)
			if ground == nil {
				continue
			}
			p.say(ofPart(finding.Fault, part), "the return of %s goes through %s, a supervised circuit", part.Name, ground.Name)
		}
	},
}

// returnsOf is where a load or a relay's coil returns to.
func returnsOf(part *circuit.Part) []design.Feed {
	switch x := part.Source.(type) {
	case *design.Load:
		return x.Returns
	case *design.Relay:
		return x.Coil.Returns
	}
	return nil
}

// supervisedReturn is the first supervised ground that the returns reach; nil
// when there is none. The reader refuses returns in a circle; the depth guards
// against designs that were built otherwise.
func supervisedReturn(returns []design.Feed, depth int) *design.Ground {
	const deepest = 100
	for _, r := range returns {
		if half, ok := r.From.Part.(*design.Relay); ok && depth <= deepest {
			if g := supervisedReturn(half.Wired().Returns, depth+1); g != nil {
				return g
			}
		}
		g, ok := r.From.Part.(*design.Ground)
		if !ok || depth > deepest {
			continue
		}
		if g.Supervised {
			return g
		}
		if on := supervisedReturn(g.Returns, depth+1); on != nil {
			return on
		}
	}
	return nil
}
