package document

import (
	"cmp"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/library"
	"fusewright/render/scene"
)

// cardMM is the width of a fuse card: it goes into the lid of a box for six
// blade fuses or more. Our choice; two stand beside each other where that saves a page.
const cardMM = 120.0

func (b *book) cardMM() float64 { return min(cardMM, b.width()) }

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
	return upright("Fuse card", r, func(b *book) {
		b.para("Cut along the dashed lines; one card for the lid of each box. Print new cards when the design changes.", quiet)
		if b.tight {
			b.inColumns(2)
		}
		ends := make([]float64, b.cols)
		for col := range ends {
			ends[col] = b.y
		}
		for _, c := range cards(r.Circuit) {
			_, _, high := foldCard(b, c)
			b.columnFor(high, ends)
			drawCard(b, c)
			ends[b.col] = b.y
		}
	})
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

// feeds says what hangs below a fuse; of one in a link, which battery; of one that what charges
// feeds, that pulling it leaves both its sides live; of one in a ring, what else must be out, and what hangs on them all.
func feeds(c *circuit.Circuit, b *circuit.Branch) string {
	if chargers := c.ChargersAbove(b.A); len(chargers) > 0 {
		var names []string
		for _, p := range chargers {
			names = append(names, called(p))
		}
		return strings.Join(names, ", ") + " to " + batteries(c, b) + bothLive
	}
	if l := c.Linked(); l != nil && (l.Bare[b.Index] || len(l.Fuses[b.Index]) > 0) {
		return "charging link, fed from both batteries: pull both"
	}
	if to := batteries(c, b); to != "" {
		return to
	}
	if rings := c.Rings(); rings.In(b) {
		return ring(c, rings, b)
	}
	below := c.BelowBranch(b)
	names := byBlock(c, b, below.Names())
	if below.Charges() {
		names = append(names, "charging system"+bothLive)
	}
	return cmp.Or(strings.Join(names, ", "), "nothing")
}

// ring says of a fuse that the other end feeds too what makes it dead.
func ring(c *circuit.Circuit, rings *circuit.Rings, b *circuit.Branch) string {
	out, dead := rings.Together(c, b), "isolate the battery"
	if len(c.Posts()) > 1 {
		dead = "isolate every battery"
	}
	var refs, names []string
	for _, x := range out {
		refs = append(refs, x.Fuse.Ref)
		dead = "take out " + strings.Join(refs, ", ")
		for _, name := range c.BelowBranch(x).Names() {
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	if len(out) == 0 {
		names = c.BelowBranch(b).Names()
	}
	return "ring, live from both ends: " + dead + "; feeds " + strings.Join(names, ", ")
}

// bothLive is said of a fuse between a battery and what charges it.
const bothLive = ": live at both sides"

// batteries are those that a fuse leads to; "" = none.
func batteries(c *circuit.Circuit, b *circuit.Branch) string {
	var list []string
	for _, p := range c.BatteriesBelow(b) {
		if p.Kind == circuit.Bank {
			list = append(list, "battery "+called(p))
		} else {
			list = append(list, called(p))
		}
	}
	return strings.Join(list, ", ")
}

// called is a part as people call it.
func called(p *circuit.Part) string { return cmp.Or(p.Label, p.Name) }

// byBlock says the name of a block in place of all that its ways feed.
func byBlock(c *circuit.Circuit, b *circuit.Branch, names []string) []string {
	for _, p := range c.Parts {
		if p.Kind != circuit.Block || p == b.Part {
			continue
		}
		var below []string
		for _, way := range fusesOf(p) {
			below = append(below, c.BelowBranch(way).Names()...)
		}
		first := slices.IndexFunc(names, func(name string) bool { return slices.Contains(below, name) })
		if len(below) < 2 || slices.ContainsFunc(below, func(name string) bool { return !slices.Contains(names, name) }) {
			continue
		}
		names[first] = "all of " + p.Ref + " " + p.Name
		names = slices.DeleteFunc(names, func(name string) bool { return slices.Contains(below, name) })
	}
	return names
}

// cardTable is the table of a card; in a narrow one a fuse keeps its line.
func (b *book) cardTable() *table {
	shares := []float64{32, 24, 20, 44}
	if b.cols > 1 {
		shares = []float64{26, 30, 24, 40}
	}
	return b.tableAt(b.left()+3, b.cardMM()-6, []column{
		{head: "position", wide: shares[0]},
		{head: "fuse", wide: shares[1], face: scene.Bold},
		{head: "colour", wide: shares[2]},
		{head: "feeds", wide: shares[3]},
	})
}

const cardWarning = "Same rating and kind only. A fuse that opens again has a cause: find it first."

// cardAroundMM is the height of a card without its rows: title, heads, warning
// and edges.
func (t *table) cardAroundMM() float64 {
	lines := len(scene.Wrap(cardWarning, smallSizeMM, t.width, scene.Regular))
	return 22 + float64(lines-1)*scene.LineHeightMM(smallSizeMM)
}

// folded is a row of a card, or a piece of one, ready to write.
type folded struct {
	cells  [][]string
	colour string // of the fuse; "" where the row goes on
}

// foldCard makes the rows of a card ready and gives its height.
func foldCard(b *book, k card) (t *table, rows []folded, total float64) {
	t = b.cardTable()
	most := int((b.cardPageMM() - t.cardAroundMM() - b.rowEdgeMM()) / scene.LineHeightMM(smallSizeMM))
	total = t.cardAroundMM()
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
	return t, rows, total
}

// cardPageMM is the height of the first page for cards.
func (b *book) cardPageMM() float64 { return b.pageBottom() - marginMM - headingMM }

// columnFor goes to the first column of the page that has room for a height. ends is how
// far down each is filled.
func (b *book) columnFor(high float64, ends []float64) {
	for col, y := range ends {
		if y+high <= b.bottom() {
			b.col, b.y = col, y
			return
		}
	}
	b.newPage()
	for col := range ends {
		ends[col] = b.y
	}
}

// drawCard draws a card, parted when it is higher than what a page has left.
func drawCard(b *book, k card) {
	t, rows, total := foldCard(b, k)
	if b.y+total > b.bottom() && total < b.cardPageMM() {
		b.next()
	}
	for len(rows) > 0 {
		n, high := 0, t.cardAroundMM()
		for ; n < len(rows); n++ {
			row := b.rowMM(rows[n].cells, smallSizeMM)
			if b.y+high+row > b.bottom() {
				break
			}
			high += row
		}
		if n == 0 {
			b.next()
			t = b.cardTable()
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
	s.Rect(scene.Rect{X: b.left(), Y: b.y, W: b.cardMM(), H: high}, &pen, nil)
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
	s.Paragraph(scene.Rect{X: t.left(), Y: b.y + 1, W: t.width, H: 8}, cardWarning, small)
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
