package starter_test

import (
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/starter"
	"fusewright/library"
)

// TestLithiumHouse: at a lithium post stand class T alone, small fuses hang behind them, and nothing is found.
func TestLithiumHouse(t *testing.T) {
	for name, a := range map[string]starter.Answers{
		"boat": {Vehicle: "boat", Engine: "diesel", Solar: "120 W", Capacity: "75 Ah", Live: []string{"fridge"},
			Accessories: []string{"VHF radio", "fridge: compressor fridge", "bilge pump", "windlass"}},
		"camper":   {Vehicle: "camper", Live: []string{"fridge"}, Accessories: []string{"fridge: compressor fridge", "inverter", "fresh water pump"}},
		"off-road": {Vehicle: "off-road", Live: []string{"fridge"}, Accessories: []string{"fridge: compressor fridge", "winch small"}},
	} {
		a.Second = "LiFePO4 100 Ah"
		src, err := starter.Write(a, library.Default())
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, line := range strings.Split(string(src), "\n") {
			if strings.Contains(line, " fed by: house,") && !strings.Contains(line, "type: class T,") {
				t.Errorf("%s: straight at the lithium post: %s", name, line)
			}
		}
		d, err := design.Read("new.yaml", src, library.Default())
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		review, err := harness.Assess(d)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, f := range review.Findings {
			t.Errorf("%s: %s: %s: %s", name, f.Severity, f.Rule, f.What)
		}
	}
}

// TestTurnsEitherWay: a windlass heaves up and lets down, by two buttons on deck; a winch reels in and out from the dash.
func TestTurnsEitherWay(t *testing.T) {
	for _, c := range []struct {
		vehicle, accessory string
		want               []string
	}{
		{"boat", "windlass", []string{"windlass up: {form: reversing contactor 150 A,", "windlass down: {other half of: windlass up,",
			"windlass up button: {type: push button 3 A, momentary: yes, at: bow,", "windlass down button: {type: push button 3 A, momentary: yes, at: bow,",
			"fed by: windlass up, returns to: windlass down", "windlass down: {engine: cruise, reversed: [windlass]"}},
		{"quad", "winch small", []string{"winch small in button: {type: sealed rocker 20 A, momentary: yes, at: dash,", "reversed: [winch small]"}},
	} {
		src, err := starter.Write(starter.Answers{Vehicle: c.vehicle, Accessories: []string{c.accessory}}, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range c.want {
			if !strings.Contains(string(src), want) {
				t.Errorf("%s: nothing says %q\n%s", c.vehicle, want, src)
			}
		}
	}
}

// TestLithiumStarts: that a house pack of lithium starts a diesel is said beside it.
func TestLithiumStarts(t *testing.T) {
	for battery, said := range map[string]bool{"LiFePO4": true, "AGM": false} {
		src, err := starter.Write(starter.Answers{Vehicle: "boat", Engine: "diesel", Battery: battery, Capacity: "100 Ah"}, library.Default())
		if err != nil || strings.Contains(string(src), "must bear the starter") != said {
			t.Errorf("%s: said %v, %v", battery, !said, err)
		}
	}
}
