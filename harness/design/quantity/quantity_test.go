package quantity

import (
	"math"
	"math/rand"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness/proof/fuzztest"
)

func TestParse(t *testing.T) {
	tests := []struct {
		text string
		dim  Dimension
		want float64
	}{
		{"18 W", Power, 18},
		{"18W", Power, 18},
		{"18\u00a0W", Power, 18},
		{"18\u202fW", Power, 18},
		{"18 w", Power, 18},
		{"1.2 kW", Power, 1200},
		{"2.1 A", Current, 2.1},
		{"350 mA", Current, 0.35},
		{"80 µA", Current, 80e-6},
		{"80 \u03bcA", Current, 80e-6},
		{"80 uA", Current, 80e-6},
		{"3 amps", Current, 3},
		{"14 mΩ", Resistance, 0.014},
		{"14 m\u2126", Resistance, 0.014},
		{"14 mohm", Resistance, 0.014},
		{"2 kΩ", Resistance, 2000},
		{"2 MΩ", Resistance, 2e6},
		{"12.7 Ω/km", ResistancePerM, 0.0127},
		{"1.5 mm²", Area, 1.5},
		{"1.5 mm2", Area, 1.5},
		{"900 mm", Length, 0.9},
		{"3 ft", Length, 0.9144},
		{"7 in", Length, 0.1778},
		{`7"`, Length, 0.1778},
		{"10 ft 6 in", Length, 3.2004}, // 126 in of 25.4 mm
		{`10' 6"`, Length, 3.2004},
		{`1'6"`, Length, 0.4572},
		{"1′ 6″", Length, 0.4572},
		{"1 foot 6.5 inches", Length, 0.4699},
		{"3 FT 4 1/8 IN", Length, 1.019175}, // 40.125 in
		{"3/8 in", Length, 0.009525},
		{"2 1/2 in", Length, 0.0635},
		{"80 °C", Temperature, 80},
		{"80C", Temperature, 80},
		{"176 F", Temperature, 80},
		{"-40 °F", Temperature, -40},
		{"\u221240 °C", Temperature, -40},
		{"12 Ah", Charge, 12},
		{"30 %", Share, 0.3},
		{"1300 rpm", Speed, 1300},
		{"10 h", Duration, 36000},
		{"12 min", Duration, 720},
		{"30 s", Duration, 30},
		{"5 days", Duration, 432000},
		{"1e3 mm", Length, 1},
		{".5 V", Voltage, 0.5},
	}
	for _, tt := range tests {
		got, err := Parse(tt.text, tt.dim)
		if err != nil {
			t.Errorf("Parse(%q, %s): %v", tt.text, tt.dim, err)
		} else if math.Abs(got-tt.want) > 1e-9*math.Max(1, math.Abs(tt.want)) {
			t.Errorf("Parse(%q, %s) = %v, want %v", tt.text, tt.dim, got, tt.want)
		}
	}
}

