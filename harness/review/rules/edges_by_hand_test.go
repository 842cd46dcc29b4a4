package rules

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fusewright/harness/formula/fusing"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

// A start that takes 0.29 of what melts the fuse, to the last digit, is outlasted 10 000
// times; the next number above is not.
func TestInrushAtItsLastDigit(t *testing.T) {
	p := passOf(t, fuseInrush, "")
	x := part(t, p, "tail lamp")
	b, fuse := loadBranch(x), part(t, p, "lamp fuse").Branches[0]
	b.Load.PowerW, b.Load.RatedV = 48, 12
	accessory(x).Inrush = library.Inrush{PeakRatio: 6, TauS: 0.02}
	kind := *fuse.Fuse.Type
	kind.Band = []library.TimePoint{{Multiple: 1, MinS: 1e5, MaxS: 2e5}, {Multiple: 10, MinS: 9e4, MaxS: 1e5}}
	fuse.Fuse.Type, fuse.Fuse.Rating = &kind, &library.FuseRating{RatingA: 10, MeltI2t: 1}
	share := func(melt float64) float64 {
		fuse.Fuse.Rating.MeltI2t = melt
		return fusing.Carries(fuse.Device(0), p.c.DrawA(b), accessory(x).Inrush).MeltShare
	}
	melt := share(1) / 0.29
	for i := 0; share(melt) < 0.29 && i < 4; i++ {
		melt = math.Nextafter(melt, 0)
	}
	for i := 0; share(melt) > 0.29 && i < 4; i++ {
		melt = math.Nextafter(melt, math.Inf(1))
	}
	if share(melt) != 0.29 {
		t.Fatalf("no melting I²t gives 0.29: %g gives %g", melt, share(melt))
	}
	for what, of := range map[string]struct {
		melt float64
		want finding.Severity
	}{"at 0.29": {melt, none}, "above": {melt * (1 - 1e-12), finding.Advice}, "below": {melt * (1 + 1e-12), none}} {
		share(of.melt)
		p.found = nil
		p.judgeInrush(x)
		says(t, what, p.found, of.want)
	}
}

// A battery bears 8 h at anchor, 1 h with the key off ashore and half an hour with the
// key on; a situation with the engine on, or with nothing on, is not judged.
func TestFlattenedAtItsHours(t *testing.T) {
	const text = `
practice: PRACTICE
wire: {insulation: tinned marine 105 °C metric, size: 1 mm²}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}, stays live: "a test"}
loads:
  tail lamp: {power: 5 W, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
situations:
  rest: {SITUATION}
`
	for _, c := range []struct {
		practice, situation string
		hours               float64
		want                finding.Severity
	}{
		{"marine", "key: off, on: [tail lamp]", 7.99, finding.Advice},
		{"marine", "key: off, on: [tail lamp]", 8, none},
		{"marine", "key: off, on: [tail lamp]", 8.01, none},
		{"motorcycle", "key: off, on: [tail lamp]", 0.99, finding.Advice},
		{"motorcycle", "key: off, on: [tail lamp]", 1, none},
		{"motorcycle", "key: on, engine: stopped, on: [tail lamp]", 0.49, finding.Advice},
		{"motorcycle", "key: on, engine: stopped, on: [tail lamp]", 0.5, none},
		{"motorcycle", "key: on, engine: stopped, on: [tail lamp]", 0.51, none},
		{"marine", "key: on, engine: stopped, on: [tail lamp]", 0.49, finding.Advice},
		{"marine", "key: on, engine: stopped, on: [tail lamp]", 0.5, none},
		{"motorcycle", "engine: idle, on: [tail lamp]", 0.1, none},
		{"motorcycle", "key: off, on: []", 0.1, none},
	} {
		p := passOf(t, batteryFlattened, strings.NewReplacer("PRACTICE", c.practice, "SITUATION", c.situation).Replace(text))
		for _, l := range append(p.in.Budget.Lines, p.in.Budget.KeyOff...) {
			l.BatteryHours = c.hours
		}
		says(t, fmt.Sprintf("%s, %s, %g h", c.practice, c.situation, c.hours), p.run(), c.want)
	}
}

