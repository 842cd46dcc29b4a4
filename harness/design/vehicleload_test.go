package design

import (
	"strings"
	"testing"

	"fusewright/library"
)

const inTraffic = heading + `
charging: {regulated: 14 V, output: {1000 rpm: 10 A, 4000 rpm: 25 A}, idle: 1000 rpm, cruise: 4000 rpm}
vehicle loads:
  fan: {power: 60 W, when: [Traffic, climb]}
  pump: {power: 10 W, when: climb}
  clock: {current: 2 mA, when: always}
  engine: {power: 50 W}
situations:
  traffic: {engine: idle, on: none}
  climb: {engine: cruise, on: none}
rides:
  day:
    legs:
      - {lasts: 5 min, situation: climb}
      - {lasts: 5 min, situation: traffic, engine: 2000 rpm}
      - {lasts: 5 min, situation: climb, key: off}
      - {lasts: 5 min, engine: idle}
`

// A vehicle load draws by the key or in the situations it names; a leg takes what it
// does not say from the situation it is like.
func TestVehicleLoadsOfSituations(t *testing.T) {
	d := mustRead(t, inTraffic)
	for i, want := range []struct {
		when When
		in   string
	}{{"", "traffic, climb"}, {"", "climb"}, {WhenAlways, ""}, {WhenRunning, ""}} {
		l := d.VehicleLoads[i]
		var in []string
		for _, s := range l.In {
			in = append(in, s.Name)
		}
		if got := strings.Join(in, ", "); got != want.in || l.When != want.when {
			t.Errorf("%s: in %q, when %q, want %q and %q", l.Name, got, l.When, want.in, want.when)
		}
	}
	for i, want := range []struct {
		as  *Situation
		key KeyState
		rpm float64
	}{{d.Situations[1], KeyOn, 4000}, {d.Situations[0], KeyOn, 2000}, {d.Situations[1], KeyOff, 0}, {nil, KeyOn, 1000}} {
		if l := d.Rides[0].Legs[i]; l.As != want.as || l.Key != want.key || l.EngineRPM != want.rpm {
			t.Errorf("leg %d: %+v, want %+v", i+1, l, want)
		}
	}
}

// What a vehicle load or a leg may not name.
func TestSituationsThatAreNot(t *testing.T) {
	for _, c := range []struct{ old, put, want string }{
		{"when: climb", "when: clim", `vehicle load "pump": no situation is named "clim"`},
		{"when: climb", "when: runing", `did you mean "running"?`},
		{"[Traffic, climb]", "[climb, climb]", `vehicle load "fan": "climb" is named twice`},
		{"situation: traffic,", "situation: jam,", `no situation is named "jam"`},
	} {
		_, err := Read("x.yaml", []byte(strings.Replace(inTraffic, c.old, c.put, 1)), library.Default())
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s", c.put, err, c.want)
		}
	}
}
