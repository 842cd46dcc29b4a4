package cranking_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/spice"
	"fusewright/harness/proof/referencetest"
	"fusewright/harness/study/cranking"
)

// linked is a house battery behind a relay: voltage-sensing, or pulled in by the key.
const linked = `
batteries:
  house: {chemistry: LiFePO4, capacity: 14 Ah, resistance: 12 mΩ, at: rear, fed by: house end, wire: {size: 25 mm², length: 100 mm}, returns to: frame, return wire: {size: 25 mm², length: 100 mm}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  start end: {type: class T, rating: 150 A, at: battery tray, fed by: battery, wire: {size: 25 mm², length: 100 mm}}
  house end: {type: class T, rating: 150 A, at: rear, fed by: charging relay, wire: {size: 25 mm²}}
relays:
  charging relay: {form: voltage-sensing relay, at: battery tray, fed by: start end, wire: {size: 25 mm², length: 100 mm}, coil: {returns to: frame, return wire: {size: 1 mm²}}}
`

var keyed = strings.NewReplacer("voltage-sensing relay", "contactor 85 A", "coil: {returns", "coil: {fed by: lamp fuse, wire: {size: 1 mm²}, suppressed by: diode, returns")

// linkOhm is the way from post to post over the link of the house battery.
func linkOhm(c *circuit.Circuit) (ohm float64) {
	for _, p := range c.Parts {
		if p.Kind == circuit.Bank {
			link := c.Links(p.Terminal("+").Node)[0]
			for _, b := range append(c.MainFeed(link.A).Branches, link) {
				ohm += b.Ohm
			}
			for _, b := range c.MainReturn(p.Terminal("-").Node, c.Negative()).Branches {
				ohm += b.Ohm
			}
		}
	}
	return ohm
}

// Two batteries and a starter at the post of the first: its posts have (E1/R1 + E2/R2 − I) / (1/R1 + 1/R2). AGM rests at 12.8 V and 12 mΩ at 25 °C, somewhat less and more at 20 °C;
// lithium at 13.6 V behind 12 mΩ and 4.6 mΩ of link and frame: (12.79/0.0124 + 13.6/0.0166 − 126.3) / (1/0.0124 + 1/0.0166) = 12.24 V, with 82 A from the house battery.
// The relay that senses has let go by then but for its delay; one that the key pulls in holds.
func TestStartOverLink(t *testing.T) {
	for _, how := range []struct {
		name, text string
		held       bool
	}{{"sensing", linked, true}, {"by the key", keyed.Replace(linked), false}} {
		c := build(t, how.text)
		s := cranking.Compute(c)
		for i, k := range s.Cases {
			house := k.Helpers[0]
			way := 0.012 + linkOhm(c)
			emf := library13V6
			parallel := 1/k.Ohm + 1/way
			want := (k.RestV/k.Ohm + emf/way - k.CurrentA - machineA) / parallel
			gives := (emf - want) / way
			posts, a := k.PostsV, house.GivesA
			if how.held {
				posts, a = k.HeldV, house.HeldA
				if !(k.PostsV < want-0.2) || house.GivesA != 0 {
					t.Errorf("%s, %s: with the relay open %.3f V, %.2f A from the house battery", how.name, k.Name, k.PostsV, house.GivesA)
				}
			} else if !math.IsNaN(k.HeldV) || len(s.Held) > 0 || len(s.Relays()) > 0 {
				t.Errorf("%s: something is held: %+v", how.name, k)
			}
			if math.Abs(posts-want) > 0.02 || math.Abs(a-gives) > 1 {
				t.Errorf("%s, %s: %.3f V, %.2f A from the house battery; want %.3f V, %.2f A", how.name, k.Name, posts, a, want, gives)
			}
			if i == 0 && (math.Abs(posts-12.24) > 0.05 || math.Abs(a-82) > 2) {
				t.Errorf("%s: %.3f V and %.2f A are not those worked by hand", how.name, posts, a)
			}
		}
	}
}

// library13V6 is a full lithium battery at rest.
const library13V6 = 13.6

// The same against the reference simulator, by the netlist with the relay held closed and the starter drawn at the posts.
func TestStartOverLinkAgainstNgspice(t *testing.T) {
	program := referencetest.Program(t, "ngspice")
	c := build(t, linked)
	for _, k := range cranking.Compute(c).Cases {
		situation := *c.Design.Situations[0]
		for _, s := range c.Design.Situations {
			if circuit.Running(s) {
				situation = *s
			}
		}
		situation.EngineRPM = 0
		link := c.Links(circuitBank(c).Terminal("+").Node)[0]
		opt := solve.Options{NoCharging: true, BatteryV: k.RestV, BatteryOhm: k.Ohm, Changes: []solve.Change{solve.CloseBranch(c.Sensing(link)[0])},
			Drawn: []solve.Draw{{Node: c.Positive(), Amps: k.CurrentA + machineA}}}
		var deck bytes.Buffer
		if err := spice.Write(&deck, c, &situation, opt); err != nil {
			t.Fatal(err)
		}
		dir := t.TempDir()
		file, out := filepath.Join(dir, "start.cir"), filepath.Join(dir, "out")
		text := strings.Replace(deck.String(), ".op\n.end\n", fmt.Sprintf(".control\nop\nprint v(n%d) > %s\nquit\n.endc\n.end\n", c.Positive().Index, out), 1)
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if said, err := exec.Command(program, "-b", "-n", file).CombinedOutput(); err != nil {
			t.Logf("%s", said)
		}
		got, _ := os.ReadFile(out)
		_, number, _ := strings.Cut(string(got), "=")
		v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
		if err != nil || math.Abs(v-k.HeldV) > 1e-3 {
			t.Errorf("%s: the simulator has %q at the posts, the study %.4f V", k.Name, got, k.HeldV)
		}
	}
}

func circuitBank(c *circuit.Circuit) *circuit.Part {
	for _, p := range c.Parts {
		if p.Kind == circuit.Bank {
			return p
		}
	}
	return nil
}
