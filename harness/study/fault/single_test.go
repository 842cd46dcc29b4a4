package fault_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/study/fault"
)

// sneaky is three lamps, two of which share a ground block; one of the two and
// the third hang on a switch that is open.
const sneaky = `fusewright: 1
title: sneak path
vehicle: invented machine
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 12 mΩ, at: tray}
charging: {regulated: 14.4 V, output: {1300 rpm: 14 A, 6000 rpm: 28 A}, idle: 1300 rpm, cruise: 4000 rpm}
places:
  tray: {ambient: 30 °C}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm², slack: 50 mm}
taps:
  feed: {at: tray, hot: key, fuse: 10 A, supervised: no}
fuses:
  lamps: {type: blade C, rating: 5 A, at: tray, fed by: feed}
  main: {type: blade C, rating: 15 A, at: tray, fed by: battery}
relays:
  heat: {form: mini make, at: tray, fed by: main, coil: {fed by: lamps, returns to: frame, suppressed by: diode}}
switches:
  flood: {rating: 10 A, at: tray, fed by: lamps}
grounds:
  frame: {kind: frame stud, at: tray, frame resistance: 2 mΩ}
  block: {kind: ground block, at: tray, limit: 30 A, returns to: battery negative}
loads:
  tail: {power: 5 W, behaves: resistor, at: tray, fed by: lamps, returns to: block}
  left: {power: 10 W, behaves: resistor, at: tray, fed by: flood, returns to: block}
  right: {power: 10 W, behaves: resistor, at: tray, fed by: flood, returns to: frame}
  seat: {power: 40 W, behaves: resistor, at: tray, fed by: heat, returns to: frame}
  grips: {power: 40 W, behaves: resistor, at: tray, fed by: heat, returns to: frame, own switch: yes, maximum voltage: 16 V}
  clock: {power: 1 W, behaves: constant power, at: tray, fed by: main, returns to: frame, polarised: yes}
situations:
  riding: {engine: cruise, on: [tail]}
  standing: {key: off}
`

// By hand: 14.4 V over 28.8 Ω (5 W), 14.4 Ω and 14.4 Ω (10 W at 12 V) in series
// leaves a quarter, 3.6 V, on each of the two that are off.
func TestLostGroundByHand(t *testing.T) {
	c := buildtest.Circuit(t, []byte(sneaky))
	s := fault.Compute(c)
	for _, l := range s.Lost {
		if l.Branch.Wire == nil || l.Branch.Wire.From.Part.Name != "block" {
			continue
		}
		got := map[string]fault.Affected{}
		for _, a := range l.All() {
			got[a.Branch.Part.Name] = a
		}
		if got["left"].Effect != fault.Woken || got["right"].Effect != fault.Woken || got["tail"].Effect != fault.Weakened {
			t.Errorf("effects %+v", l.All())
		}
		near(t, "left, the wrong way round", got["left"].AfterV, -3.6, 0.03)
		near(t, "right", got["right"].AfterV, 3.6, 0.03)
		near(t, "tail", got["tail"].AfterV, 7.2, 0.06)
		return
	}
	t.Fatal("the block's return is not studied")
}

func TestWeldedContact(t *testing.T) {
	s := fault.Compute(buildtest.Circuit(t, []byte(sneaky)))
	if len(s.Welded) != 1 || len(s.Welded[0].Hot) != 2 {
		t.Fatalf("%+v", s.Welded)
	}
	for _, h := range s.Welded[0].Hot {
		if name := h.Branch.Part.Name; h.ByHand != (name == "grips") {
			t.Errorf("%s by hand: %v", name, h.ByHand)
		}
	}
	near(t, "draw", s.Welded[0].DrawA, 40.0/12, 1e-9)
}

// A contact welded in a return leaves on what is live, by hand alone where a switch is on
// the way back too, and not what the key feeds.
func TestWeldedInReturn(t *testing.T) {
	s := fault.Compute(buildtest.Circuit(t, []byte(`fusewright: 1
title: t
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, at: tray}
places: {tray: {ambient: 40 °C}}
taps: {key: {at: tray, hot: key, fuse: 10 A}}
grounds: {stud: {at: tray}}
fuses: {main: {rating: 10 A, at: tray, fed by: battery}}
switches: {hand: {rating: 5 A, at: tray, returns to: fan relay}}
relays: {fan relay: {form: mini make, at: tray, returns to: stud, coil: {fed by: key, returns to: stud}}}
loads:
  fan: {power: 24 W, behaves: motor, at: tray, fed by: main, returns to: fan relay}
  lamp: {power: 12 W, behaves: resistor, at: tray, fed by: main, returns to: hand}
  heat: {power: 12 W, behaves: resistor, at: tray, fed by: key, returns to: fan relay}
`)))
	if len(s.Welded) != 1 || len(s.Welded[0].Hot) != 2 {
		t.Fatalf("%+v", s.Welded)
	}
	for _, h := range s.Welded[0].Hot {
		if name := h.Branch.Part.Name; h.ByHand != (name == "lamp") {
			t.Errorf("%s by hand: %v", name, h.ByHand)
		}
	}
	near(t, "draw", s.Welded[0].DrawA, 24.0/12, 1e-9)
}

