package cell

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// A block's body, in modules from its outline's left edge: bar, fuse, outline.
const (
	BlockBar   = 1
	BlockFuse  = 2
	BlockRight = 6 // of the outline; one more when a way carries a flag
)

// wayStep is about what one way takes in rows; a piece of a block must fit.
const wayStep = 4

// addBlock makes the cell of a block, or several when it has more ways than a
// sheet takes.
func (b *builder) addBlock(p *circuit.Part) {
	ways := slices.DeleteFunc(parts.WaysOf(p), func(w *parts.Way) bool { return b.LeavesWay(p, w.Ref) })
	most := max((b.sheetRows-8)/wayStep-1, 2)
	pieces := max((len(ways)+most-1)/most, 1)
	bus := parts.BusOf(p)
	for k := range pieces {
		c := &Cell{Part: p, Piece: k + 1, Pieces: pieces}
		c.Ways = ways[k*len(ways)/pieces : (k+1)*len(ways)/pieces]
		for i := range max(len(c.Ways), 1) {
			c.Rows = append(c.Rows, &Row{Cell: c, Index: i})
		}
		if k == 0 && !p.InReturn {
			b.addInlets(c)
		}
		if k == 0 {
			c.Returns = b.Wiring.Returns[p]
		} else {
			in := &Inlet{Cell: c, Source: bus, Term: bus}
			c.Inlets = append(c.Inlets, in)
			b.Feeds[bus] = append(b.Feeds[bus], in)
		}
		for _, in := range b.into[p] {
			if r := c.rowOf(in.Term); p.InReturn && r != nil {
				in.Cell, in.Row = c, r
				c.Inlets = append(c.Inlets, in)
			}
		}
		b.shapeBlock(c, k+1 < pieces, bus)
		b.addCell(c)
	}
}

// shapeBlock measures a block: each way is a row that moves with what it feeds.
func (b *builder) shapeBlock(c *Cell, goesOn bool, bus *circuit.Terminal) {
	c.Lead = max(b.leadOf(c), 1)
	c.Body = BlockRight
	for _, v := range c.Ways {
		if b.Signs.OfRef(v.Ref) > 0 {
			c.Body = BlockRight + lettering.InM(sign.Wide-5)
		}
	}
	if b.Study != nil {
		c.Body = BlockRight + 3 // the share of the rating stands beside it
	}
	if words, _ := b.WordsOf(c.Part); b.Outlined { // nothing of its name may reach further
		for _, word := range strings.Fields(words) {
			c.Body = max(c.Body, lettering.InM(lettering.TextW(word, scene.Regular)+0.5))
		}
	}
	b.nameOutputs(c)
	ref := c.Part.Ref
	if c.Pieces > 1 {
		ref = fmt.Sprintf("%s (%d of %d)", ref, c.Piece, c.Pieces)
	}
	c.Caption = b.CaptionAtop(c.Part, ref, float64(c.Body+b.Overhang(2))*symbol.M-0.5)
	for i, r := range c.Rows {
		r.Top, r.Bottom = 1.55, 1.8
		if i < len(c.Ways) {
			v := c.Ways[i]
			if b.Signs.OfRef(v.Ref) > 0 {
				r.Bottom = 1.8 + sign.Drop/symbol.M + 0.53
			}
			if v.Kind == symbol.Breaker {
				r.Top = 3.5
			}
			if v.Term != nil && len(b.Feeds[v.Term]) > 0 {
				c.Outlets = append(c.Outlets, &Outlet{Cell: c, Term: v.Term, Row: r, Dx: c.Body})
			}
		}
	}
	head := c.Rows[0]
	head.Top += c.Roof() - blockRoof
	head.Top += 1.2 + (lettering.GapMM+lettering.CapMM+float64(len(c.Caption.Lines)-1)*lettering.LineMM)/symbol.M
	if b.Signs.OfPart(c.Part) > 0 {
		head.Top += b.lift()
	}
	c.Rows[len(c.Rows)-1].Bottom += 0.8
	if goesOn {
		last := c.Rows[len(c.Rows)-1]
		c.Outlets = append(c.Outlets, &Outlet{Cell: c, Term: bus, Row: last, Off: 3})
		last.Bottom += 3
	}
	c.Box = c.Body
	if goesOn {
		c.Outlets[len(c.Outlets)-1].Dx = c.BarX()
	}
	if c.Part.InReturn {
		b.shapeReturn(c)
		return
	}
	b.placeBlockInlets(c)
}

// shapeReturn makes room for the grounds of a switch in a return, at the right of its bar, and brings
// what returns to it in at the ways on the left.
func (b *builder) shapeReturn(c *Cell) {
	shared := map[*Row]int{}
	for _, in := range c.Inlets {
		if c.rowOf(in.Term) == nil { // its bar, from another piece
			in.Row, in.Off, in.Dx = c.Rows[len(c.Rows)-1], 3, c.BarX()
			in.Row.Bottom += 3
			continue
		}
		in.Off = shared[in.Row] * b.InletStep()
		if shared[in.Row]++; shared[in.Row] == 2 {
			c.Lead++
		}
		in.Row.Top, in.Row.Bottom = max(in.Row.Top, b.LabelTop()), max(in.Row.Bottom, float64(in.Off)+0.8)
	}
	if b.Wiring.Landed[c.Part] != nil {
		c.Lead = max(c.Lead, GroundLead+1)
	}
	if n := len(c.Returns); n > 0 {
		c.Body += b.ReturnRun(c.Returns, b.Stacked) + 1
		c.Rows[0].Bottom = max(c.Rows[0].Bottom, float64((n-1)*b.ReturnStep())+labels.GroundRoom/symbol.M)
	}
}

// BarX is where the bar stands, from the left of the body.
func (c *Cell) BarX() int {
	if c.Part.InReturn {
		return c.Box - BlockBar
	}
	return BlockBar
}

// rowOf is the row of the way that leaves or comes in at a terminal; nil when none does.
func (c *Cell) rowOf(t *circuit.Terminal) *Row {
	for i, w := range c.Ways {
		if w.Term == t {
			return c.Rows[i]
		}
	}
	return nil
}

// blockRoof is how far the outline of a block stands above its first way, in modules.
const blockRoof = 1.9

// Roof is that of a cell: the handle of a switch stands higher.
func (c *Cell) Roof() float64 {
	if c.Part.Kind == circuit.Switch {
		return blockRoof + 0.8
	}
	return blockRoof
}

// nameOutputs makes room in a switch for the names of its outputs and positions.
func (b *builder) nameOutputs(c *Cell) {
	if c.Part.Kind != circuit.Switch {
		return
	}
	words := 0.0
	for _, w := range c.Ways {
		c.Named = max(c.Named, lettering.InM(lettering.TextW(w.Number, scene.Regular)+1)-1)
		words = max(words, lettering.TextW(w.Words, scene.Regular))
	}
	c.Body = max(c.Body+c.Named, BlockBar+lettering.InM(words+3))
}

// placeBlockInlets brings the feed in at a way near the middle, further feeds
// below it.
func (b *builder) placeBlockInlets(c *Cell) {
	at := (len(c.Rows) - 1) / 2
	for k, in := range c.Inlets {
		i := min(at+k, len(c.Rows)-1)
		in.Row = c.Rows[i]
		in.Off = (at + k - i) * b.InletStep()
		in.Dx = BlockBar
		in.Row.Top = max(in.Row.Top, b.LabelTop())
		in.Row.Bottom = max(in.Row.Bottom, float64(in.Off)+1)
	}
}
