package chart

import (
	"errors"
	"fmt"

	"fusewright/render/scene"
)

// Panels are plots one above the other that share the x axis, such as state of
// charge, voltage and current over time. The x axis and the spans of the first
// plot hold for all; the texts of the x axis stand under the last.
type Panels struct {
	ID, Desc string
	Plots    []*Plot
	Note     string
}

// panelGap is the air between two panels in mm.
const panelGap = 3

// leastPanel is the share of the least height of a plot that a panel needs: it has
// neither title nor axis texts of its own.
const leastPanel = 0.55

// Draw draws the panels inside the rectangle, as high as each other between their axes.
func (p *Panels) Draw(sheet *scene.Sheet, in scene.Rect) error {
	if len(p.Plots) == 0 {
		return fmt.Errorf("chart %q: no panels", p.ID)
	}
	var problems []error
	plots := make([]*Plot, len(p.Plots))
	for i, plot := range p.Plots {
		plots[i] = p.shared(plot, i)
		problems = append(problems, plots[i].check())
	}
	if err := errors.Join(problems...); err != nil {
		return err
	}
	if !(in.W >= MinWidthMM && in.H >= MinHeightMM*float64(len(plots))*leastPanel) {
		return fmt.Errorf("chart %q: %.0f × %.0f mm is too small for %d panels", p.ID, in.W, in.H, len(plots))
	}
	whole := &Plot{ID: p.ID, Desc: p.Desc}
	scratch := &scene.Sheet{}
	whole.begin(scratch)
	in = drawNote(scratch, in, p.Note)
	if err := p.drawPlots(scratch, in, plots); err != nil {
		return err
	}
	whole.end(scratch)
	sheet.Items = append(sheet.Items, scratch.Items...)
	return nil
}

// shared returns the plot with the common x axis. The first panel carries the
// names of spans and upright levels; the others only show them.
func (p *Panels) shared(plot *Plot, place int) *Plot {
	var xs []float64
	for _, each := range p.Plots {
		x, _ := each.values()
		xs = append(xs, x...)
	}
	own := *plot
	own.X = p.Plots[0].X
	if low, high, ok := own.X.rangeOf(xs); ok && len(own.X.Ticks) == 0 {
		own.X.Min, own.X.Max = low, high // time ends where the data end
	}
	own.Spans = nil
	for _, s := range p.Plots[0].Spans {
		if place > 0 {
			s.Name = ""
		}
		own.Spans = append(own.Spans, s)
	}
	return &own
}

func (p *Panels) drawPlots(sheet *scene.Sheet, in scene.Rect, plots []*Plot) error {
	foot := 1 + rowHeight*(&frame{plot: plots[0]}).xRows(in)
	if plots[0].X.label() != "" {
		foot += rowHeight
	}
	last := len(plots) - 1
	top := 0.0 // names over the first
	if (&frame{plot: plots[0]}).hasTopRow() {
		top = rowHeight
	}
	height := (in.H - foot - top - panelGap*float64(last)) / float64(len(plots))
	o := panelOptions{left: 0, right: 0}
	for _, plot := range plots { // the widest margins serve all
		f := newFrame(&scene.Sheet{}, scene.Rect{W: in.W, H: height}, plot, panelOptions{}, nil)
		o.left = max(o.left, f.rect.X)
		o.right = max(o.right, in.W-f.rect.Right())
	}
	y := in.Y
	for i, plot := range plots {
		o.xLabels = i == last
		area := scene.Rect{X: in.X, Y: y, W: in.W, H: height}
		if i == 0 {
			area.H += top
			y += top
		}
		if i == last {
			area.H += foot
		}
		if err := drawPanel(sheet, area, plot, o); err != nil {
			return err
		}
		y += height + panelGap
	}
	return nil
}