func TestParseErrors(t *testing.T) {
	tests := []struct {
		text string
		dim  Dimension
		want string
	}{
		{"18", Power, `18 has no unit (expected a power in W or kW, such as 18 W)`},
		{"1.5", Area, `1.5 has no unit (expected a conductor size in mm², mm2 or AWG, such as 1.5 mm²)`},
		{"1,5 mm²", Area, `"1,5 mm²" has a comma in its number (expected a decimal point and no ` +
			`thousands mark; did you mean "1.5 mm²"?)`},
		{"1,500 mA", Current, `"1,500 mA" has a comma in its number: is 1500 mA or 1.5 mA meant? (expected a decimal point ` +
			`and no thousands mark)`},
		{"12,000rpm", Speed, `"12,000rpm" has a comma in its number: is 12000 rpm or 12 rpm meant? (expected a decimal point ` +
			`and no thousands mark)`},
		{"1,50 A", Current, `"1,50 A" has a comma in its number (expected a decimal point and no thousands mark; did you mean "1.50 A"?)`},
		{"1,5000 A", Current, `"1,5000 A" has a comma in its number (expected a decimal point and no thousands mark; did you mean "1.5000 A"?)`},
		{"0,500 A", Current, `"0,500 A" has a comma in its number (expected a decimal point and no thousands mark; did you mean "0.500 A"?)`},
		{"1500,125 A", Current, `"1500,125 A" has a comma in its number (expected a decimal point and no thousands mark; did you mean "1500.125 A"?)`},
		{"2.1 V", Current, `"2.1 V" is a voltage, not a current (expected a current in A, mA or µA, ` +
			`such as 2.1 A)`},
		{"5 MOHM", Resistance, `"5 MOHM" has a capital M, the sign of mega: is mohm or Mohm meant? (expected a resistance in Ω, ohm, ` +
			`mΩ, mohm or kΩ, such as 9 mΩ)`},
		{"NaN V", Voltage, `"NaN V" is not a finite number (expected a voltage in V or mV, such as 12 V)`},
		{"-.inf", Voltage, `"-.inf" is not a finite number (expected a voltage in V or mV, such as 12 V)`},
		{"1e999 V", Voltage, `"1e999 V" is too large for a number (expected a finite voltage)`},
		{"1e308 kV", Voltage, `"1e308 kV" is too large for a number (expected a finite voltage)`},
		{"0x10 V", Voltage, `"0x10 V" has the unknown unit "x10 V" (expected a voltage in V or mV, ` +
			`such as 12 V)`},
		{"10 ft 6", Length, `"10 ft 6" has the unknown unit "ft 6" (expected a length in m, mm, cm, ft or in, such as 900 mm)`},
		{"1.5 ft 6 in", Length, `"1.5 ft 6 in" has the unknown unit "ft 6 in" (expected a length in m, mm, cm, ft or in, such as 900 mm)`},
		{"1/0 in", Length, `"1/0 in" has the unknown unit "/0 in" (expected a length in m, mm, cm, ft or in, such as 900 mm)`},
		{"10 ft 6 in", Current, `"10 ft 6 in" is a length, not a current (expected a current in A, mA or µA, such as 2.1 A)`},
		{"lots", Current, `"lots" is not a current (expected a current in A, mA or µA, such as 2.1 A)`},
		{"", Current, `empty current (expected a current in A, mA or µA, such as 2.1 A)`},
		{"99 AWG", Area, `"99 AWG" is not a wire gauge (expected 4/0 AWG to 40 AWG)`},
		{strings.Repeat("9", 80) + " V", Voltage, `too long for a voltage (expected a voltage in V or ` +
			`mV, such as 12 V)`},
	}
	for _, tt := range tests {
		_, err := Parse(tt.text, tt.dim)
		if err == nil {
			t.Errorf("Parse(%q, %s) gave no error", tt.text, tt.dim)
		} else if err.Error() != tt.want {
			t.Errorf("Parse(%q, %s)\n got %s\nwant %s", tt.text, tt.dim, err, tt.want)
		}
	}
}

// The diameters and areas are those printed in ASTM B258, table 1 (solid round
// wires): 4/0 AWG 0.4600 in, 211 600 circular mils; 10 AWG 0.1019 in; 36 AWG
// 0.0050 in. The areas in mm² follow from the printed circular mils.
func TestGaugeArea(t *testing.T) {
	const circularMilMm2 = math.Pi / 4 * 0.0254 * 0.0254
	tests := []struct {
		text string
		cmil float64
	}{
		{"4/0 AWG", 211600}, {"0000 AWG", 211600}, {"1/0 AWG", 105600}, {"AWG 2", 66360},
		{"10 AWG", 10380}, {"#16 awg", 2580}, {"36AWG", 25},
	}
	for _, tt := range tests {
		got, err := Parse(tt.text, Area)
		if want := tt.cmil * circularMilMm2; err != nil || math.Abs(got/want-1) > 0.002 {
			t.Errorf("Parse(%q) = %.4f, %v; want %.4f within 0.2 %% (table rounding)",
				tt.text, got, err, want)
		}
	}
}

