package rules

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

// equaliseS is how long a flat battery draws what only resistance limits; our choice.
const equaliseS = 300

var linkEqualising = &Rule{
	Name:  "link-equalising",
	Title: "a link closes on a flat battery, and carries more than it is made for",
	Says:  "carries more than it may into a flat battery",
	Doc: "In every situation that says a `charge` below full of a further battery, the current that its link carries in the first minutes, there and back: from the first " +
		"battery and the engine into the flat one, limited by resistances alone. Held against the rating of relays and switches in the link, against the opening curve of its " +
		"fuses over five minutes, and against what its wires may carry for good.",
	Formula:  "current of the link ≤ rating of the contact; opening time of the fuse ≥ 300 s; current ≤ what the wire may carry",
	Limits:   "ratings and curves of the library; 300 s is our choice",
	Why:      "contacts weld, and a fuse that opens leaves the battery uncharged without a word",
	Change:   "use a larger relay, fuses and cable in the link, or a DC-DC charger, which limits the current",
	Severity: "fault",
	Source:   "equalising currents of 30 to 150 A: worked out, 1.5 V over 10 to 50 mΩ of cable, relay and batteries; common practice, no source",
	Mend:     MendLink,
	InUse:    true,
	Bad:      relayLink("AGM", "10 A", ", charge: {house: 20 %}"),
	Mended:   []string{"rating: 10 A", "rating: 20 A"},
	Run: func(p *Pass) {
		for _, s := range p.usable {
			if len(s.Situation.Charge) > 0 {
				rush := s.Again(solve.Options{Rush: true, Changes: p.heldClosed(s)})
				if rush.Status == solve.Converged {
					p.judgeRush(rush)
				}
			}
		}
	},
}

// heldClosed keeps the relays of a solution that have pulled in where they are: a sensing
// relay opens some time after the flat battery has pulled its voltage down, not at once.
func (p *Pass) heldClosed(s *solve.Solution) (changes []solve.Change) {
	for _, b := range p.c.Branches {
		if b.OfRelay() && s.Closed[b.Index] {
			changes = append(changes, solve.CloseBranch(b))
		}
	}
	return changes
}

func (p *Pass) judgeRush(rush *solve.Solution) {
	for part, b := range p.links() {
		if rush.Situation.ChargeOf(part.Source.(*design.Bank)) == 1 {
			continue
		}
		back := p.c.MainReturn(part.Terminal("-").Node, p.c.Negative()).Branches
		for _, x := range slices.Concat(p.c.MainFeed(b.A).Branches, []*circuit.Branch{b}, back) {
			p.judgeEqualising(x, part, rush)
		}
	}
}

// judgeEqualising holds one branch of a link against what it carries into the flat battery.
func (p *Pass) judgeEqualising(b *circuit.Branch, bank *circuit.Part, rush *solve.Solution) {
	a := math.Abs(rush.Amps(b))
	limit := 0.0
	var fin finding.Finding
	switch {
	case b.Fuse != nil && b.Fuse.Rating != nil:
		if b.Fuse.Auto || a <= b.Fuse.Rating.RatingA || b.Device(0).Open(a).FastS > equaliseS {
			return
		}
		limit, fin = b.Fuse.Rating.RatingA, ofPart(finding.Fault, b.Part)
	case b.Kind == circuit.ContactBranch:
		limit, fin = linkContactA(b), ofPart(finding.Fault, b.Part)
	case b.Wire != nil:
		if can := p.allowed(b.Wire); can.known() {
			limit, fin = can.AllowedA, ofWire(finding.Fault, b.Wire)
		}
	}
	if limit == 0 || !over(a, limit) {
		return
	}
	fin.Situation, fin.Cause = rush.Situation.Name, "link into "+bank.Name
	fin.Figure = figure.New(a, limit, "A", figure.Larger)
	have, may := quantity.Against(a, limit, quantity.Current)
	p.say(fin, "%s carries %s into %s at %s charge in %q, and is made for %s", b.Name, have, bank.Name,
		quantity.Plain(rush.Situation.ChargeOf(bank.Source.(*design.Bank)), quantity.Share), rush.Situation.Name, may)
}

// linkContactA is the rating of a contact in a link; 0 = not known.
func linkContactA(b *circuit.Branch) float64 {
	switch x := b.Part.Source.(type) {
	case *design.Relay:
		if x.Form != nil {
			return x.Form.MakeA
		}
	case *design.Switch:
		if x.Type != nil {
			return x.Type.ResistiveA
		}
		return x.RatingA.Or(0)
	}
	return 0
}
