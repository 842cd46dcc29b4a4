package cranking_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/spice"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
	"fusewright/harness/proof/referencetest"
	"fusewright/harness/study/cranking"
	"fusewright/library"
)

func of(t *testing.T, snippet string) *cranking.Study { return cranking.Compute(build(t, snippet)) }

func build(t *testing.T, snippet string) *circuit.Circuit {
	t.Helper()
	c := buildtest.Circuit(t, example.Design(snippet))
	return c
}

// machineA is what the machine draws besides, which runs with the engine: 90 W at 14.3 V.
const machineA = 90 / 14.3

// A 12 Ah AGM battery of 12 mΩ, the library's motorcycle starter of 120 A and the machine: 12.8 V full at 25 °C, less the chemistry's share per kelvin and 120 A through the
// resistance as cold as it is. At the first moment the starter takes 2.5 times its current.
func TestPosts(t *testing.T) {
	s := of(t, "")
	agm := library.Default().Chemistry("AGM")
	for i, want := range []struct{ celsius, amps float64 }{{20, 120}, {0, 120 * 1.39}} {
		k := s.Cases[i]
		ohm := 0.012 * math.Pow(agm.ColdOhmRatio, (25-want.celsius)/43)
		posts := agm.OpenCircuitV(1) + (want.celsius-25)*agm.OpenCircuitVPerC - (want.amps+machineA)*ohm
		if math.Abs(k.CurrentA-want.amps) > 0.01 || math.Abs(k.PostsV-posts) > 0.02 {
			t.Errorf("%s: %.2f A, %.3f V; want %.2f A, %.3f V", k.Name, k.CurrentA, k.PostsV, want.amps, posts)
		}
		if first := posts - 1.5*want.amps*ohm; math.Abs(k.FirstV-first) > 0.02 {
			t.Errorf("%s: %.3f V at first, want %.3f V", k.Name, k.FirstV, first)
		}
	}
}

// Without a starter of the design nothing is on in the start that is on for moments: held by hand, directly or by a relay, or up
// to two minutes at once; a relay that holds itself stays. The states with the engine at rest go before those of the running one.
func TestOnInTheStart(t *testing.T) {
	const parts = `
switches:
  button: {type: push button 3 A, momentary: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  start: {type: push button 3 A, momentary: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  toggle: {rating: 10 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
relays:
  held: {form: mini make, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, coil: {fed by: button, returns to: frame, suppressed by: diode}}
  kept: {form: mini make, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, coil: {fed by: [start, kept], returns to: frame, suppressed by: diode}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  horn: {power: 5 W, behaves: resistor, at: rear, fed by: button, wire: {size: 1 mm²}, returns to: frame}
  winch: {power: 5 W, behaves: resistor, at: rear, fed by: held, wire: {size: 1 mm²}, returns to: frame}
  pump: {power: 5 W, behaves: resistor, at: rear, fed by: kept, wire: {size: 1 mm²}, returns to: frame}
  radio: {power: 5 W, on for: 2 min, every: 10 min, own switch: yes, at: rear, fed by: toggle, wire: {size: 1 mm²}, returns to: frame}
  heater: {power: 5 W, on for: 121 s, every: 10 min, at: rear, fed by: toggle, wire: {size: 1 mm²}, returns to: frame}
situations:
`
	for situations, want := range map[string]string{
		"  riding: {engine: cruise, on: all}\n":                                              "tail lamp, pump, heater",
		"  riding: {engine: cruise, on: all}\n  waiting: {key: on, on: [tail lamp, horn]}\n": "tail lamp",
	} {
		k := of(t, parts+situations).Cases[0]
		var loads, on []string
		for _, l := range k.Loads {
			loads = append(loads, l.Part.Name)
		}
		for _, p := range k.On {
			on = append(on, p.Name)
		}
		if got := strings.Join(loads, ", "); got != want || strings.Join(on, ", ") != want {
			t.Errorf("%s: %s, on %s; want %s", situations, got, on, want)
		}
	}
}

// What a starter draws over temperature, at and between the published figures.
func TestRatio(t *testing.T) {
	for celsius, want := range map[float64]float64{-30: 2.55, -20: 2.55, -7.5: 1.825, 5: 1.1, 20: 1, 40: 1} {
		if got := cranking.Ratio(celsius); math.Abs(got-want) > 1e-9 {
			t.Errorf("%g °C: %g, want %g", celsius, got, want)
		}
	}
}

