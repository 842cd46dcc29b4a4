package design

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/library"

	"gopkg.in/yaml.v3"
)

// Charger charges a battery: from another battery, from a solar panel or from shore power.
type Charger struct {
	Common
	Type *library.ChargerType
	// TypeAuto tells that the type is left to package sizing; until then the least that could be meant stands in.
	TypeAuto bool
	PanelW   Quantity // rated power of the panels on it
	OutputV  Quantity // held at what it charges; not given = its type's
	LeastMm2 Quantity // thinnest wire that its maker asks for; not given = its type's
	FedBy    []Feed   // of one that another battery feeds
	Returns  []Feed   // none = over no resistance to the negative post of what it charges
	// Engine is what one that the engine drives gives, beside `charging`: kind, output by speed, derating.
	Engine Charging
	// Input is what it draws: at its input, or as its own draw from what it charges.
	Input *Load
}

// LiveReason is why it may be live with the key off: a charger starts by the voltage at its input.
func (x *Charger) LiveReason() string {
	if r := x.Common.LiveReason(); r != "" || !x.FromBattery() || x.Converts() {
		return r
	}
	return "it starts by the voltage at its input"
}

// Converts tells of a converter: it feeds loads of its own voltage, and charges nothing.
func (x *Charger) Converts() bool { return x.Type != nil && x.Type.InputV > 0 }

// FromBattery tells of one that another battery feeds.
func (x *Charger) FromBattery() bool { return x.Type != nil && x.Type.From == "battery" }

// FromEngine tells of a second alternator: it gives while the engine runs, by its speed.
func (x *Charger) FromEngine() bool { return x.Type != nil && x.Type.From == "engine" }

// HeldV is the voltage that it holds at its output.
func (x *Charger) HeldV() float64 { return x.OutputV.Or(x.Type.OutV) }

// Gives is the share of its power that its source has in a situation; of the engine whether it runs.
func (x *Charger) Gives(s *Situation) float64 {
	switch x.Type.From {
	case "panel":
		return s.Sun
	case "mains":
		if !s.Shore {
			return 0
		}
	case "engine":
		if s.Key == KeyOff || s.EngineRPM == 0 {
			return 0
		}
	}
	return 1
}

var chargerSection = section[Charger]{
	Section: Section{Name: "charger", Shape: KindNamed,
		Doc: "What charges a battery beside `charging`: a DC-DC charger `fed by` the start battery, a solar panel's controller, a shore " +
			"charger, a second alternator. The battery is `fed by` its name, over the fuse at that battery. A DC-DC charger takes constant power, from the voltage at " +
			"its input at which it starts (the alternator charges) on, and takes less rather than pull its input below that at which it stops. Panels and their leads, and the mains, " +
			"are no part of the harness: in which situations they give, these say (`sun`, `shore`); a second alternator gives when the engine runs, by its speed. A converter (`24 V to 12 V converter 20 A`) charges " +
			"nothing: what is `fed by` it, over fuses or not, has its voltage, gets no more than its rating, and is not fed by anything else too; a " +
			"relay form or load that the library has for several voltages is taken for that one.",
		Example: "chargers:\n  booster: {type: DC-DC charger 30 A, at: locker, fed by: start end, returns to: house negative}\n" +
			"  roof: {type: MPPT controller 20 A, panel: 180 W, at: locker, returns to: house negative}\n" +
			"  shore: {type: shore charger 20 A, at: locker, returns to: house negative}\n" +
			"  port: {type: alternator 90 A, output by speed: {800 rpm: 25 A, 3000 rpm: 85 A}, at: engine}\n" +
			"batteries:\n  house: {chemistry: AGM, capacity: 110 Ah, at: locker, fed by: [booster end, roof end, shore end, port end]}\n" +
			"fuses:\n  booster end: {type: marine strip, rating: 50 A, at: locker, fed by: booster}\n"},
	keys: withCommon(append(append([]key[Charger]{
		orAuto(rowKey(Key{Name: "type", Library: "chargers", Required: true, Example: "DC-DC charger 30 A",
			Doc: "charger of the library: what it takes its power from, rating, voltages, efficiency; `auto` is chosen by sizing: one with " +
				"a `panel` tracks it, one that is `fed by` something is a DC-DC charger, another a shore charger; a converter is named"},
			func(r *reader, name string) *library.ChargerType { return r.lib.ChargerFor(name, r.d.SystemV.Value) },
			func(x *Charger) **library.ChargerType { return &x.Type }), func(x *Charger) { x.TypeAuto = true }),
		quantityKey(Key{Name: "panel", Unit: quantity.Power, Min: 1, Max: 100_000, Example: "180 W",
			Doc: "rated power of the panels on a solar controller, together"}, func(x *Charger) *Quantity { return &x.PanelW }),
		quantityKey(Key{Name: "output", Unit: quantity.Voltage, Min: 5, Max: 64, Default: "the type's", Example: "14.2 V",
			Doc: "voltage that it is set to hold at the battery it charges, or at its output as a converter"}, func(x *Charger) *Quantity { return &x.OutputV }),
		leastWireKey(func(x *Charger) *Quantity { return &x.LeastMm2 }),
		{Key: Key{Name: "output by speed", Kind: KindCurve, Default: "no engine drives it", Example: "{800 rpm: 25 A, 3000 rpm: 85 A}",
			Doc: "of an alternator: current by engine speed, as `output` of charging is"},
			read: func(r *reader, x *Charger, f field) { r.outputCurve(&x.Engine, f) }},
		quantityKey(Key{Name: "hot derating", Unit: quantity.Share, Min: 0, Max: 0.9, Default: "that of its kind", Example: "20 %",
			Doc: "of an alternator: share of the output lost when hot"}, func(x *Charger) *Quantity { return &x.Engine.HotDerating }),
	}, feedKeys(func(x *Charger) *[]Feed { return &x.FedBy })...), chargerReturnKeys()...)...),
	finish: func(r *reader, x *Charger, f field) { x.finish(r, f) },
}