// Half an ampere at more volts than the switch breaks is a danger; less keeps no arc.
// A switch breaks 32 V, one made for 60 V breaks 48 V, one with a rating of its own what
// it is said to.
func TestSwitchVoltageAtTheEdge(t *testing.T) {
	const text = `
switches:
  lamp switch: {OF, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp switch, wire: {size: 1 mm²}, returns to: frame}
`
	for _, c := range []struct {
		of          string
		volts, amps float64
		want        finding.Severity
	}{
		{"type: toggle 20 A", 24, 10, none},
		{"type: toggle 20 A", 32, 10, none},
		{"type: toggle 20 A", 32.1, 10, finding.Danger},
		{"type: toggle 20 A", 48, 0.49, none},
		{"type: toggle 20 A", 48, 0.5, finding.Danger},
		{"type: toggle 20 A", 48, 0.51, finding.Danger},
		{"type: battery switch 100 A", 48, 10, none},
		{"type: battery switch 100 A", 60, 10, none},
		{"type: battery switch 100 A", 61, 10, finding.Danger},
		{"type: toggle 20 A, rating: 20 A", 48, 10, none},
		{"rating: 20 A", 48, 10, none},
	} {
		p := passOf(t, switchVoltage, strings.Replace(text, "OF", c.of, 1))
		p.d.SystemV.Value = c.volts
		for _, b := range part(t, p, "lamp switch").Branches {
			for _, s := range p.in.Solutions {
				s.BranchA[b.Index] = c.amps
			}
		}
		says(t, fmt.Sprintf("%s, %g V, %g A", c.of, c.volts, c.amps), p.run(), c.want)
	}
}

// A supervised tap is for a trigger: what draws from it through a fuse, a switch or a
// relay's contact is a fault, a coil and an accessory beside it are not.
func TestLoadOnSupervisedByHand(t *testing.T) {
	const text = `
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 10 A, spare: 6 A, supervised: SUPERVISED}
  other feed: {at: battery tray, hot: key, fuse: 10 A, spare: 6 A, supervised: no}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: FEED, wire: {size: 1 mm², length: 100 mm}}
switches:
  lamp switch: {type: toggle 20 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
relays:
  lamp relay: {form: mini make 12 V, at: rear, fed by: CONTACT, coil: {fed by: COIL, returns to: frame, suppressed by: diode}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, wire: {size: 1 mm²}, returns to: frame}
`
	for _, c := range []struct {
		name, supervised, feed, contact, coil string
		want                                  finding.Severity
	}{
		{"through fuse, switch and contact", "yes", "keyed feed", "lamp switch", "other feed", finding.Fault},
		{"the tap is not supervised", "no", "keyed feed", "lamp switch", "other feed", none},
		{"the coil alone", "yes", "other feed", "lamp switch", "keyed feed", none},
		{"a contact straight at the tap", "yes", "other feed", "keyed feed", "lamp switch", finding.Fault},
		{"beside it", "yes", "other feed", "lamp switch", "other feed", none},
	} {
		p := passOf(t, loadOnSupervised, strings.NewReplacer("SUPERVISED", c.supervised, "FEED", c.feed, "CONTACT", c.contact, "COIL", c.coil).Replace(text))
		says(t, c.name, p.run(), c.want)
	}
}

// A boat's wires are tinned, all of them; on land nothing is asked, and of a type that
// is not known nothing is said.
func TestUntinnedByHand(t *testing.T) {
	const text = `
practice: PRACTICE
wire: {insulation: GENERAL, size: 1 mm²}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {insulation: OWN, size: 1 mm²}, returns to: frame}
`
	const plain, tinned = "ISO 6722 thin wall class B", "tinned marine 105 °C metric"
	for _, c := range []struct {
		practice, general, own, want string
	}{
		{"marine", plain, plain, "3 of 3 wires are not tinned: ISO 6722 thin wall class B"},
		{"marine", tinned, plain, "1 of 3 wires are not tinned: ISO 6722 thin wall class B"},
		{"marine", plain, tinned, "2 of 3 wires are not tinned: ISO 6722 thin wall class B"},
		{"marine", tinned, tinned, ""},
		{"motorcycle", plain, plain, ""},
	} {
		p := passOf(t, untinnedWire, strings.NewReplacer("PRACTICE", c.practice, "GENERAL", c.general, "OWN", c.own).Replace(text))
		said := ""
		for _, f := range p.run() {
			said += f.What
		}
		if said != c.want {
			t.Errorf("%s, %s, %s: %q, want %q", c.practice, c.general, c.own, said, c.want)
		}
	}
	p := passOf(t, untinnedWire, strings.NewReplacer("PRACTICE", "marine", "GENERAL", tinned, "OWN", plain).Replace(text))
	for _, w := range p.c.Wires {
		if !w.Spec.Type.Tinned {
			w.Spec.Type = nil
		}
	}
	says(t, "of no known type", p.run(), none)
}

