package design

import (
	"fmt"
	"slices"

	"fusewright/harness/design/figure"

	"gopkg.in/yaml.v3"
)

// Acceptance takes a finding as it is, with a reason.
type Acceptance struct {
	Rule     Text
	Part     Text
	Wire     string         // which wire of the part; "" = any, or the part itself
	Severity string         // the gravest taken; "" = fault
	Figure   *figure.Figure // without its sense; nil = any
	Reason   Text
}

var acceptanceSection = section[Acceptance]{
	Section: Section{Name: "acceptance", Shape: KindList,
		Doc: "A finding that is accepted as it is. It stays in every list, marked as accepted, with the reason. " +
			"It is accepted at the severity and figure given: when the finding becomes more severe, or its figure worse by more than " +
			fmt.Sprintf("%.0f %%", figure.Drift*100) + ", it is open again. `check --format json` gives the line to write as `accept`.",
		Example: "accepted:\n  - {rule: flexing-run, part: grips, " +
			"reason: \"60 mm of slack at full lock, checked on the stand\"}\n" +
			"  - {rule: voltage-drop, part: seat heater, figure: 11.2 % of 10 %, reason: \"measured: it heats\"}\n"},
	keys: []key[Acceptance]{
		ruleKey(),
		textKey(Key{Name: "part", Required: true, Doc: "name of the part, or number of the wire", Example: "grips"},
			func(a *Acceptance) *Text { return &a.Part }),
		choiceKey(Key{Name: "wire", Choices: []string{"feed", "return", "coil feed", "coil return"}, Default: "any of the part",
			Doc: "which wire of the part it is", Example: "feed"},
			func(a *Acceptance) *string { return &a.Wire }),
		choiceKey(Key{Name: "severity", Choices: []string{"danger", "fault", "advice"}, Default: "`fault`",
			Doc: "the highest severity accepted: a danger is accepted by this word only", Example: "danger"},
			func(a *Acceptance) *string { return &a.Severity }),
		figureKey(),
		reasonKey(Key{Name: "reason", Required: true, Doc: "why it is accepted",
			Example: `"60 mm of slack at full lock"`}, func(a *Acceptance) *Text { return &a.Reason }),
	},
}

func addAcceptance(_ *reader, d *Design, _ *yaml.Node) *Acceptance {
	a := &Acceptance{}
	d.Accepted = append(d.Accepted, a)
	return a
}

// ruleKey reads the name of the rule, by which the figure goes.
func ruleKey() key[Acceptance] {
	k := textKey(Key{Name: "rule", Required: true, Doc: "name of the rule", Example: "flexing-run"},
		func(a *Acceptance) *Text { return &a.Rule })
	k.early = true
	return k
}

// figureKey reads the figure that a finding is taken at.
func figureKey() key[Acceptance] {
	k := Key{Name: "figure", Kind: KindText, Default: "any figure, which is advice",
		Doc: "the finding's figure, with what it is held against: with units where it has them", Example: "30 A of 16.1 A"}
	return key[Acceptance]{Key: k, read: func(r *reader, a *Acceptance, f field) {
		s, ok := r.sentence(f, maxSentence)
		if !ok {
			return
		}
		taken, err := figure.Parse(s.Value)
		switch {
		case err != nil:
			r.add(quantityProblem(s.Pos, f, err))
		case taken.Of == "" && a.Rule.Given() && !slices.Contains(figure.Plain, a.Rule.Value):
			r.report(s.Pos, fmt.Sprintf("%s: %s has no unit", f, quoted(s.Value)),
				"the finding's figure with its units, such as "+f.want.Example+", as `check --format json` gives it")
		default:
			a.Figure = &taken
		}
	}}
}
