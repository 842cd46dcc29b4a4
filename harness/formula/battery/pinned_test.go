package battery_test

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/library"
)

// invented is a chemistry of round figures.
func invented() library.Chemistry {
	return library.Chemistry{Peukert: 1.2, RatedH: 20, OhmAh: 0.4, ChargeShare: 0.2, ChargeEfficiency: 0.8,
		StartReserve: 0.6, OpenCircuitVPerC: 0.001, EmptyOhmRatio: 2, ColdOhmRatio: 4, SelfDischarge: 0.1,
		OpenCircuit: []library.VoltsAt{{Charge: 0, Volts: 11}, {Charge: 1, Volts: 13}},
		CapacityAt: []library.ShareAtC{{Celsius: -20, Share: 0.5}, {Celsius: 0, Share: 0.8},
			{Celsius: 25, Share: 1}, {Celsius: 40, Share: 1.1}},
		Acceptance: []library.AcceptedAt{{Charge: 0.5, Share: 0.4}, {Charge: 1, Share: 0.01}}}
}

func made(c library.Chemistry) *battery.Battery {
	return battery.New(&design.Battery{Chemistry: &c, CapacityAh: given(20)}, 12)
}

// A battery of 20 Ah and 0.4 ΩAh: 20 mΩ full, 40 mΩ empty, four times that at
// −18 °C, ten times the rated at the most. Each constant by a case worked by hand.
func TestByHand(t *testing.T) {
	b := made(invented())
	noLoss := invented()
	noLoss.SelfDischarge = 0
	lossless := made(noLoss)
	perSecond := -math.Log(0.9) / (30 * 86400) // at 20 °C
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"at rest, 10 K over 25 °C", b.OpenCircuitV(1, 35), 13.01},
		{"full, 25 °C", b.Ohm(1, 25), 0.02},
		{"full, hot", b.Ohm(1, 60), 0.02},
		{"empty, 25 °C", b.Ohm(0, 25), 0.04},
		{"full, −18 °C", b.Ohm(1, -18), 0.08},
		{"half, −18 °C", b.Ohm(0.5, -18), 0.12},
		{"empty, −61 °C: 32 times, held at ten", b.Ohm(0, -61), 0.2},
		{"half the rated current gives no bonus", battery.PeukertHours(20, 20, 1.2, 0.5), 40},
		{"the rated current", battery.PeukertHours(20, 20, 1.2, 1), 20},
		{"twice the rated current: 20 · 0.5^1.2", battery.PeukertHours(20, 20, 1.2, 2), 8.705506},
		{"four times the rated current: 20 / 4^0.2", b.AvailableAh(4, 25), 15.157166},
		{"capacity at −40 °C", b.CapacityShare(-40), 0.2},
		{"capacity at −49 °C", b.CapacityShare(-49), 0.065},
		{"capacity at −60 °C, not under 5 %", b.CapacityShare(-60), 0.05},
		{"capacity above the rows", b.CapacityShare(60), 1.1},
		{"reserve at 25 °C", b.StartReserve(25), 0.6},
		{"reserve at 0 °C: 1 − 0.4 · 0.8", b.StartReserve(0), 0.68},
		{"reserve at 40 °C: heat gives no bonus", b.StartReserve(40), 0.6},
		{"empty at 0 °C", b.EmptyCharge(0), 0.2},
		{"empty at 40 °C", b.EmptyCharge(40), 0},
		{"half full takes 0.2 of its capacity at most", b.AcceptedA(0.5, 25), 4},
		{"full takes 0.01", b.AcceptedA(1, 25), 0.2},
		{"charged at 14.4 V from 12 V: 2.4 V / 4 A", b.ChargeOhm(0.5, 25), 0.6},
		{"charged at 14.4 V from 14.4 V: 0.1 V at the least", b.ChargeOhmFrom(14.4, 1, 25), 0.5},
		{"charged from 14.35 V: still 0.1 V", b.ChargeOhmFrom(14.35, 1, 25), 0.5},
		{"charged from 14.2 V", b.ChargeOhmFrom(14.2, 1, 25), 1},
		{"2 A in, four fifths stay", b.Rate(-2, 0.5, 20), 1.6/72000 - perSecond/2},
		{"2 A into a full battery", b.Rate(-2, 1, 20), 0},
		{"2 A into one nearly full", b.Rate(-2, 0.999, 20), 1.6/72000 - 0.999*perSecond},
		{"1 A out", b.Rate(1, 0.5, 20), -1.0/72000 - perSecond/2},
		{"0.02 A for 8 Ah", lossless.DaysBetween(1, 0.6, 0.02, 20), 8 / 0.48},
		{"a tenth by self-discharge at 20 °C", b.DaysBetween(1, 0.9, 0, 20), 30},
		{"twice as fast at 30 °C", b.DaysBetween(1, 0.9, 0, 30), 15},
		{"0.4 of 20 Ah at 1 A", b.HoursBetween(1, 0.6, 1), 8},
	} {
		if !(math.Abs(c.got-c.want) <= 1e-6*math.Abs(c.want)+1e-15) {
			t.Errorf("%s: %.8g, want %.8g", c.name, c.got, c.want)
		}
	}
	if days := b.DaysToNoStart(0, 1, 20); math.Abs(days-math.Log(1/0.616)/(perSecond*86400)) > 1e-6 {
		t.Errorf("no start after %g days without a drain (reserve 1 − 0.4 · 0.96)", days)
	}
}

func TestNoChargeWhenFrozen(t *testing.T) {
	c := invented()
	c.ColdOhmRatio, c.NoChargeBelowC = 1, 0
	b := made(c)
	for celsius, want := range map[float64]float64{-0.1: 0, 0: 4, 0.1: 4} {
		if got := b.MostChargeA(celsius); got != want {
			t.Errorf("%g °C: %g A, want %g A", celsius, got, want)
		}
	}
}
