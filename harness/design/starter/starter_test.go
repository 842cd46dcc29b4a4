package starter_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/starter"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

// sets are accessories that people fit together; nil is the usual set.
var sets = map[string][]string{
	"usual":      nil,
	"none":       {},
	"one":        {"navigation unit"},
	"lamps":      {"halogen lamp 55 W", "LED auxiliary lamp", "LED auxiliary lamp", "horn"},
	"warmth":     {"heated grips", "heated jacket", "heated seat"},
	"gadgets":    {"USB charger", "USB fast charger", "dash camera", "tracker", "voltmeter", "radio"},
	"machinery":  {"tyre compressor", "bilge pump", "implement actuator"},
	"strong":     {"winch small", "LED auxiliary lamp"},
	"windlass":   {"windlass"},
	"loud":       {"twin air horn", "radio", "bulb 5 W"},
	"many":       {"heated jacket", "heated seat", "bilge blower", "twin air horn", "halogen lamp 55 W", "fresh water pump"},
	"pumps":      {"bilge pump", "bilge pump large"},
	"watch":      {"anchor lamp 25 W", "bilge blower", "fish finder", "VHF radio"},
	"preheating": {"glow plugs four"},
	"bar":        {"LED light bar", "accessory socket", "bulb 21 W"},
}

// TestPassesCheck: whatever the vehicle and the accessories, the new design
// reads, sizes and has nothing found against it but advice that the trade leaves
// as it is, against which sizing chooses nothing. Every set meets two kinds of vehicles, the usual
// one all of them, and every vehicle a third of the sets.
func TestPassesCheck(t *testing.T) {
	for i, vehicle := range starter.Vehicles() {
		for j, name := range slices.Sorted(maps.Keys(sets)) {
			set := sets[name]
			if (i+j)%3 != 0 && name != "usual" {
				continue
			}
			t.Run(vehicle+", "+name, func(t *testing.T) {
				t.Parallel()
				src, err := starter.Write(starter.Answers{Vehicle: vehicle, Accessories: set}, library.Default())
				if err != nil {
					t.Fatal(err)
				}
				d, err := design.Read("new.yaml", src, library.Default())
				if err != nil {
					t.Fatal(err)
				}
				review, err := harness.Assess(d)
				if err != nil {
					t.Fatal(err)
				}
				for _, f := range review.Findings {
					if f.Severity != finding.Advice || !f.Leave {
						t.Errorf("%s: %s: %s", f.Severity, f.Rule, f.What)
					}
				}
				if t.Failed() {
					t.Logf("%s", src)
				}
			})
		}
	}
}

