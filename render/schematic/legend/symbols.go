package legend

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/compare"
	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/column"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// legendScale is the size of a module in the legend of symbols, in mm.
const legendScale = 1.6

// usedKinds are the symbols drawn on the sheets, in catalogue order.
func (l *Lists) usedKinds() (list []symbol.Kind) {
	used := map[symbol.Kind]bool{}
	for _, p := range l.arr.Pages {
		p.TraceLines() // for their dots
		for _, c := range p.Cells {
			switch {
			case c.Empty:
			case c.Kind == cell.Part:
				l.noteKinds(used, c)
			case c.Kind == cell.In:
				used[symbol.Incoming] = true
			case c.Kind == cell.Out:
				used[symbol.Outgoing] = true
			}
		}
		for _, l := range p.Lines {
			used[symbol.Junction] = used[symbol.Junction] || len(l.Dots) > 0
		}
	}
	for _, k := range l.Set.Kinds() {
		if used[k] {
			list = append(list, k)
		}
	}
	return list
}

// noteKinds notes the symbols of one cell.
func (l *Lists) noteKinds(used map[symbol.Kind]bool, c *cell.Cell) {
	switch c.Part.Kind {
	case circuit.Battery:
		used[parts.SymbolOf(l.Set, c.Part).Kind] = true
		g, v := parts.SourceParts(l.Circuit)
		used[symbol.Generator] = used[symbol.Generator] || g != nil
		used[symbol.VehicleLoads] = used[symbol.VehicleLoads] || v != nil
	case circuit.Relay:
		l.noteRelay(used, c)
	default:
		for _, w := range c.Ways {
			used[w.Kind] = true
		}
		if parts.Fans(c.Part) {
			break
		}
		used[parts.SymbolOf(l.Set, c.Part).Kind] = true
		used[symbol.Plug] = used[symbol.Plug] || c.Plugged() || len(l.Circuit.Inlines()) > 0
	}
	for _, w := range c.Returns {
		used[parts.GroundKind(w.To.Part)] = true
	}
}

func (l *Lists) noteRelay(used map[symbol.Kind]bool, c *cell.Cell) {
	if c.Coil || !l.Detached {
		used[c.Geometry.Sign] = true
		if k := c.Geometry.Suppressor; k != "" {
			used[k] = true
		}
	}
	if c.Coil {
		return
	}
	used[parts.ContactKind(c.Part)] = true
}

// symbolPanel explains the symbols of all sheets, two to a row.
func (l *Lists) symbolPanel() *column.List {
	kinds := l.usedKinds()
	if len(kinds) == 0 {
		return nil
	}
	out := &column.List{Title: "Symbols (" + l.Set.Name() + ")", Untorn: true}
	var wide, narrow []symbol.Kind
	for _, k := range kinds {
		if l.Set.Symbol(k).Body.W > 4 {
			wide = append(wide, k)
		} else {
			narrow = append(narrow, k)
		}
	}
	for some := range slices.Chunk(narrow, 2) {
		out.Rows = append(out.Rows, l.symbolRow(some))
	}
	for some := range slices.Chunk(wide, 1) {
		out.Rows = append(out.Rows, l.symbolRow(some))
	}
	if slices.ContainsFunc(kinds, symbol.Kind.Own) {
		out.Rows = append(out.Rows, column.TextRow("* "+l.Set.Name()+" has no sign: drawn our way.", 0, scene.Regular, scene.Ink))
	}
	return out
}

// symbolRow draws one or two symbols with their names.
func (l *Lists) symbolRow(kinds []symbol.Kind) column.Row {
	const half = (column.Width - 4) / 2
	high := lettering.LineMM
	for _, k := range kinds {
		lines := float64(len(l.legendName(k, half)))
		high = max(high, l.Set.Symbol(k).Body.H*legendScale, lines*lettering.LineMM)
	}
	return column.Row{Height: high + 1, Draw: func(sheet *scene.Sheet, x, y float64) {
		for i, k := range kinds {
			l.legendEntry(sheet, k, x+float64(i)*half, y+high/2, half)
		}
	}}
}

// legendRoom is the width of a symbol in the legend, in mm.
func (l *Lists) legendRoom(k symbol.Kind) float64 {
	return max(l.Set.Symbol(k).Body.W, 4) * legendScale
}

// legendName is the name of a symbol in lines; wide symbols have a whole row.
func (l *Lists) legendName(k symbol.Kind, width float64) []string {
	if l.Set.Symbol(k).Body.W > 4 {
		width *= 2
	}
	room := width - l.legendRoom(k) - 2
	name := string(k)
	if k.Own() {
		name += "*"
	}
	return lettering.Wrap(name, room, room)
}

// legendEntry draws one symbol, its middle at a height, and its name.
func (l *Lists) legendEntry(sheet *scene.Sheet, k symbol.Kind, x, mid, width float64) {
	s := l.Set.Symbol(k)
	sheet.Begin(scene.Group{ID: sheet.UniqueID("symbol-" + string(k)), Class: "legend", Title: string(k)})
	room := l.legendRoom(k)
	pen := symbol.NewPen(sheet, scene.Point{
		X: x + (room-s.Body.W*legendScale)/2 - s.Body.X*legendScale,
		Y: mid - (s.Body.Y+s.Body.H/2)*legendScale,
	})
	pen.Scale = legendScale
	s.Draw(pen, "")
	lines := l.legendName(k, width)
	top := mid - float64(len(lines)-1)*lettering.LineMM/2 + lettering.CapMM/2
	for i, line := range lines {
		sheet.TextAt(scene.Point{X: x + room + 1.4, Y: top + float64(i)*lettering.LineMM}, line,
			scene.TextStyle{SizeMM: lettering.SmallMM, Colour: scene.Ink})
	}
	sheet.End()
}

// signPanel explains the signs of the kinds of changes that there are.
func (l *Lists) signPanel() *column.List {
	out := &column.List{Title: "Signs of changes", Whole: true, Wired: true}
	for _, k := range []struct {
		kind  compare.What
		words string
	}{
		{compare.Added, "added; plain band"},
		{compare.Changed, "changed; broken band"},
		{compare.Removed, "removed; crosses"},
		{compare.Relabelled, "another label; band behind it"},
		{compare.Judged, "as it was, judged anew"},
	} {
		used := l.Marks != nil && slices.ContainsFunc(l.Marks.List, func(m *sign.Entry) bool { return m.Change.What == k.kind })
		if !used {
			continue
		}
		m := &sign.Entry{Number: len(out.Rows) + 1, Change: &compare.Mark{What: k.kind}}
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
