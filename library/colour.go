package library

import (
	"fmt"
	"regexp"
	"strconv"
)

// Colour finds a single colour by its IEC 60757 code or English name, in any
// case; nil when there is none. Two-colour codes are read with ColourPair.
func (l *Library) Colour(code string) *Colour {
	return find(l.Colours, code, colourNames)
}

func colourNames(c *Colour) (string, []string) { return c.Code, []string{c.Name} }

// ColourPair takes a code of one or two colours apart: "RD", "YERD", "YE/RD",
// "YE-RD". The tracer is nil for one colour; base is nil when a code is unknown.
func (l *Library) ColourPair(code string) (base, tracer *Colour) {
	if c := l.Colour(code); c != nil {
		return c, nil
	}
	m := twoColours.FindStringSubmatch(code)
	if m == nil {
		return nil, nil
	}
	base, tracer = l.Colour(m[1]), l.Colour(m[2])
	if base == nil || tracer == nil {
		return nil, nil
	}
	return base, tracer
}

var twoColours = regexp.MustCompile(`^\s*([A-Za-z]{2})\s*[-/]?\s*([A-Za-z]{2})\s*$`)

// Designator gives the reference letter row of a kind of part; nil when there
// is none. A kind may be narrowed by a slash: "load/motor" falls back to "load".
func (l *Library) Designator(kind string) *Designator {
	if d := find(l.Designators, kind, designatorNames); d != nil {
		return d
	}
	for i, c := range kind {
		if c == '/' {
			return find(l.Designators, kind[:i], designatorNames)
		}
	}
	return nil
}

func designatorNames(d *Designator) (string, []string) { return d.Kind, nil }

var rgbForm = regexp.MustCompile(`^#[0-9A-Fa-f]{6}$`)

func (c *Colour) check(m *row) {
	if rgb := m.needText("rgb"); rgbForm.MatchString(rgb) {
		for i := range c.RGB {
			x, _ := strconv.ParseUint(rgb[1+2*i:3+2*i], 16, 8) // the form is checked
			c.RGB[i] = uint8(x)
		}
	} else if rgb != "" {
		m.r.report(m.values["rgb"], fmt.Sprintf("%q is not a colour value", shorten(rgb)), "such as \"#C02020\"", "")
	}
}
