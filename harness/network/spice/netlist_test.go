package spice_test

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/spice"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/solvetest"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden files anew")

// One branch of each law.
func TestNetlistGolden(t *testing.T) {
	b := solvetest.New()
	plus, coil, out := b.Node("battery +"), b.Node("K1:86"), b.Node("K1:87")
	b.Battery(plus, 0.010)
	b.C.Design.Battery.CapacityAh = solvetest.Given(12)
	b.Charger(plus, 14.4, 20)
	b.Wire("W1", plus, coil, 1, 0.75)
	b.Relay("K1", coil, b.Ground(), plus, out, false)
	for _, how := range design.Behaviours {
		b.Load(string(how)+"\nR9 1 0 1", out, b.Ground(), how, 24, 12)
	}
	var got, again bytes.Buffer
	for _, w := range []*bytes.Buffer{&got, &again} {
		if err := spice.Write(w, b.C, solvetest.Situation(2000), solve.Options{}); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(got.Bytes(), again.Bytes()) {
		t.Error("two netlists of one circuit differ")
	}
	const golden = "testdata/laws.golden"
	if *update {
		if err := os.WriteFile(golden, got.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want := buildtest.File(t, golden)
	if diff := cmp.Diff(string(want), got.String()); diff != "" {
		t.Error(diff)
	}
}

func TestChatteringHasNoNetlist(t *testing.T) {
	b := solvetest.New()
	plus, coil := b.Node("+"), b.Node("86")
	b.Battery(plus, 0.01)
	b.Relay("K1", coil, b.Ground(), plus, coil, true)
	err := spice.Write(&bytes.Buffer{}, b.C, solvetest.Situation(0), solve.Options{})
	if !errors.Is(err, spice.ErrUnsettled) {
		t.Errorf("error %v", err)
	}
}

// The contact of a relay that latches stands as its last pulse left it: the netlist says so,
// and a simulator that pulls it by its coil would tell otherwise.
func TestLatchIsSaid(t *testing.T) {
	c := buildtest.Circuit(t, `fusewright: 1
title: latch
system: 12 V
practice: camper
battery: {chemistry: AGM, capacity: 60 Ah, at: tray}
places: {tray: {ambient: 30 °C}}
fuses: {main: {type: blade C, rating: 10 A, at: tray, fed by: battery}}
switches: {push: {rating: 10 A, momentary: yes, at: tray, fed by: main}}
relays: {cabin: {form: impulse relay, at: tray, fed by: main, coil: {fed by: push, returns to: battery negative, suppressed by: diode}}}
loads: {lamp: {power: 5 W, at: tray, fed by: cabin, returns to: battery negative}}
situations: {lit: {on: [lamp]}, dark: {}}
`)
	d := c.Design
	for k, want := range []string{"* K1:30-87: closed as the last pulse left it", "* K1:30-87: open as the last pulse left it"} {
		var got bytes.Buffer
		if err := spice.Write(&got, c, d.Situations[k], solve.Options{}); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(got.String(), want) {
			t.Errorf("%s: no %q in\n%s", d.Situations[k].Name, want, got.String())
		}
	}
}
