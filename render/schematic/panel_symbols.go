package schematic

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// legendScale is the size of a module in the legend of symbols, in mm.
const legendScale = 1.6

// usedKinds are the symbols drawn on the sheets, in catalogue order.
func (l *lists) usedKinds() (list []symbol.Kind) {
	used := map[symbol.Kind]bool{}
	for _, p := range l.arr.pages {
		p.traceLines() // for their dots
		for _, c := range p.cells {
			switch c.kind {
			case partCell:
				l.noteKinds(used, c)
			case inCell:
				used[symbol.Incoming] = true
			case outCell:
				used[symbol.Outgoing] = true
			}
		}
		for _, l := range p.lines {
			used[symbol.Junction] = used[symbol.Junction] || len(l.dots) > 0
		}
	}
	for _, k := range l.set.Kinds() {
		if used[k] {
			list = append(list, k)
		}
	}
	return list
}

// noteKinds notes the symbols of one cell.
func (l *lists) noteKinds(used map[symbol.Kind]bool, c *cell) {
	switch c.part.Kind {
	case circuit.Battery:
		used[symbol.Battery] = true
		g, v := sourceParts(l.circuit)
		used[symbol.Generator] = used[symbol.Generator] || g != nil
		used[symbol.VehicleLoads] = used[symbol.VehicleLoads] || v != nil
	case circuit.Relay:
		l.noteRelay(used, c)
	case circuit.Block:
		for _, w := range c.ways {
			if s := symbolOfWay(l.set, w); s != nil {
				used[s.Kind] = true
			}
		}
	default:
		used[symbolOf(l.set, c.part).Kind] = true
		used[symbol.Plug] = used[symbol.Plug] || c.plugged()
	}
	for _, w := range c.returns {
		if k := groundKind(w.To.Part); k != symbol.Outgoing {
			used[k] = true
		}
	}
}

func (l *lists) noteRelay(used map[symbol.Kind]bool, c *cell) {
	if c.coil || !l.detached {
		used[symbol.Coil] = true
		if k := c.geometry.suppressor; k != "" {
			used[k] = true
		}
	}
	if c.coil {
		return
	}
	used[symbol.Make] = used[symbol.Make] || !c.geometry.changeover
	used[symbol.Changeover] = used[symbol.Changeover] || c.geometry.changeover
}

// symbolPanel explains the symbols of all sheets, two to a row.
func (l *lists) symbolPanel() *panel {
	kinds := l.usedKinds()
	if len(kinds) == 0 {
		return nil
	}
	out := &panel{title: "Symbols (" + l.set.Name() + ")", untorn: true}
	var wide []symbol.Kind
	var pair []symbol.Kind
	flush := func() {
		if len(pair) > 0 {
			out.rows = append(out.rows, l.symbolRow(pair))
			pair = nil
		}
	}
	for _, k := range kinds {
		if l.set.Symbol(k).Body.W > 4 {
			wide = append(wide, k)
			continue
		}
		if pair = append(pair, k); len(pair) == 2 {
			flush()
		}
	}
	flush()
	for _, k := range wide {
		out.rows = append(out.rows, l.symbolRow([]symbol.Kind{k}))
	}
	return out
}

// symbolRow draws one or two symbols with their names.
func (l *lists) symbolRow(kinds []symbol.Kind) panelRow {
	const half = (panelW - 4) / 2
	high := lineMM
	for _, k := range kinds {
		lines := float64(len(l.legendName(k, half)))
		high = max(high, l.set.Symbol(k).Body.H*legendScale, lines*lineMM)
	}
	return panelRow{height: high + 1, draw: func(sheet *scene.Sheet, x, y float64) {
		for i, k := range kinds {
			l.legendEntry(sheet, k, x+float64(i)*half, y+high/2, half)
		}
	}}
}

// legendRoom is the width of a symbol in the legend, in mm.
func (l *lists) legendRoom(k symbol.Kind) float64 {
	return max(l.set.Symbol(k).Body.W, 4) * legendScale
}

// legendName is the name of a symbol in lines; wide symbols have a whole row.
func (l *lists) legendName(k symbol.Kind, width float64) []string {
	if l.set.Symbol(k).Body.W > 4 {
		width *= 2
	}
	room := width - l.legendRoom(k) - 2
	return wrap(string(k), room, room)
}

// legendEntry draws one symbol, its middle at a height, and its name.
func (l *lists) legendEntry(sheet *scene.Sheet, k symbol.Kind, x, mid, width float64) {
	s := l.set.Symbol(k)
	sheet.Begin(scene.Group{ID: sheet.UniqueID("symbol-" + string(k)), Class: "legend", Title: string(k)})
	room := l.legendRoom(k)
	pen := symbol.NewPen(sheet, scene.Point{
		X: x + (room-s.Body.W*legendScale)/2 - s.Body.X*legendScale,
		Y: mid - (s.Body.Y+s.Body.H/2)*legendScale,
	})
	pen.Scale = legendScale
	s.Draw(pen, "")
	lines := l.legendName(k, width)
	top := mid - float64(len(lines)-1)*lineMM/2 + capMM/2
	for i, line := range lines {
		sheet.TextAt(scene.Point{X: x + room + 1.4, Y: top + float64(i)*lineMM}, line,
			scene.TextStyle{SizeMM: smallMM, Colour: scene.Ink})
	}
	sheet.End()
}
