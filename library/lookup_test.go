package library

import (
	"fmt"
	"testing"
)

func TestSizeSpellings(t *testing.T) {
	lib := Default()
	for _, c := range []struct{ wireType, asked, want string }{
		{"GXL", "16 AWG", "16 AWG"},
		{"GXL", "16awg", "16 AWG"},
		{"GXL", "AWG 16", "16 AWG"},
		{"GXL", "SAE 16", "16 AWG"},
		{"GXL", "16 gauge", "16 AWG"},
		{"SGX", "1/0 AWG", "1/0 AWG"},
		{"SGX", "0 AWG", "1/0 AWG"},
		{"SGX", "00 awg", "2/0 AWG"},
		{"SGX", "1 AWG", "1 AWG"},
		{"ISO 6722 thin wall", "1.5 mm²", "1.5 mm²"},
		{"ISO 6722 thin wall", "1.5mm2", "1.5 mm²"},
		{"ISO 6722 thin wall", "1.50 mm2", "1.5 mm²"},
		{"ISO 6722 thin wall", "1.5 sq mm", "1.5 mm²"},
		{"ISO 6722 thin wall", "1 mm²", "1 mm²"},
		{"JASO AV", "0.85 mm²", "0.85 mm²"},
		{"GXL", "1.5 mm²", ""},
		{"ISO 6722 thin wall", "16 AWG", ""},
		{"GXL", "16", ""},
		{"GXL", "17 AWG", ""},
		{"GXL", "", ""},
		{"GXL", "-16 AWG", ""},
	} {
		got := ""
		if s := lib.WireType(c.wireType).Size(c.asked); s != nil {
			got = s.Label
		}
		if got != c.want {
			t.Errorf("%s %q: got %q, want %q", c.wireType, c.asked, got, c.want)
		}
	}
}

