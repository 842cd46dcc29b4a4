package derivation

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/fault"
)

// shortOf is a short of a wire at one of its ends; nil where nothing feeds it.
func (b *book) shortOf(w *circuit.Wire, where fault.Where) *fault.Short {
	for _, sh := range b.r.Faulted().OfWire(w) {
		if sh.Where == where && sh.Fed && sh.Results[fault.Strong].CurrentA > traceA && sh.Results[fault.Weak].CurrentA > traceA {
			return sh
		}
	}
	return nil
}

// short is the current of a short in a state of the source.
func (b *book) short(sh *fault.Short, state int) *value {
	r := sh.Results[state]
	v := b.shortView(r.Seen.Net)
	label := "short " + sh.Lies(func(w *circuit.Wire) string { return w.Number })
	open, feed := v.seen(sh, r.Seen)
	const how = "all that its converter drives into a short"
	if r.Seen.BackOhm == 0 {
		return of(label, amps, r.CurrentA, "{} ÷ {}", open, feed).by(feed).orSolved(how)
	}
	back := v.backOhm(sh, r.Seen.BackOhm)
	return of(label, amps, r.CurrentA, "{} ÷ ({} + {})", open, feed, back).by(feed).orSolved(how)
}

// shortView is the network in which shorts are found.
func (b *book) shortView(n fault.Net) *view {
	v := b.viewOf(&solve.Solution{Circuit: b.c, Situation: b.d.Situations[0]}, b.r.Faulted().Options(n))
	v.shorted, v.net = true, n
	v.laws = nil
	return v
}

// seen is the open voltage at a short and what lies between it and the source.
func (v *view) seen(sh *fault.Short, s fault.Seen) (open, feed *value) {
	open = v.openV(s.OpenV)
	way, list := v.wayTo(sh, s)
	list = slices.Concat([]*value{v.sourceOhm()}, v.linkOhms(), list)
	total := 0.0
	for _, x := range list {
		total += x.v
	}
	const label = "source and way to the short"
	if v.d.HasBanks() && way && len(list) > 1 {
		seen := s.FeedOhm - (total - list[0].v)
		if seen > 0 {
			list[0] = solved("batteries, as seen from the post", ohms, seen, "solved together")
			return open, sum(label, ohms, s.FeedOhm, list...)
		}
	}
	if !way || !same(total, s.FeedOhm) {
		return open, solved(label, ohms, s.FeedOhm, "solved together: more than one way, or more than one battery, feeds it")
	}
	return open, besideIt(sum(label, ohms, s.FeedOhm, list...), total)
}

// wayTo are the resistances from the post to a short and, where the network has the return
// too, back; false where no way leads there from the post.
func (v *view) wayTo(sh *fault.Short, s fault.Seen) (whole bool, list []*value) {
	add := func(p circuit.Path) bool {
		for _, b := range p.Branches {
			list = append(list, v.ohm(b))
		}
		return p.Whole
	}
	if sh.Where == fault.Inside {
		hot, back := sh.Across()
		whole = add(v.c.MainFeed(hot))
		return add(v.c.MainReturn(back, v.c.Home(hot))) && whole, list
	}
	whole = add(v.c.MainFeed(sh.Wire.From.Node))
	switch sh.Where {
	case fault.Between:
		list = append(list, v.alongWire(sh))
	case fault.FarEnd:
		list = append(list, v.ohm(sh.Wire.Branch))
		if hot, back, ok := sh.Wire.To.Part.Draws(); ok && s.Net.State == fault.Weak && hot == sh.Wire.To && s.BackOhm == 0 {
			add(v.c.MainReturn(back.Node, v.c.Home(hot.Node)))
		}
	}
	return whole, list
}

// alongWire is the resistance of a wire up to a short part-way along it: its share by length.
func (v *view) alongWire(sh *fault.Short) *value {
	whole := v.ohm(sh.Wire.Branch)
	return of("up to "+sh.At+" on "+sh.Wire.Number, ohms, whole.v*sh.AlongM/sh.Wire.LengthM, "{} × {} ÷ {}", whole,
		solved("length up to there", metres, sh.AlongM, "along the runs, slack and ends shared out"), lengthOf(sh.Wire)).by(whole)
}

// sameOhm is more than relay coils, and what keeps the source's side of the network definite,
// take off a resistance beside which they lie.
const sameOhm = 5e-3

// same tells whether resistances add up to a solved one.
func same(total, ohm float64) bool { return math.Abs(total-ohm) <= sameOhm*ohm }

// besideIt adds to a sum of resistances what lies beside them.
func besideIt(x *value, total float64) *value {
	if less := total - x.v; math.Abs(less) > 1e-9*total {
		x.from = append(x.from, solved("less by relay coils beside it", ohms, less, "solved together"))
		x.formula += " − {}"
	}
	return x
}

