package cell

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// tapBody is the width of a tap with its caption.
const tapBody = 9

// shapeInline measures fuses, switches, splices and taps: a symbol in the
// conductor with its caption below.
func (b *builder) shapeInline(c *Cell) {
	s := parts.SymbolOf(b.Set, c.Part)
	body := c.PlugBody(s.Body, b.OutOf(c.Part))
	c.Body = int(body.W)
	c.Lead = b.leadOf(c)
	if c.Part.Kind == circuit.Tap {
		c.Body = tapBody
		if b.Signs.OfPart(c.Part) > 0 {
			c.Body += lettering.InM(sign.Wide - 0.5)
		}
	}
	if c.Lead+c.Body < labels.MinCaption && c.Part.Kind != circuit.Tap {
		c.Lead = labels.MinCaption - c.Body
	}
	low := float64(b.spreadInlets(c.Inlets, 0))
	r := c.Rows[0]
	r.Top = max(b.LabelTop(), -body.Y+0.15)
	width := float64(c.Lead+c.Body)*symbol.M - 1
	if len(c.Inlets) > 1 && !c.Plugged() { // the bar that joins them stands where the caption would
		c.Lead++
		width = max(float64(c.Body), labels.MinCaption)*symbol.M - 1
		c.Body = max(c.Body, labels.MinCaption)
	}
	c.Caption = b.CaptionOf(c.Part, width)
	r.Bottom = max(low+0.8, captionBottom(s.Body.Y+s.Body.H, len(c.Caption.Lines), b.Signs.DropOf(c.Part))+c.PolesBelow())
	b.addOutlets(c, int(body.W))
}

// PolesBelow is how far the poles of a plug push the caption down, in modules.
func (c *Cell) PolesBelow() float64 {
	if n := len(c.Inlets); n > 1 && c.Plugged() {
		return float64(c.Inlets[n-1].Off)
	}
	return 0
}

// addOutlets shows the first terminal that feeds anything.
func (b *builder) addOutlets(c *Cell, dx int) {
	for _, t := range c.Part.Terminals {
		if onward := t.Name == "+" && b.feedsOn(c.Part); len(b.Feeds[t]) > 0 && len(c.Outlets) == 0 && !onward {
			c.Outlets = append(c.Outlets, &Outlet{Cell: c, Term: t, Row: c.Rows[0], Dx: dx})
		}
	}
}

// captionBottom is how far captions below a symbol reach, in modules below the
// row.
func captionBottom(symbolBottom float64, lines int, dropMM float64) float64 {
	return (CaptionBase(symbolBottom, dropMM)+float64(lines-1)*lettering.LineMM+lettering.DescMM)/symbol.M + 0.12
}

// CaptionBase is the baseline of the first caption line, in mm below the row,
// lowered for a sign.
func CaptionBase(symbolBottom, dropMM float64) float64 {
	return max(symbolBottom, 0.25)*symbol.M + lettering.GapMM + 0.1 + lettering.CapMM + dropMM
}

// Plugged tells whether a cell's part comes off the harness at a plug.
func (c *Cell) Plugged() bool { return c.Kind == Part && c.Part.Plug != nil }

// PlugBody widens a symbol's body by the poles of its plug: one for each wire
// that comes in, out of them on the right. The dashed line that makes the poles
// one plug runs over the symbol, and the family's name stands on it.
func (c *Cell) PlugBody(body scene.Rect, out int) scene.Rect {
	if !c.Plugged() {
		return body
	}
	c.Inset = labels.PlugSide(len(c.Inlets))
	wide := float64(c.Inset+labels.PlugSide(out)) + body.W
	top := min(body.Y-0.25, -0.9) - labels.PlugHead(c.Part, wide)
	return scene.Rect{Y: top, W: wide, H: body.Y + body.H - top}
}

// PolesRight is the room at the right of a body that several poles with their
// link take from the caption, in modules.
func (c *Cell) PolesRight() int {
	if !c.Plugged() || len(c.Returns) < 2 {
		return 0
	}
	return labels.PlugSide(len(c.Returns))
}
