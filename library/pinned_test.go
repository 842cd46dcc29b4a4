package library

import (
	"math"
	"strings"
	"testing"
)

// Ranges of a user's rows: the ends are taken, what lies beyond is refused.
func TestRangesAtTheirEnds(t *testing.T) {
	cover := func(maxC, factor string) string {
		return "covers:\n  - {name: x, kind: sleeve, max C: " + maxC + ", current factor: " + factor + "}\n"
	}
	tolerance := func(v string) string { return "tolerances:\n  - {name: x, unit: K, value: " + v + "}\n" }
	chemistry := func(efficiency string) string {
		return "batteries:\n  - {name: x, charge efficiency: " + efficiency + "}\n"
	}
	fuse := func(point string) string {
		return "fuse types:\n  - {name: x, kind: fuse, max V: 32, breaking A: 1000, mounting: tab 6.3, ratings: [{rating A: 5}], opens: [{" + point + "}]}\n"
	}
	terminal := func(min, max, fresh, aged string) string {
		return "terminals:\n  - {name: x, kind: tab 6.3, min mm2: " + min + ", max mm2: " + max + ", max A: 5, strip mm: 5, new mohm: " +
			fresh + ", aged mohm: " + aged + ", sold per: 1}\n"
	}
	relay := func(pullIn, dropOut string) string {
		return "relay forms:\n  - {name: x, coil V: 12, coil ohm: 90, pull in V: " + pullIn + ", drop out V: " + dropOut + "}\n"
	}
	wire := func(conductor, outer string) string {
		return "insulations:\n  - {name: PVC, resistivity K m per W: 6, emissivity: 0.9}\nwire types:\n  - {name: x, standard: none, continuous C: 90, material: PVC, gauge system: metric, sizes: [{size: 1 mm², area mm2: 1, ohm per km: 18, conductor mm: " +
			conductor + ", outer mm: " + outer + "}]}\n"
	}
	const beyond = "out of range"
	for _, c := range []struct{ name, text, says, not string }{
		{"least", cover("40", "0.1"), "", beyond},
		{"below the least", cover("39.9", "0.5"), `"max C" is out of range: 39.9`, ""},
		{"most", cover("1200", "1"), "", beyond},
		{"above the most", cover("1200.1", "1"), `"max C" is out of range: 1200.1`, ""},
		{"factor below the least", cover("90", "0.099"), `"current factor" is out of range`, ""},
		{"tolerance, most", tolerance("1000"), "", beyond},
		{"tolerance, above", tolerance("1000.5"), beyond, ""},
		{"efficiency of one", chemistry("1"), "", beyond},
		{"efficiency above one", chemistry("1.01"), `"charge efficiency" is out of range`, ""},
		{"one rating of a band", fuse("multiple: 2, from A: 5, to A: 5, min s: 1, max s: 1"), "", "f.yaml"},
		{"ratings upside down", fuse("multiple: 2, from A: 5.1, to A: 5"), "f.yaml", ""},
		{"times upside down", fuse("multiple: 2, min s: 1.1, max s: 1"), "f.yaml", ""},
		{"barrel of one size, aged as new", terminal("1", "1", "1", "1"), "", "f.yaml"},
		{"barrel upside down", terminal("1.1", "1", "1", "1"), `"min mm2" is above "max mm2"`, ""},
		{"aged better than new", terminal("1", "1", "1", "0.99"), `"aged mohm" is below "new mohm"`, ""},
		{"drops out where it pulls in", relay("8", "8"), "drop out", ""},
		{"bare wire", wire("1.3", "1.3"), "", "f.yaml"},
		{"thinner than its conductor", wire("1.3", "1.29"), "f.yaml", ""},
	} {
		text := ""
		if _, err := Parse("f.yaml", []byte(head+c.text)); err != nil {
			text = err.Error()
		}
		if !strings.Contains(text, c.says) || c.not != "" && strings.Contains(text, c.not) {
			t.Errorf("%s: %q", c.name, text)
		}
	}
	if MaxFileBytes != 4*1024*1024 {
		t.Errorf("a file may have %d bytes, the message says 4 MiB", MaxFileBytes)
	}
}

