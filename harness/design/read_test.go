package design

import (
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"
)

// mustRead reads a design that has no mistakes.
func mustRead(t *testing.T, text string) *Design {
	t.Helper()
	d, err := Read("test.yaml", []byte(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

const heading = `fusewright: 1
title: test
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, at: tray}
places: {tray: {ambient: 40 °C}, seat: {}}
runs: [{from: tray, to: seat, length: 500 mm}]
`

// Values come in the units that the model's fields name.
func TestUnitsOfTheModel(t *testing.T) {
	d := mustRead(t, string(load(t, corpus+"ok/every-key.yaml")))
	tests := []struct {
		name      string
		got, want float64
	}{
		{"rate in hours", d.Battery.RateH.Value, 20},
		{"internal resistance in ohms", d.Battery.ResistanceOhm.Value, 0.012},
		{"limit of drop as a share", d.Limits.DropCritical.Value, 0.02},
		{"days", d.Limits.StandbyDays.Value, 21},
		{"standby in amperes", d.Limits.StandbyA.Value, 0.02},
		{"output sorted by speed", d.Charging.Output[0].RPM.Value, 1300},
		{"clock in amperes", d.VehicleLoads[2].CurrentA.Value, 0.002},
		{"duty as a share", d.VehicleLoads[1].Duty.Value, 0.3},
		{"104 °F in °C", d.Places[2].AmbientC.Value, 40},
		{"3 ft in metres", d.Runs[1].LengthM.Value, 0.9144},
		{"power of 2 A at 27 V", d.Loads[1].PowerW, 54},
		{"rated at", d.Loads[1].RatedV, 27},
		{"power of 12 Ω at 24 V", d.Loads[2].PowerW, 48},
		{"inrush in seconds", d.Loads[1].Inrush.TauS, 0.02},
		{"leg in seconds", d.Rides[0].Legs[0].Lasts.Value, 720},
		{"leg at idle", d.Rides[0].Legs[0].EngineRPM, 1300},
		{"situation at cruise", d.Situations[0].EngineRPM, 4000},
		{"price", d.Prices[0].Each, 0.6},
	}
	for _, tt := range tests {
		if math.Abs(tt.got-tt.want) > 1e-9 {
			t.Errorf("%s: %v, want %v", tt.name, tt.got, tt.want)
		}
	}
}

// What is left out is filled in as the model's comments say, and stays
// recognisable as not given where a review must ask.
func TestDefaults(t *testing.T) {
	d := mustRead(t, heading+`
wire: {size: 1.5 mm², slack: 40 mm}
taps: {tail: {at: seat, hot: key}}
fuses: {main: {rating: 20 A, at: tray, fed by: battery, wire: {size: 4 mm²}}}
relays: {keyed: {form: mini make, at: seat, fed by: main, coil: {fed by: tail, returns to: stud}}}
blocks: {rear: {type: fuse block 6 way blade C, at: seat, fed by: keyed, ways: {1: 5 A}}}
loads:
  lamp: {type: halogen lamp 55 W, at: seat, fed by: rear 1, returns to: stud}
  heater: {resistance: 4 Ω, at: seat, fed by: rear 1, returns to: stud}
grounds: {stud: {at: seat}, bus: {at: seat, returns to: battery negative}}
`)
	feed := d.Fuses[0].FedBy[0]
	coil, lamp, heater := d.Relays[0].Coil, d.Loads[0], d.Loads[1]
	tests := []struct {
		name      string
		got, want any
	}{
		{"fuse type", d.Fuses[0].Type.Name, "blade C"},
		{"wire type by practice", feed.Wire.Type.Name, "ISO 6722 thin wall class B"},
		{"size of its own", feed.Wire.Size.Label, "4 mm²"},
		{"size by default", coil.FedBy[0].Wire.Size.Label, "1.5 mm²"},
		{"feeds are red", feed.Wire.Colour.Code(), "RD"},
		{"returns are black", coil.Returns[0].Wire.Colour.Code(), "BK"},
		{"slack of the design", feed.Wire.SlackM.Value, 0.04},
		{"relay for the system voltage", d.Relays[0].Form.CoilV, 12.0},
		{"relay by name alone", d.Blocks[0].FedBy[0].From.Terminal, "87"},
		{"way", lamp.FedBy[0].From.Terminal, "1"},
		{"limit of the block's type", d.Blocks[0].WayA.Value, 30.0},
		{"fuse of the way by the block", d.Blocks[0].Ways[0].FuseType.Name, "blade C"},
		{"behaviour of the type", lamp.Behaves, FilamentLamp},
		{"voltage of the type", lamp.RatedV, 12.0},
		{"a resistance is a resistor", heater.Behaves, Resistor},
		{"4 Ω at the system voltage", heater.PowerW, 36.0},
		{"sign by behaviour", heater.Sign, SignHeater},
		{"no inrush", heater.Inrush.PeakRatio, 1.0},
		{"frame stud", d.Grounds[0].Kind, FrameStud},
		{"ground block", d.Grounds[1].Kind, GroundBlock},
		{"battery post", d.Grounds[1].Returns[0].From.Part.PartPlace().Name, "tray"},
		{"ambient not given", d.Places[1].AmbientC.Given(), false},
		{"supervision not given", d.Taps[0].SupervisedGiven, false},
		{"suppression not given", coil.Suppressed, ""},
		{"resistance not given", d.Battery.ResistanceOhm.Given(), false},
		{"run named by its places", d.Runs[0].Name, "tray - seat"},
	}
	for _, tt := range tests {
		if !reflect.DeepEqual(tt.got, tt.want) {
			t.Errorf("%s: %v, want %v", tt.name, tt.got, tt.want)
		}
	}
}

func TestDerivedSituations(t *testing.T) {
	const loads = "loads: {a: {power: 5 W, at: seat}, b: {power: 5 W, at: seat}}\n"
	const charging = "charging: {regulated: 14.3 V, output: {1300 rpm: 13 A, 5000 rpm: 30 A}, " +
		"idle: 1300 rpm, cruise: 4000 rpm}\n"
	tests := []struct{ name, text, want string }{
		{"none given", loads + charging,
			"key off 0 0; key on, engine stopped 0 2; idle 1300 2; cruise 4000 2"},
		{"nothing charges", loads, "key off 0 0; key on, engine stopped 0 2"},
		{"one given", loads + charging + "situations: {night: {engine: cruise, on: a}}\n",
			"night 4000 1; key off 0 0"},
		{"parked given", loads + "situations: {parked: {key: off}}\n", "parked 0 0"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var got []string
			for _, s := range mustRead(t, heading+tt.text).Situations {
				got = append(got, strings.Join([]string{s.Name, text(s.EngineRPM), text(float64(len(s.On)))}, " "))
			}
			if g := strings.Join(got, "; "); g != tt.want {
				t.Errorf("got  %s\nwant %s", g, tt.want)
			}
		})
	}
}

// Every value keeps its place, and a relay's form goes by the system voltage
// wherever that stands in the file.
func TestOrderOfTheFile(t *testing.T) {
	d := mustRead(t, `fusewright: 1
relays: {keyed: {form: mini make}}
loads: {a: {power: 5 W}}
practice: marine
battery: {chemistry: AGM, capacity: 12 Ah}
title: back to front
system: 24 V
`)
	if v := d.Relays[0].Form.CoilV; v != 24 {
		t.Errorf("coil of %v V", v)
	}
	if v := d.Loads[0].RatedV; v != 24 {
		t.Errorf("rated at %v V", v)
	}
	if got := d.SystemV.Pos.String(); got != "test.yaml:7:9" {
		t.Errorf("system voltage at %s", got)
	}
	if got := d.Loads[0].Pos.String(); got != "test.yaml:3:9" {
		t.Errorf("load at %s", got)
	}
}

func text(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// Makers state the output in watts as often as in amperes; both may stand in
// one curve.
func TestOutputInWatts(t *testing.T) {
	d := mustRead(t, heading+"charging: {output: {1000 rpm: 98 W, 2000 rpm: 12 A, 5000 rpm: 0.28 kW}, "+
		"regulated: 14 V, idle: 1000 rpm, cruise: 3000 rpm}\n")
	for i, want := range []float64{7, 12, 20} {
		if got := d.Charging.Output[i].CurrentA.Value; math.Abs(got-want) > 1e-12 {
			t.Errorf("point %d: %v A, want %v A", i, got, want)
		}
	}
}
