package document

import (
	"cmp"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/library"
	"fusewright/render/scene"
)

// cardMM is the width of a fuse card: it goes into the lid of a box for six
// blade fuses or more. Our choice.
const cardMM = 120.0

// card is one fuse card.
type card struct {
	title string
	rows  []cardRow
}

// cardRow is one fuse or one empty way.
type cardRow struct{ position, rating, colour, feeds string }

// FuseCard lays fuse cards on pages, each inside a dashed line to cut along:
// one for each distribution block, one for the fuses on their own, one for the
// machine's own fuses that the design takes from. Every fuse has its position,
// rating, colour and what it feeds.
func FuseCard(r *harness.Review) []*scene.Sheet {
	b := newBook("Fuse card", r)
	b.para("Cut along the dashed lines; one card for the lid of each box. Print new cards when the design changes.", quiet)
	for _, c := range cards(r.Circuit) {
		drawCard(b, c)
	}
	return b.finish()
}

// cards gathers the fuses of a circuit in design order.
func cards(c *circuit.Circuit) []card {
	var blocks []card
	single := card{title: "In-line fuses"}
	factory := card{title: "Factory fuses that feed what was added"}
	for _, p := range c.Parts {
		switch src := p.Source.(type) {
		case *design.Block:
			blocks = append(blocks, blockCard(c, p, src))
		case *design.Fuse:
			for _, b := range fusesOf(p) {
				row := fuseRow(c, b)
				row.position = p.Ref + " " + p.Name + at(p)
				single.rows = append(single.rows, row)
			}
		case *design.Tap:
			for _, b := range fusesOf(p) {
				row := fuseRow(c, b)
				row.position = p.Ref + " " + p.Name + at(p)
				factory.rows = append(factory.rows, row)
			}
		}
	}
	out := blocks
	for _, k := range []card{single, factory} {
		if len(k.rows) > 0 {
			out = append(out, k)
		}
	}
	return out
}

func at(p *circuit.Part) string {
	if p.Place == nil {
		return ""
	}
	return ", " + p.Place.Name
}

func fusesOf(p *circuit.Part) []*circuit.Branch {
	var out []*circuit.Branch
	for _, b := range p.Branches {
		if b.Fuse != nil {
			out = append(out, b)
		}
	}
	return out
}

// blockCard lists the ways of a block, empty ones included.
func blockCard(c *circuit.Circuit, p *circuit.Part, src *design.Block) card {
	k := card{title: strings.TrimSpace(p.Ref + " " + p.Name + at(p))}
	byWay := map[string]*circuit.Branch{}
	for _, b := range p.Branches {
		for _, t := range b.B.Terminals {
			if t.Part == p {
				byWay[t.Name] = b
			}
		}
	}
	for _, w := range src.Ways {
		row := cardRow{position: "way " + w.Number}
		b := byWay[w.Number]
		switch {
		case w.Spare:
			row.rating, row.feeds = "–", "spare"
		case b == nil:
			row.rating, row.feeds = "–", "nothing"
		case b.Fuse == nil:
			row.rating, row.feeds = "no fuse", feeds(c, b)
		default:
			row = fuseRow(c, b)
			row.position = strings.TrimSpace("way " + w.Number + " " + b.Fuse.Ref)
		}
		k.rows = append(k.rows, row)
	}
	return k
}

func fuseRow(c *circuit.Circuit, b *circuit.Branch) cardRow {
	row := cardRow{rating: "not known", colour: "–", feeds: feeds(c, b)}
	f := b.Fuse
	if f.Rating != nil && f.Rating.RatingA > 0 {
		row.rating = quantity.Plain(f.Rating.RatingA, quantity.Current)
		if f.Rating.Colour != "" {
			row.colour = f.Rating.Colour
		}
	}
	switch {
	case f.Factory:
		row.rating += " factory"
	case f.Type != nil:
		row.rating += " " + f.Type.Name
	}
	return row
}

// feeds says what hangs below a fuse; of one in a link, which battery.
func feeds(c *circuit.Circuit, b *circuit.Branch) string {
	if l := c.Linked(); l != nil && (l.Bare[b.Index] || len(l.Fuses[b.Index]) > 0) {
		return "charging link, fed from both batteries: pull both"
	}
	if batteries := c.BatteriesBelow(b); len(batteries) > 0 {
		var list []string
		for _, part := range batteries {
			list = append(list, "battery "+cmp.Or(part.Label, part.Name))
		}
		return strings.Join(list, ", ")
	}
	return cmp.Or(strings.Join(c.BelowBranch(b).Names(), ", "), "nothing")
}

