package harness

import (
	"reflect"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
)

// everyKind has a part of each kind.
const everyKind = `fusewright: 1
title: every kind of part
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, at: tray}
places: {tray: {ambient: 40 °C}, head: {ambient: 40 °C}, bar: {ambient: 40 °C}}
runs: [{from: tray, to: head, length: 500 mm}, {from: head, to: bar, length: 400 mm}]
wire: {size: 1 mm², insulation: ISO 6722 thin wall class B}
taps: {pilot feed: {at: tray, hot: key, fuse: 10 A, spare: 300 mA, supervised: no}}
batteries: {house: {chemistry: AGM, capacity: 12 Ah, at: bar, fed by: [main, booster, roof], returns to: battery negative}}
fuses: {main: {rating: 20 A, at: tray, fed by: battery}}
relays: {keyed: {at: tray, fed by: main, coil: {fed by: pilot feed, returns to: stud, suppressed by: diode}}}
blocks: {rear: {way limit: 20 A, total limit: 40 A, at: tray, fed by: keyed, ways: {1: 10 A}}}
switches: {lamps: {rating: 10 A, at: bar, fed by: rear 1}}
diodes: {apart: {type: silicon diode 3 A, at: bar, fed by: lamps}}
resistors: {dropper: {resistance: 1 Ω, rating: 20 W, at: bar, fed by: lamps}}
chargers: {booster: {type: DC-DC charger 10 A, at: bar, fed by: main, returns to: bus}, roof: {type: PWM controller 10 A, panel: 60 W, at: bar}}
splices: {pair: {at: bar, fed by: apart}}
partings: {front: {family: sealed 1.5, at: head}}
grounds: {stud: {at: tray, limit: 30 A}, bus: {kind: ground block, at: bar, returns to: stud}}
loads: {lamp: {power: 10 W, at: bar, fed by: [pair, dropper], returns to: bus}}
`

// TestEveryPartKindIsWired: each kind of part is one of the circuit, with a wire for
// each of its feeds and returns, and goes through the rest of the chain.
func TestEveryPartKindIsWired(t *testing.T) {
	c := buildtest.Circuit(t, everyKind)
	d := c.Design
	at := map[design.Part]*circuit.Part{}
	for _, p := range c.Parts {
		if p.Source != nil {
			at[p.Source] = p
		}
	}
	wires := 0
	v := reflect.ValueOf(d).Elem()
	for i := range v.NumField() {
		f := v.Field(i)
		if f.Kind() != reflect.Slice || !f.Type().Elem().Implements(reflect.TypeFor[design.Part]()) {
			continue
		}
		if f.Len() == 0 {
			t.Errorf("the design has none of the %s", v.Type().Field(i).Name)
		}
		for j := range f.Len() {
			part := f.Index(j).Interface().(design.Part)
			if p := at[part]; p == nil || p.Ref == "" || len(p.Terminals) == 0 && len(c.Inlines()[0].Poles) == 0 {
				t.Errorf("%s is no part of the circuit with a reference and terminals", part.PartName())
			}
			if _, ok := part.(interface{ LiveReason() string }); !ok {
				t.Errorf("%s cannot say why it stays live", part.PartName())
			}
			wires += feedsOf(f.Index(j).Elem())
		}
	}
	if len(c.Wires) != wires {
		t.Errorf("%d wires for %d feeds and returns", len(c.Wires), wires)
	}
	if _, err := Assess(d); err != nil {
		t.Error(err)
	}
}

// feedsOf counts the feeds and returns in a part and what is in it.
func feedsOf(v reflect.Value) int {
	if list, ok := v.Interface().([]design.Feed); ok {
		return len(list)
	}
	n := 0
	if v.Kind() == reflect.Struct {
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				n += feedsOf(v.Field(i))
			}
		}
	}
	return n
}
