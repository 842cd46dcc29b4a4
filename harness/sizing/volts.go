package sizing

import (
	"fmt"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// smallerShare is the power of a load that could be had in place of one, and the
// resistance of a battery.
const smallerShare = 0.5

// voltChanges are the trials for loads that get too little beyond those that sizes,
// lengths and lamps give: another feed point, a relay less, a thicker trunk, a smaller
// load, a stronger battery.
func (s *search) voltChanges(w *view, about *concerned) []change {
	if !slices.ContainsFunc(s.best.verdict.findings, aboutVoltage) {
		return nil
	}
	list := slices.Concat(s.otherFeeds(about), s.fewerRelays(about))
	if trunk := w.trunk(about); len(trunk) > 0 {
		list = append(list, change{what: fmt.Sprintf("the trunk, %s, two sizes thicker", wiresText(trunk)),
			do: func(u *undo) { s.thickerBy(u, trunk, 2) }})
	}
	for _, b := range about.loads {
		l := b.Load.Load
		list = append(list, change{what: fmt.Sprintf("%s of half the power", l.Name), asked: true, do: func(u *undo) {
			keep(u, l)
			l.PowerW *= smallerShare
		}})
	}
	ohm := &s.d.Battery.ResistanceOhm
	return append(list, change{what: "a battery of half the internal resistance", asked: true, do: func(u *undo) {
		if ohm.Given() {
			keep(u, ohm)
			ohm.Value *= smallerShare
		}
	}})
}

// otherFeeds take fuses that stand where the battery does, and are fed through others,
// straight to the battery.
func (s *search) otherFeeds(about *concerned) (list []change) {
	from, ok := s.batteryRef()
	for _, l := range leads(s.d) {
		fuse, is := l.owner.(*design.Fuse)
		if !ok || !is || len(*l.feeds) != 1 || (*l.feeds)[0].From.Part == from.Part || fuse.At != s.d.Battery.At || !about.feeds(fuse) {
			continue
		}
		list = append(list, change{what: fmt.Sprintf("feed %s straight from the battery", fuse.Name),
			do: func(u *undo) { refeed(u, l.feeds, func(design.Ref) bool { return true }, from) }})
	}
	return list
}

// batteryRef is how the design names its battery; false when nothing does.
func (s *search) batteryRef() (design.Ref, bool) {
	for _, l := range leads(s.d) {
		for _, f := range *l.feeds {
			if _, is := f.From.Part.(*design.BatteryPart); is {
				return f.From, true
			}
		}
	}
	return design.Ref{}, false
}

// fewerRelays leave out a relay on the way: what it feeds hangs on what feeds it.
func (s *search) fewerRelays(about *concerned) (list []change) {
	for _, r := range s.d.Relays {
		if len(r.FedBy) != 1 || !about.feeds(r) {
			continue
		}
		list = append(list, change{what: fmt.Sprintf("one relay less: what %s feeds straight from %s, where it needs a switch of its own",
			r.Name, r.FedBy[0].From.Part.PartName()), do: func(u *undo) {
			for _, l := range leads(s.d) {
				refeed(u, l.feeds, func(from design.Ref) bool { return from.Part == design.Part(r) }, r.FedBy[0].From)
			}
		}})
	}
	return list
}

// refeed gives those feeds that hang on one thing another.
func refeed(u *undo, feeds *[]design.Feed, on func(design.Ref) bool, to design.Ref) {
	if !slices.ContainsFunc(*feeds, func(f design.Feed) bool { return on(f.From) }) {
		return
	}
	keep(u, feeds)
	*feeds = slices.Clone(*feeds)
	for i := range *feeds {
		if f := &(*feeds)[i]; on(f.From) {
			f.From = to
		}
	}
}

// feeds tells whether a part stands before one of the wires concerned.
func (c *concerned) feeds(part design.Part) bool {
	return slices.ContainsFunc(c.wires, func(x *circuit.Wire) bool { return x.From.Part.Source == part })
}

// trunk are the wires concerned that feed or bring back more than one load.
func (w *view) trunk(about *concerned) (list []*circuit.Wire) {
	for _, x := range about.wires {
		if x.Branch.Feeds() && len(w.v.c.BelowBranch(x.Branch).Loads) > 1 {
			list = append(list, x)
		}
	}
	return list
}

func wiresText(wires []*circuit.Wire) string {
	if len(wires) == 1 {
		return wires[0].Number
	}
	return fmt.Sprintf("%s to %s", wires[0].Number, wires[len(wires)-1].Number)
}

// thickerBy gives wires a size so many steps up, as far as a shop has it.
func (s *search) thickerBy(u *undo, wires []*circuit.Wire, steps int) {
	s.eachFeed(wires, func(_ *circuit.Wire, f *design.Feed) {
		if f.Wire.Type == nil || f.Wire.Size == nil {
			return
		}
		sizes := f.Wire.Type.ShopSizes()
		at := slices.IndexFunc(sizes, func(z *library.WireSize) bool { return z.AreaMm2 >= f.Wire.Size.AreaMm2*0.999 })
		if at < 0 {
			return
		}
		keep(u, &f.Wire)
		f.Wire.SizeAuto, f.Wire.Size = false, sizes[min(at+steps, len(sizes)-1)]
	})
}
