package together_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fusewright/library"
)

// byPositions is a three-position switch for a bow lamp of 3 A and a stern lamp of 1 A, both
// or the second alone, and a deck lamp of 2.5 A beside it.
const byPositions = `fusewright: 1
title: by positions
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 60 Ah, rate: 20 h, resistance: 5 mΩ}
charging: {regulated: 14 V, output: {1000 rpm: CHARGE, 4000 rpm: 25 A}, idle: 1000 rpm, cruise: 4000 rpm}
vehicle loads: {machine: 112 W}
wire: {insulation: tinned marine 105 °C AWG, size: 8 AWG}
fuses: {f: {type: blade C, rating: 30 A, fed by: battery, wire: {length: 20 mm}}}
switches:
  lights: {rating: 20 A, fed by: f, wire: {length: 20 mm}, positions: {off: none, navigation: [bow, stern], anchor: stern}}
  deck: {rating: 20 A, fed by: f, wire: {length: 20 mm}}
loads:
  bow lamp: {power: 42 W, rated at: 14 V, behaves: constant power, symbol: lamp, fed by: lights bow, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
  stern lamp: {power: 14 W, rated at: 14 V, behaves: constant power, symbol: lamp, fed by: lights stern, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
  deck lamp: {power: 35 W, rated at: 14 V, behaves: constant power, symbol: lamp, fed by: deck, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
situations:
  anchored: {engine: idle, on: [stern lamp]}
`

// By hand at idle: the machine takes 8 A. Of 4.8 A left the lights at navigation take 4 A, and the
// deck lamp does not fit beside them; at anchor they take 1 A and it does. Of 6.8 A all fit, and
// what is on at anchor is on at navigation too. Of 3 A the bow lamp does not fit at all.
func TestByPositions(t *testing.T) {
	const nav, anchor, deck = "lights at navigation (bow lamp, stern lamp)", "lights at anchor (stern lamp)", "deck lamp"
	for charge, want := range map[string][][]string{
		"12.8 A": {{nav}, {anchor, deck}},
		"14.8 A": {{nav, deck}},
		"11 A":   {{anchor}, {deck}},
	} {
		p, _ := plan(t, []byte(strings.Replace(byPositions, "CHARGE", charge, 1)))
		for _, c := range p.Choices {
			if c.Name != "anchored" {
				continue
			}
			var got [][]string
			for _, s := range c.Sets {
				got = append(got, names(p.Members(s)))
			}
			if !slices.EqualFunc(got, want, sameNames) {
				t.Errorf("%s: %q, want %q", charge, got, want)
			}
			if on := names(c.On); !slices.Equal(on, []string{anchor}) {
				t.Errorf("%s: on %q", charge, on)
			}
		}
	}
}

// By hand at idle with a handle that has no off: day takes 3 A, night 1 A, and one of them is on whatever
// is done; of both the lamp that they share counts throughout. The deck lamp's 2.5 A is not on alone.
func TestNoOff(t *testing.T) {
	const day, night, deck = "bow lamp", "stern lamp", "deck lamp"
	for _, tt := range []struct {
		positions, charge string
		always            []string
		alwaysA           float64
		want              [][]string
	}{
		{"{day: bow, night: stern}", "12.8 A", nil, 0, [][]string{{day}, {night, deck}}},
		{"{day: bow, night: stern}", "13.6 A", nil, 0, [][]string{{day, deck}, {night, deck}}},
		{"{day: bow, night: stern}", "10.8 A", nil, 0, [][]string{{night}}},
		{"{day: bow, night: stern}", "8.9 A", nil, 0, nil},
		{"{day: [bow, stern], night: stern}", "12.8 A", []string{night}, 1, [][]string{{day}, {deck}}},
		{"[bow, off, stern]", "10.8 A", nil, 0, [][]string{{night}, {deck}}},
	} {
		src := strings.NewReplacer("{off: none, navigation: [bow, stern], anchor: stern}", tt.positions, "CHARGE", tt.charge).Replace(byPositions)
		p, _ := plan(t, []byte(src))
		var always []string
		for _, l := range p.Always {
			always = append(always, l.Name)
		}
		if !slices.Equal(always, tt.always) || math.Abs(p.AlwaysA-tt.alwaysA) > 0.03 {
			t.Errorf("%s: always %q, %.3f A", tt.positions, always, p.AlwaysA)
		}
		for _, c := range p.Choices {
			var got [][]string
			for _, s := range c.Sets {
				got = append(got, names(p.Members(s)))
			}
			if c.Name == "anchored" && !slices.EqualFunc(got, tt.want, sameNames) {
				t.Errorf("%s, %s: %q, want %q", tt.positions, tt.charge, got, tt.want)
			}
		}
	}
}

