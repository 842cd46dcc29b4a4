package design

import (
	"fmt"
	"slices"
	"sort"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/library"

	"gopkg.in/yaml.v3"
)

// Charging is the engine-driven source. With FedBy its cable to the battery is part of the
// circuit; else it is at the battery's posts.
type Charging struct {
	Common
	Kind        *library.GeneratorType // nil = not said
	Senses      string                 // where its regulator senses: "battery" or "machine"; "" = battery
	FedBy       []Feed                 // the cable from its output towards the battery, seen from there as any feed
	Returns     []Feed                 // none = its case, over no resistance
	RegulatedV  Quantity
	Output      []OutputPoint // ascending by speed
	Curve       string        // what runs between the points: "straight" or "smooth"; "" = straight
	IdleRPM     Quantity
	CruiseRPM   Quantity
	HotDerating Quantity          // share of output lost when hot, 0..1
	Starter     *library.LoadType // of the engine; nil = not said
	// Feeds tells that parts are fed by it: it is at its own stud, from where they lead to the batteries.
	Feeds bool
}

// OutputPoint is what the charging system gives at an engine speed.
type OutputPoint struct {
	RPM      Quantity
	CurrentA Quantity

	inWatts bool // the design says a power at the regulated voltage
}

// Present tells whether the vehicle charges at all.
func (c Charging) Present() bool { return len(c.Output) > 0 }

// HotLost is the share of the output lost when hot: the design's, else the usual one of its
// kind, else none.
func (c *Charging) HotLost() float64 {
	if c.Kind != nil {
		return c.HotDerating.Or(c.Kind.HotLost)
	}
	return c.HotDerating.Or(0)
}

// Apart tells whether it is at a stud of its own and not at the battery's posts: the design says its
// cable, or what it feeds.
func (c *Charging) Apart() bool { return len(c.FedBy) > 0 || c.Feeds }

// SensesMachine tells of a regulator that holds its voltage at the machine: what the cable loses
// is missing at the battery.
func (c *Charging) SensesMachine() bool { return c.Senses == "machine" }

// LiveReason is why its cable may be live with the key off: it comes from the battery.
func (c *Charging) LiveReason() string {
	if r := c.Common.LiveReason(); r != "" {
		return r
	}
	if c.Feeds {
		return ""
	}
	return "the battery is at the end of its cable"
}

// Smooth tells whether a smooth curve runs through the points of the output.
func (c *Charging) Smooth() bool { return c.Curve == "smooth" }

// maxRPM is the highest engine speed taken, in revolutions per minute.
const maxRPM = 30_000

