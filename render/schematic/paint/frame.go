package paint

import (
	"fmt"

	"fusewright/harness/review/finding"
	"fusewright/render/frame"
	"fusewright/render/scene"
	"fusewright/render/schematic/lettering"
)

// paintFrame draws the frame with the title block and the caution.
func (d *Drawing) paintFrame(sheet *scene.Sheet, number, total int) {
	design := d.Design
	third := frame.Field{Name: "system", Value: d.systemWords()}
	kind := "Schematic"
	if d.Study != nil {
		kind, third = "Study", frame.Field{Name: "situation", Value: d.Study.Name()}
	}
	if c := d.Signs.Changes; c != nil && d.Signs.AsWas {
		kind, third = "As it was", frame.Field{Name: "compared with", Value: c.Now}
	} else if c != nil {
		kind, third = "Changes", frame.Field{Name: "compared with", Value: c.Was}
	}
	frame.Draw(sheet, d.Paper.Paper, frame.Title{
		Title: design.Title.Value,
		Kind:  kind,
		Fields: [3][3]frame.Field{
			{{Name: "vehicle", Value: design.Vehicle.Value}, {Name: "revision", Value: design.Revision.Value},
				{Name: "date", Value: design.Date.Value}},
			{{Name: "practice", Value: d.practiceWords()}, {Name: "drawn by", Value: design.Author.Value},
				{Name: "sheet", Value: fmt.Sprintf("%d of %d", number, total)}},
			{{Name: "findings", Value: d.findings}, third, {Name: "size", Value: d.Paper.Name}},
		},
	})
}

func (d *Drawing) practiceWords() string {
	p := d.Design.Practice
	if p == nil {
		return ""
	}
	return fmt.Sprintf("%s: %s %% / %s %% drop", p.Name, lettering.Number(p.DropCritical*100), lettering.Number(p.DropOther*100))
}

func (d *Drawing) systemWords() string {
	if v := d.Design.SystemV; v.Given() {
		return lettering.Number(v.Value) + " V DC"
	}
	return ""
}

// findingWords counts the findings, whether they are drawn or not.
func findingWords(list []*finding.Finding) string {
	accepted := 0
	for _, f := range list {
		if f.Accepted != "" {
			accepted++
		}
	}
	return fmt.Sprintf("%d danger · %d fault · %d advice · %d accepted", finding.Count(list, finding.Danger),
		finding.Count(list, finding.Fault), finding.Count(list, finding.Advice), accepted)
}
