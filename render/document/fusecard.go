package document

import (
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
	b.para("Cut along the dashed lines; one card for the lid of each box. Print the cards anew when the design changes.",
		scene.TextStyle{SizeMM: textSizeMM, Colour: grey})
	for _, c := range cards(r.Circuit) {
		drawCard(b, c)
	}
	return b.finish()
}

// cards gathers the fuses of a circuit in design order.
func cards(c *circuit.Circuit) []card {
	var blocks []card
	single := card{title: "Fuses on their own"}
	factory := card{title: "The machine's own fuses, feeding what was added"}
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

// feeds names what hangs below a fuse: loads, and relays whose coils it feeds.
func feeds(c *circuit.Circuit, b *circuit.Branch) string {
	below := c.BelowBranch(b)
	var names []string
	seen := map[*circuit.Part]bool{}
	add := func(p *circuit.Part, before string) {
		if p != nil && !seen[p] {
			seen[p] = true
			name := p.Label
			if name == "" {
				name = p.Name
			}
			names = append(names, before+name)
		}
	}
	for _, l := range below.Loads {
		add(l.Part, "")
	}
	for _, k := range below.Coils {
		add(k.Part, "relay coil of ")
	}
	if len(names) == 0 {
		return "nothing"
	}
	return strings.Join(names, ", ")
}

// cardColumns are the columns of a card.
var cardColumns = []column{
	{head: "position", wide: 32},
	{head: "fuse", wide: 24, face: scene.Bold},
	{head: "colour", wide: 20},
	{head: "feeds", wide: 44},
}

const cardWarning = "Same rating and kind only. A fuse that opens again has a reason: find it first."

// drawCard draws a card, parted when it is higher than what a page has left.
func drawCard(b *book, k card) {
	style := scene.TextStyle{SizeMM: smallSizeMM, Colour: ink}
	t := &table{book: b, columns: cardColumns}
	for _, c := range cardColumns {
		t.sum += c.wide
	}
	const around = 22.0 // title, heads, warning and edges
	rows, total := t.cardRows(k, b.bottom()-marginMM-headingMM-around)
	if b.y+around+total > b.bottom() && total+around < b.bottom()-marginMM-headingMM {
		b.newPage()
	}
	for rest := rows; len(rest) > 0; {
		n, high := 0, 0.0
		for n < len(rest) && b.y+around+high+rest[n].high <= b.bottom() {
			high += rest[n].high
			n++
		}
		if n == 0 {
			b.newPage()
			continue
		}
		t.cardBox(k.title, rest[:n], high+around, style)
		rest = rest[n:]
	}
}

// folded is a row of a card, or a piece of one, ready to write.
type folded struct {
	cells  [][]string
	high   float64
	colour string // of the fuse; "" where the row goes on
}

// cardEdgeMM is the space above and below the lines of a card's row.
const cardEdgeMM = 1.8

// cardRows folds the rows of a card and gives their height together. A row that
// is higher than mostMM is parted.
func (t *table) cardRows(k card, mostMM float64) (rows []folded, high float64) {
	most := int((mostMM - cardEdgeMM) / scene.LineHeightMM(smallSizeMM))
	for _, row := range k.rows {
		var cells [][]string
		for i, text := range []string{row.position, row.rating, row.colour, row.feeds} {
			w := t.columns[i].wide / t.sum * (cardMM - 6)
			cells = append(cells, wrap(text, smallSizeMM, w-2*padMM, t.columns[i].face))
		}
		colour := row.colour
		for _, piece := range partRow(cells, most) {
			f := folded{piece, float64(lineCount(piece))*scene.LineHeightMM(smallSizeMM) + cardEdgeMM, colour}
			rows, high, colour = append(rows, f), high+f.high, ""
		}
	}
	return rows, high
}

// cardBox draws one piece of a card at the book's place.
func (t *table) cardBox(title string, rows []folded, high float64, style scene.TextStyle) {
	b := t.book
	s := b.sheet()
	s.Begin(scene.Group{ID: s.UniqueID("card-" + title), Class: "card", Title: "fuse card: " + title})
	pen := scene.Pen(thinMM).Dashed(3, 2)
	s.Rect(scene.Rect{X: b.left(), Y: b.y, W: cardMM, H: high}, &pen, nil)
	x, y, inner := b.left()+3, b.y+3, cardMM-6
	s.TextIn(scene.Rect{X: x, Y: y, W: inner, H: 4}, title,
		scene.TextStyle{SizeMM: textSizeMM, Face: scene.Bold, Colour: ink})
	y += 5
	y = t.cardRow(folded{cells: heads(t.columns), high: 4.8}, x, y, inner, scene.Italic)
	for _, f := range rows {
		swatch(s, t.book.review.Design.Library, f.colour, scene.Rect{X: x + (t.columns[0].wide+t.columns[1].wide+
			t.columns[2].wide)/t.sum*inner - 5, Y: y + 1, W: 3.4, H: 2.4})
		y = t.cardRow(f, x, y, inner, scene.Regular)
	}
	s.TextIn(scene.Rect{X: x, Y: y + 1, W: inner, H: 4}, cardWarning, style)
	s.End()
	b.y += high + 6
}

func heads(columns []column) [][]string {
	var out [][]string
	for _, c := range columns {
		out = append(out, []string{c.head})
	}
	return out
}

func (t *table) cardRow(f folded, x, y, inner float64, face scene.Face) float64 {
	s := t.book.sheet()
	at := x
	for i, lines := range f.cells {
		style := scene.TextStyle{SizeMM: smallSizeMM, Face: face, Colour: ink}
		if face == scene.Regular {
			style.Face = t.columns[i].face
		}
		for n, line := range lines {
			s.TextAt(scene.Point{X: at + padMM, Y: y + 0.9 + scene.AscentMM(smallSizeMM, style.Face) +
				float64(n)*scene.LineHeightMM(smallSizeMM)}, line, style)
		}
		at += t.columns[i].wide / t.sum * inner
	}
	y += f.high
	s.Line(scene.Point{X: x, Y: y}, scene.Point{X: x + inner, Y: y}, scene.Pen(hairMM).In(faint))
	return y
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