// A diode across a coil has a fuse before it only if no way from the battery is bare.
func TestDiodeBehindABareFeed(t *testing.T) {
	bare := strings.NewReplacer("coil: {fed by: lamps", "coil: {fed by: [lamps, hand]",
		"  flood: {rating", "  hand: {rating: 10 A, at: tray, fed by: battery}\n  flood: {rating").Replace(sneaky)
	for text, fused := range map[string]bool{sneaky: true, bare: false} {
		for _, e := range fault.Compute(buildtest.Circuit(t, []byte(text))).Exposed {
			if e.Diode && (e.DiodeVia != nil) != fused {
				t.Errorf("fused %t: %+v", fused, e)
			}
		}
	}
}

func TestExposures(t *testing.T) {
	s := fault.Compute(buildtest.Circuit(t, []byte(sneaky)))
	got := map[string]*fault.Exposure{}
	for _, e := range s.Exposed {
		got[e.Branch.Part.Name] = e
	}
	for name, want := range map[string]fault.Reached{"clock": fault.AtOnce, "tail": fault.WithKey,
		"left": fault.WithKey, "seat": fault.WithKey} {
		if got[name].Reached != want {
			t.Errorf("a reversed battery reaches %s %s, want %s", name, got[name].Reached, want)
		}
	}
	if !got["clock"].Suffers || !got["heat"].Diode || got["heat"].DiodeVia == nil || got["tail"].Suffers {
		t.Errorf("clock %+v, coil %+v, tail %+v", got["clock"], got["heat"], got["tail"])
	}
	near(t, "tail under a failed regulator", got["tail"].HighV, 18, 0.2)
	if got["tail"].HighIn == nil || got["tail"].HighIn.Name != "riding" {
		t.Errorf("tail in %v, want riding", got["tail"].HighIn)
	}
	// No situation turns on left and grips: 18 V less what 0.1 m of wire and the
	// contacts lose, were they on.
	for _, name := range []string{"left", "grips"} {
		near(t, name+" as if on", got[name].HighV, 18, 0.3)
		if got[name].HighIn != nil {
			t.Errorf("%s in %s, want no situation", name, got[name].HighIn.Name)
		}
	}
	if !got["grips"].Over() {
		t.Error("grips bear 16 V, and 18 V in no situation is not over it")
	}
	if got["tail"].Over() {
		t.Error("a load without a maximum voltage counts as over it")
	}
}

// A charging system that idles below its regulated voltage comes up to it when a
// lost ground sheds a load; every part is made for that voltage.
func TestRegulatedVoltageIsNoExcess(t *testing.T) {
	text := strings.NewReplacer("1300 rpm: 14 A", "1300 rpm: 4 A",
		"  block: {kind: ground block", "  heat block: {kind: ground block, at: tray, limit: 30 A, returns to: battery negative}\n  block: {kind: ground block",
		"fed by: heat, returns to: frame}", "fed by: heat, returns to: heat block}",
		"fed by: heat, returns to: frame, own", "fed by: heat, returns to: heat block, own",
		"fed by: flood, returns to: block", "fed by: flood, returns to: heat block",
		"riding: {engine: cruise, on: [tail]}", "waiting: {engine: idle, on: [tail, grips]}").Replace(sneaky)
	s := fault.Compute(buildtest.Circuit(t, []byte(text)))
	rose := false
	for _, l := range s.Lost {
		for _, a := range l.All() {
			if a.Effect == fault.Excessive {
				t.Errorf("%s: %.2f V instead of %.2f V is called an excess", a.Branch.Part.Name, a.AfterV, a.BeforeV)
			}
		}
		rose = rose || l.Branch.Wire != nil && l.Branch.Wire.From.Part.Name == "heat block"
	}
	if !rose {
		t.Fatal("the heaters' return is not studied")
	}
}