// openV is the voltage at a short before it is there: that of the source, but for what relay
// coils take on the way.
func (v *view) openV(open float64) *value {
	rest := v.sourceV(open)
	switch less := rest.v - open; {
	case math.Abs(less) <= 1e-9*open:
		return rest
	case math.Abs(less) < coilShare*open:
		return of("open voltage at the short", volts, open, "{} − {}", rest, solved("less by relay coils", volts, less, "solved together"))
	}
	return solved("open voltage at the short", volts, open, "solved together: more than one battery feeds it, or a diode lies before it")
}

// coilShare is more than relay coils take of a source's voltage.
const coilShare = 0.01

// sourceV is the source's voltage: rest voltage, charging added.
func (v *view) sourceV(open float64) *value {
	bat := v.batteryBranch()
	switch {
	case v.net.Stiff:
		return v.regulatedV(v.opt.BatteryV)
	case bat == nil:
		return solved("open voltage", volts, open, "")
	case v.net.State == fault.Weak:
		x := v.restV(bat, v.opt.BatteryV)
		x.label = "run-down battery at rest, 20 % charged"
		return x
	}
	rest := v.restV(bat, v.opt.BatteryV)
	rest.label = "open voltage of battery and charging"
	if v.d.Charging.Present() {
		rest.source = "rest voltage, and the charging current times the battery's resistance; " + rest.source
	}
	return rest
}

// linkOhms are the resistances of the links of batteries in series.
func (v *view) linkOhms() (list []*value) {
	if bat := v.batteryBranch(); bat != nil && bat.Part != nil && !v.net.Stiff { // which stands at the posts
		for _, w := range bat.Part.LinkWires() {
			list = append(list, v.ohm(w.Branch))
		}
	}
	return list
}

func (v *view) sourceOhm() *value {
	bat := v.batteryBranch()
	if v.net.Stiff || bat == nil {
		return assumed("the regulator's own", ohms, v.opt.BatteryOhm, "taken small: the voltage that the design gives holds at the posts")
	}
	if v.kept == nil {
		v.kept = v.innerOhm(bat, v.opt.BatteryOhm)
	}
	return v.kept
}

// backOhm is the return that the network does not hold.
func (v *view) backOhm(sh *fault.Short, ohm float64) *value {
	for _, g := range v.d.Grounds {
		if g.Kind == design.FrameStud {
			if g.FrameOhm.Given() && g.FrameOhm.Value == ohm {
				return given("back through the frame", ohms, g.FrameOhm)
			}
			if !g.FrameOhm.Given() && ohm == circuit.FrameOhm {
				return assumed("back through the frame", ohms, ohm, "frame and its two bolted joints, MIL-STD-464 from memory")
			}
		}
	}
	var list []*value
	total := 0.0
	for _, w := range v.c.MainFeed(sh.Wire.From.Node).Wires() {
		list, total = append(list, v.ohm(w.Branch)), total+v.ohm(w.Branch).v
	}
	switch sh.Where {
	case fault.FarEnd:
		list, total = append(list, v.ohm(sh.Wire.Branch)), total+v.ohm(sh.Wire.Branch).v
	case fault.Between:
		x := v.alongWire(sh)
		list, total = append(list, x), total+x.v
	}
	if len(list) == 0 || !same(total, ohm) {
		return solved("return as long and as thick as the feed", ohms, ohm, "no frame: taken like the feed")
	}
	if len(list) == 1 {
		return list[0]
	}
	return besideIt(sum("return as long and as thick as the feed", ohms, ohm, list...), total)
}

// shortTree explains a prospective short: the least, which has to open the fuse, or the
// greatest, which it has to break.
func (b *book) shortTree(w *circuit.Wire, least bool) *Tree {
	t := ofWire(w)
	far, near := b.shortOf(w, fault.FarEnd), b.shortOf(w, fault.NearEnd)
	sh, state := far, fault.Weak
	if !least {
		sh, state = near, fault.Strong
	}
	r := sh.Results[state]
	t.State = map[int]string{fault.Weak: "run-down battery, hot wires, aged contacts", fault.Strong: "full battery, cold wires, new contacts"}[state]
	t.finish(b.short(sh, state), nil)
	t.Answer = []string{fmt.Sprintf("A short at the %s of %s draws %s: %s.", sh.Where, wireWords(w), t.Root.Value, t.State)}
	switch {
	case r.Device == nil || r.Bare:
		t.Answer = append(t.Answer, "No fuse stands before it.")
	case math.IsInf(r.SlowS, 1):
		t.Answer = append(t.Answer, fmt.Sprintf("%s may never open at that.", r.Device.Fuse.Ref))
	default:
		t.Answer = append(t.Answer, fmt.Sprintf("%s opens within %s at the latest.", deviceName(r.Device), quantity.Format(r.SlowS, quantity.Duration)))
	}
	t.Next = []string{fmt.Sprintf("why \"greatest short at %s\"", w.Number)}
	if !least {
		t.Next = []string{fmt.Sprintf("why \"prospective short at %s\"", w.Number)}
	}
	return t
}