// Every whole degree Celsius in °F is that degree and no hair more: 0 °C is 32 °F
// and 100 °C 212 °F by definition, so 5 K are 9 °F.
func TestFahrenheitIsExact(t *testing.T) {
	for c := -90; c <= 300; c += 5 {
		text := strconv.Itoa(c*9/5+32) + " °F"
		if got, err := Parse(text, Temperature); err != nil || got != float64(c) {
			t.Errorf("%s is %v °C, want %d (%v)", text, got, c, err)
		}
	}
}

func TestSizeLabel(t *testing.T) {
	for text, want := range map[string]string{
		"16awg": "16 AWG", "00 AWG": "2/0 AWG", "1.50 mm2": "1.5 mm²", "4mm²": "4 mm²",
	} {
		if got, err := SizeLabel(text); got != want || err != nil {
			t.Errorf("SizeLabel(%q) = %q, %v; want %q", text, got, err, want)
		}
	}
	if _, err := SizeLabel("16"); err == nil {
		t.Error("SizeLabel took a bare number")
	}
}

func TestFormat(t *testing.T) {
	tests := []struct {
		value float64
		dim   Dimension
		want  string
		plain string
	}{
		{2.1, Current, "2.10 A", "2.1 A"},
		{0.35, Current, "350 mA", "350 mA"},
		{0.9999, Current, "1.00 A", "999.9 mA"},
		{15, Current, "15.0 A", "15 A"},
		{123.4, Current, "123 A", "123.4 A"},
		{-2.5, Current, "−2.50 A", "−2.5 A"},
		{80e-6, Current, "80 µA", "80 µA"},
		{14.3, Voltage, "14.3 V", "14.3 V"},
		{12.66, Voltage, "12.7 V", "12.66 V"},
		{0.0423, Voltage, "42.3 mV", "42.3 mV"},
		{0.009, Resistance, "9 mΩ", "9 mΩ"},
		{85, Resistance, "85 Ω", "85 Ω"},
		{1.25, Length, "1.25 m", "1.25 m"},
		{0.9, Length, "900 mm", "900 mm"},
		{12.5, Length, "12.5 m", "12.5 m"},
		{0.03, Share, "3.0 %", "3 %"},
		{0.3, Share, "30 %", "30 %"},
		{0, Share, "0.0 %", "0 %"},
		{0.0042, Share, "0.42 %", "0.42 %"},
		{1200, Power, "1.2 kW", "1.2 kW"},
		{18, Power, "18 W", "18 W"},
		{80, Temperature, "80 °C", "80 °C"},
		{-12.34, Temperature, "−12.3 °C", "−12.34 °C"},
		{1300, Speed, "1300 rpm", "1300 rpm"},
		{36000, Duration, "10 h", "10 h"},
		{5 * 86400, Duration, "5 days", "5 days"},
		{0.02, Duration, "20 ms", "20 ms"},
		{1.5, Area, "1.5 mm²", "1.5 mm²"},
		{0, Current, "0 A", "0 A"},
		{math.NaN(), Current, "not known", "not known"},
		{math.Inf(1), Duration, "∞ s", "∞ s"},
	}
	for _, tt := range tests {
		if got := Format(tt.value, tt.dim); got != tt.want {
			t.Errorf("Format(%v, %s) = %q, want %q", tt.value, tt.dim, got, tt.want)
		}
		if got := Plain(tt.value, tt.dim); got != tt.plain {
			t.Errorf("Plain(%v, %s) = %q, want %q", tt.value, tt.dim, got, tt.plain)
		}
	}
}

// What is printed reads back as the same value, within the digits printed.
func TestRoundTrip(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for _, dim := range Dimensions() {
		for range 2000 {
			value := math.Pow(10, 7*r.Float64()-3)
			if dim == Temperature {
				value = 400*r.Float64() - 100
			}
			checkRoundTrip(t, value, dim)
		}
	}
}

