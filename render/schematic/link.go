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
	return scene.ID(fmt.Sprintf("%s-%s-%s", d.sheetID(d.number(c.page.index)), way, terminalName(c.term)))
}

// linkTo leads from a flag that goes on elsewhere to the first flag there.
func (d *drawing) linkTo(c *cell) string {
	for _, away := range d.refs[c.term].aways {
		if d.number(away.page.index) > 0 {
			return d.flagID(away)
		}
	}
	return ""
}

// linkFrom leads from a flag back to the one beside its source, or to the
// source's sheet.
func (d *drawing) linkFrom(x *crossing) string {
	switch {
	case x == nil:
		return ""
	case x.from != nil && d.number(x.from.page.index) > 0:
		return d.flagID(x.from)
	case x.home != nil && x.home.page != nil:
		return d.linkToPage(x.home.page)
	}
	return ""
}

// linkToMate leads from one half of a relay to the sheet of the other.
func (d *drawing) linkToMate(c *cell) string {
	if c.mate == nil || c.mate.page == nil {
		return ""
	}
	return d.linkToPage(c.mate.page)
}

// linkToPage leads to the sheet of a page; nowhere when it is left out.
func (d *drawing) linkToPage(p *page) string {
	if d.number(p.index) == 0 {
		return ""
	}
	return d.sheetID(d.number(p.index))
}
