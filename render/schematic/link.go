package schematic

import (
	"fmt"

	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// sheetID is what other pages of a document call a sheet.
func (s *sheets) sheetID(number int) string {
	if s.study != nil {
		return fmt.Sprintf("study-%s-%d", scene.ID(s.study.name()), number)
	}
	return fmt.Sprintf("sheet-%d", number)
}

// flagID is what other sheets call a flag: one terminal has one flag of a kind
// on a sheet.
func (s *sheets) flagID(c *cell) string {
	way := "to"
	if c.kind == inCell {
		way = "from"
	}
	return scene.ID(fmt.Sprintf("%s-%s-%s", s.sheetID(s.number(c.sheet-1)), way, terminalName(c.term)))
}

// linkTo leads from a flag that goes on elsewhere to the first flag there.
func (s *sheets) linkTo(c *cell) string {
	for _, away := range s.refs[c.term].aways {
		if s.number(away.sheet-1) > 0 {
			return s.flagID(away)
		}
	}
	return ""
}

// linkFrom leads from a flag back to the one beside its source, or to the
// source's sheet.
func (s *sheets) linkFrom(x *crossing) string {
	switch {
	case x == nil:
		return ""
	case x.from != nil && s.number(x.from.sheet-1) > 0:
		return s.flagID(x.from)
	case x.home != nil && x.home.sheet > 0:
		return s.linkToPage(x.home.sheet - 1)
	}
	return ""
}

// linkToMate leads from one half of a relay to the sheet of the other.
func (s *sheets) linkToMate(c *cell) string {
	if c.mate == nil || c.mate.sheet == 0 {
		return ""
	}
	return s.linkToPage(c.mate.sheet - 1)
}

// linkToPage leads to the sheet of a page; nowhere when it is left out.
func (s *sheets) linkToPage(index int) string {
	if s.number(index) == 0 {
		return ""
	}
	return s.sheetID(s.number(index))
}

// where names a cell's sheet and zone: "2/B4"; "elsewhere" when its sheet is left
// out.
func (s *sheets) where(c *cell) string {
	if c == nil || c.sheet == 0 {
		return ""
	}
	number := s.number(c.sheet - 1)
	if number == 0 {
		return "elsewhere"
	}
	field := s.paper.field()
	zone := s.paper.Zone(scene.Point{X: field.X + float64(c.x+1)*symbol.M, Y: field.Y + float64(c.rows[0].y)*symbol.M})
	return fmt.Sprintf("%d/%s", number, zone)
}