func deviceName(b *circuit.Branch) string {
	if b.Fuse.Ref != "" {
		return b.Fuse.Ref
	}
	return "the fuse of " + b.Part.Name
}

// openTree explains how long a fuse takes to open at the weakest short behind it.
func (b *book) openTree(br *circuit.Branch) *Tree {
	t := ofFuse(br)
	last := b.latest(br)
	sh, state, r := last.Short, last.State, last.Result()
	lies := sh.Lies(func(w *circuit.Wire) string { return w.Number })
	draws := b.short(sh, state)
	if math.Abs(draws.v-r.DeviceA) > 1e-9*r.DeviceA {
		draws = solved("through "+deviceName(br), amps, r.DeviceA, "solved together: not all of the short passes it")
	}
	dev, _ := b.r.Faulted().Device(br)
	read, ratingA, ok := dev.LatestEdge(r.DeviceA)
	rating := b.rating(br)
	if ok {
		rating = b.coldRating(br, ratingA)
	}
	multiple := of("times its rating", plain, read.M, "{} ÷ {}", draws, rating)
	if !ok {
		multiple = of("times its rating", plain, r.DeviceA/rating.v, "{} ÷ {}", draws, rating)
		t.finish(multiple, nil)
		t.Answer = []string{fmt.Sprintf("%s may never open at the weakest short behind it, %s %s.", fuseWords(br),
			quantity.Format(r.DeviceA, quantity.Current), lies), "No latest opening is published below " + sure(dev) + "."}
		return t
	}
	t.State = map[int]string{fault.Weak: "run-down battery, hot wires, aged contacts", fault.Strong: "full battery, cold wires, new contacts"}[state]
	root := opening(dev, read, multiple)
	if len(r.Before) > 0 { // by the shares of its time that it has spent at each current
		left := solved("share of its time left then", plain, r.LastS/read.Seconds(), "the rest has passed at what it carried before")
		root = sum("latest opening, of the last to open", seconds, r.SlowS,
			solved("until "+openers(r.Before)+" opened", seconds, r.SlowS-r.LastS, "each by its share of the short"),
			of("after that", seconds, r.LastS, "{} × {}", left, root))
	}
	t.finish(root, nil)
	t.Answer = []string{fmt.Sprintf("%s opens within %s at the weakest short behind it: %s %s.", fuseWords(br), t.Root.Value,
		quantity.Format(r.DeviceA, quantity.Current), lies),
		fmt.Sprintf("That is %s times its rating.", quantity.Digits(read.M, 3))}
	if len(r.Before) > 0 {
		t.Answer = append(t.Answer, fmt.Sprintf("It carries that when %s opened.", openers(r.Before)))
	}
	if r.Out != nil {
		t.Answer = append(t.Answer, fmt.Sprintf("With %s out from the start.", deviceName(r.Out)))
	}
	return t
}

// openers names devices that have opened.
func openers(devices []*circuit.Branch) string {
	var names []string
	for _, d := range devices {
		names = append(names, deviceName(d))
	}
	return wording.And(names) + map[bool]string{true: " has", false: " have"}[len(names) == 1]
}

// coldRating is the rating that latest openings count from: higher in a cold place.
func (b *book) coldRating(br *circuit.Branch, ratingA float64) *value {
	if x := b.rating(br); x.v == ratingA {
		return x
	}
	return solved("rating in the cold", amps, ratingA, "by the maker's table of ambients")
}

func sure(d fusing.Device) string {
	if a := d.SureA(); a > 0 {
		return quantity.Format(a, quantity.Current)
	}
	return "any current"
}

// opening is the latest opening as it is read from the published band.
func opening(d fusing.Device, r fusing.Reading, multiple *value) *value {
	point := func(m, s float64) (mult, secs *value) {
		for _, p := range d.Type.BandFor(d.Rating.RatingA) {
			if p.Multiple == m {
				return row("published multiple", plain, m, p.Source), row(fmt.Sprintf("latest at %s times", text0(m)), seconds, s, p.Source)
			}
		}
		return solved("published multiple", plain, m, ""), solved("latest there", seconds, s, "")
	}
	const label = "latest opening"
	m1, s1 := point(r.M1, r.S1)
	switch {
	case r.M2 == 0:
		return of(label+", with the last point's I²t", seconds, r.Seconds(), "{} × ({} ÷ {})²", s1, m1, multiple).by(s1)
	case r.M1 == r.M2:
		return s1
	}
	m2, s2 := point(r.M2, r.S2)
	return of(label+", between two points", seconds, r.Seconds(), "{} × ({} ÷ {})^(ln({} ÷ {}) ÷ ln({} ÷ {}))", s1, multiple, m1, s2, s1, m2, m1).by(s1)
}