// A starter of the design turns behind its own cables, in the situation that has it on.
func TestOwnStarter(t *testing.T) {
	const text = `
relays:
  starter relay: {form: winch contactor 12 V, at: battery tray, fed by: battery, wire: {size: 25 mm², length: 300 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode}}
loads:
  starter: {type: starter motorcycle, at: rear, fed by: starter relay, wire: {size: 25 mm², length: 1 m}, returns to: battery negative, return wire: {size: 25 mm², length: 1 m}}
situations:
  starting: {on: [starter]}
  riding: {engine: cruise}
`
	s := of(t, text)
	if s.Start.Assumed || len(s.Cases) != 3 {
		t.Fatalf("%+v", s)
	}
	posts := 12.8 - 5*0.003 - 120*0.0125 // about: 12.8 V at 25 °C, 12 mΩ a little colder
	if k := s.Cases[0]; math.Abs(k.PostsV-posts) > 0.15 || len(k.Loads) != 1 || !(k.Loads[0].Volts < k.PostsV-0.1) {
		t.Errorf("%+v, want about %.2f V at the posts", k, posts)
	}
}

// A start of the design's own starter leaves out what is on in other situations alone.
func TestOnlyWhatIsOnAtTheStart(t *testing.T) {
	s := of(t, `
relays:
  starter relay: {form: winch contactor 12 V, at: battery tray, fed by: battery, wire: {size: 25 mm², length: 300 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode}}
loads:
  starter: {type: starter motorcycle, at: rear, fed by: starter relay, wire: {size: 25 mm², length: 1 m}, returns to: battery negative, return wire: {size: 25 mm², length: 1 m}}
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, own switch: true, wire: {size: 1 mm²}, returns to: frame}
situations:
  starting: {on: [starter]}
  riding: {engine: cruise, on: [tail lamp]}
`)
	for _, k := range s.Cases {
		if len(k.Loads) != 1 || k.Loads[0].Part.Name != "starter" {
			t.Errorf("%s: %d loads", k.Name, len(k.Loads))
		}
	}
}

// Two batteries of 6 V and 6 mΩ each are one of 12 mΩ but for their link: 1 m of 1 mm² has 18.5 mΩ at 20 °C, its ends up to a few more, and
// 126.3 A through it.
func TestLinkBetweenBatteries(t *testing.T) {
	one := of(t, "").Cases[0]
	two := of(t, "battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 6 mΩ, in series: 2, link: {size: 1 mm², length: 1 m}, at: battery tray}\n").Cases[0]
	if lost := one.PostsV - two.PostsV; !(lost > 0.0185*(120+machineA) && lost < 0.0185*(120+machineA)+0.5) {
		t.Errorf("the link takes %.3f V", lost)
	}
}

// Nothing is said of a system for which the library has no starter.
func TestNoStarterForTheSystem(t *testing.T) {
	if s := of(t, "system: 48 V\n"); len(s.Cases) != 0 {
		t.Errorf("%+v", s)
	}
}

// The voltages against the reference simulator: the circuit's own netlist with the full
// battery behind its resistance, and the starter as a current source written between the
// posts.
func TestAgainstNgspice(t *testing.T) {
	program := referencetest.Program(t, "ngspice")
	const lamp = `
loads:
  tail lamp: {power: 40 W, behaves: constant power, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`
	c := build(t, lamp)
	k := cranking.Compute(c).Cases[1]
	bank := battery.Of(c.Design)
	situation := *c.Design.Situations[1]
	for _, s := range c.Design.Situations {
		if circuit.Running(s) {
			situation = *s
		}
	}
	situation.EngineRPM = 0
	var deck bytes.Buffer
	opt := solve.Options{NoCharging: true, BatteryV: bank.OpenCircuitV(1, k.CelsiusC), BatteryOhm: bank.Ohm(1, k.CelsiusC)}
	if err := spice.Write(&deck, c, &situation, opt); err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(c.Branches, func(b *circuit.Branch) bool { return b.Kind == circuit.BatteryBranch })
	plus := fmt.Sprintf("n%d", c.Branches[i].A.Index)
	dir := t.TempDir()
	file, out := filepath.Join(dir, "start.cir"), filepath.Join(dir, "out")
	text := strings.Replace(deck.String(), ".op\n.end\n", fmt.Sprintf("ISTART %s 0 %.9g\n.control\nop\nprint v(%s) > %s\nquit\n.endc\n.end\n", plus, k.CurrentA+machineA, plus, out), 1)
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	if said, err := exec.Command(program, "-b", "-n", file).CombinedOutput(); err != nil {
		t.Logf("%s", said)
	}
	got, _ := os.ReadFile(out)
	_, number, _ := strings.Cut(string(got), "=")
	v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
	if err != nil || math.Abs(v-k.PostsV) > 1e-3 {
		t.Errorf("the simulator has %q at the posts, the study %.4f V", got, k.PostsV)
	}
}