// checkRoundTrip allows half of the last digit printed: three digits, or the
// fixed decimals of lengths in mm (0.05 mm), temperatures (0.05 °C), small
// currents (0.05 µA), small voltages (0.05 mV), shares (0.5 %) and speeds.
func checkRoundTrip(t *testing.T, value float64, dim Dimension) {
	t.Helper()
	absolute := map[Dimension]float64{Length: 0.51e-4, Temperature: 0.051, Current: 0.51e-7,
		Voltage: 0.51e-4, Share: 0.0051, Speed: 0.51}[dim]
	if value >= 1 && dim == Length {
		absolute = 0.0051
	}
	got, err := Parse(Format(value, dim), dim)
	if err != nil || math.Abs(got-value) > math.Max(absolute, 0.0051*math.Abs(value)) {
		t.Errorf("Format(%v, %s) = %q reads back as %v, %v", value, dim, Format(value, dim), got, err)
	}
	got, err = Parse(Plain(value, dim), dim)
	if err != nil || math.Abs(got-value) > 1e-5*math.Abs(value) {
		t.Errorf("Plain(%v, %s) = %q reads back as %v, %v", value, dim, Plain(value, dim), got, err)
	}
}

// Every unit shown in messages parses, and every dimension has an example.
func TestUnitsShown(t *testing.T) {
	for _, dim := range Dimensions() {
		if _, err := Parse(Example(dim), dim); err != nil {
			t.Errorf("example of %s: %v", dim, err)
		}
		for _, u := range Units(dim) {
			if _, err := Parse("2 "+u, dim); err != nil {
				t.Errorf("unit %q of %s: %v", u, dim, err)
			}
		}
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"18 W", "1/0 AWG", "1,5 mm²", "\u221240 °F", "NaN", "1e999 V", "5 days", "+.5e-3A"} {
		f.Add(s, 3)
	}
	f.Fuzz(func(t *testing.T, text string, which int) {
		fuzztest.Within(t, func() {
			dims := Dimensions()
			dim := dims[((which%len(dims))+len(dims))%len(dims)]
			value, err := Parse(text, dim)
			if err != nil {
				return
			}
			if math.IsNaN(value) || math.IsInf(value, 0) {
				t.Fatalf("Parse(%q, %s) = %v", text, dim, value)
			}
			if again, err := Parse(Plain(value, dim), dim); err != nil ||
				math.Abs(again-value) > 1e-5*math.Abs(value)+1e-12 {
				t.Fatalf("%q is %v, printed %q, read back %v, %v", text, value, Plain(value, dim), again, err)
			}
		})
	})
}

// A capital M is never milli. What cannot be mega is read in any case, as ever.
func TestCapitalM(t *testing.T) {
	const refused = -1
	for _, c := range []struct {
		text string
		dim  Dimension
		want float64
		asks string // what the message asks
	}{
		{"36 mW", Power, 0.036, ""}, {"36 mw", Power, 0.036, ""}, {"36 KW", Power, 36e3, ""},
		{"36 MW", Power, refused, "is mW or W meant?"}, {"36MW", Power, refused, "is mW or W meant?"},
		{"36 Mw", Power, refused, "is mW or W meant?"},
		{"50 ma", Current, 0.05, ""}, {"50 MA", Current, refused, "is mA or A meant?"},
		{"80 mv", Voltage, 0.08, ""}, {"80 MV", Voltage, refused, "is mV or V meant?"},
		{"9 mΩ", Resistance, 0.009, ""}, {"9 MΩ", Resistance, 9e6, ""}, {"9 mohm", Resistance, 0.009, ""},
		{"9 Mohm", Resistance, 9e6, ""}, {"9 MOhm", Resistance, refused, "is mohm or Mohm meant?"},
		{"9 MΩ/m", ResistancePerM, refused, "is mΩ/m or Ω/m meant?"}, {"9 mΩ/M", ResistancePerM, 0.009, ""},
		{"12 mah", Charge, 0.012, ""}, {"12 MAH", Charge, refused, "is mAh or Ah meant?"},
		{"5 ms", Duration, 0.005, ""}, {"5 MS", Duration, refused, "is ms or s meant?"}, {"5 MIN", Duration, 300, ""},
		{"5 MINUTES", Duration, 300, ""},
		{"900 mm", Length, 0.9, ""}, {"900 MM", Length, 0.9, ""}, {"900 mM", Length, 0.9, ""}, {"3 M", Length, 3, ""},
		{"3 METRES", Length, 3, ""}, {"900 Mm", Length, refused, "is mm or m meant?"},
		{"1.5 mm²", Area, 1.5, ""}, {"1.5 MM2", Area, 1.5, ""}, {"1.5 SQ MM", Area, 1.5, ""},
		{"1.5 Mm²", Area, refused, "is mm² meant?"}, {"1.5 Mm2", Area, refused, "is mm2 meant?"},
		{"1.5 sq Mm", Area, refused, "is sq mm meant?"},
		{"5 µA", Current, 5e-6, ""}, {"5 UA", Current, 5e-6, ""}, {"14 AWG", Area, GaugeAreaMm2(14), ""},
	} {
		got, err := Parse(c.text, c.dim)
		switch {
		case c.want == refused && (err == nil || !strings.Contains(err.Error(), "the sign of mega: "+c.asks)):
			t.Errorf("%q: %v, %v", c.text, got, err)
		case c.want != refused && (err != nil || math.Abs(got-c.want) > 1e-12*c.want):
			t.Errorf("%q: %v, %v, want %v", c.text, got, err, c.want)
		}
	}
}