// By hand at idle: 10 A less the machine's 8 A and the bow lamp's 3 A leave 1 A missing. Priority gives the lamp up,
// but its handle would put the other one on; with an off it is shed.
func TestNoOffSheds(t *testing.T) {
	for positions, want := range map[string][]string{"{day: bow, night: stern}": nil, "{day: bow, off: none, night: stern}": {"bow lamp"}} {
		src := strings.NewReplacer("{off: none, navigation: [bow, stern], anchor: stern}", positions, "CHARGE", "10 A",
			"power: 42 W", "priority: 9, power: 42 W", "on: [stern lamp]", "on: [bow lamp]").Replace(byPositions)
		p, _ := plan(t, []byte(src))
		for _, c := range p.Choices {
			if got := names(c.SwitchOff); c.Name == "anchored" && (!slices.Equal(got, want) || math.Abs(c.OverdrawA-1) > 0.03) {
				t.Errorf("%s: off %q, over by %.3f A", positions, got, c.OverdrawA)
			}
		}
	}
}

// The coils of relays that a handle closes count with its position: beside the lamp's current,
// and none of them throughout.
func TestCoilsByPosition(t *testing.T) {
	relay := "{form: mini make, fed by: f, wire: {length: 20 mm}, coil: {fed by: lights SIDE, returns to: battery negative, wire: {length: 20 mm}, return wire: {length: 20 mm}}}"
	src := strings.NewReplacer("{off: none, navigation: [bow, stern], anchor: stern}", "{day: bow, night: stern}", "CHARGE", "20 A",
		"loads:\n", "relays:\n  by day: "+strings.Replace(relay, "SIDE", "bow", 1)+"\n  by night: "+strings.Replace(relay, "SIDE", "stern", 1)+"\nloads:\n",
		"fed by: lights bow", "fed by: by day", "fed by: lights stern", "fed by: by night").Replace(byPositions)
	p, _ := plan(t, []byte(src))
	coil := 14 / library.Default().RelayForm("mini make").CoilOhm
	if p.Coils || p.AlwaysA != 0 {
		t.Errorf("always %.3f A", p.AlwaysA)
	}
	for name, want := range map[string]float64{"bow lamp": 3 + coil, "stern lamp": 1 + coil} {
		for _, i := range p.Items {
			if i.Name == name && math.Abs(i.CurrentA-want) > 0.04 {
				t.Errorf("%s: %.3f A, want %.3f A", name, i.CurrentA, want)
			}
		}
	}
}

// A plain switch drives a relay that changes over from a day lamp of 1 A to a night lamp of 3 A, and feeds a panel lamp
// of 0.5 A itself; a deck lamp of 2.5 A has a switch of its own. By hand at idle, with 8 A of the machine: of 4.8 A left
// the night lamp and the panel take 3.5 A and the coil, and the deck lamp does not fit; by day it does. Of 6.8 A it does too.
// Day and night are never on at once, nor by two relays on the switch, nor by a second that the first one's rest pulls in, nor with the switch between the coil and ground, or the contacts between the lamps and ground.
func TestChangedOverByHand(t *testing.T) {
	const night, day, deck = "dusk on (panel lamp, night lamp)", "day lamp", "deck lamp"
	src := strings.NewReplacer("  lights: {rating: 20 A, fed by: f, wire: {length: 20 mm}, positions: {off: none, navigation: [bow, stern], anchor: stern}}",
		"  dusk: {rating: 20 A, fed by: f, wire: {length: 20 mm}}",
		"loads:\n", `relays:
  over: {form: mini changeover, fed by: f, wire: {length: 20 mm}, coil: {fed by: dusk, returns to: battery negative, wire: {length: 20 mm}, return wire: {length: 20 mm}}}
loads:
  panel lamp: {power: 7 W, rated at: 14 V, behaves: constant power, symbol: lamp, fed by: dusk, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
`, "bow lamp", "night lamp", "stern lamp", "day lamp", "fed by: lights bow", "fed by: over 87", "fed by: lights stern", "fed by: over 87a").Replace(byPositions)
	ground := strings.NewReplacer("dusk: {rating: 20 A, fed by: f, wire: {length: 20 mm}}", "dusk: {rating: 20 A, returns to: battery negative, return wire: {length: 20 mm}}",
		"coil: {fed by: dusk, returns to: battery negative,", "coil: {fed by: f, returns to: dusk,",
		"fed by: dusk, wire: {length: 20 mm}, returns to: battery negative, return", "fed by: f, wire: {length: 20 mm}, returns to: dusk, return")
	parted := strings.NewReplacer("over: {form: mini changeover, fed by: f, wire: {length: 20 mm}", "over: {form: mini changeover, returns to: battery negative, return wire: {length: 20 mm}",
		"fed by: over 87, wire: {length: 20 mm}, returns to: battery negative", "fed by: f, wire: {length: 20 mm}, returns to: over 87",
		"fed by: over 87a, wire: {length: 20 mm}, returns to: battery negative", "fed by: f, wire: {length: 20 mm}, returns to: over 87a")
	second := func(coil, contact string) string {
		return strings.NewReplacer("loads:\n", "  second: {form: mini changeover, fed by: f, wire: {length: 20 mm}, coil: {fed by: "+coil+", returns to: battery negative, wire: {length: 20 mm}, return wire: {length: 20 mm}}}\nloads:\n",
			"fed by: over 87a", "fed by: second "+contact).Replace(src)
	}
	for charge, want := range map[string][][]string{"12.8 A": {{night}, {day, deck}}, "14.8 A": {{night, deck}, {day, deck}}} {
		for _, src := range []string{src, ground.Replace(src), parted.Replace(src), second("dusk", "87a"), second("over 87a", "87")} {
			p, _ := plan(t, []byte(strings.Replace(src, "CHARGE", charge, 1)))
			if len(p.Always) > 0 {
				t.Errorf("always %s", p.Always[0].Name)
			}
			for _, c := range p.Choices {
				var got [][]string
				for _, s := range c.Sets {
					got = append(got, names(p.Members(s)))
				}
				if c.Name == "anchored" && (!slices.EqualFunc(got, want, sameNames) || !slices.Equal(names(c.On), []string{day})) {
					t.Errorf("%s: %q, want %q; on %q", charge, got, want, names(c.On))
				}
			}
		}
	}
}

