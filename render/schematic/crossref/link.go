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
	return scene.ID(fmt.Sprintf("%s-%s-%s", s.ID(s.numberOf(c)), way, parts.TerminalName(c.Term)))
}

// numberOf is the number of a cell's sheet; 0 when it is on none or left out.
func (s *Sheets) numberOf(c *cell.Cell) int {
	if c == nil || c.Sheet == 0 {
		return 0
	}
	return s.Number(c.Sheet - 1)
}

// LinkTo leads from a flag that goes on elsewhere to the first flag there.
func (s *Sheets) LinkTo(c *cell.Cell) string {
	for _, away := range s.Refs[c.Term].Aways {
		if s.numberOf(away) > 0 {
			return s.FlagID(away)
		}
	}
	return ""
}

// LinkFrom leads from a flag back to the one beside its source, or to the
// source's sheet.
func (s *Sheets) LinkFrom(x *crossing) string {
	if s.numberOf(x.From) > 0 {
		return s.FlagID(x.From)
	}
	return s.LinkToSheet(x.Home)
}

// LinkToSheet leads to the sheet of a cell; nowhere when it is left out.
func (s *Sheets) LinkToSheet(c *cell.Cell) string {
	if n := s.numberOf(c); n > 0 {
		return s.ID(n)
	}
	return ""
}

// Where names a cell's sheet and zone: "2/B4"; "elsewhere" when its sheet is left
// out.
func (s *Sheets) Where(c *cell.Cell) string {
	if c == nil || c.Sheet == 0 {
		return ""
	}
	if s.numberOf(c) == 0 {
		return "elsewhere"
	}
	field := s.Field
	zone := s.Paper.Zone(scene.Point{X: field.X + float64(c.X+1)*symbol.M, Y: field.Y + float64(c.Rows[0].Y)*symbol.M})
	return fmt.Sprintf("%d/%s", s.numberOf(c), zone)
}
