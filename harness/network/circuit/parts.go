package circuit

import (
	"cmp"
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

// builder puts a circuit together.
type builder struct {
	c        *Circuit
	lib      *library.Library
	parts    map[design.Part]*Part
	battery  *Part
	problems problem.List

	drafts  []draft // wires in design order, before they are numbered
	crimps  map[crimp]*library.Terminal
	colours map[string]design.Colour // by number of a wire, what the design holds

	inlinesAt map[*design.Place][]*Inline
}

// addParts makes every part with its terminals and inner branches, in the
// order sources, vehicle, taps, fuses, relays, blocks, switches, diodes, resistors, chargers, loads, grounds,
// splices, connectors, and in design order within each.
func (b *builder) addParts() {
	d := b.c.Design
	b.addBattery()
	for _, x := range d.Batteries {
		b.addBank(x)
	}
	if d.Charging.Present() {
		b.addGenerator()
	}
	if len(d.VehicleLoads) > 0 {
		b.addVehicleLoads()
	}
	for _, t := range d.Taps {
		b.addTap(t)
	}
	for _, f := range d.Fuses {
		b.addFuse(f)
	}
	for _, half := range []bool{false, true} { // of a case the half with the studs first
		for _, r := range d.Relays {
			if (r.Half != nil) == half {
				b.addRelay(r)
			}
		}
	}
	for _, bl := range d.Blocks {
		b.addBlock(bl)
	}
	for _, s := range d.Switches {
		b.addSwitch(s)
	}
	for _, x := range d.Diodes {
		b.addDiode(x)
	}
	for _, x := range d.Resistors {
		p := b.part(Resistor, x, &x.Common)
		b.branch(p, ResistorBranch, b.terminal(p, "in", "", nil).Node, b.terminal(p, "out", "", nil).Node, x.Ohm.Value)
	}
	for _, x := range d.Chargers {
		b.addCharger(x)
	}
	for _, l := range d.Loads {
		b.addLoad(l)
	}
	b.addStrings()
	for _, g := range d.Grounds {
		b.addGround(g)
	}
	for _, s := range d.Splices {
		b.terminal(b.part(Splice, s, &s.Common), "1", "", nil)
	}
	b.addConnectors()
}

// part adds a part of the design.
func (b *builder) part(kind Kind, src design.Part, c *design.Common) *Part {
	p := &Part{Index: len(b.c.Parts), Kind: kind, Name: c.Name, Label: c.Label, Place: c.At,
		Pos: c.Pos, Source: src}
	if p.Label == "" {
		p.Label = p.Name
	}
	if _, known := partKinds[kind]; !known {
		b.report(c.Pos, fmt.Sprintf("nothing is known of parts of kind %q", kind), "a kind with a row in package circuit")
	}
	b.c.Parts = append(b.c.Parts, p)
	if src != nil {
		b.parts[src], p.InReturn, p.Fitted = p, design.StandsInReturn(src), kind != Tap && design.Fitted(src)
	}
	return p
}

// addBattery makes nodes 0 (negative) and 1 (positive).
func (b *builder) addBattery() {
	bat := &b.c.Design.Battery
	common := &design.Common{Name: "battery", At: bat.At, Pos: bat.Pos}
	p := b.part(Battery, nil, common)
	if p.Source = bat.Post; bat.Post == nil { // put together by hand
		p.Source = &design.BatteryPart{Common: *common, Store: bat}
	}
	minus := b.node("")
	plus := b.terminal(p, "+", "", nil)
	b.terminal(p, "-", "", minus)
	b.battery = p
	b.addCells(p, bat, plus.Node, minus)
}

// addBank makes a further battery; its negative post is the first one's unless a cable
// joins them.
func (b *builder) addBank(x *design.Bank) {
	p := b.part(Bank, x, &x.Common)
	plus := b.terminal(p, "+", "", nil)
	minus := b.c.Nodes[0]
	if len(x.Returns) > 0 {
		minus = b.node("")
	}
	b.terminal(p, "-", "", minus)
	b.addCells(p, &x.Store, plus.Node, minus)
}

// addCells makes what drives a battery between its posts. Batteries in series are one branch at
// the positive post, behind which their links follow one another to the negative one: in which
// order a string's volts and ohms stand, nothing outside it can tell, and nothing is fed from between.
func (b *builder) addCells(p *Part, bat *design.Battery, plus, minus *Node) {
	at := minus
	if len(bat.Links) > 0 {
		at = b.node("")
	}
	ohm, assumed := batteryOhm(bat, b.c.Design.NominalV())
	b.branch(p, BatteryBranch, plus, at, ohm).Assumed = assumed
	for i, link := range bat.Links {
		upper := b.terminal(p, fmt.Sprintf("%d-", i+1), "", at)
		at = minus
		if i < len(bat.Links)-1 {
			at = b.node("")
		}
		b.drafts = append(b.drafts, draft{from: b.terminal(p, fmt.Sprintf("%d+", i+2), "", at), to: upper, role: LinkWire, feed: link})
	}
}

// batteryOhm is the internal resistance given, or the chemistry's
// for the capacity; batteries of other voltages are so many
// 12 V batteries, or parts of one, in series.
func batteryOhm(bat *design.Battery, systemV float64) (ohm float64, assumed string) {
	inSeries := systemV / 12
	switch {
	case bat.ResistanceOhm.Given():
		return bat.GivenOhm(), ""
	case bat.Chemistry != nil && bat.Chemistry.OhmAh > 0 && bat.CapacityAh.Value > 0:
		return bat.Chemistry.Ohm(bat.CapacityAh.Value) * inSeries, ""
	}
	return BatteryOhm * inSeries, "internal resistance of a mid-sized battery"
}

// addGenerator puts the charging system across the battery's posts, or at the end of its cable
// where the design says that.
func (b *builder) addGenerator() {
	ch := &b.c.Design.Charging
	plus, minus := b.c.Nodes[1], b.c.Nodes[0]
	var p *Part
	if ch.Apart() {
		p, plus = b.part(Generator, ch, &ch.Common), nil
		if len(ch.Returns) > 0 {
			minus = nil
		}
	} else {
		p = b.part(Generator, nil, &design.Common{Name: "charging", Pos: ch.Pos})
	}
	out, back := b.terminal(p, "B+", "", plus), b.terminal(p, "B-", "", minus)
	b.branch(p, ChargerBranch, out.Node, back.Node, ChargerOhm).Assumed = "regulation at the battery posts"
}

// addVehicleLoads puts what the machine draws across the battery's posts: how
// the factory loom is wired is not known, so its drop counts as theirs. They
// are taken as constant power, which asks the most of a weak battery.
func (b *builder) addVehicleLoads() {
	d := b.c.Design
	p := b.part(VehicleLoads, nil, &design.Common{Name: "vehicle loads", Pos: d.VehicleLoads[0].Pos})
	plus := b.terminal(p, "+", "", b.c.Nodes[1])
	minus := b.terminal(p, "-", "", b.c.Nodes[0])
	for _, v := range d.VehicleLoads {
		b.branch(p, LoadBranch, plus.Node, minus.Node, 0).Load = &LoadSpec{
			Behaves: design.ConstantPower, PowerW: d.VehicleW(v), RatedV: d.VehicleV(),
			Duty: v.Duty.Or(1), Vehicle: v,
		}
	}
}

// addTap makes the key contact and, when the design gives it, the factory fuse
// between the battery and the tap. A tap whose fuse the design leaves out has
// none that a review could count on.
func (b *builder) addTap(t *design.Tap) {
	p := b.part(Tap, t, &t.Common)
	out := b.terminal(p, "out", "", nil)
	inner := out.Node
	if t.FuseA.Given() {
		inner = b.node("")
	}
	key := b.branch(p, ContactBranch, b.c.Nodes[1], inner, TapOhm)
	key.Closer = &Closer{Key: t.Hot, KeyOff: keyOff(b.c.Design, t.Hot)}
	key.Assumed = "factory wiring and ignition contact"
	if t.FuseA.Given() {
		rating := &library.FuseRating{RatingA: t.FuseA.Value}
		f := b.branch(p, FuseBranch, inner, out.Node, 0)
		f.Ohm, f.Assumed = FuseOhm(b.lib, rating)
		f.Fuse = &FuseSpec{Rating: rating, Factory: true, Pos: t.Pos}
	}
}

func (b *builder) addFuse(f *design.Fuse) {
	p := b.part(Fuse, f, &f.Common)
	end := ""
	if f.Type != nil {
		end = f.Type.End(f.Rating)
	}
	var in, out *Terminal
	post := b.postNode(f.Post)
	if f.AtPost() {
		in, out = b.terminal(p, "in", end, post), b.terminal(p, "out", end, nil)
	} else {
		in, out = b.terminal(p, "in", end, nil), b.terminal(p, "out", end, post)
	}
	br := b.branch(p, FuseBranch, in.Node, out.Node, 0)
	br.Ohm, br.Assumed = FuseOhm(b.lib, f.Rating)
	br.Fuse = &FuseSpec{Type: f.Type, Rating: f.Rating, Auto: f.RatingAuto, Pos: f.Pos}
}

// postNode is the node of a battery's positive post; nil for none.
func (b *builder) postNode(battery design.Part) *Node {
	switch battery.(type) {
	case nil:
		return nil
	case *design.BatteryPart:
		return b.battery.Terminal("+").Node
	}
	return b.parts[battery].Terminal("+").Node
}

// FuseOhm is the cold resistance of a fuse, else its drop over its rating.
func FuseOhm(lib *library.Library, r *library.FuseRating) (ohm float64, assumed string) {
	switch {
	case r == nil || r.RatingA <= 0:
		return contactOhm(lib, "block way", WayA), "fuse of unknown rating"
	case r.ColdOhm > 0:
		return r.ColdOhm, ""
	case r.DropV > 0:
		return r.DropV / r.RatingA, ""
	}
	return contactOhm(lib, "fuse", r.RatingA), "0.1 V at the fuse's rating"
}

// contactOhm is what a kind of part loses at its rating, over the rating; of a
// library without a row for it, by the built-in one.
func contactOhm(lib *library.Library, kind string, ratedA float64) float64 {
	drop := lib.ContactDrop(kind)
	if drop == nil {
		drop = library.Default().ContactDrop(kind)
	}
	return drop.DropV / ratedA
}

func (b *builder) addRelay(r *design.Relay) {
	p := b.part(Relay, r, &r.Common)
	form := r.Form
	if form == nil {
		form = &library.RelayForm{}
	}
	at := map[string]*Node{}
	for _, name := range []string{"30", "87", "87a", "86", "85"} {
		if name == "87a" && !form.Changeover {
			continue
		}
		if case1 := b.parts[r.Half]; r.Half != nil && case1 != nil && (name == "87" || name == "87a") {
			at[name] = case1.Terminal(name).Node
			continue
		}
		var shared *Node // what senses the voltage of its feed has no terminal of its own for it
		if form.Senses && name == "86" {
			shared = at["30"]
		}
		at[name] = b.terminal(p, name, form.End(name), shared).Node
	}
	// A to B is the way of the current: of what stands in a return from the load, of what
	// rests on one from the feed at 87.
	contact := func(out string, inward bool) *Branch {
		from, to := at["30"], at[out]
		if inward {
			from, to = to, from
		}
		return b.branch(p, ContactBranch, from, to, form.ContactOhm)
	}
	make87 := contact("87", p.InReturn || r.Rests)
	var break87a *Branch
	if form.Changeover {
		break87a = contact("87a", p.InReturn)
	}
	coil := b.branch(p, ResistorBranch, at["86"], at["85"], form.CoilOhm)
	make87.Closer = &Closer{Coil: coil}
	if break87a != nil {
		break87a.Closer = &Closer{Break: coil}
	}
	if r.Latches {
		make87.Closer.Latch = r
		if break87a != nil {
			break87a.Closer.Latch = r
		}
	}
	if r.Coil.Suppressed == "resistor" {
		sup := b.branch(p, ResistorBranch, at["86"], at["85"], SuppressorOhm*math.Pow(form.CoilV/12, 2))
		sup.Assumed = "680 Ω at 12 V"
	}
}

// addBlock makes the bus and a branch for each way that carries anything: the
// fuse, or a plain link where the design says that a way has none.
func (b *builder) addBlock(bl *design.Block) {
	p := b.part(Block, bl, &bl.Common)
	in, out, way, assumed := "", "", contactOhm(b.lib, "block way", max(bl.WayLimitA(), WayA)), "contact of a way"
	if bl.Type != nil {
		in, out, way, assumed = bl.Type.Mounting, bl.Type.WayEnd, bl.Type.ContactOhm, ""
	}
	bus := b.terminal(p, "in", in, nil)
	for _, w := range bl.Ways {
		t := b.terminal(p, w.Number, out, nil)
		if bl.Type == nil && bl.WayLimitA() > WayA {
			t.Kind = BusEnd // more than clips of blades bear: a stud
		}
		switch {
		case w.Fuse != nil:
			br := b.branch(p, FuseBranch, bus.Node, t.Node, 0)
			br.Ohm, br.Assumed = FuseOhm(b.lib, w.Fuse)
			br.Ohm += way
			br.Assumed = either(br.Assumed, assumed)
			br.Fuse = &FuseSpec{Type: w.FuseType, Rating: w.Fuse, Auto: w.FuseAuto, Pos: w.Pos}
		case !w.Spare:
			b.branch(p, ResistorBranch, bus.Node, t.Node, way).Assumed = assumed
		}
	}
}

func either(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

func (b *builder) addSwitch(s *design.Switch) {
	p := b.part(Switch, s, &s.Common)
	end, ohm, assumed := "", contactOhm(b.lib, "switch", s.RatingA.Or(SwitchA)), "contact of a switch"
	if s.Type != nil {
		end, ohm, assumed = s.Type.End, s.Type.ContactOhm, ""
	}
	end = b.plug(p, &s.Plugged, end)
	if s.Positions != nil {
		common := "in"
		if p.InReturn { // A to B is the way of the current, from the loads
			common = "out"
		}
		pole := b.terminal(p, common, end, nil)
		for _, output := range s.Outputs() {
			from, to := pole.Node, b.terminal(p, output, end, nil).Node
			if p.InReturn {
				from, to = to, from
			}
			br := b.branch(p, ContactBranch, from, to, ohm)
			br.Closer, br.Assumed = &Closer{Switch: s, Output: output}, assumed
		}
		return
	}
	in := b.terminal(p, "in", end, nil)
	out := b.terminal(p, "out", end, nil)
	if s.Type != nil && s.Plug == nil {
		in.Mark, out.Mark = s.Type.InMark, s.Type.OutMark
	}
	br := b.branch(p, ContactBranch, in.Node, out.Node, ohm)
	br.Closer, br.Assumed = &Closer{Switch: s}, assumed
	if s.KeyOperated && s.LiveReason() == "" { // else it is a lock beside the key
		br.Closer = &Closer{Key: design.WhenKey}
	}
}

func (b *builder) addDiode(x *design.Diode) {
	p := b.part(Diode, x, &x.Common)
	in := b.terminal(p, "in", x.Type.End, nil)
	for _, name := range x.Outputs() {
		out := b.terminal(p, cmp.Or(name, "out"), x.Type.End, nil)
		b.branch(p, DiodeBranch, in.Node, out.Node, x.Type.SlopeOhm()).Diode = x
	}
}

// addLoad makes the load and, when it has a switch of its own or a standby
// draw, the contacts that say which of its two currents flows.
func (b *builder) addLoad(l *design.Load) {
	p := b.part(Load, l, &l.Common)
	end := ""
	if l.Type != nil {
		end = l.Type.End
	}
	end = b.plug(p, &l.Plugged, end)
	plus := b.terminal(p, "+", end, nil)
	minus := b.terminal(p, "-", end, nil)
	if end == "" && l.Type != nil {
		plus.LeadMm2 = b.leadMm2(l.Type.End)
		minus.LeadMm2 = plus.LeadMm2
	}
	ratedV := l.RatedV
	if ratedV <= 0 {
		ratedV = b.c.Design.NominalOf(l)
	}
	inlet := b.ownLead(p, l, plus.Node)
	from := inlet
	if HasOwnSwitch(l) {
		from = b.ownContact(p, inlet, &Closer{OwnSwitch: l})
	}
	b.branch(p, LoadBranch, from, minus.Node, 0).Load = &LoadSpec{Behaves: l.Behaves,
		PowerW: l.PowerW, RatedV: ratedV, Duty: l.Duty.Or(1), Load: l, Reverses: l.Reverses()}
	if l.StandbyA.Value > 0 {
		from = b.ownContact(p, inlet, &Closer{Standby: l})
		b.branch(p, LoadBranch, from, minus.Node, 0).Load = &LoadSpec{Behaves: design.Resistor,
			PowerW: l.StandbyA.Value * ratedV, RatedV: ratedV, Duty: 1, Load: l, Standby: true}
	}
}

// ownLead is the lead that an accessory comes with, both conductors in one, of copper as warm
// as its place; it gives the node behind it. Without a length there is none to count.
func (b *builder) ownLead(p *Part, l *design.Load, from *Node) *Node {
	if !l.Lead.AreaMm2.Given() || !l.Lead.LengthM.Given() {
		return from
	}
	inner := b.node("")
	b.branch(p, ResistorBranch, from, inner, 2*l.Lead.LengthM.Value*conductor.OhmPerM(l.Lead.AreaMm2.Value, p.AmbientC()))
	return inner
}

// HasOwnSwitch tells whether a load draws its power only when a situation says
// that it is on: it has a switch of its own, or sleeps on a standby draw.
func HasOwnSwitch(l *design.Load) bool { return l.OwnSwitch || l.StandbyA.Value > 0 }

func (b *builder) ownContact(p *Part, from *Node, closer *Closer) *Node {
	inner := b.node("")
	br := b.branch(p, ContactBranch, from, inner, OwnSwitchOhm)
	br.Closer, br.Assumed = closer, "switch inside the accessory"
	return inner
}

func (b *builder) addGround(g *design.Ground) {
	p := b.part(Ground, g, &g.Common)
	t := b.terminal(p, "31", "", nil)
	if g.Kind != design.FrameStud || g.OnStrapAlone() {
		return
	}
	br := b.branch(p, ResistorBranch, t.Node, b.c.Nodes[0], g.FrameOhm.Or(FrameOhm))
	if !g.FrameOhm.Given() {
		br.Assumed = "frame and its two bolted joints"
	}
}
