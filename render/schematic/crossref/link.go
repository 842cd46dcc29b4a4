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
	return scene.ID(fmt.Sprintf("%s-%s-%s", s.ID(c.Sheet), way, parts.TerminalName(c.Term)))
}

// LinkTo leads from a flag that goes on elsewhere to the first flag there.
func (s *Sheets) LinkTo(c *cell.Cell) string {
	for _, away := range s.Refs[c.Term].Aways {
		if onSheet(away) {
			return s.FlagID(away)
		}
	}
	return ""
}

// LinkFrom leads from a flag back to the one beside its source, or to the
// source's sheet.
func (s *Sheets) LinkFrom(x *crossing) string {
	if onSheet(x.From) {
		return s.FlagID(x.From)
	}
	return s.LinkToSheet(x.Home)
}

// LinkToSheet leads to the sheet of a cell.
func (s *Sheets) LinkToSheet(c *cell.Cell) string {
	if !onSheet(c) {
		return ""
	}
	return s.ID(c.Sheet)
}

func onSheet(c *cell.Cell) bool { return c != nil && c.Sheet > 0 }

// Where names a cell's sheet and zone: "2/B4".
func (s *Sheets) Where(c *cell.Cell) string {
	if !onSheet(c) {
		return ""
	}
	field := s.Field
	zone := s.Paper.Zone(scene.Point{X: field.X + float64(c.X+1)*symbol.M, Y: field.Y + float64(c.Rows[0].Y)*symbol.M})
	return fmt.Sprintf("%d/%s", c.Sheet, zone)
}
