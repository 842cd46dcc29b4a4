package sizing

import (
	"fmt"
	"strings"

	"fusewright/harness/design"
)

// Values lists every size, rating, form, type, cover and plug of a design in one
// text, to tell whether two designs have the same.
func Values(d *design.Design) string {
	var b strings.Builder
	feeds := func(list []design.Feed) {
		for _, f := range list {
			fmt.Fprintf(&b, "  %s %s\n", f.From.Text, f.Wire.Size.Label)
		}
	}
	for _, r := range d.Runs {
		if r.Cover != nil {
			fmt.Fprintf(&b, "%s %s\n", r.Name, r.Cover.Name)
		}
	}
	for _, x := range d.Fuses {
		fmt.Fprintf(&b, "%s %s %g\n", x.Name, x.Type.Name, x.Rating.RatingA)
	}
	for _, x := range d.Relays {
		fmt.Fprintf(&b, "%s %s\n", x.Name, x.Form.Name)
		feeds(x.Coil.Returns)
	}
	for _, x := range d.Blocks {
		if x.Type != nil {
			fmt.Fprintf(&b, "%s %s\n", x.Name, x.Type.Name)
		}
		for _, w := range x.Ways {
			if w.Fuse != nil {
				fmt.Fprintf(&b, "%s %s %s %g\n", x.Name, w.Number, w.FuseType.Name, w.Fuse.RatingA)
			}
		}
	}
	plug := func(x design.Pluggable) {
		if f := x.PlugSpec().Plug; f != nil {
			fmt.Fprintf(&b, "%s plug %s\n", x.PartName(), f.Name)
		}
	}
	for _, x := range d.Switches {
		plug(x)
	}
	for _, list := range allFeeds(d) {
		feeds(list)
	}
	for _, x := range d.Loads {
		plug(x)
		feeds(x.Returns)
	}
	for _, x := range d.Grounds {
		feeds(x.Returns)
	}
	return b.String()
}
