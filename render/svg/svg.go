// Package svg writes a scene sheet as an SVG 1.1 picture in millimetres. Text
// stays text, so that a page can be searched and read aloud; groups keep their
// IDs, titles and descriptions.
//
// Fonts are not embedded: the picture asks for the family the drawing was
// measured in and falls back to similar ones, and every text carries its
// measured length, to which a viewer fits whatever font it has.
package svg

import (
	"bufio"
	"io"
	"math"
	"strconv"
	"strings"

	"fusewright/render/scene"
)

// fontFamilies starts with the measured family; the others have nearly the same
// widths on the common systems.
const fontFamilies = scene.FontFamily + ", Arial, Helvetica, sans-serif"

// Write writes one sheet. The sheet is checked first (scene.Sheet.Validate), so
// on an error about the drawing nothing has been written.
func Write(w io.Writer, sheet *scene.Sheet) error {
	if err := sheet.Validate(); err != nil {
		return err
	}
	p := &printer{w: bufio.NewWriter(w), targets: targets(sheet)}
	p.head(sheet)
	if err := sheet.Replay(p); err != nil {
		return err
	}
	p.put("</svg>\n")
	return p.w.Flush()
}

// WriteInline writes one sheet as an element of a page on a screen: as large as the page
// makes it, ink in the colour of the page's text, no ground, and no style that a page's
// content security policy would refuse. Groups say what they are of in data-of; titles and
// links are left to the page.
func WriteInline(w io.Writer, sheet *scene.Sheet) error {
	if err := sheet.Validate(); err != nil {
		return err
	}
	p := &printer{w: bufio.NewWriter(w), inline: true}
	p.put(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 `, number(sheet.WidthMM), " ", number(sheet.HeightMM),
		`" font-family="`, fontFamilies, `" fill="none" stroke-miterlimit="10" xml:space="preserve">`, "\n")
	if err := sheet.Replay(p); err != nil {
		return err
	}
	p.put("</svg>\n")
	return p.w.Flush()
}

// targets lists the IDs on the sheet: a link to anything else leads out of this
// picture and is left out.
func targets(sheet *scene.Sheet) map[string]bool {
	ids := map[string]bool{}
	for _, item := range sheet.Items {
		if item.Begin != nil && item.Begin.ID != "" {
			ids[item.Begin.ID] = true
		}
	}
	return ids
}

// printer is the back-end. Write errors stick in the buffered writer and come
// out at Flush.
type printer struct {
	w       *bufio.Writer
	targets map[string]bool
	linked  []bool // for each open group whether it is inside a link of its own
	inline  bool   // see WriteInline
}

func (p *printer) put(parts ...string) {
	for _, part := range parts {
		p.w.WriteString(part)
	}
}

func (p *printer) head(sheet *scene.Sheet) {
	width, height := number(sheet.WidthMM), number(sheet.HeightMM)
	p.put(`<?xml version="1.0" encoding="UTF-8"?>`, "\n",
		`<svg xmlns="http://www.w3.org/2000/svg" width="`, width, `mm" height="`, height,
		`mm" viewBox="0 0 `, width, " ", height, `" role="`, role(sheet),
		`" font-family="`, fontFamilies, `" style="font-kerning:none;white-space:pre" fill="none"`,
		` stroke-miterlimit="10" xml:space="preserve">`, "\n")
	p.words(scene.Clean(sheet.Title), scene.Clean(sheet.Desc))
	p.put(`<rect width="`, width, `" height="`, height, `" fill="#ffffff"/>`, "\n")
}

// role is "img" for a picture without titled parts. With titled parts it is the
// graphics-document of WAI-ARIA Graphics, since "img" hides what is inside from
// a screen reader; each titled part is then an "img" of its own.
func role(sheet *scene.Sheet) string {
	for _, item := range sheet.Items {
		if item.Begin != nil && item.Begin.Title != "" {
			return "graphics-document"
		}
	}
	return "img"
}

// words writes the title and the description of the group just opened.
func (p *printer) words(title, desc string) {
	if title != "" {
		p.put("<title>", escape(title), "</title>\n")
	}
	if desc != "" {
		p.put("<desc>", escape(desc), "</desc>\n")
	}
}

// Begin opens a group.
func (p *printer) Begin(g scene.Group) {
	linked := g.Link != "" && p.targets[g.Link]
	p.linked = append(p.linked, linked)
	if linked {
		p.put(`<a href="#`, escape(g.Link), `">`)
	}
	p.put("<g")
	p.attribute("id", g.ID)
	p.attribute("class", scene.Clean(g.Class))
	if p.inline {
		p.attribute("data-of", g.Of)
		p.put(">\n")
		return
	}
	if g.Title != "" {
		p.put(` role="img"`)
	}
	p.put(">\n")
	p.words(g.Title, g.Desc)
}

// End closes the group opened last.
func (p *printer) End() {
	last := len(p.linked) - 1
	p.put("</g>")
	if p.linked[last] {
		p.put("</a>")
	}
	p.put("\n")
	p.linked = p.linked[:last]
}

func (p *printer) attribute(name, value string) {
	if value != "" {
		p.put(" ", name, `="`, escape(value), `"`)
	}
}

// Path writes a line or an area.
func (p *printer) Path(path *scene.Path) {
	if len(path.Verbs) == 0 || path.Stroke == nil && path.Fill == nil {
		return
	}
	p.put(`<path d="`)
	for verb, points := range path.Steps() {
		p.put(letters[verb])
		for i, point := range points {
			if i > 0 {
				p.put(" ")
			}
			p.put(number(point.X), " ", number(point.Y))
		}
	}
	p.put(`"`)
	if path.Fill != nil {
		p.put(` fill="`, p.colour(path.Fill.Colour), `"`)
	}
	if path.Stroke != nil {
		p.stroke(path.Stroke)
	}
	p.put("/>\n")
}

// letters of the path steps.
var letters = [...]string{scene.Move: "M", scene.Line: "L", scene.Cubic: "C", scene.Close: "Z"}

func (p *printer) stroke(s *scene.Stroke) {
	p.put(` stroke="`, p.colour(s.Colour), `" stroke-width="`, number(s.WidthMM), `"`)
	if s.Round {
		p.put(` stroke-linecap="round" stroke-linejoin="round"`)
	}
	if len(s.Dash) > 0 {
		lengths := make([]string, len(s.Dash))
		for i, length := range s.Dash {
			lengths[i] = number(length)
		}
		p.put(` stroke-dasharray="`, strings.Join(lengths, " "), `"`)
	}
}

// Text writes one line of text.
func (p *printer) Text(t scene.Text, widthMM float64) {
	x, y := number(t.At.X), number(t.At.Y)
	p.put(`<text x="`, x, `" y="`, y, `" font-size="`, number(t.SizeMM), `"`)
	switch t.Face {
	case scene.Bold:
		p.put(` font-weight="bold"`)
	case scene.Italic:
		p.put(` font-style="italic"`)
	}
	switch t.Align {
	case scene.Middle:
		p.put(` text-anchor="middle"`)
	case scene.Right:
		p.put(` text-anchor="end"`)
	}
	if t.Turn != 0 {
		p.put(` transform="rotate(`, number(-t.Turn), " ", x, " ", y, `)"`)
	}
	if widthMM > 0 {
		p.put(` textLength="`, number(widthMM), `" lengthAdjust="spacingAndGlyphs"`)
	}
	if strings.Contains(" "+t.String+" ", "  ") { // browsers do not let texts inherit it
		p.put(` xml:space="preserve"`)
	}
	p.put(` fill="`, p.colour(t.Colour), `">`, escape(t.String), "</text>\n")
}

// number prints a length with at most three decimals: a micrometre on paper.
func number(v float64) string {
	rounded := math.Round(v*1000) / 1000
	if rounded == 0 {
		return "0" // and never "-0"
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// colour of a line, an area or a text.
func (p *printer) colour(c scene.RGB) string {
	if p.inline && c == scene.Ink {
		return "currentColor"
	}
	return colour(c)
}

func colour(c scene.RGB) string {
	const digits = "0123456789abcdef"
	text := []byte{'#'}
	for _, part := range [...]uint8{c.R, c.G, c.B} {
		text = append(text, digits[part>>4], digits[part&15])
	}
	return string(text)
}

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;")

// escape makes a cleaned text safe between tags and inside attributes. Control
// characters, which XML does not allow at all, are gone already.
func escape(s string) string { return escaper.Replace(s) }
