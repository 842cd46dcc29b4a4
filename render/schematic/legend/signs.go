package legend

import (
	"fusewright/render/scene"
	"fusewright/render/schematic/column"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/sign"
	"slices"
)

// signPanel explains the signs of the kinds of changes that there are.
func (l *Lists) signPanel() *column.List {
	out := &column.List{Title: "Signs of changes", Whole: true}
	for _, k := range []struct {
		kind  sign.ChangeKind
		words string
	}{
		{sign.Added, "added; plain frame or band"},
		{sign.Changed, "changed; cloud or broken band"},
		{sign.Removed, "removed; crosses"},
		{sign.Judged, "not changed, but new findings"},
	} {
		used := l.Signs.Changes != nil && slices.ContainsFunc(l.Signs.Changes.List, func(c sign.Change) bool { return c.Kind == k.kind })
		if !used {
			continue
		}
		m := &sign.Entry{Number: len(out.Rows) + 1, Change: &sign.Change{Kind: k.kind}}
		words := column.TextRow(k.words, m.Indent(), scene.Regular, scene.Ink)
		out.Rows = append(out.Rows, column.Row{Height: sign.DeltaH + 0.8, Draw: func(sheet *scene.Sheet, x, y float64) {
			sign.DrawChange(sheet, m, x+sign.DeltaW/2, y+sign.DeltaH/2-1)
			words.Draw(sheet, x, y+sign.DeltaH/2-1-lettering.CapMM/2)
		}})
	}
	if len(out.Rows) == 0 {
		return nil
	}
	return out
}
