package fault

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
)

// TestInTurnByHand: a short behind two feeds of one battery side by side. Until the small fuse opens each leg carries by its
// resistance; then the large one carries all, for what is left of its time: t = t5(I5) + (1 − t5(I5)/t15(I15))·t15(I). The leg of the
// small fuse is heated until that opens, and the wire behind the joint by both, one after the other.
func TestInTurnByHand(t *testing.T) {
	c := buildtest.Circuit(t, []byte(`fusewright: 1
title: two legs
vehicle: invented
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 60 Ah, resistance: 6 mΩ, at: box}
places: {box: {ambient: 30 °C}}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}
fuses:
  small: {type: blade C, rating: 5 A, at: box, fed by: battery, wire: {length: 1 m}}
  large: {type: blade C, rating: 15 A, at: box, fed by: battery, wire: {length: 1 m}}
splices:
  bar: {at: box, fed by: {small: {size: 1 mm², length: 8 m}, large: {size: 1 mm², length: 8 m}}}
loads:
  lamp: {power: 20 W, behaves: resistor, at: box, fed by: bar, wire: {length: 2 m}, returns to: battery negative, return wire: {length: 2 m}}
`))
	s := Compute(c)
	leg := map[string]float64{}
	fuse := map[string]*circuit.Branch{}
	var lamp *circuit.Wire
	for _, b := range c.Branches {
		switch {
		case b.Kind == circuit.FuseBranch:
			fuse[b.Part.Name] = b
			leg[b.Part.Name] += b.Ohm
		case b.Wire != nil && b.Wire.To.Part.Name == "lamp":
			lamp = b.Wire
		case b.Wire != nil && b.Feeds():
			for name := range map[string]bool{"small": true, "large": true} {
				if strings.Contains(b.Wire.Text(), name) {
					leg[name] += b.Ohm
				}
			}
		}
	}
	opt := s.Options(Net{State: Strong})
	r := s.OfWire(lamp)[0].Results[Strong] // at the bar
	v := opt.BatteryV / (1 + opt.BatteryOhm*(1/leg["small"]+1/leg["large"]))
	i5, i15, all := v/leg["small"], v/leg["large"], opt.BatteryV/(opt.BatteryOhm+leg["large"])
	slow := func(name string, amps float64) float64 {
		d, _ := s.Device(fuse[name])
		return d.Open(amps).SlowS
	}
	first := slow("small", i5)
	want := first + (1-first/slow("large", i15))*slow("large", all)
	if math.Abs(r.CurrentA-(i5+i15)) > 0.01*r.CurrentA {
		t.Errorf("%.2f A, by hand %.2f A + %.2f A", r.CurrentA, i5, i15)
	}
	if r.Out != nil || (r.Device != fuse["large"] || len(r.Before) != 1 || r.Before[0] != fuse["small"] || math.Abs(r.SlowS-want) > 0.02*want) {
		t.Errorf("%v opens after %.4g s, after %v; by hand large after %.4g s, small after %.4g s", r.Device.Part.Name, r.SlowS, r.Before, want, first)
	}
	if math.Abs(r.DeviceA-all) > 0.01*all {
		t.Errorf("%.2f A through the last, by hand %.2f A", r.DeviceA, all)
	}
	for _, x := range r.Through { // the most that each ever carries: all of it, with the other out
		alone := opt.BatteryV / (opt.BatteryOhm + leg[x.Device.Part.Name])
		if math.Abs(x.Amps-alone) > 0.01*alone {
			t.Errorf("%s carries %.2f A at most, by hand %.2f A", x.Device.Part.Name, x.Amps, alone)
		}
	}
}
