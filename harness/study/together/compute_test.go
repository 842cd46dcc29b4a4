package together_test

import (
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/together"
)

func plan(t *testing.T, src []byte) (*together.Plan, *budget.Budget) {
	t.Helper()
	c := buildtest.Circuit(t, src)
	sols := solve.All(c, solve.Options{})
	b := budget.Compute(c, sols)
	return together.Compute(c, sols, b), b
}

const byHand = `fusewright: 1
title: together
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 10 mΩ}
charging: {regulated: 14 V, output: {1000 rpm: 16.2 A, 4000 rpm: 25 A}, idle: 1000 rpm, cruise: 4000 rpm}
vehicle loads: {machine: 112 W}
wire: {insulation: ISO 6722 thin wall class B, size: 6 mm²}
fuses:
  f: {type: blade C, rating: 30 A, fed by: battery, wire: {length: 20 mm}}
loads:
  vest: {power: 56 W, rated at: 14 V, behaves: constant power, symbol: heater, own switch: yes, fed by: f, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
  lamp: {power: 70 W, rated at: 14 V, behaves: constant power, symbol: lamp, critical: yes, own switch: yes, fed by: f, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
  pump: {power: 84 W, rated at: 14 V, behaves: constant power, symbol: pump, duty: 50 %, own switch: yes, fed by: f, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
situations:
  waiting: {engine: idle, on: all}
  fast: {engine: cruise, on: [lamp]}
  off: {key: off}
`

// TestComputeByHand: 16.2 A less 8 A of the machine leave 8.2 A at idle for a lamp
// of 5 A, a vest of 4 A and a pump of 6 A half of the time (3 A). Two fit, but not
// lamp and vest. With all on 3.8 A are missing, and the vest goes. At cruise all
// fit. The wires' drop adds 0.4 %.
func TestComputeByHand(t *testing.T) {
	p, _ := plan(t, []byte(byHand))
	if p.Why != "" || len(p.Items) != 3 || len(p.Choices) != 4 {
		t.Fatalf("%d items, %d choices, %q", len(p.Items), len(p.Choices), p.Why)
	}
	for i, want := range []struct {
		name string
		amps float64
	}{{"lamp", 5}, {"pump", 3}, {"vest", 4}} {
		if it := p.Items[i]; it.Name != want.name || math.Abs(it.CurrentA-want.amps) > 0.005*want.amps {
			t.Errorf("item %d: %s %.3f A, want %s %.0f A", i, it.Name, it.CurrentA, want.name, want.amps)
		}
	}
	idle, cruise, waiting, fast := p.Choices[0], p.Choices[1], p.Choices[2], p.Choices[3]
	var got [][]string
	for _, s := range idle.Sets {
		got = append(got, names(p.Members(s)))
	}
	want := [][]string{{"lamp", "pump"}, {"pump", "vest"}}
	if !slices.EqualFunc(got, want, slices.Equal) || !idle.Complete {
		t.Errorf("idle: %v, want %v", got, want)
	}
	if len(cruise.Sets) != 1 || cruise.Sets[0].Len() != 3 {
		t.Errorf("cruise: %b", cruise.Sets)
	}
	if math.Abs(waiting.OverdrawA-3.8) > 0.06 || !slices.Equal(names(waiting.SwitchOff), []string{"vest"}) {
		t.Errorf("waiting: %.3f A over, off %v", waiting.OverdrawA, names(waiting.SwitchOff))
	}
	if fast.OverdrawA != 0 || fast.SwitchOff != nil || !slices.Equal(names(fast.On), []string{"lamp"}) {
		t.Errorf("fast: %+v", fast)
	}
}

func names(items []*together.Item) []string {
	var out []string
	for _, i := range items {
		out = append(out, i.Name)
	}
	return out
}

// TestDemosAgree: in each demo design, a situation whose loads are inside one of
// its sets has spare current, one whose loads are not has none (but for the
// little that drops in wires move), and what is to go off covers the overdraw.
func TestDemosAgree(t *testing.T) {
	files, err := filepath.Glob("../../../designs/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no demo designs: %v", err)
	}
	for _, file := range files {
		src := buildtest.File(t, file)
		p, b := plan(t, src)
		for _, c := range p.Choices {
			if c.Situation == nil {
				continue
			}
			onA, inside := 0.0, false
			var set together.Set
			for i, item := range p.Items {
				if slices.Contains(c.On, item) {
					onA += item.CurrentA
					set |= 1 << i
				}
			}
			for _, s := range c.Sets {
				inside = inside || s&set == set
			}
			spare := spareOf(b, c.Situation)
			if math.Abs(spare-(c.CapacityA-onA)) > 0.35 { // coils of all relays, and wire drop
				t.Errorf("%s, %s: budget spares %.3f A, the sets %.3f A", file, c.Name, spare, c.CapacityA-onA)
			}
			if inside != (c.CapacityA-onA >= -1e-6) {
				t.Errorf("%s, %s: inside a set %v with %.3f A left", file, c.Name, inside, c.CapacityA-onA)
			}
			covered := c.UncoveredA
			for _, off := range c.SwitchOff {
				covered += off.CurrentA
			}
			if covered < c.OverdrawA-1e-6 {
				t.Errorf("%s, %s: %.3f A of %.3f A covered", file, c.Name, covered, c.OverdrawA)
			}
		}
	}
}

func spareOf(b *budget.Budget, s *design.Situation) float64 {
	for _, l := range b.Lines {
		if l.Situation == s {
			return l.SpareA
		}
	}
	return math.NaN()
}

func TestNoCharging(t *testing.T) {
	p := together.Compute(&circuit.Circuit{Design: &design.Design{}}, nil, &budget.Budget{})
	if p.Why == "" || p.Choices != nil {
		t.Errorf("%+v", p)
	}
}

// A situation called idle that is idle says all; it does not stand twice.
func TestIdleStandsOnce(t *testing.T) {
	p, _ := plan(t, []byte(strings.Replace(byHand, "  waiting:", "  idle:", 1)))
	var names []string
	for _, c := range p.Choices {
		names = append(names, c.Name)
	}
	if want := []string{"cruise", "idle", "fast"}; !slices.Equal(names, want) {
		t.Errorf("choices %q, want %q", names, want)
	}
}