func TestNameSpellings(t *testing.T) {
	lib := Default()
	for _, c := range []struct{ got, want string }{
		{lib.WireType("iso 6722 Thin-Wall class c").Name, "ISO 6722 thin wall class C"},
		{lib.WireType("tinned marine 105 C AWG").Name, "tinned marine 105 °C AWG"},
		{lib.FuseType("Miniature blade").Name, "blade F"},
		{lib.RelayForm("ISO 7588 mini").Name, "mini changeover 12 V"},
		{lib.Cover("braided").Name, "braided sleeve"},
		{lib.Chemistry("agm").Name, "AGM"},
		{lib.Practice("Off Road").Name, "off-road"},
		{lib.Block("6 way blade C").Name, "fuse block 6 way blade C"},
		{lib.Switch("toggle").Name, "toggle 20 A"},
		{lib.Load("GPS").Name, "navigation unit"},
		{lib.Terminal("RING M6 RED").Name, "ring M6 red"},
		{lib.Connector("sealed small").Name, "sealed 1.5"},
		{lib.Insulation("pvc").Name, "PVC"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
	if lib.WireType("no such wire") != nil || lib.WireType("") != nil || lib.Cover(" ") != nil {
		t.Error("an unknown name finds a row")
	}
}

func TestColourPair(t *testing.T) {
	for _, c := range []struct{ code, want string }{
		{"RD", "RD"}, {"rd", "RD"}, {"red", "RD"}, {"YERD", "YE+RD"}, {"YE/RD", "YE+RD"},
		{"ye-rd", "YE+RD"}, {"GNYE", "GN+YE"}, {"", ""}, {"XX", ""}, {"RDXX", ""}, {"RDYEBU", ""},
	} {
		base, tracer := Default().ColourPair(c.code)
		got := ""
		if base != nil {
			got = base.Code
		}
		if tracer != nil {
			got += "+" + tracer.Code
		}
		if got != c.want {
			t.Errorf("%q: got %q, want %q", c.code, got, c.want)
		}
	}
}

func TestRelayFormFor(t *testing.T) {
	lib := Default()
	for _, c := range []struct {
		name    string
		systemV float64
		want    string
	}{
		{"mini make", 12, "mini make 12 V"},
		{"mini make", 24, "mini make 24 V"},
		{"ISO 7588 mini", 24, "mini changeover 24 V"},
		{"mini make 12 V", 24, "mini make 12 V"}, // named outright: the mismatch is to be reported
		{"mini make", 48, "mini make 12 V"},      // no such coil in the family
		{"voltage-sensing relay 140 A", 24, "voltage-sensing relay 140 A 24 V"}, {"voltage-sensing relay 140 A", 12, "voltage-sensing relay 140 A 12 V"},
	} {
		if f := lib.RelayFormFor(c.name, c.systemV); f == nil || f.Name != c.want {
			t.Errorf("%s at %g V: got %+v, want %s", c.name, c.systemV, f, c.want)
		}
	}
	if lib.RelayFormFor("mono", 12) != nil {
		t.Error("an unknown form was found")
	}
}

func TestChargerFor(t *testing.T) {
	for _, c := range []struct {
		name    string
		systemV float64
		want    string
	}{
		{"DC-DC charger 30 A", 12, "DC-DC charger 30 A 12 V"}, {"DC-DC charger 30 A", 24, "DC-DC charger 30 A 24 V"},
		{"DC-DC charger 15 A", 24, "DC-DC charger 15 A 24 V"}, {"DC-DC charger 15 A", 12, "DC-DC charger 15 A 24 V"}, // none for 12 V: to be reported
	} {
		if x := Default().ChargerFor(c.name, c.systemV); x == nil || x.Name != c.want {
			t.Errorf("%s at %g V: got %+v, want %s", c.name, c.systemV, x, c.want)
		}
	}
}

func TestFuseLookups(t *testing.T) {
	c := Default().FuseType("blade C")
	if r := c.Rating(7.5); r == nil || r.Colour != "brown" {
		t.Errorf("7.5 A: %+v", r)
	}
	if c.Rating(8) != nil {
		t.Error("there is an 8 A fuse")
	}
	// maker's data sheet, medium blade fuses 32 V: 10 A is 7.7 mΩ, 109 mV.
	if r := c.Rating(10); r.ColdOhm != 0.0077 || r.DropV != 0.109 {
		t.Errorf("10 A: %+v", r)
	}
	for amps, want := range map[float64]float64{2: 0.35, 10: 0.75} { // lower time at 1.35
		if got := c.BandFor(amps)[1]; got.Multiple != 1.35 || got.MinS != want || got.MaxS != 1800 {
			t.Errorf("%g A: %+v", amps, got)
		}
	}
}

func TestDesignators(t *testing.T) {
	for kind, want := range map[string]string{"fuse": "F", "relay": "K", "load/pump": "M",
		"load/never heard of": "E", "switch": "S", "battery": "G"} {
		if d := Default().Designator(kind); d == nil || d.Letter != want {
			t.Errorf("%s: got %+v, want %s", kind, d, want)
		}
	}
	if Default().Designator("spaceship") != nil {
		t.Error("an unknown kind has a letter")
	}
}

func TestOpenCircuitV(t *testing.T) {
	agm := Default().Chemistry("AGM")
	for _, c := range []struct{ charge, want float64 }{
		{0, 11.8}, {0.5, 12.3}, {0.625, 12.45}, {1, 12.8}, {-1, 11.8}, {2, 12.8},
	} {
		near(t, fmt.Sprintf("charge %g", c.charge), agm.OpenCircuitV(c.charge), c.want, 1e-9)
	}
}

func ExampleLibrary_WireType() {
	w := Default().WireType("SAE J1128 GXL")
	s := w.Size("16awg")
	fmt.Printf("%s %s: %.2f mm², %.1f mΩ/m, class %.0f °C\n", w.Name, s.Label, s.AreaMm2, s.MaxOhmPerM*1000, w.ClassC)
	fmt.Println(s.Source.Certainty)
	// Output:
	// SAE J1128 GXL 16 AWG: 1.18 mm², 14.6 mΩ/m, class 125 °C
	// computed
}
