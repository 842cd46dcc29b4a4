package design

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"

	"gopkg.in/yaml.v3"
)

// KeyState is the ignition key and engine.
type KeyState string

// The key states of situations.
const (
	KeyOff KeyState = "off"
	KeyOn  KeyState = "on"
)

// Situation is what is on at once.
type Situation struct {
	Name      string
	Key       KeyState
	EngineRPM float64   // 0 = stopped
	On        []*Load   // loads on
	All       bool      // on are all, of the design's own word or because the reader made it
	Reversed  []*Load   // of those on, the motors that run the other way round
	Closed    []*Switch // switches closed besides those the loads need
	Held      []*Relay  // relays closed whatever their coils have: they latch, or their off delay runs
	Waiting   []*Relay  // relays open whatever their coils have: their on delay runs
	LastsS    float64   // how long it lasts when that is known; 0 = not
	Open      []*Switch // switches left open though a load needs them, as one tries each of two feeds
	Unplugged []*Load   // loads whose plug is pulled: nothing draws there
	With      []When    // the conditions that hold
	// Sun is the share of their rated power that solar panels give, SunShare that of a whole day,
	// night counted; Shore tells that mains chargers give.
	Sun, SunShare float64
	Shore         bool
	Charge        map[*Bank]float64 // how full further batteries are, 0..1; full where not said
	Set           []Setting         // switches in a position that the design says; others follow what is on
	// As is the situation that this one is like, as a leg of a ride; nil = none. The
	// machine's own loads draw as there.
	As      *Situation
	Derived bool // made by the reader
	Pos     problem.Pos
}

// Cranks tells of a situation in which a starter of the design turns: it lasts seconds.
func (s *Situation) Cranks() bool {
	return s.EngineRPM == 0 && slices.ContainsFunc(s.On, (*Load).Starts)
}

// Sunlit is the share of a whole day in which solar panels give Sun, so that they give SunShare in all; 0 = never.
func (s *Situation) Sunlit() float64 {
	if s.Sun == 0 {
		return 0
	}
	return s.SunShare / s.Sun
}

// Compare puts situations in an order that does not hang on the file: those of the
// design by name, then those made by the reader as they are.
func (s *Situation) Compare(t *Situation) int {
	switch {
	case s.Derived && t.Derived:
		return 0
	case s.Derived != t.Derived:
		return map[bool]int{true: 1, false: -1}[s.Derived]
	}
	return strings.Compare(s.Name, t.Name)
}

// ChargeOf is how full a further battery is in a situation, 0..1.
func (s *Situation) ChargeOf(b *Bank) float64 {
	if charge, said := s.Charge[b]; said {
		return charge
	}
	return 1
}

// stateDraft is what is on at once, of a situation or of a leg of a ride,
// before names and engine speeds are looked up.
type stateDraft struct {
	of      where
	key     Text
	engine  Quantity // Text is the word or speed as written
	on      Text     // the word "all" or "none"
	loads   []Text
	closed  []Text
	turned  []Text    // the loads that are reversed
	with    []Text    // the conditions that hold
	without bool      // the list is given, and empty
	as      Text      // the situation that a leg is like
	set     [][2]Text // switches and their positions

	sun, sunHours Quantity
	shore         bool
	charge        []chargeDraft

	situation *Situation // one of the two
	leg       *Leg
}

var situationSection = section[stateDraft]{
	Section: Section{Name: "situation", Shape: KindNamed,
		Doc: "What is on at once; every check is made in every situation. When the design gives some, the " +
			"usual ones are left out, except that the vehicle parked with the key off is always looked at.",
		Example: "situations:\n  night ride: {engine: cruise, on: [left lamp, right lamp, grips]}\n" +
			"  main beam: {engine: cruise, with: [main beam], on: [left lamp, right lamp]}\n" +
			"  waiting: {engine: idle, on: all}\n  parked: {key: off}\n"},
	keys: append(append(stateKeys(), sourceKeys()...),
		key[stateDraft]{Key: Key{Name: "closed", Kind: KindSwitches, Example: "[lamps]", Default: "none",
			Doc: "switches, and relays that latch, closed besides those that the loads need; of several feeds of a load only the one whose last switch stands here"},
			read: func(r *reader, x *stateDraft, f field) { x.closed = r.texts(f, maxName) }},
		settingsKey(),
		key[stateDraft]{Key: Key{Name: "reversed", Kind: KindLoads, Example: "[winch]", Default: "none",
			Doc: "motors between two halves of a reversing contactor that are on and run in reverse"},
			read: func(r *reader, x *stateDraft, f field) { x.turned = r.texts(f, maxName) }}),
}