// What water or pressure works behind a switch that changes over goes with its being on, never with what it has on
// while off: by hand at idle, of 6.8 A left, the washer's 1 A, the night lamp's 3 A, the coil's 0.17 A and the deck lamp's 2.5 A make 6.67 A.
func TestWorksAloneBehindAChangeOver(t *testing.T) {
	src := strings.NewReplacer("  lights: {rating: 20 A, fed by: f, wire: {length: 20 mm}, positions: {off: none, navigation: [bow, stern], anchor: stern}}",
		"  dusk: {rating: 20 A, fed by: f, wire: {length: 20 mm}}\n  pressure: {type: pressure switch 10 A, fed by: dusk, wire: {length: 20 mm}}",
		"CHARGE", "14.8 A", "loads:\n", `relays:
  over: {form: mini changeover, fed by: f, wire: {length: 20 mm}, coil: {fed by: dusk, returns to: battery negative, wire: {length: 20 mm}, return wire: {length: 20 mm}}}
loads:
  washer: {power: 14 W, rated at: 14 V, behaves: constant power, symbol: pump, fed by: pressure, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
`, "bow lamp", "night lamp", "stern lamp", "day lamp", "fed by: lights bow", "fed by: over 87", "fed by: lights stern", "fed by: over 87a").Replace(byPositions)
	p, _ := plan(t, []byte(src))
	want := [][]string{{"dusk on (washer, night lamp)", "deck lamp"}, {"day lamp", "deck lamp"}}
	for _, c := range p.Choices {
		var got [][]string
		for _, s := range c.Sets {
			got = append(got, names(p.Members(s)))
		}
		if c.Name == "anchored" && !slices.EqualFunc(got, want, sameNames) {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Of positions that give the same all are named, and the first stands for them.
func TestAlikePositions(t *testing.T) {
	src := strings.NewReplacer("anchor: stern}", "anchor: stern, mooring: stern, motoring: [bow, stern]}", "CHARGE", "12.8 A",
		"on: [stern lamp]}", "on: [stern lamp], switches: {lights: mooring}}").Replace(byPositions)
	const nav, anchor, deck = "lights at navigation or motoring (bow lamp, stern lamp)", "lights at anchor or mooring (stern lamp)", "deck lamp"
	p, _ := plan(t, []byte(src))
	want := [][]string{{nav}, {anchor, deck}}
	for _, c := range p.Choices {
		var got [][]string
		for _, s := range c.Sets {
			got = append(got, names(p.Members(s)))
		}
		if c.Name == "anchored" && (!slices.EqualFunc(got, want, sameNames) || !slices.Equal(names(c.On), []string{anchor})) {
			t.Errorf("%q, want %q; on %q", got, want, names(c.On))
		}
	}
}

func sameNames(a, b []string) bool {
	a, b = slices.Sorted(slices.Values(a)), slices.Sorted(slices.Values(b))
	return slices.Equal(a, b)
}