// A return has a colour of the feeds when a feed has it too, and two others of the
// returns agree on another.
func TestReturnInFeedColourByHand(t *testing.T) {
	const text = `
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm², colour: RD, return colour: BK}
loads:
  one: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {FEED}, returns to: frame, return wire: {ODD}}
  two: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, returns to: frame, return wire: {SECOND}}
  three: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, returns to: frame}
`
	for _, c := range []struct {
		feed, odd, second string
		want              finding.Severity
	}{
		{"", "", "", none},
		{"", "colour: RD", "", finding.Advice},
		{"", "colour: BU", "", none},
		{"colour: BU", "colour: BU", "", finding.Advice},
		{"", "colour: RD", "colour: BN", none}, // no colour is usual
		{"colour: BK", "", "", none},           // the feed is at fault
	} {
		p := passOf(t, returnInFeedColour, strings.NewReplacer("FEED", c.feed, "ODD", c.odd, "SECOND", c.second).Replace(text))
		says(t, fmt.Sprintf("%q, %q, %q", c.feed, c.odd, c.second), p.run(), c.want)
	}
}

// A ring or fork for M5 fits a stud of M5; one size smaller does not go over it, one
// larger sits on its rim. Where the stud is assumed nothing is said.
func TestRingAtItsStud(t *testing.T) {
	const text = `
blocks:
  rear: {type: fuse block 4 way blade C, at: rear, fed by: keyed feed, wire: {size: 1.5 mm², ends: {to: END}}, ways: {1: {fuse: 5 A}, 2: spare, 3: spare, 4: spare}}
fuses: {}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: rear 1, wire: {size: 1 mm²}, returns to: frame}
`
	for end, want := range map[string]finding.Severity{"ring M4": finding.Fault, "fork M4": finding.Fault, "ring M5": none,
		"fork M5": none, "ring M6": finding.Advice, "ring M8": finding.Advice} {
		p := passOf(t, ringBelowStud, strings.Replace(text, "END", end, 1))
		says(t, end, p.run(), want)
		for _, x := range part(t, p, "rear").Terminals {
			x.KindAssumed = true
		}
		says(t, end+", the stud assumed", p.run(), none)
	}
}

// A plug of 18 A with contacts of 10 A keeps that to 70 °C, and half of it, 5 A, at
// 111.25 °C.
func TestPlugInTheHeatByHand(t *testing.T) {
	const text = `
loads:
  tail lamp: {power: 5 W, behaves: resistor, plug: sealed 1.5, at: rear, fed by: lamp fuse, wire: {size: 0.5 mm²}, returns to: frame, return wire: {size: 0.5 mm²}}
`
	for _, c := range []struct {
		ambient, amps float64
		want          int // findings: feed and return
	}{{70, 10, 0}, {70, 10.01, 2}, {111.25, 5, 0}, {111.25, 5.01, 2}, {125, 0.1, 2}} {
		p := passOf(t, plugOverload, text)
		part(t, p, "tail lamp").Place.AmbientC.Value = c.ambient
		for _, w := range p.c.Wires {
			for _, s := range p.in.Solutions {
				s.BranchA[w.Branch.Index] = c.amps
			}
		}
		if got := len(p.run()); got != c.want {
			t.Errorf("%g A at %g °C: %d findings, want %d", c.amps, c.ambient, got, c.want)
		}
	}
}
