package sizing

import "fusewright/harness/design"

// Reopen leaves every wire size, fuse rating, relay form, block type and plug of
// a design to be chosen, as if the design gave none: to see what the design would
// be by this package's own lights. Fuse types stay.
func Reopen(d *design.Design) {
	for _, feeds := range everyWire(d) {
		for i := range feeds {
			feeds[i].Wire.SizeAuto = true
		}
	}
	for _, x := range d.Relays {
		x.FormAuto = true
	}
	for _, x := range d.Loads {
		x.PlugAuto = x.Plug != nil
	}
	for _, x := range d.Switches {
		x.PlugAuto = x.Plug != nil
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
