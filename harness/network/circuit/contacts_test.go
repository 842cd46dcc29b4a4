package circuit_test

import (
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"

	"github.com/google/go-cmp/cmp"
)

func TestContacts(t *testing.T) {
	c := read(t, "testdata/small.yaml")
	// The switch of the relay's coil is closed for the lamps that the relay
	// feeds; the socket sleeps.
	want := map[string][]string{
		"parked": {"K1:30-87a", "X3:standby switch"},
		"night":  {"X1:key", "K1:30-87a", "S1", "E3:switch", "X3:standby switch"},
	}
	vehicle := map[string][]string{"parked": {"A1:clock"}, "night": {"A1:ignition", "A1:clock"}}
	for _, s := range c.Design.Situations {
		t.Run(s.Name, func(t *testing.T) {
			closed, present := circuit.Contacts(c, s), circuit.Present(c, s)
			var got, draw []string
			for i, b := range c.Branches {
				if closed[i] {
					got = append(got, b.Name)
				}
				if present[i] && b.Load.Vehicle != nil {
					draw = append(draw, b.Name)
				}
				if present[i] != (b.Load != nil) && (b.Load == nil || b.Load.Vehicle == nil) {
					t.Errorf("accessory %s present: %t", b.Name, present[i])
				}
			}
			if diff := cmp.Diff(want[s.Name], got); diff != "" {
				t.Errorf("closed (-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(vehicle[s.Name], draw); diff != "" {
				t.Errorf("vehicle loads (-want +got):\n%s", diff)
			}
		})
	}
}

func TestNeededBy(t *testing.T) {
	c := read(t, "testdata/small.yaml")
	got := names(c.NeededBy(branch(t, c, "E1")))
	if diff := cmp.Diff([]string{"X1:key", "K1:30-87", "S1"}, got); diff != "" {
		t.Errorf("contacts (-want +got):\n%s", diff)
	}
	if s := c.SwitchesFor(branch(t, c, "E1")); len(s) != 1 || s[0].Name != "lamp switch" {
		t.Errorf("switches: %v", s)
	}
	if s := c.SwitchesFor(branch(t, c, "X3")); len(s) != 0 {
		t.Errorf("the socket needs %v", s)
	}
}

// Which of two feeds a load is on by is what the situation has closed; without a word it is
// both, and a switch before both says nothing.
func TestClosedSaysWhichFeed(t *testing.T) {
	const two = start + `
relays:
  helper: {form: mini make, at: a, fed by: isolator, coil: {fed by: button, returns to: battery negative}}
switches:
  isolator: {rating: 50 A, at: a, fed by: battery}
  float: {type: float switch 15 A, at: a, fed by: isolator}
  hand: {rating: 10 A, at: a, fed by: isolator}
  button: {rating: 1 A, at: a, fed by: isolator}
loads:
  pump: {current: 3 A, rated at: 12 V, behaves: motor, at: a, fed by: [float, hand], returns to: stud}
  blower: {current: 3 A, rated at: 12 V, behaves: motor, at: a, fed by: BLOWER, returns to: stud}
situations: {s: {on: [ON], closed: [CLOSED]}}
`
	for _, tt := range []struct{ name, blower, on, closed, want string }{
		{"none: both", "helper", "pump", "", "isolator float hand"},
		{"the float", "helper", "pump", "float", "isolator float"},
		{"the hand switch", "helper", "pump", "hand", "isolator hand"},
		{"both", "helper", "pump", "float, hand", "isolator float hand"},
		{"what stands before both", "helper", "pump", "isolator", "isolator float hand"},
		{"another load needs the hand switch", "hand", "pump, blower", "float", "isolator float hand"},
		{"the coil's button is the feed by the relay", "[helper, hand]", "blower", "button", "isolator button"},
		{"the relay's feed is not the one", "[helper, hand]", "blower", "hand", "isolator hand"},
	} {
		c := build(t, "t.yaml", strings.NewReplacer("BLOWER", tt.blower, "ON", tt.on, "CLOSED", tt.closed).Replace(two))
		var got []string
		for i, on := range circuit.Contacts(c, c.Design.Situations[0]) {
			if on && c.Branches[i].Closer.Switch != nil {
				got = append(got, c.Branches[i].Part.Name)
			}
		}
		if s := strings.Join(got, " "); s != tt.want {
			t.Errorf("%s: closed %q, want %q", tt.name, s, tt.want)
		}
	}
}

// A switch that is the key follows the key; one that stays live is a lock beside it, closed
// when a load that is on needs it.
func TestKeySwitch(t *testing.T) {
	const keyed = start + `
switches:
  key: {type: key switch 10 A, at: a, fed by: battery}
  lock: {type: key switch 10 A, at: a, fed by: battery, stays live: "the box is opened with the key off"}
loads:
  lamp: {power: 5 W, behaves: resistor, at: a, fed by: key, returns to: stud}
  box: {power: 5 W, behaves: resistor, at: a, fed by: lock, returns to: stud}
`
	c := build(t, "t.yaml", keyed)
	lamp, box := c.Design.Loads[0], c.Design.Loads[1]
	for _, s := range []struct {
		key  design.KeyState
		on   []*design.Load
		want [2]bool
	}{
		{design.KeyOn, nil, [2]bool{true, false}}, {design.KeyOff, nil, [2]bool{false, false}},
		{design.KeyOff, []*design.Load{lamp, box}, [2]bool{false, true}}, {design.KeyOn, []*design.Load{box}, [2]bool{true, true}},
	} {
		closed := circuit.Contacts(c, &design.Situation{Key: s.key, On: s.on})
		if got := [2]bool{closed[branch(t, c, "S1").Index], closed[branch(t, c, "S2").Index]}; got != s.want {
			t.Errorf("key %s, %d on: %v, want %v", s.key, len(s.on), got, s.want)
		}
	}
	if n := len(c.SwitchesFor(branch(t, c, "E1"))) + 10*len(c.SwitchesFor(branch(t, c, "E2"))); n != 10 {
		t.Errorf("switches by hand: %d", n)
	}
}

// hot is a relay whose coil is fed from a permanent feed over a switch, a break
// contact that is live at rest, and a key feed.
const hot = start + `
taps: {keyed feed: {at: a, hot: key, fuse: 5 A}}
switches: {hand: {rating: 5 A, at: a, fed by: battery}}
relays: {r: {form: mini changeover, at: a, fed by: battery, coil: {fed by: hand, returns to: stud}}}
loads:
  behind make: {power: 5 W, behaves: resistor, at: a, fed by: r 87, returns to: stud}
  behind break: {power: 5 W, behaves: resistor, at: a, fed by: r 87a, returns to: stud}
  behind key: {power: 5 W, behaves: resistor, at: a, fed by: keyed feed, returns to: stud}
`

func TestLiveKeyOff(t *testing.T) {
	c := build(t, "t.yaml", hot)
	tests := []struct {
		load            string
		whatever, might bool
	}{
		{"behind make", false, true},
		{"behind break", true, true},
		{"behind key", false, false},
	}
	whatever, might := c.LiveKeyOff(false), c.LiveKeyOff(true)
	for _, test := range tests {
		t.Run(test.load, func(t *testing.T) {
			i := node(t, c, test.load, "+").Index
			if whatever[i] != test.whatever || might[i] != test.might {
				t.Errorf("live whatever one does: %t, want %t; might be live: %t, want %t", whatever[i],
					test.whatever, might[i], test.might)
			}
		})
	}
	if whatever[0] || might[0] {
		t.Error("battery negative is live")
	}
}

func TestReach(t *testing.T) {
	c := build(t, "t.yaml", hot)
	open := circuit.Reach(c, func(*circuit.Branch) bool { return false }, node(t, c, "behind make", "-"))
	if !open[0] || open[1] || open[node(t, c, "behind make", "+").Index] {
		t.Error("a return reaches battery negative over the frame, and nothing through its load")
	}
	if !open[node(t, c, "behind key", "-").Index] {
		t.Error("a return reaches the other loads of its ground")
	}
}