func chargerReturnKeys() []key[Charger] {
	back := returnKeys(func(x *Charger) *[]Feed { return &x.Returns })
	back[0].Default = "`battery negative`, over no resistance"
	back[0].Doc = "where its negative side is joined to the rest: the battery's negative post or a ground"
	return back
}

// finish holds what is said against the kind of charger, and sets what it draws.
func (x *Charger) finish(r *reader, f field) {
	if x.TypeAuto {
		x.standIn(r, f)
	}
	if x.Type == nil {
		return
	}
	of := x.Type.Name
	switch panel := x.Type.From == "panel"; {
	case x.FromBattery() && !f.has["fed by"]:
		r.report(r.pos(f.node), fmt.Sprintf("%s: %s is fed by a battery, and nothing feeds it", f.where, of), "`fed by` the fuse at the battery that feeds it")
	case !x.FromBattery() && f.has["fed by"]:
		r.report(r.pos(f.node), fmt.Sprintf("%s: %s takes nothing from a battery", f.where, of), "no `fed by`; the battery that it charges is `fed by` it")
	case panel && !x.PanelW.Given():
		r.report(r.pos(f.node), fmt.Sprintf("%s: the panel on %s is not given", f.where, of), "`panel: 180 W`, its rated power")
	case !panel && x.PanelW.Given():
		r.report(x.PanelW.Pos, fmt.Sprintf("%s: %s has no panel", f.where, of), "a controller for panels, or no `panel`")
	}
	if systemV := r.d.SystemV.Value; systemV > 0 && x.Type.SystemV() != systemV {
		r.report(r.pos(f.node), fmt.Sprintf("%s: %s is for %s", f.where, of, quantity.Plain(x.Type.SystemV(), quantity.Voltage)),
			r.likeFor(x.Type, systemV))
	}
	x.finishEngine(r, f)
	x.Input = &Load{Common: x.Common, Behaves: ConstantPower, Sign: SignConverter, RatedV: r.d.NominalV()}
	x.SetType(x.Type)
}