// A value beside its limit shows as many digits as tell the two apart, five at most.
func TestAgainst(t *testing.T) {
	for _, c := range []struct {
		value, limit float64
		dim          Dimension
		want, most   string
	}{
		{0.042, 0.03, Share, "4.2 %", "3.0 %"},
		{0.0304, 0.03, Share, "3.04 %", "3.00 %"},
		{0.030004, 0.03, Share, "3.0004 %", "3.0000 %"},
		{0.03000004, 0.03, Share, "3.0 %", "3.0 %"},
		{1.004, 1, Share, "100.4 %", "100.0 %"},
		{30.04, 30, Current, "30.04 A", "30.00 A"},
		{30, 30, Current, "30.0 A", "30.0 A"},
		{0.9999, 1, Current, "999.9 mA", "1.000 A"},
		{90.04, 90, Temperature, "90.04 °C", "90.00 °C"},
		{-14.4, -14.404, Voltage, "−14.400 V", "−14.404 V"},
		{math.Inf(1), 2, Duration, "∞ s", "2 s"},
		{math.NaN(), math.NaN(), Current, NotKnown, NotKnown},
		{0, 0, Current, "0 A", "0 A"},
	} {
		got, most := Against(c.value, c.limit, c.dim)
		if got != c.want || most != c.most {
			t.Errorf("%g against %g: %q and %q, want %q and %q", c.value, c.limit, got, most, c.want, c.most)
		}
	}
}

// TestFlow: what a meter in series does not tell from nothing, 20 µA, is no current, and what goes into a battery below half a
// milliampere is no charge.
func TestFlow(t *testing.T) {
	for _, c := range []struct {
		amps        float64
		flow, words string
	}{
		{0, "0 A", "gives 0 A"}, {1e-9, "0 A", "gives 0 A"}, {19e-6, "0 A", "gives 0 A"}, {21e-6, "21 µA", "gives 21 µA"},
		{-0.1e-6, "0 A", "gives 0 A"}, {-1.1e-6, "0 A", "gives 0 A"}, {-0.4e-3, "−400 µA", "gives 0 A"}, {-0.6e-3, "−600 µA", "takes 600 µA"},
		{2.1, "2.10 A", "gives 2.10 A"}, {-2.1, "−2.10 A", "takes 2.10 A"}, {math.NaN(), NotKnown, "gives " + NotKnown},
	} {
		if got := Flow(c.amps); got != c.flow {
			t.Errorf("%g A: %q, want %q", c.amps, got, c.flow)
		}
		if got := BatteryFlow(c.amps); got != c.words {
			t.Errorf("%g A: %q, want %q", c.amps, got, c.words)
		}
	}
}
