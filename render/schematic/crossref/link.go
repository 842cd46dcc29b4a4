package crossref

import (
	"fmt"

	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/parts"
	"fusewright/render/symbol"
)

// ID is what other pages of a document call a sheet.
func (s *Sheets) ID(number int) string {
	if s.Study != nil {
		return fmt.Sprintf("study-%s-%d", scene.ID(s.Study.Name()), number)
	}
	return fmt.Sprintf("sheet-%d", number)
}

// FlagID is what other sheets call a flag: one terminal has one flag of a kind
// on a sheet.
func (s *Sheets) FlagID(c *cell.Cell) string {
	way := "to"
	if c.Kind == cell.In {
		way = "from"
	}
	return scene.ID(fmt.Sprintf("%s-%s-%s", s.ID(s.Number(c.Sheet-1)), way, parts.TerminalName(c.Term)))
}

// LinkTo leads from a flag that goes on elsewhere to the first flag there.
func (s *Sheets) LinkTo(c *cell.Cell) string {
	for _, away := range s.Refs[c.Term].Aways {
		if s.Number(away.Sheet-1) > 0 {
			return s.FlagID(away)
		}
	}
	return ""
}

// LinkFrom leads from a flag back to the one beside its source, or to the
// source's sheet.
func (s *Sheets) LinkFrom(x *crossing) string {
	switch {
	case x == nil:
		return ""
	case x.From != nil && s.Number(x.From.Sheet-1) > 0:
		return s.FlagID(x.From)
	case x.Home != nil && x.Home.Sheet > 0:
		return s.linkToPage(x.Home.Sheet - 1)
	}
	return ""
}

// LinkToMate leads from one half of a relay to the sheet of the other.
func (s *Sheets) LinkToMate(c *cell.Cell) string {
	if c.Mate == nil || c.Mate.Sheet == 0 {
		return ""
	}
	return s.linkToPage(c.Mate.Sheet - 1)
}

// linkToPage leads to the sheet of a page; nowhere when it is left out.
func (s *Sheets) linkToPage(index int) string {
	if s.Number(index) == 0 {
		return ""
	}
	return s.ID(s.Number(index))
}

// Where names a cell's sheet and zone: "2/B4"; "elsewhere" when its sheet is left
// out.
func (s *Sheets) Where(c *cell.Cell) string {
	if c == nil || c.Sheet == 0 {
		return ""
	}
	number := s.Number(c.Sheet - 1)
	if number == 0 {
		return "elsewhere"
	}
	field := s.Paper.Field()
	zone := s.Paper.Zone(scene.Point{X: field.X + float64(c.X+1)*symbol.M, Y: field.Y + float64(c.Rows[0].Y)*symbol.M})
	return fmt.Sprintf("%d/%s", number, zone)
}