// finishEngine holds an output by speed against the kind of charger, and its rating.
func (x *Charger) finishEngine(r *reader, f field) {
	e, name := &x.Engine, f.where.String()
	if !x.FromEngine() {
		if len(e.Output) > 0 || e.HotDerating.Given() {
			r.report(r.pos(f.node), fmt.Sprintf("%s: no engine drives %s", name, x.Type.Name), "such as alternator 90 A, or no `output by speed`")
		}
		return
	}
	e.Kind, e.RegulatedV = r.lib.Generator(x.Type.Generator), Quantity{Value: x.HeldV()}
	e.powersToCurrents()
	if len(e.Output) == 0 {
		r.report(r.pos(f.node), fmt.Sprintf("%s: what %s gives at which engine speed is not said", name, x.Type.Name), "`output by speed: {800 rpm: 25 A, 3000 rpm: 85 A}`")
		return
	}
	for _, p := range e.Output {
		if p.CurrentA.Value > x.Type.RatingA*mostOverPlate {
			r.report(p.CurrentA.Pos, fmt.Sprintf("%s: %s, and %s is for %s", name, quoted(p.CurrentA.Text), x.Type.Name, quantity.Plain(x.Type.RatingA, quantity.Current)),
				"a type of a higher rating")
			return
		}
	}
	r.later = append(r.later, func() {
		if c := &r.d.Charging; c.Pos.Line == 0 {
			r.report(r.pos(f.node), name+" is driven by the engine, whose speeds are not said", "the first machine as `charging`, with `idle` and `cruise`")
		} else {
			r.withinCurve(e, c.IdleRPM, name+", idle")
			r.withinCurve(e, c.CruiseRPM, name+", cruise")
		}
	})
}

// mostOverPlate is by how much a cold alternator may be above the current on its plate. Our choice.
const mostOverPlate = 1.1

// SetType gives a charger a type, and its input what that draws.
func (x *Charger) SetType(t *library.ChargerType) {
	x.Type, x.Input.StandbyA = t, Quantity{Value: t.OwnA}
	if x.FromBattery() {
		x.Input.PowerW = t.RatingA * x.HeldV() / t.Efficiency
	}
}

// standIn gives a charger whose type is left open the least that could be meant.
func (x *Charger) standIn(r *reader, f field) {
	from := "mains"
	switch {
	case x.PanelW.Given():
		from = "panel"
	case f.has["fed by"]:
		from = "battery"
	}
	if rows := chargerRows(r.lib, from, r.d.SystemV.Value); len(rows) > 0 {
		x.Type = rows[0]
		return
	}
	r.report(r.pos(f.node), fmt.Sprintf("%s: the library has no such charger for %s", f.where, quantity.Plain(r.d.SystemV.Value, quantity.Voltage)),
		"the `type` of one of your own library")
}

// ChargerRows are the types that a charger whose type is left open could have, ascending by rating; it has one.
func (d *Design) ChargerRows(x *Charger) []*library.ChargerType {
	return chargerRows(d.Library, x.Type.From, d.SystemV.Value)
}

// chargerRows are those of one kind, of panels those that track them.
func chargerRows(lib *library.Library, from string, volts float64) (rows []*library.ChargerType) {
	for _, t := range lib.Chargers {
		if t.From == from && t.Volts == volts && t.InputV == 0 && (from != "panel" || t.Tracks) {
			rows = append(rows, t)
		}
	}
	slices.SortStableFunc(rows, func(a, b *library.ChargerType) int { return cmp.Compare(a.RatingA, b.RatingA) })
	return rows
}

// sourceKeys tell in which situations the sources of chargers give, and how full batteries are.
func sourceKeys() []key[stateDraft] {
	return []key[stateDraft]{
		quantityKey(Key{Name: "sun", Unit: quantity.Share, Min: 0, Max: 1.2, Default: "none; with `sun hours` full sun", Example: "75 %",
			Doc: "share of their rated power that solar panels give at the time: on a roof in good sun about 75 %"},
			func(x *stateDraft) *Quantity { return &x.sun }),
		quantityKey(Key{Name: "sun hours", Unit: quantity.Duration, Min: 0, Max: 24 * 3600, Default: "`sun` all the time", Example: "4 h",
			Doc: "sun of a day, as hours at the panels' rated power: what counts in the balance of days and nights. Panels then give `sun` for as long as makes these hours, " +
				"in the middle of each 24 h of a leg, and nothing at night; a leg, or rest of one, shorter than a day has sun in proportion"},
			func(x *stateDraft) *Quantity { return &x.sunHours }),
		yesKey(Key{Name: "shore", Default: "no", Doc: "on shore power: mains chargers give", Example: "yes"},
			func(x *stateDraft) *bool { return &x.shore }),
		chargeKey("how full further batteries are", func(x *stateDraft) *[]chargeDraft { return &x.charge }),
	}
}

