package rules

import (
	"fmt"

	"fusewright/harness/network/circuit"
)

var chafingRun = &Rule{
	Name:  "chafing-run",
	Title: "a run that may chafe or be pinched is not protected",
	Says:  "bare where it may chafe",
	Doc: "A run marked as chafing needs a cover against abrasion, one marked as pinching a cover that " +
		"withstands crushing. Which covers do is in the library; above its rated temperature a cover does not count.",
	Formula:  "none",
	Limits:   "abrasion, pinch and highest temperature of the cover in the library",
	Why:      "the insulation is cut through to the frame, where nobody sees it",
	Change:   "use a cover that protects against it, or route the run elsewhere",
	Severity: "fault",
	Source: "33 CFR 183.445(a), conductors through rigid surfaces (two sources); ISO 10133:2012 clause 7.5, any place of chafing (one source); which covers " +
		"protect: common practice",
	Mend: MendWire,
	Bad: `
runs:
  - {from: battery tray, to: rear, length: 600 mm, pinches: yes, cover: braided sleeve}
`,
	Mended: []string{"cover: braided sleeve", "chafes: yes, cover: corrugated conduit"},
	Run: func(p *Pass) {
		for _, b := range p.c.Bundles {
			r := b.Run
			if len(b.Wires) == 0 {
				continue
			}
			lasts := r.Cover != nil && circuit.RunAmbientC(r) <= r.Cover.MaxC
			chafes := r.Chafes && !(lasts && r.Cover.Abrasion)
			pinches := r.Pinches && !(lasts && r.Cover.Pinch)
			switch {
			case chafes && pinches:
				p.reportRun(b, "may chafe and be pinched; "+coverText(b)+" protects against neither")
			case chafes:
				p.reportRun(b, "may chafe; "+coverText(b)+" does not protect against it")
			case pinches:
				p.reportRun(b, "may be pinched; "+coverText(b)+" does not protect against it")
			}
		}
	},
}

func coverText(b *circuit.Bundle) string {
	if b.Run.Cover == nil {
		return "bare loom"
	}
	if hot := circuit.RunAmbientC(b.Run); hot > b.Run.Cover.MaxC {
		return fmt.Sprintf("%s, rated to %s and here at %s,", b.Run.Cover.Name, celsius(b.Run.Cover.MaxC), celsius(hot))
	}
	return b.Run.Cover.Name
}
