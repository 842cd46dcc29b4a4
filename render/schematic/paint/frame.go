package paint

import (
	"fmt"

	"fusewright/harness/design/quantity"
	"fusewright/render/frame"
	"fusewright/render/scene"
)

// paintFrame draws the frame with the title block and the caution.
func (d *Drawing) paintFrame(sheet *scene.Sheet, number, total int) {
	t := frame.TitleOf(d.Design, d.findings, d.Paper.Name)
	t.Kind, t.Fields[1][0].Value = "Schematic", d.practiceWords()
	third := frame.Field{Name: "system", Value: d.systemWords()}
	if d.Study != nil {
		t.Kind, third = "Study", frame.Field{Name: "situation", Value: d.Study.Name()}
	}
	if c := d.Signs.Changes; c != nil && d.Signs.AsWas {
		t.Kind, third = "As it was", frame.Field{Name: "compared with", Value: c.Now}
	} else if c != nil {
		t.Kind, third = "Changes", frame.Field{Name: "compared with", Value: c.Was}
	}
	t.Fields[1][2].Value = fmt.Sprintf("%d of %d", number, total)
	t.Fields[2][1] = third
	frame.Draw(sheet, d.Paper.Paper, t)
}

func (d *Drawing) practiceWords() string {
	p := d.Design.Practice
	if p == nil {
		return ""
	}
	return fmt.Sprintf("%s: %s / %s drop", p.Name, quantity.Plain(p.DropCritical, quantity.Share), quantity.Plain(p.DropOther, quantity.Share))
}

func (d *Drawing) systemWords() string {
	if v := d.Design.SystemV; v.Given() {
		return quantity.Plain(v.Value, quantity.Voltage) + " DC"
	}
	return ""
}
