package rules

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var switchOverload = &Rule{
	Name:  "switch-overload",
	Title: "a switch breaks more than its rating for the kind of load",
	Says:  "over its switching rating",
	Doc: "What draws below each switch, by kind, in the situation where it is most. A switch type has its " +
		"ratings by kind in the library, those at 12 V, of which the 28 V factors leave a part above that unless the type says up to where they hold; a switch with only a rating is divided by 5 for filament lamps " +
		"and by 2 for motors (8 and 3 on systems above 12 V). Shares of different kinds add up. " +
		"A battery switch only carries what a switch or relay behind it turns on: that counts by its resistive rating whatever it is, " +
		"and a starter by 1.3 times it. Switches built into a load are the load's own affair. The ratings hold at nominal; in the worst case the " +
		"switch is to carry what flows.",
	Formula: "Σ current / rating for its kind ≤ 1; rating for lamps and motors = resistive rating " +
		"/ factor",
	Limits:   "the switch type in the library, or the design's rating with the factors",
	Why:      "lamps and motors start with many times their current: the contact burns or welds",
	Change:   "use a switch of a higher rating, or let it switch a relay's coil only",
	Severity: "fault; advice when only the rating for lamps or motors is exceeded, by no more than a third: a question of the contacts' life, and when only the worst case is more than the switch carries",
	Source:   "FAA AC 43.13-1B Table 11-4 (one source)",
	Bad: `
switches:
  lamp switch: {rating: 5 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
loads:
  work lamp: {power: 35 W, behaves: filament lamp, at: rear, fed by: lamp switch, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"rating: 5 A", "rating: 20 A"},
	Run: func(p *Pass) {
		for part, s := range each[*design.Switch](p.facts) {
			for _, b := range part.Branches {
				if b.Closer != nil {
					r := p.switchRatings(s)
					if isolates(b) {
						r.only = p.switchedBeyond
					}
					p.judgeSwitch(part, b, r)
				}
			}
		}
	},
}

// switchedBeyond tells whether a switch or relay other than battery switches turns on what draws: no
// battery switch is worked while it runs.
func (p *Pass) switchedBeyond(draw *circuit.Branch) bool {
	return slices.ContainsFunc(p.c.NeededBy(draw), func(x *circuit.Branch) bool { return !isolates(x) })
}

// switchRatings takes the type's ratings, which are those at 12 V, or divides the
// design's own rating by the factors of AC 43.13-1B Table 11-4: at 12 V lamps 5, motors
// 2; at 28 V lamps 8, motors 3 and even heaters 2.
func (p *Pass) switchRatings(s *design.Switch) ContactRatings {
	if s.RatingA.Given() {
		if p.d.NominalOf(s) > 12 {
			return ContactRatings{s.RatingA.Value / 2, s.RatingA.Value / 8, s.RatingA.Value / 3, 1, nil, nil}
		}
		return ContactRatings{s.RatingA.Value, s.RatingA.Value / 5, s.RatingA.Value / 2, 1, nil, nil}
	}
	if s.Type != nil {
		if t := s.Type; p.d.NominalOf(s) > t.FullV {
			return ContactRatings{t.ResistiveA / 2, t.LampA * 5 / 8, t.MotorA * 2 / 3, 1, nil, nil}
		}
		return ContactRatings{s.Type.ResistiveA, s.Type.LampA, s.Type.MotorA, 1, nil, nil}
	}
	return ContactRatings{}
}

// lifeShare is how far the use of a rating for lamps or motors may go before it is
// more than a question of the contacts' life (common practice, no source).
const lifeShare = 4.0 / 3

func (p *Pass) judgeSwitch(part *circuit.Part, b *circuit.Branch, r ContactRatings) {
	v, u := p.heldContact(b, r, func(u loading) finding.Severity {
		return graver(over(u.A, r.resistive) || over(u.share, lifeShare), finding.Advice, finding.Fault)
	})
	if v.severity == 0 {
		return
	}
	fin := ofPart(v.severity, part)
	fin.Uses = u.uses
	v.decides(&fin, "use of rating", figure.Larger, 100, 1, "%")
	p.say(fin, "%s, rated %s resistive, %s", part.Name, rated(r.resistive), u.does(v, ""))
}