// chargeKey reads how full batteries are.
func chargeKey[T any](doc string, to func(*T) *[]chargeDraft) key[T] {
	charge := Key{Name: "charge", Kind: KindCharges, Example: "{house: 30 %}", Default: "full", Doc: doc}
	return key[T]{Key: charge, read: func(r *reader, x *T, f field) {
		if n := follow(f.node); n.Kind != yaml.MappingNode {
			r.report(r.pos(f.node), fmt.Sprintf("%s is %s", f, kindName(n)), charge.expected())
			return
		}
		r.pairs(f.node, f.where, fold, func(name, value *yaml.Node) {
			at := field{where: f.where, key: "charge of " + strings.TrimSpace(name.Value), node: value}
			if q, ok := r.quantity(at, &Key{Kind: KindQuantity, Unit: quantity.Share, Min: 0, Max: 1}); ok {
				*to(x) = append(*to(x), chargeDraft{Text{name.Value, r.pos(name)}, q})
			}
		})
	}}
}

// chargeDraft is how full a battery is, before it is looked up.
type chargeDraft struct {
	bank  Text
	share Quantity
}

// sources sets what the sources of chargers and further batteries have in a situation.
func (r *reader) sources(x *stateDraft) {
	s := x.situation
	s.Sun, s.Shore = x.sun.Value, x.shore
	if x.sunHours.Given() {
		s.SunShare = x.sunHours.Value / (24 * 3600)
		s.Sun = x.sun.Or(1)
		if s.SunShare > s.Sun {
			r.report(x.sunHours.Pos, fmt.Sprintf("%s: `sun hours` of %s are more than a day has with the sun at %s", x.of, quantity.Plain(x.sunHours.Value, quantity.Duration),
				quantity.Plain(s.Sun, quantity.Share)), "at most "+quantity.Plain(s.Sun*24*3600, quantity.Duration))
		}
	} else {
		s.SunShare = s.Sun
	}
	s.Charge = r.charges(x.of, x.charge)
}

// charges looks up the batteries; nil = all are full.
func (r *reader) charges(of where, said []chargeDraft) map[*Bank]float64 {
	var list map[*Bank]float64
	for _, c := range said {
		for _, b := range namedParts[*Bank](r, of, "further battery", []Text{c.bank}) {
			if list == nil {
				list = map[*Bank]float64{}
			}
			list[b] = c.share.Value
		}
	}
	return list
}

// deriveSources adds a situation for each kind of source that a charger has.
func (r *reader) deriveSources() {
	has := func(from string) bool {
		for _, x := range r.d.Chargers {
			if x.Type != nil && x.Type.From == from {
				return true
			}
		}
		return false
	}
	last := func() *Situation { return r.d.Situations[len(r.d.Situations)-1] }
	if has("panel") {
		r.derive("full sun", KeyOff, 0, false)
		last().Sun, last().SunShare = 1, 1
	}
	if has("mains") {
		r.derive("on shore power", KeyOff, 0, false)
		last().Shore = true
	}
}

// likeFor is the type of the library for a system of so many volts that is most like another.
func (r *reader) likeFor(of *library.ChargerType, systemV float64) string {
	var like *library.ChargerType
	off := func(t *library.ChargerType) float64 { return math.Abs(t.RatingA - of.RatingA) }
	for _, t := range r.lib.Chargers {
		kind := t.SystemV() == systemV && t.From == of.From && t.Tracks == of.Tracks && (t.InputV > 0) == (of.InputV > 0)
		if kind && (like == nil || off(t) < off(like)) {
			like = t
		}
	}
	one := "one for " + quantity.Plain(systemV, quantity.Voltage)
	if like == nil {
		return one + ", of which the library has none of its kind"
	}
	return one + ", such as " + like.Name
}