// stateKeys are the keys that situations and legs share.
func stateKeys() []key[stateDraft] {
	return []key[stateDraft]{
		{Key: Key{Name: "key", Kind: KindChoice, Choices: []string{string(KeyOn), string(KeyOff)},
			Default: "on", Doc: "ignition key", Example: "off"},
			read: func(r *reader, x *stateDraft, f field) {
				if s, ok := r.choice(f, []string{string(KeyOn), string(KeyOff)}); ok {
					x.key = Text{s, r.pos(f.node)}
				}
			}},
		{Key: Key{Name: "engine", Kind: KindQuantity, Unit: quantity.Speed, Min: 0, Max: maxRPM,
			Choices: []string{"idle", "cruise", "stopped"}, Default: "stopped",
			Doc: "engine speed", Example: "2600 rpm"},
			read: func(r *reader, x *stateDraft, f field) { r.engine(x, f) }},
		{Key: Key{Name: "on", Kind: KindLoads, Choices: []string{"all", "none"}, Default: "none",
			Doc: "the loads that are on: names, `all` or `none`", Example: "[left lamp, grips]"},
			read: func(r *reader, x *stateDraft, f field) {
				list := r.texts(f, maxName)
				if n := follow(f.node); n.Kind == yaml.ScalarNode && len(list) == 1 {
					if word := fold(list[0].Value); word == "all" || word == "none" {
						x.on = Text{word, list[0].Pos}
						return
					}
				}
				x.loads = list
			}},
		withKey(),
	}
}

// engine reads a speed or one of the words for it.
func (r *reader) engine(x *stateDraft, f field) {
	k := Key{Kind: KindQuantity, Unit: quantity.Speed, Min: 0, Max: maxRPM}
	s, ok := r.scalar(f, "idle, cruise, stopped or an engine speed")
	if !ok {
		return
	}
	switch word := fold(s); word {
	case "idle", "cruise", "stopped":
		x.engine = Quantity{Text: word, Pos: r.pos(f.node)}
	default:
		if strings.ContainsAny(s, "0123456789") {
			x.engine, _ = r.parseQuantity(f, s, &k)
			return
		}
		r.unknown(r.pos(f.node), fmt.Sprintf("%s: unknown word %s", f, quoted(s)), s,
			[]string{"idle", "cruise", "stopped", "an engine speed such as 2600 rpm"})
	}
}

func addSituation(r *reader, d *Design, name string, n *yaml.Node) *stateDraft {
	s := &Situation{Name: name, Pos: r.pos(n)}
	d.Situations = append(d.Situations, s)
	return r.addState(&stateDraft{of: where{"situation", name}, situation: s}, n)
}

// addState keeps a situation or leg to be finished, up to maxStates.
func (r *reader) addState(x *stateDraft, n *yaml.Node) *stateDraft {
	if len(r.states) == maxStates {
		r.report(r.pos(n), fmt.Sprintf("more than %d situations and legs", maxStates),
			"a design of normal size")
	}
	r.states = append(r.states, x)
	return x
}

// finishSituations completes situations and legs, and derives those not given.
func (r *reader) finishSituations() {
	r.finishStates(false)
	r.deriveSituations()
	r.finishStates(true) // a leg may be like a situation
	for _, x := range r.d.Rides {
		x.Charge = r.charges(where{"ride", x.Name}, x.charge)
	}
	r.checkConditions()
	r.finishVehicleLoads()
}

// deriveSituations adds the usual situations where the design gives none.
func (r *reader) deriveSituations() {
	given, off := len(r.d.Situations) > 0, false
	for _, s := range r.d.Situations {
		off = off || s.Key == KeyOff
	}
	if !off {
		r.derive("key off", KeyOff, 0, false)
	}
	r.deriveDelays()
	if r.derived = !given; given {
		return
	}
	r.derive("key on, engine stopped", KeyOn, 0, true)
	if slices.ContainsFunc(r.d.Loads, (*Load).Starts) {
		r.derive("starting", KeyOn, 0, true)
		r.d.Situations[len(r.d.Situations)-1].On = r.d.Loads
	}
	if turned := slices.DeleteFunc(slices.Clone(r.d.Loads), func(l *Load) bool { return !l.Reverses() }); len(turned) > 0 {
		r.derive("key on, reversed", KeyOn, 0, true)
		r.reverse(r.d.Situations[len(r.d.Situations)-1], turned)
	}
	r.derivePositions()
	r.deriveOverlaps()
	if r.d.Charging.Present() {
		r.derive("idle", KeyOn, r.d.Charging.IdleRPM.Value, true)
		r.derive("cruise", KeyOn, r.d.Charging.CruiseRPM.Value, true)
	}
	r.deriveSources()
}

// finishStates finishes the legs of rides, or the situations.
func (r *reader) finishStates(legs bool) {
	for _, x := range r.states {
		if legs == (x.leg != nil) {
			r.finishState(x)
		}
	}
}

// situation finds a situation by name; words are what else may stand there.
func (r *reader) situation(t Text, of where, words ...string) *Situation {
	names := slices.Clone(words)
	for _, s := range r.d.Situations {
		if fold(s.Name) == fold(t.Value) {
			return s
		}
		names = append(names, s.Name)
	}
	r.noName(t.Pos, fmt.Sprintf("%s: no situation is named %s", of, quoted(t.Value)), t.Value, names)
	return nil
}