var chargingSection = section[Charging]{
	Section: Section{Name: "charging", Shape: KindRecord,
		Doc: "What the engine gives: a regulated voltage, up to a current that rises with its speed. It is at the battery's posts, unless " +
			"it is `fed by` the battery or a fuse there: its cable is then a wire as any, seen from the battery, which is what feeds a short in it. Where a diode stands between, as in an isolator, parts are " +
			"`fed by: charging` instead, and the first battery is `fed by` what leads to its post.",
		Example: "charging:\n  regulated: 14.3 V\n  output: {1300 rpm: 13 A, 2500 rpm: 22 A, 5000 rpm: 30 A}\n" +
			"  idle: 1300 rpm\n  cruise: 4000 rpm\n  kind: stator with shunt regulator\n"},
	keys: withCommon(append(append([]key[Charging]{
		quantityKey(Key{Name: "regulated", Unit: quantity.Voltage, Min: 5, Max: 64, Required: true,
			Doc: "voltage held where the regulator senses: at the battery's posts, unless `senses` says otherwise", Example: "14.3 V"},
			func(c *Charging) *Quantity { return &c.RegulatedV }),
		libraryKey(Key{Name: "kind", Library: "generators", Example: "alternator",
			Doc: "machine and regulator: a stator with a shunt or series regulator, or an alternator"},
			(*library.Library).Generator, func(c *Charging) **library.GeneratorType { return &c.Kind }),
		choiceKey(Key{Name: "senses", Choices: []string{"battery", "machine"}, Default: "battery", Example: "machine",
			Doc: "where the regulator senses: at the battery, by a lead of its own, or at the machine, so that the battery misses what the cable loses"},
			func(c *Charging) *string { return &c.Senses }),
		{Key: Key{Name: "output", Kind: KindCurve, Required: true, Example: "{1300 rpm: 13 A, 5000 rpm: 30 A}",
			Doc: "current by engine speed, over all speeds that the design uses; repeat the last current at a higher " +
				"speed where it no longer rises. A power, such as `180 W`, counts as the current that it is at the " +
				"regulated voltage"},
			read: func(r *reader, c *Charging, f field) { r.outputCurve(c, f) }},
		choiceKey(Key{Name: "curve", Choices: []string{"straight", "smooth"}, Default: "straight", Example: "smooth",
			Doc: "what runs between the points of `output`: straight lines promise no more than the points prove; " +
				"a smooth curve is mostly nearer to the machine, and higher"},
			func(c *Charging) *string { return &c.Curve }),
		quantityKey(Key{Name: "idle", Unit: quantity.Speed, Min: 1, Max: maxRPM, Required: true,
			Doc: "engine speed at idle"}, func(c *Charging) *Quantity { return &c.IdleRPM }),
		quantityKey(Key{Name: "cruise", Unit: quantity.Speed, Min: 1, Max: maxRPM, Required: true,
			Doc: "engine speed in normal use", Example: "4200 rpm"},
			func(c *Charging) *Quantity { return &c.CruiseRPM }),
		quantityKey(Key{Name: "hot derating", Unit: quantity.Share, Min: 0, Max: 0.9,
			Doc: "share of the output lost when hot. All results count with the hot output; only where more current is " +
				"the worse case does the cold one count: fault currents, the high source of worst cases and of the " +
				"bench test's bounds", Default: "that of its `kind`, else none", Example: "10 %"},
			func(c *Charging) *Quantity { return &c.HotDerating }),
		{Key: Key{Name: "starter", Kind: KindLibrary, Library: "loads", Default: "the library's that is usual for practice, voltage and battery", Example: "starter diesel 12 V",
			Doc: "the engine's starter, as the library has it, of a design that does not wire it itself: what a start takes"},
			read: (*reader).starter},
	}, feedKeys(func(c *Charging) *[]Feed { return &c.FedBy })...), caseKeys()...)...),
	finish: func(r *reader, c *Charging, f field) {
		if f.has["fed by"] {
			r.parts = append(r.parts, c)
		}
		r.later = append(r.later, func() { r.checkStud(c, f) })
		r.current = nil
		c.powersToCurrents()
		r.withinCurve(c, c.IdleRPM, "charging, idle")
		r.withinCurve(c, c.CruiseRPM, "charging, cruise")
	},
}

// checkStud holds what the charging system feeds against what the batteries are fed by.
func (r *reader) checkStud(c *Charging, f field) {
	switch {
	case !c.Apart() && f.has["returns to"]:
		r.report(r.pos(f.node), "charging: it has a return, but nothing that it is `fed by`, and feeds nothing", "`fed by` the battery or the fuse there, over its cable")
	case c.Feeds && !r.leadsToFirst():
		r.report(c.Pos, "charging feeds other parts, and nothing leads from it to the first battery", "`battery: {fed by: …}` naming what does, such as the fuse at its post")
	}
}

// leadsToFirst tells whether the charging system feeds the first battery, or a fuse on its post.
func (r *reader) leadsToFirst() bool {
	if slices.ContainsFunc(r.d.Battery.FedBy, r.fromCharging) {
		return true
	}
	return slices.ContainsFunc(r.d.Fuses, func(x *Fuse) bool {
		_, first := x.Post.(*BatteryPart)
		return first && slices.ContainsFunc(x.FedBy, r.fromCharging)
	})
}

// fromCharging tells of a feed that the charging system is at the beginning of, as far as its names are known:
// what is wrong with them is said already.
func (r *reader) fromCharging(f Feed) bool {
	seen := map[Part]bool{}
	for queue := []Part{f.From.Part}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		if at == Part(&r.d.Charging) {
			return true
		}
		if _, battery := at.(*Bank); seen[at] || battery {
			continue
		}
		seen[at] = true
		if own := Feeds(at); len(own) > 0 {
			if c := r.byFeeds[own[0]]; c != nil && len(*own[0]) == 0 {
				return true
			}
			for _, up := range *own[0] {
				queue = append(queue, up.From.Part)
			}
		}
	}
	return false
}

// checkFirst refuses what the first battery is fed by that does not lead from the charging system.
func (r *reader) checkFirst() {
	for _, f := range r.d.Battery.FedBy {
		if !r.fromCharging(f) {
			r.report(f.From.Pos, fmt.Sprintf("the first battery is fed by %s, to which nothing leads from the charging system", quoted(f.From.Text)),
				"a part behind one that is `fed by: charging`; a charger of its own is of a further battery")
		}
	}
}

