package solve_test

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/solvetest"
)

// The random networks that are held against a reference program, from the same seeds, contain every device in each of
// its states, in a tenth of them at least, or a fiftieth of what is rare.
func TestRandomNetworksHoldEveryDevice(t *testing.T) {
	const networks = 300
	met := map[string]int{}
	for seed := range uint64(networks) {
		c, sit := solvetest.RandomStays(60000 + seed)
		s := solve.Solve(c, sit, solve.Options{})
		if s.Status != solve.Converged {
			continue
		}
		here := map[string]bool{}
		for _, b := range c.Branches {
			for _, state := range statesOf(s, b) {
				here[state] = true
			}
		}
		banks := 0
		for _, p := range c.Parts {
			if _, ok := p.Source.(*design.Bank); ok {
				banks++
			}
		}
		here["several further batteries"], here["a regulator that senses afar"] = banks > 1, c.Design.Charging.Apart()
		for state, there := range here {
			if there {
				met[state]++
			}
		}
	}
	for state, least := range map[string]int{
		"diode conducts": 30, "diode blocks": 30, "diode reversed": 30, "position given": 30, "position not given": 30,
		"sensing relay closed": 30, "sensing relay open": 30, "DC-DC charger gives": 30, "DC-DC charger rests": 6,
		"solar gives, PWM": 30, "solar gives, MPPT": 30, "shore gives": 6, "LiFePO4 gives": 30, "LiFePO4 takes": 6, "lead gives": 30, "lead takes": 30,
		"latch closed": 30, "latch open": 30, "latch's break closed": 30, "delay holds": 6, "motor forwards": 6, "motor backwards": 6,
		"several further batteries": 30, "a regulator that senses afar": 30,
	} {
		if met[state] < least {
			t.Errorf("%s: in %d of %d networks, fewer than %d", state, met[state], networks, least)
		}
	}
}

// statesOf names the device that a branch stands for, and its state.
func statesOf(s *solve.Solution, b *circuit.Branch) (states []string) {
	either := func(is bool, yes, no string) {
		if !is {
			yes = no
		}
		states = append(states, yes)
	}
	amps, k := s.Amps(b), b.Closer
	switch x := b.OfCharger(); {
	case b.Diode != nil && b.Diode.Reversed:
		states = append(states, "diode reversed")
	case b.Diode != nil:
		either(amps > 0.01, "diode conducts", "diode blocks")
	case k != nil && k.Output != "":
		either(s.Closed[b.Index], "position given", "position not given")
	case k != nil && k.Latch != nil && k.Break == nil:
		either(s.Closed[b.Index], "latch closed", "latch open")
	case k != nil && k.Latch != nil && s.Closed[b.Index]:
		states = append(states, "latch's break closed")
	case k != nil && k.Coil != nil && k.Coil.Senses():
		either(s.Closed[b.Index], "sensing relay closed", "sensing relay open")
	case k != nil && k.Coil != nil && k.Latch == nil && s.Closed[b.Index] && !(math.Abs(s.Volts(k.Coil)) > 1):
		states = append(states, "delay holds")
	case b.Kind == circuit.OutputBranch && x.FromBattery():
		either(amps < -0.01, "DC-DC charger gives", "DC-DC charger rests")
	case b.Kind == circuit.OutputBranch && amps < -0.01:
		states = append(states, map[bool]string{true: "solar gives, MPPT"}[x.Type.Tracks]+map[bool]string{true: "solar gives, PWM"}[x.Type.From == "panel" && !x.Type.Tracks]+
			map[bool]string{true: "shore gives"}[x.Type.From == "mains"])
	case b.Kind == circuit.BatteryBranch && b.Part != nil:
		kind := "lead"
		if b.Part.Source.(*design.Bank).Store.Chemistry.Name == "LiFePO4" {
			kind = "LiFePO4"
		}
		either(s.Given(b) > 0, kind+" gives", kind+" takes")
	case b.Name == "winch" && math.Abs(amps) > 0.01:
		either(amps > 0, "motor forwards", "motor backwards")
	}
	return states
}