// TestNothingFound: what builders say most often ends with nothing found at all.
func TestNothingFound(t *testing.T) {
	for name, a := range map[string]starter.Answers{
		"motorcycle":      {Vehicle: "motorcycle", Accessories: []string{"left lamp: LED auxiliary lamp", "right lamp: LED auxiliary lamp", "heated grips", "USB charger"}},
		"winch":           {Vehicle: "quad", Accessories: []string{"winch small", "LED light bar", "heated grips"}},
		"pumps on a quad": {Vehicle: "quad", Accessories: []string{"macerator pump", "bilge pump large", "halogen lamp 35 W", "fresh water pump"}},
		"camper": {Vehicle: "camper", Second: "100 Ah", Capacity: "80 Ah",
			Accessories: []string{"compressor fridge", "air heater", "LED interior lamp", "accessory socket", "fresh water pump"}},
		"outboard": {Vehicle: "boat", Accessories: []string{"bow light: LED navigation lamp", "anchor light: anchor lamp 25 W", "compressor fridge", "bilge pump", "VHF radio"}},
		"diesel": {Vehicle: "boat", Second: "80 Ah", Engine: "diesel", Accessories: []string{"windlass", "compressor fridge",
			"bow light: LED navigation lamp", "stern light: LED navigation lamp", "anchor light: anchor lamp 25 W", "fresh water pump", "bilge pump", "VHF radio"}},
		"sailing":     {Vehicle: "boat", Engine: "diesel", Accessories: []string{"port light", "starboard light", "stern light", "steaming light", "anchor light", "fish finder"}},
		"two pumps":   {Vehicle: "boat", Second: "80 Ah", Accessories: []string{"VHF radio", "bilge pump", "aft pump: bilge pump"}},
		"three pumps": {Vehicle: "boat", Second: "80 Ah", Accessories: []string{"VHF radio", "bilge pump", "aft pump: bilge pump", "fore pump: bilge pump", "alarm"}},
		"off-road":    {Vehicle: "off-road", Second: "70 Ah", Accessories: []string{"winch small", "LED light bar", "compressor fridge"}},
	} {
		src, err := starter.Write(a, library.Default())
		if err != nil {
			t.Fatalf("%s: %v", name, err)
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

// TestWhereThingsStand: a fridge is no more in a bilge than a lamp is in a kitchen.
func TestWhereThingsStand(t *testing.T) {
	for _, c := range []struct{ vehicle, accessory, at string }{
		{"boat", "compressor fridge", "console"}, {"boat", "bilge blower", "bilge"}, {"boat", "LED interior lamp", "console"},
		{"boat", "inverter", "console"}, {"camper", "LED interior lamp", "ceiling"}, {"camper", "air heater", "kitchen"},
		{"camper", "roof fan", "ceiling"}, {"motorcycle", "heated seat", "tail"}, {"quad", "winch small", "front end"},
	} {
		src, err := starter.Write(starter.Answers{Vehicle: c.vehicle, Accessories: []string{c.accessory}}, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		d, err := design.Read("new.yaml", src, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		if got := d.Loads[0].At.Name; got != c.at {
			t.Errorf("%s, %s: at %s, want %s", c.vehicle, c.accessory, got, c.at)
		}
	}
}

// TestCritical: afloat ABYC E-11 (two sources) holds navigation lamps, bilge
// blowers and electronics to the tighter limit; on land the builder says what is.
func TestCritical(t *testing.T) {
	for _, c := range []struct {
		vehicle, accessory string
		critical           bool
	}{
		{"boat", "LED navigation lamp", true}, {"boat", "anchor lamp 25 W", true}, {"boat", "bilge blower", true},
		{"boat", "VHF radio", true}, {"boat", "bilge pump", false}, {"boat", "accessory socket", false},
		{"off-road", "radio", false}, {"camper", "compressor fridge", true}, {"motorcycle", "LED navigation lamp", false},
	} {
		src, err := starter.Write(starter.Answers{Vehicle: c.vehicle, Accessories: []string{c.accessory}}, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		d, err := design.Read("new.yaml", src, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		if got := d.Loads[0].Critical; got != c.critical {
			t.Errorf("%s, %s: critical %v, want %v", c.vehicle, c.accessory, got, c.critical)
		}
	}
}

// TestBilgePump: afloat a bilge pump hangs on a fuse of its own before the house
// switch, by a float switch and by hand, and returns alone; a pump that is more
// than the switches bear goes by a relay that both work. On land it is a pump as
// any other.
func TestBilgePump(t *testing.T) {
	const live = `, stays live: "the float switch pumps the boat while nobody is on board"`
	for _, c := range []struct {
		vehicle, pump string
		want          []string
	}{
		{"boat", "bilge pump", []string{"bilge pump fuse: {at: battery box, fed by: battery,",
			"bilge pump joint: {at: battery box, fed by: bilge pump fuse,",
			"bilge pump float: {type: float switch 15 A, at: bilge, fed by: bilge pump joint" + live,
			"bilge pump switch: {type: sealed rocker 20 A, at: helm, fed by: bilge pump joint" + live,
			"at: bilge, fed by: [bilge pump float, bilge pump switch], returns to: battery negative" + live}},
		{"boat", "bilge pump large", []string{"fed by: bilge pump large joint, wire: {length: 250 mm}, coil: {fed by: [bilge pump large float, bilge pump large switch]",
			"at: bilge, fed by: bilge pump large relay, returns to: battery negative" + live}},
		{"quad", "bilge pump", []string{"fed by: bilge pump switch, returns to: rear bar"}},
	} {
		src, err := starter.Write(starter.Answers{Vehicle: c.vehicle, Accessories: []string{c.pump}}, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range c.want {
			if !strings.Contains(string(src), want) {
				t.Errorf("%s, %s: nothing says %q\n%s", c.vehicle, c.pump, want, src)
			}
		}
	}
}

// TestFigures24: at 24 V an accessory of the same power draws half the current at
// twice the voltages; the battery's resistance is the library's for its capacity.
func TestFigures24(t *testing.T) {
	src, err := starter.Write(starter.Answers{Vehicle: "truck", Accessories: []string{"tyre compressor", "heated vest"}}, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"system: 24 V", "type: tyre compressor, current: 5 A, rated at: 24 V, minimum voltage: 21 V,",
		"type: heated vest, rated at: 26 V,", "battery: {chemistry: flooded, capacity: 170 Ah, resistance: 4 mΩ, at: battery box}"} {
		if !strings.Contains(string(src), want) {
			t.Errorf("nothing says %q\n%s", want, src)
		}
	}
}

func TestRefuses(t *testing.T) {
	for _, c := range []struct {
		name string
		a    starter.Answers
		want string
	}{
		{"no such vehicle", starter.Answers{Vehicle: "sledge"}, "no kind of vehicle"},
		{"no such accessory", starter.Answers{Vehicle: "boat", Accessories: []string{"bilge pomp"}}, `did you mean "bilge pump"?`},
		{"an accessory for another voltage", starter.Answers{Vehicle: "boat", Accessories: []string{"starter diesel 24 V"}}, "is for 24 V; the vehicle has 12 V"},
		{"a capacity without a unit", starter.Answers{Vehicle: "boat", Capacity: "60"}, "capacity: 60 has no unit"},
		{"a name that needs quotes", starter.Answers{Vehicle: "boat", Accessories: []string{"a}b: horn"}}, "is no name for an accessory"},
		{"an accessory by another word", starter.Answers{Vehicle: "truck", Accessories: []string{"trailer socket"}}, `(expected one of the library: accessory socket; or a name of your own and one of them, as "cab radio: radio")`},
		{"a pair with a stranger", starter.Answers{Vehicle: "quad", Accessories: []string{"horn"}, Together: []string{"horn + radio"}}, `no accessory is named "radio" (expected horn)`},
		{"twice in a pair", starter.Answers{Vehicle: "quad", Accessories: []string{"horn", "radio"}, Together: []string{"horn + radio", "radio + horn"}}, "shares a switch already"},
		{"a pair with itself", starter.Answers{Vehicle: "quad", Accessories: []string{"horn", "radio"}, Together: []string{"horn + horn"}}, "horn is named twice"},
		{"a second battery without room", starter.Answers{Vehicle: "motorcycle", Second: "10 Ah"}, "has no room for one"},
		{"another engine", starter.Answers{Vehicle: "boat", Engine: "steam"}, `there is no "steam" (expected petrol outboard or diesel)`},
		{"a length of nothing", starter.Answers{Vehicle: "boat", Lengths: []string{"console - bow: 0 m"}}, "expected more than nothing"},
		{"a feed without a fuse", starter.Answers{Vehicle: "quad", Tap: "socket feed"}, "factory feed: its fuse"},
		{"an output that is no curve", starter.Answers{Vehicle: "boat", Output: "30 A"}, "is no point"},
		{"an unknown chemistry", starter.Answers{Vehicle: "boat", Battery: "lemon"}, "no chemistry \"lemon\", but flooded, AGM"},
		{"a title that would break out", starter.Answers{Vehicle: "boat", Title: "a\"\nbattery: x"}, "no quotes"},
		{"too many", starter.Answers{Vehicle: "boat", Accessories: strings.Split(strings.Repeat("horn,", 12)+"horn", ",")}, "more than the 12"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if _, err := starter.Write(c.a, library.Default()); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want %q", err, c.want)
			}
		})
	}
}

// A design for a boat with nothing but a bilge pump.
func ExampleWrite() {
	src, err := starter.Write(starter.Answers{Vehicle: "boat", Capacity: "60Ah", Accessories: []string{"bilge pump"}},
		library.Default())
	if err != nil {
		panic(err)
	}
	for _, line := range strings.Split(string(src), "\n") {
		if strings.Contains(line, "60 Ah") {
			fmt.Println(line)
		}
	}
	// Output: battery: {chemistry: flooded, capacity: 60 Ah, resistance: 5.67 mΩ, at: battery box}
}
