package sizing

import "fusewright/harness/design"

// Reopen leaves every wire size, fuse rating, relay form, block type and plug of a
// design to be chosen, as if the design gave none: to see what the design would
// be by this package's own lights. Fuse types stay.
func Reopen(d *design.Design) {
	open := func(feeds []design.Feed) {
		for i := range feeds {
			feeds[i].Wire.SizeAuto = true
		}
	}
	for _, list := range allFeeds(d) {
		open(list)
	}
	for _, x := range d.Relays {
		open(x.Coil.Returns)
		x.FormAuto = true
	}
	for _, x := range d.Loads {
		open(x.Returns)
		x.PlugAuto = x.Plug != nil
	}
	for _, x := range d.Switches {
		x.PlugAuto = x.Plug != nil
	}
	for _, x := range d.Grounds {
		open(x.Returns)
	}
	for _, x := range d.Fuses {
		x.RatingAuto = true
	}
	for _, x := range d.Blocks {
		x.TypeAuto = x.Type != nil
		for _, w := range x.Ways {
			w.FuseAuto = w.FuseAuto || w.Fuse != nil
		}
	}
}
