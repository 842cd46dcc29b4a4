package schematic

import (
	"fusewright/render/scene"
	"slices"
)

// signPanel explains the signs of the kinds of changes that there are.
func (l *lists) signPanel() *panel {
	out := &panel{title: "Signs of changes", whole: true}
	for _, k := range []struct {
		kind  ChangeKind
		words string
	}{
		{Added, "added; plain frame or band"},
		{Changed, "changed; cloud or broken band"},
		{Removed, "removed; crosses"},
		{Judged, "not changed, but new findings"},
	} {
		used := l.signs.changes != nil && slices.ContainsFunc(l.signs.changes.List, func(c Change) bool { return c.Kind == k.kind })
		if !used {
			continue
		}
		m := &marked{number: len(out.rows) + 1, change: &Change{Kind: k.kind}}
		words := textRow(k.words, m.indent(), scene.Regular, scene.Ink)
		out.rows = append(out.rows, panelRow{height: deltaH + 0.8, draw: func(sheet *scene.Sheet, x, y float64) {
			drawDelta(sheet, m, x+deltaW/2, y+deltaH/2-1)
			words.draw(sheet, x, y+deltaH/2-1-capMM/2)
		}})
	}
	if len(out.rows) == 0 {
		return nil
	}
	return out
}
