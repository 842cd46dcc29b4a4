package schematic

import (
	"fmt"

	"fusewright/render/scene"
)

// sheetID is what other pages of a document call a sheet.
func (d *drawing) sheetID(number int) string {
	if d.study != nil {
		return fmt.Sprintf("study-%s-%d", scene.ID(d.study.name()), number)
	}
	return fmt.Sprintf("sheet-%d", number)
}

// flagID is what other sheets call a flag: one terminal has one flag of a kind
// on a sheet.
func (d *drawing) flagID(c *cell) string {
	way := "to"
	if c.kind == inCell {
		way = "from"
	}
	return scene.ID(fmt.Sprintf("%s-%s-%s", d.sheetID(c.page.index+1), way, terminalName(c.term)))
}

// linkTo leads from a flag that goes on elsewhere to the first flag there.
func (d *drawing) linkTo(c *cell) string {
	for _, away := range d.refs[c.term].aways {
		return d.flagID(away)
	}
	return ""
}

// linkFrom leads from a flag back to the one beside its source, or to the
// source's sheet.
func (d *drawing) linkFrom(x *crossing) string {
	switch {
	case x == nil:
		return ""
	case x.from != nil:
		return d.flagID(x.from)
	case x.home != nil && x.home.page != nil:
		return d.sheetID(x.home.page.index + 1)
	}
	return ""
}

// linkToMate leads from one half of a relay to the sheet of the other.
func (d *drawing) linkToMate(c *cell) string {
	if c.mate == nil || c.mate.page == nil {
		return ""
	}
	return d.sheetID(c.mate.page.index + 1)
}
