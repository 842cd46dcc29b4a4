package rules_test

import "fusewright/harness/design"

// connected is one feed or return of a part.
type connected struct {
	part string
	feed *design.Feed
	back bool
}

// connectionsOf lists the feeds and returns of all parts in design order.
func connectionsOf(d *design.Design) (list []connected) {
	add := func(part string, back bool, feeds []design.Feed) {
		for i := range feeds {
			list = append(list, connected{part, &feeds[i], back})
		}
	}
	for _, x := range d.Fuses {
		add(x.Name, false, x.FedBy)
	}
	for _, x := range d.Relays {
		add(x.Name, false, x.FedBy)
		add(x.Name, false, x.Coil.FedBy)
		add(x.Name, true, x.Coil.Returns)
	}
	for _, x := range d.Blocks {
		add(x.Name, false, x.FedBy)
	}
	for _, x := range d.Switches {
		add(x.Name, false, x.FedBy)
	}
	for _, x := range d.Loads {
		add(x.Name, false, x.FedBy)
		add(x.Name, true, x.Returns)
	}
	for _, x := range d.Grounds {
		add(x.Name, true, x.Returns)
	}
	for _, x := range d.Splices {
		add(x.Name, false, x.FedBy)
	}
	return list
}

// unitsOf lists for each part, and each way of a block, what it serves and the
// fuses nearest before it.
func unitsOf(d *design.Design) map[string][]string {
	list := connectionsOf(d)
	units := map[string][]string{}
	for _, c := range list {
		for _, name := range []string{c.part, source(c)} {
			if units[name] == nil && name != "" {
				seen := map[string]bool{}
				serves(list, name, seen)
				fusesBefore(list, name, seen)
				for other := range seen {
					units[name] = append(units[name], other)
				}
			}
		}
	}
	return units
}

// source is the part or the way of a block that a connection comes from.
func source(c connected) string {
	from := c.feed.From
	if from.Part == nil {
		return ""
	}
	if _, way := from.Part.(*design.Block); way && from.Terminal != "" {
		return from.Part.PartName() + " " + from.Terminal
	}
	return from.Part.PartName()
}

// serves adds all that hangs on a part or way.
func serves(list []connected, name string, seen map[string]bool) {
	for _, c := range list {
		from := source(c)
		if from != name && (c.feed.From.Part == nil || c.feed.From.Part.PartName() != name) || seen[c.part] {
			continue
		}
		seen[c.part], seen[from] = true, true
		serves(list, c.part, seen)
	}
}

// fusesBefore adds the nearest fuses and fused ways before a part or way.
func fusesBefore(list []connected, name string, seen map[string]bool) {
	for _, c := range list {
		if c.part != name || c.back || seen["<"+source(c)] {
			continue
		}
		from := source(c)
		seen["<"+from] = true
		seen[from] = true
		if _, fuse := c.feed.From.Part.(*design.Fuse); !fuse && from != "" {
			fusesBefore(list, c.feed.From.Part.PartName(), seen)
		}
	}
}
