package schematic

import (
	"fmt"

	"fusewright/harness/finding"
	"fusewright/render/scene"
)

// The title block stands at the lower right; cautionH is the space over it.
const (
	titleW   = 140.0
	titleH   = 34.0
	cautionH = 1.0
)

// caution is printed on every sheet.
const caution = "Isolate the battery before work. Local codes, the makers' instructions and licensed practice come first. " +
	"Not for brake, steering or airbag circuits."

// paintFrame draws the frame with its zones, the title block and the caution.
func (d *drawing) paintFrame(sheet *scene.Sheet, number, total int) {
	sheet.Begin(scene.Group{ID: "frame", Class: "frame", Title: "frame and title block"})
	p := d.paper
	in := p.inner()
	thin, thick := scene.Pen(0.25), scene.Pen(0.7)
	sheet.Rect(in.Grow(p.border), &thin, nil)
	sheet.Rect(in, &thick, nil)
	small := scene.TextStyle{SizeMM: smallMM, Align: scene.Middle, Colour: grey}
	for i := range p.zonesX {
		w := in.W / float64(p.zonesX)
		x := in.X + w*float64(i)
		for _, y := range []float64{in.Y - p.border, in.Bottom()} {
			if i > 0 {
				sheet.Line(scene.Point{X: x, Y: y}, scene.Point{X: x, Y: y + p.border}, thin)
			}
			sheet.TextIn(scene.Rect{X: x, Y: y, W: w, H: p.border}, fmt.Sprint(i+1), small)
		}
	}
	for i := range p.zonesY {
		h := in.H / float64(p.zonesY)
		y := in.Y + h*float64(i)
		for _, x := range []float64{in.X - p.border, in.Right()} {
			if i > 0 {
				sheet.Line(scene.Point{X: x, Y: y}, scene.Point{X: x + p.border, Y: y}, thin)
			}
			sheet.TextIn(scene.Rect{X: x, Y: y, W: p.border, H: h}, string(rune('A'+i)), small)
		}
	}
	d.paintTitle(sheet, number, total)
	room := in.W - titleW - 6
	lines := scene.Wrap(caution, smallMM, room, scene.Regular)
	for i, line := range lines {
		y := in.Bottom() - 2 - float64(len(lines)-1-i)*lineMM
		sheet.TextAt(scene.Point{X: in.X + 3, Y: y}, line, scene.TextStyle{SizeMM: smallMM, Colour: scene.Ink})
	}
	sheet.End()
}

// paintTitle draws the title block.
func (d *drawing) paintTitle(sheet *scene.Sheet, number, total int) {
	in := d.paper.inner()
	box := scene.Rect{X: in.Right() - titleW, Y: in.Bottom() - titleH, W: titleW, H: titleH}
	thick, thin := scene.Pen(0.5), scene.Pen(0.25)
	sheet.Rect(box, &thick, nil)
	head := scene.Rect{X: box.X + 2, Y: box.Y, W: box.W - 26, H: 10}
	design := d.design()
	title := design.Title.Value
	if title == "" {
		title = "untitled"
	}
	size := titleMM
	for size > normalMM && scene.TextWidthMM(title, size, scene.Bold) > head.W {
		size -= 0.1
	}
	sheet.TextIn(head, title, scene.TextStyle{SizeMM: size, Face: scene.Bold, Colour: scene.Ink})
	sheet.TextIn(scene.Rect{X: head.Right(), Y: box.Y, W: 22, H: 10}, "Schematic",
		scene.TextStyle{SizeMM: normalMM, Align: scene.Right, Colour: grey})
	columns := []float64{0, 78, 110, titleW}
	fields := [3][3][2]string{
		{{"vehicle", design.Vehicle.Value}, {"revision", design.Revision.Value}, {"date", design.Date.Value}},
		{{"practice", d.practiceWords()}, {"drawn by", design.Author.Value}, {"sheet", fmt.Sprintf("%d of %d", number, total)}},
		{{"findings", d.findingWords()}, {"system", d.systemWords()}, {"size", d.paper.name}},
	}
	for r, list := range fields {
		y := box.Y + 10 + 8*float64(r)
		sheet.Line(scene.Point{X: box.X, Y: y}, scene.Point{X: box.Right(), Y: y}, thin)
		for c, f := range list {
			x := box.X + columns[c]
			w := columns[c+1] - columns[c] - 3
			sheet.TextIn(scene.Rect{X: x + 2, Y: y + 0.2, W: w, H: 4}, f[0], scene.TextStyle{SizeMM: smallMM, Colour: grey})
			value := f[1]
			if value == "" {
				value = "–"
			}
			sheet.TextIn(scene.Rect{X: x + 2, Y: y + 3.7, W: w, H: 4}, value, scene.TextStyle{SizeMM: normalMM, Colour: scene.Ink})
		}
	}
	for _, x := range columns[1:3] {
		sheet.Line(scene.Point{X: box.X + x, Y: box.Y + 10}, scene.Point{X: box.X + x, Y: box.Bottom()}, thin)
	}
}

func (d *drawing) practiceWords() string {
	p := d.design().Practice
	if p == nil {
		return ""
	}
	return fmt.Sprintf("%s: %s %% / %s %% drop", p.Name, number(p.DropCritical*100), number(p.DropOther*100))
}

func (d *drawing) systemWords() string {
	if v := d.design().SystemV; v.Given() {
		return number(v.Value) + " V DC"
	}
	return ""
}

// findingWords counts the findings, whether they are drawn or not.
func (d *drawing) findingWords() string {
	list := d.review.Findings
	accepted := 0
	for _, f := range list {
		if f.Accepted != "" {
			accepted++
		}
	}
	return fmt.Sprintf("%d danger · %d fault · %d advice · %d accepted", finding.Count(list, finding.Danger),
		finding.Count(list, finding.Fault), finding.Count(list, finding.Advice), accepted)
}