func TestDropOutBelowPullIn(t *testing.T) {
	_, err := Parse("f.yaml", []byte(head+"relay forms:\n  - {name: x, coil V: 12, coil ohm: 90, pull in V: 8, drop out V: 7.9}\n"))
	if err != nil && strings.Contains(err.Error(), "drop out V") {
		t.Errorf("a relay that drops out below its pull-in voltage: %v", err)
	}
}

// Ascending lists refuse a value twice.
func TestAscendingMeansRising(t *testing.T) {
	for ways, ok := range map[string]bool{"[2, 3]": true, "[2, 2]": false, "[3, 2]": false} {
		_, err := Parse("f.yaml", []byte(head+"connector families:\n  - {name: x, min mm2: 1, max mm2: 2, max A: 5, contact mohm: 1, pin kind: tab 6.3, ways: "+ways+"}\n"))
		if (err == nil) != ok {
			t.Errorf("ways %s: %v", ways, err)
		}
	}
}

// Choices at the ends of their ranges.
func TestChoicesAtTheirEnds(t *testing.T) {
	l := &Library{Terminals: []*Terminal{{Name: "a", Kind: "k", MinMm2: 1, MaxMm2: 2}}}
	for mm2, want := range map[float64]bool{0.99: false, 1: true, 2: true, 2.01: false} {
		if got := l.TerminalFor("k", mm2) != nil; got != want {
			t.Errorf("a barrel of 1 to 2 mm² takes %g mm²: %t", mm2, got)
		}
	}
	w := &WireType{Sizes: []*WireSize{{AreaMm2: 1}, {AreaMm2: 2}}}
	for mm2, want := range map[float64]float64{0.5: 1, 1: 1, 1.01: 2, 2: 2, 2.01: 0} {
		got := 0.0
		if s := w.SizeFor(mm2); s != nil {
			got = s.AreaMm2
		}
		if got != want {
			t.Errorf("for %g mm²: %g, want %g", mm2, got, want)
		}
	}
	c := &Connector{Ways: []int{2, 4}}
	for wires, want := range map[int]int{1: 2, 2: 2, 3: 4, 4: 4, 5: 0} {
		if got := c.Housing(wires); got != want {
			t.Errorf("%d wires in %d ways, want %d", wires, got, want)
		}
	}
	f := &FuseType{Band: []TimePoint{{FromA: 5, ToA: 10, Multiple: 2}, {Multiple: 3}}}
	for ratingA, want := range map[float64]int{4.9: 1, 5: 2, 7: 2, 10: 2, 10.1: 1} {
		if got := len(f.BandFor(ratingA)); got != want {
			t.Errorf("%g A: %d points, want %d", ratingA, got, want)
		}
	}
	r := &RelayForm{Derating: []RatedAt{{AmbientC: 40, Share: 1}, {AmbientC: 80, Share: 0.6}}}
	for celsius, want := range map[float64]float64{20: 1, 40: 1, 60: 0.8, 80: 0.6, 100: 0.6} {
		if got := r.Share(celsius); math.Abs(got-want) > 1e-12 {
			t.Errorf("%g °C: %g, want %g", celsius, got, want)
		}
	}
	lib := &Library{RelayForms: []*RelayForm{{Name: "x 12 V", Aliases: []string{"x"}, Family: "x", CoilV: 12}, {Name: "x 13 V", Family: "x", CoilV: 12.53}}}
	for volts, want := range map[float64]string{12: "x 12 V", 12.49: "x 12 V", 12.53: "x 13 V"} {
		if got := lib.RelayFormFor("x", volts); got == nil || got.Name != want {
			t.Errorf("%g V: %+v, want %s", volts, got, want)
		}
	}
}

// A table's altitudes are printed in feet: 20 000 ft are 6 096 m.
func TestAltitudesInFeet(t *testing.T) {
	lib, err := Parse("f.yaml", []byte(head+"current tables:\n  - {name: x, kind: class, ambient C: 30, columns C: [60], sizes: mm2, "+
		"rows: [{mm2: 1, amps: [10]}], altitude: [{ft: 0, share: 1}, {ft: 20000, share: 0.9}]}\n"))
	if err != nil {
		t.Fatal(err)
	}
	if got := lib.CurrentTables[0].Altitude[1].AltitudeM; math.Abs(got-6096) > 1e-9 {
		t.Errorf("20 000 ft are %g m", got)
	}
}