// cardColumns are the columns of a card.
var cardColumns = []column{
	{head: "position", wide: 32},
	{head: "fuse", wide: 24, face: scene.Bold},
	{head: "colour", wide: 20},
	{head: "feeds", wide: 44},
}

const cardWarning = "Same rating and kind only. A fuse that opens again has a cause: find it first."

// cardAroundMM is the height of a card without its rows: title, heads, warning
// and edges.
const cardAroundMM = 22.0

// folded is a row of a card, or a piece of one, ready to write.
type folded struct {
	cells  [][]string
	colour string // of the fuse; "" where the row goes on
}

// drawCard draws a card, parted when it is higher than what a page has left.
func drawCard(b *book, k card) {
	t := b.tableAt(b.left()+3, cardMM-6, cardColumns)
	page := b.pageBottom() - marginMM - headingMM
	most := int((page - cardAroundMM - b.rowEdgeMM()) / scene.LineHeightMM(smallSizeMM))
	var rows []folded
	total := cardAroundMM
	for _, row := range k.rows {
		cells, _ := t.fold([]string{row.position, row.rating, row.colour, row.feeds}, smallSizeMM, scene.Regular)
		for i, piece := range partRow(cells, most) {
			f := folded{cells: piece}
			if i == 0 {
				f.colour = row.colour
			}
			rows, total = append(rows, f), total+b.rowMM(piece, smallSizeMM)
		}
	}
	if b.y+total > b.bottom() && total < page {
		b.newPage()
	}
	for len(rows) > 0 {
		n, high := 0, cardAroundMM
		for ; n < len(rows); n++ {
			row := b.rowMM(rows[n].cells, smallSizeMM)
			if b.y+high+row > b.bottom() {
				break
			}
			high += row
		}
		if n == 0 {
			b.newPage()
			continue
		}
		t.cardBox(k.title, rows[:n], high)
		rows = rows[n:]
	}
}

// cardBox draws one piece of a card at the book's place.
func (t *table) cardBox(title string, rows []folded, high float64) {
	b, s := t.book, t.book.sheet()
	s.Begin(scene.Group{ID: s.UniqueID("card-" + title), Class: "card", Title: "fuse card: " + title})
	pen := scene.Pen(thinMM).Dashed(3, 2)
	end := b.y + high
	s.Rect(scene.Rect{X: b.left(), Y: b.y, W: cardMM, H: high}, &pen, nil)
	s.TextIn(scene.Rect{X: t.left(), Y: b.y + 3, W: t.width, H: 4}, title, bold)
	b.y += 8
	cells, headMM := t.heads(scene.Italic)
	t.write(cells, smallSizeMM, scene.Italic)
	b.y += headMM
	t.rule(hairMM)
	x, w := t.at(2)
	for _, f := range rows {
		swatch(s, b.review.Design.Library, f.colour, scene.Rect{X: x + w - 5, Y: b.y + 1, W: 3.4, H: 2.4})
		t.write(f.cells, smallSizeMM, scene.Regular)
		b.y += b.rowMM(f.cells, smallSizeMM)
		t.rule(hairMM)
	}
	s.TextIn(scene.Rect{X: t.left(), Y: b.y + 1, W: t.width, H: 4}, cardWarning, small)
	s.End()
	b.y = end + 6
}

// tan is a body colour of fuses that is no wire colour; its shade is our choice.
var tan = scene.RGB{R: 201, G: 168, B: 125}

// swatch shows a fuse's colour beside its name, when it is known.
func swatch(s *scene.Sheet, lib *library.Library, name string, r scene.Rect) {
	pen := scene.Pen(hairMM)
	if strings.EqualFold(name, "tan") {
		s.Rect(r, &pen, scene.Paint(tan))
		return
	}
	if lib == nil {
		return
	}
	for _, c := range lib.Colours {
		if strings.EqualFold(c.Name, name) {
			s.Rect(r, &pen, scene.Paint(scene.RGB{R: c.RGB[0], G: c.RGB[1], B: c.RGB[2]}))
			return
		}
	}
}
