package purchase_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/workshop/purchase"

	"github.com/google/go-cmp/cmp"
)

const plugged = `fusewright: 1
title: plugs
vehicle: invented
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 12 mΩ}
places: {fork: {ambient: 40 °C, wet: yes}}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}
fuses:
  main: {type: blade C, rating: 10 A, at: fork, fed by: battery, wire: {size: 1.5 mm², length: 100 mm}}
loads:
  lamp: {power: 20 W, plug: sealed 1.5, fed by: main, wire: {size: 1.5 mm², length: 1 m}, returns to: battery negative, return wire: {length: 2 m}}
  siren: {power: 20 W, plug: sealed 2.8, fed by: [main, battery], wire: {length: 1 m}, returns to: [battery negative], return wire: {length: 2 m}}
  horn: {power: 20 W, plug: open 2.8, fed by: main, wire: {length: 1 m}, returns to: battery negative, return wire: {length: 2 m}}
  radio: {power: 20 W, plug: open bullet, fed by: [main, battery], wire: {length: 1 m}, returns to: battery negative, return wire: {length: 2 m}}
`

func billOf(t *testing.T, text string) *purchase.Bill {
	t.Helper()
	c := buildtest.Circuit(t, text)
	return purchase.List(c)
}

// Both halves of every plug are on the bill: a housing pair, a mate for each
// contact, two seals a wire of sealed families.
func TestPlugs(t *testing.T) {
	bill := billOf(t, plugged)
	var got []string
	for _, l := range bill.Lines {
		if l.Group == purchase.Housings || l.Group == purchase.Plugs || l.Group == purchase.Holders {
			got = append(got, fmt.Sprintf("%s: %g + %g, buy %g × %s", l.Item, l.Need, l.Spare, l.Buy, l.SoldAs))
		}
	}
	want := []string{
		"holder for one blade C, sealed: 1 + 0, buy 1 × pcs",
		"both halves of a housing, sealed 1.5, 2 ways: 1 + 0, buy 1 × pcs",
		"both halves of a housing, sealed 2.8, 3 ways: 1 + 0, buy 1 × pcs",
		"both halves of a housing, open 2.8, 2 ways: 1 + 0, buy 1 × pcs",
		"mate of pin 1.5 large: 1 + 1, buy 1 × pack of 100",
		"wire seal for pin 1.5 large: 2 + 1, buy 1 × pack of 100",
		"mate of pin 1.5 medium: 1 + 1, buy 1 × pack of 100",
		"wire seal for pin 1.5 medium: 2 + 1, buy 1 × pack of 100",
		"mate of pin 2.8 small: 3 + 1, buy 1 × pack of 50",
		"wire seal for pin 2.8 small: 6 + 1, buy 1 × pack of 50",
		"mate of receptacle 2.8: 2 + 1, buy 1 × pack of 100",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("lines (-want +got):\n%s", diff)
	}
	missing := strings.Join(bill.Missing, "\n")
	for _, want := range []string{"no housing of open bullet has 3 ways", "accessories' own leads"} {
		if !strings.Contains(missing, want) {
			t.Errorf("not said: %s\n%s", want, missing)
		}
	}
}

// A way left over in a sealed housing is closed in both halves.
func TestBlankingPlugs(t *testing.T) {
	src := strings.Replace(plugged, "plug: sealed 2.8, fed by: [main, battery]", "plug: sealed 10, fed by: main", 1)
	src = strings.Replace(src, "returns to: [battery negative], return wire: {length: 2 m}", "polarised: yes", 1)
	for _, l := range billOf(t, src).Lines {
		if l.Item == "blanking plug, sealed 10" {
			if l.Need != 2 || l.SoldAs != "pack of 10" {
				t.Errorf("%g in %s, want 2 in packs of 10", l.Need, l.SoldAs)
			}
			return
		}
	}
	t.Error("no blanking plug on the bill")
}

// What is fitted is not bought, nor a wire between two such; a new wire at it is, with its
// crimps, the fuse of its way and the harness half of a plug.
func TestFittedIsNotBought(t *testing.T) {
	const text = `fusewright: 1
title: fitted
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 12 mΩ, at: fork}
places: {fork: {ambient: 40 °C, wet: yes}}
wire: {insulation: ISO 6722 thin wall class B, size: 1.5 mm²}
blocks:
  old: {type: fuse block 4 way blade C, at: fork, fed by: battery, fitted: yes, ways: {1: 10 A, 2: 5 A}}
loads:
  horn: {power: 20 W, plug: sealed 1.5, at: fork, fed by: old 1, returns to: battery negative, fitted: yes}
  lamp: {power: 20 W, plug: sealed 1.5, at: fork, fed by: old 2, returns to: battery negative, fitted: yes, wire: {fitted: no}, return wire: {fitted: no}}
`
	var got []string
	bill := billOf(t, text)
	for _, l := range bill.Lines {
		if l.Group != purchase.Consumables {
			got = append(got, fmt.Sprintf("%g %s for %s", l.Need, l.Item, strings.Join(l.For, " ")))
		}
	}
	want := []string{"0.135 ISO 6722 thin wall class B, 1.5 mm², RD for W3", "0.135 ISO 6722 thin wall class B, 1.5 mm², BK for W5",
		"1 blade C 5 A, tan for F2", "1 half of a housing, sealed 1.5, 2 ways for A2", "2 wire seal for pin 1.5 large for W3 W5"}
	for _, w := range want {
		if !strings.Contains(strings.Join(got, "\n"), w) {
			t.Errorf("no %q in\n%s", w, strings.Join(got, "\n"))
		}
	}
	all := strings.Join(got, "\n")
	for _, not := range []string{"W1", "W2", "W4", "horn", "lamp", "blade C 10 A", "block", "mate of"} {
		if strings.Contains(all, not) {
			t.Errorf("%q is on the bill:\n%s", not, all)
		}
	}
	if m := strings.Join(bill.Missing, "\n"); !strings.Contains(m, "already fitted and left out: X1, ") {
		t.Error(m)
	}
}
