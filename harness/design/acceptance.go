package design

import "gopkg.in/yaml.v3"

var acceptanceSection = section[Acceptance]{
	Section: Section{Name: "acceptance", Shape: kindList,
		Doc: "A finding that is taken as it is. It stays in every list, marked as accepted, with the reason.",
		Example: "accepted:\n  - {rule: flexing-run, part: grips, " +
			"reason: \"60 mm of slack at full lock, checked on the stand\"}\n"},
	keys: []key[Acceptance]{
		textKey(Key{Name: "rule", Required: true, Doc: "name of the rule", Example: "flexing-run"},
			func(a *Acceptance) *Text { return &a.Rule }),
		textKey(Key{Name: "part", Doc: "name of the part", Default: "every part", Example: "grips"},
			func(a *Acceptance) *Text { return &a.Part }),
		textKey(Key{Name: "reason", Required: true, Doc: "why it is taken as it is",
			Example: `"60 mm of slack at full lock"`}, func(a *Acceptance) *Text { return &a.Reason }),
	},
}

func addAcceptance(_ *reader, d *Design, _ *yaml.Node) *Acceptance {
	a := &Acceptance{}
	d.Accepted = append(d.Accepted, a)
	return a
}