func (r *reader) derive(name string, key KeyState, rpm float64, on bool) {
	s := &Situation{Name: name, Key: key, EngineRPM: rpm, Derived: true, Pos: r.d.Battery.Pos}
	if on {
		s.On, s.With, s.All = slices.DeleteFunc(slices.Clone(r.d.Loads), (*Load).Starts), r.d.Conditions, true
	}
	r.d.Situations = append(r.d.Situations, s)
}

// reverse has motors run the other way round in a situation, and be on.
func (r *reader) reverse(s *Situation, turned []*Load) {
	s.Reversed = turned
	s.On = slices.Clone(s.On)
	for _, l := range turned {
		if !slices.Contains(s.On, l) {
			s.On = append(s.On, l)
		}
	}
}

// finishState looks up what a situation or leg names.
func (r *reader) finishState(x *stateDraft) {
	key, rpm := KeyOn, r.engineRPM(x)
	as := &Situation{}
	if x.as.Given() {
		if s := r.situation(x.as, x.of); s != nil {
			as, x.leg.As, key = s, s, s.Key
		}
		if !x.engine.Given() && (!x.key.Given() || x.key.Value == string(KeyOn)) {
			rpm = as.EngineRPM
		}
	}
	if x.key.Given() {
		key = KeyState(x.key.Value)
	}
	if key == KeyOff && rpm > 0 {
		r.report(x.engine.Pos, fmt.Sprintf("%s: the engine runs with the key off", x.of), "key: on")
	}
	loads := namedParts[*Load](r, x.of, "load", x.loads)
	if x.on.Value == "all" {
		loads = r.d.Loads
	}
	if x.on.Value == "" && x.loads == nil {
		loads = as.On
	}
	with := r.conditionsOf(x, as)
	if x.leg != nil {
		x.leg.Key, x.leg.EngineRPM, x.leg.On, x.leg.With = key, rpm, loads, with
		return
	}
	x.situation.Key, x.situation.EngineRPM, x.situation.On, x.situation.With = key, rpm, loads, with
	x.situation.All = x.on.Value == "all"
	held, closed := r.latched(x.of, x.closed)
	x.situation.Held = held
	x.situation.Closed = r.closedByHand(x.of, closed, namedParts[*Switch](r, x.of, "switch", closed))
	x.situation.Set = r.settings(x)
	r.sources(x)
	r.reverse(x.situation, namedParts[*Load](r, x.of, "load", x.turned))
	for i, l := range x.situation.Reversed {
		if !l.Reverses() {
			r.report(x.turned[i].Pos, fmt.Sprintf("%s: %s cannot run in reverse", x.of, quoted(l.Name)),
				"a motor between two halves of a reversing contactor")
		}
	}
}

// engineRPM is the engine speed of a situation or leg.
func (r *reader) engineRPM(x *stateDraft) float64 {
	c, e := &r.d.Charging, x.engine
	switch e.Text {
	case "", "stopped":
		return 0
	case "idle", "cruise":
		speed := c.IdleRPM
		if e.Text == "cruise" {
			speed = c.CruiseRPM
		}
		if c.Pos.Line == 0 {
			r.report(e.Pos, fmt.Sprintf("%s, engine: the design does not say what %s is", x.of, e.Text),
				"a charging section, or a speed such as 1300 rpm")
		}
		return speed.Value
	}
	if e.Value > 0 {
		r.withinCurve(c, e, x.of.String()+", engine")
		for _, more := range r.d.Chargers {
			r.withinCurve(&more.Engine, e, x.of.String()+", engine")
		}
	}
	return e.Value
}

// namedParts looks up parts of one kind by name, each at most once.
func namedParts[P Part](r *reader, of where, kind string, texts []Text) []P {
	var list []P
	seen := map[string]bool{}
	for _, t := range texts {
		found, ok := r.names[fold(t.Value)]
		p, right := found.part.(P)
		switch {
		case !ok:
			r.noName(t.Pos, fmt.Sprintf("%s: no %s is named %s", of, kind, quoted(t.Value)), t.Value,
				namesOfKind[P](r))
		case !right:
			r.report(t.Pos, fmt.Sprintf("%s: %s is %s", of, quoted(t.Value), kindOf(found.part)), "a "+kind)
		case seen[fold(t.Value)]:
			r.report(t.Pos, fmt.Sprintf("%s: %s is named twice", of, quoted(t.Value)), "each name once")
		default:
			seen[fold(t.Value)] = true
			list = append(list, p)
		}
	}
	return list
}

func namesOfKind[P Part](r *reader) []string {
	var names []string
	for _, p := range r.parts {
		if _, ok := p.(P); ok {
			names = append(names, p.PartName())
		}
	}
	return names
}