func caseKeys() []key[Charging] {
	back := returnKeys(func(c *Charging) *[]Feed { return &c.Returns })
	back[0].Default = "its case, over no resistance"
	back[0].Doc = "where its negative side is joined to the rest by a cable: a ground or `battery negative`"
	return back
}

// starter reads the library's row of a starter.
func (r *reader) starter(c *Charging, f field) {
	libraryKey(Key{Library: "loads"}, (*library.Library).Load, func(c *Charging) **library.LoadType { return &c.Starter }).read(r, c, f)
	if c.Starter == nil || c.Starter.Starter {
		return
	}
	var names []string
	for _, l := range r.lib.Loads {
		if l.Starter {
			names = append(names, l.Name)
		}
	}
	r.unknown(r.pos(f.node), fmt.Sprintf("%s: %s does not start an engine", f, quoted(c.Starter.Name)), c.Starter.Name, names)
	c.Starter = nil
}

// The keys and values of an output curve.
var (
	curveRPM = Key{Kind: KindQuantity, Unit: quantity.Speed, Min: 0, Max: maxRPM}
	curveA   = Key{Kind: KindQuantity, Unit: quantity.Current, Min: 0, Max: 2000}
	curveW   = Key{Kind: KindQuantity, Unit: quantity.Power, Min: 0, Max: 100_000}
)

// outputCurve reads current by speed and sorts it by speed.
func (r *reader) outputCurve(c *Charging, f field) {
	if n := follow(f.node); n.Kind != yaml.MappingNode || len(n.Content) == 0 {
		r.report(r.pos(f.node), fmt.Sprintf("%s is %s", f, kindName(n)),
			"speeds and currents, such as {1300 rpm: 13 A, 5000 rpm: 30 A}")
		return
	}
	r.pairs(f.node, where{kind: f.String()}, fold, func(name, value *yaml.Node) {
		speed, okSpeed := r.quantity(field{where: f.where, key: f.key, node: name}, &curveRPM)
		out, inWatts := &curveA, isPower(value)
		if inWatts {
			out = &curveW
		}
		amps, okAmps := r.quantity(field{where: f.where, key: f.key, node: value}, out)
		if okSpeed && okAmps {
			c.Output = append(c.Output, OutputPoint{speed, amps, inWatts})
		}
	})
	sort.SliceStable(c.Output, func(i, j int) bool { return c.Output[i].RPM.Value < c.Output[j].RPM.Value })
	for i := 1; i < len(c.Output); i++ {
		a, b := c.Output[i-1].RPM, c.Output[i].RPM
		if a.Value == b.Value {
			r.add(problem.Problem{Pos: b.Pos, Also: &a.Pos,
				What: fmt.Sprintf("%s: the speed %s is given twice", f, quoted(b.Text))})
		}
	}
}

// isPower tells whether a value reads as a power.
func isPower(value *yaml.Node) bool {
	_, err := quantity.Parse(follow(value).Value, quantity.Power)
	return err == nil
}

// powersToCurrents turns powers of the curve into currents, once the regulated
// voltage is read; without one, which is reported, they count as nothing.
func (c *Charging) powersToCurrents() {
	for i := range c.Output {
		p := &c.Output[i]
		if !p.inWatts {
			continue
		}
		if p.CurrentA.Value > 0 && c.RegulatedV.Value > 0 {
			p.CurrentA.Value /= c.RegulatedV.Value
		} else {
			p.CurrentA.Value = 0
		}
	}
}

// withinCurve reports a speed that an output curve does not reach. Nothing is
// known of the output there, and drawing the curve on would be a guess.
func (r *reader) withinCurve(c *Charging, speed Quantity, what string) {
	curve := c.Output
	if !speed.Given() || len(curve) == 0 {
		return
	}
	first, last := curve[0].RPM, curve[len(curve)-1].RPM
	if speed.Value < first.Value || speed.Value > last.Value {
		r.add(problem.Problem{Pos: speed.Pos, Also: &first.Pos,
			What: fmt.Sprintf("%s: %s is beyond the output curve", what, quoted(speed.Text)),
			Expected: quantity.Plain(first.Value, quantity.Speed) + " to " +
				quantity.Plain(last.Value, quantity.Speed) + ", or a point of `output` at this speed"})
	}
}
