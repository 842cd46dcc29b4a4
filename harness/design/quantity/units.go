package quantity

import (
	"math"
	"slices"
	"strings"

	"fusewright/harness/design/wording"
)

// unit is one way to write a unit: base value = (number - zero)·factor.
type unit struct {
	text   string
	factor float64
	zero   float64 // the number that is 0 in the base unit
	shown  bool    // listed in "expected …"
}

// toBase converts a number in the unit. A decimal fraction of the base unit is
// reached by division, which rounds once: 350 mA is 0.35 A exactly, and 140 °F
// 60 °C, which is a limit and must not be a hair above.
func (u *unit) toBase(value float64) float64 {
	value -= u.zero
	if parts := math.Round(10/u.factor) / 10; parts > 1 && math.Abs(parts*u.factor-1) < 1e-12 {
		return value / parts
	}
	return value * u.factor
}

// Exact factors. The inch is 25.4 mm and the foot 12 in by definition
// (international yard and pound agreement); 0 °C is 32 °F and 100 °C is 212 °F.
const (
	inchM = 0.0254
	footM = 0.3048
)

// dimensions in the order messages and documents list them.
var dimensions = []Dimension{Voltage, Current, Resistance, ResistancePerM, Power, Energy, Length,
	Area, Temperature, Charge, Share, Speed, Duration, CurrentSquareTime}

// Dimensions lists every dimension in a fixed order.
func Dimensions() []Dimension { return append([]Dimension(nil), dimensions...) }

// units of each dimension; the first is the base unit.
var units = map[Dimension][]unit{
	Voltage: {
		{"V", 1, 0, true}, {"mV", 1e-3, 0, true}, {"kV", 1e3, 0, false},
		{"volt", 1, 0, false}, {"volts", 1, 0, false}, {"Vdc", 1, 0, false}, {"V DC", 1, 0, false}},
	Current: {
		{"A", 1, 0, true}, {"mA", 1e-3, 0, true}, {"µA", 1e-6, 0, true}, {"uA", 1e-6, 0, false},
		{"kA", 1e3, 0, false}, {"amp", 1, 0, false}, {"amps", 1, 0, false},
		{"ampere", 1, 0, false}, {"amperes", 1, 0, false}},
	Resistance: {
		{"Ω", 1, 0, true}, {"ohm", 1, 0, true}, {"mΩ", 1e-3, 0, true}, {"mohm", 1e-3, 0, true},
		{"kΩ", 1e3, 0, true}, {"ohms", 1, 0, false}, {"kohm", 1e3, 0, false},
		{"MΩ", 1e6, 0, false}, {"Mohm", 1e6, 0, false}, {"µΩ", 1e-6, 0, false},
		{"uΩ", 1e-6, 0, false}, {"µohm", 1e-6, 0, false}, {"uohm", 1e-6, 0, false}},
	ResistancePerM: {
		{"Ω/m", 1, 0, true}, {"mΩ/m", 1e-3, 0, true}, {"Ω/km", 1e-3, 0, true},
		{"ohm/m", 1, 0, false}, {"mohm/m", 1e-3, 0, false}, {"ohm/km", 1e-3, 0, false}},
	Power: {
		{"W", 1, 0, true}, {"kW", 1e3, 0, true}, {"mW", 1e-3, 0, false},
		{"watt", 1, 0, false}, {"watts", 1, 0, false}},
	Energy: {{"Wh", 1, 0, true}, {"kWh", 1e3, 0, true}},
	Length: {
		{"m", 1, 0, true}, {"mm", 1e-3, 0, true}, {"cm", 1e-2, 0, true}, {"ft", footM, 0, true},
		{"in", inchM, 0, true}, {"inch", inchM, 0, false}, {"inches", inchM, 0, false},
		{"foot", footM, 0, false}, {"feet", footM, 0, false}, {`"`, inchM, 0, false},
		{"″", inchM, 0, false}, {"'", footM, 0, false}, {"′", footM, 0, false},
		{"metre", 1, 0, false}, {"metres", 1, 0, false}},
	Area: {
		{"mm²", 1, 0, true}, {"mm2", 1, 0, true}, {"mm^2", 1, 0, false},
		{"sq mm", 1, 0, false}, {"mm sq", 1, 0, false}, {"sqmm", 1, 0, false}},
	Temperature: {
		{"°C", 1, 0, true}, {"°F", 5.0 / 9, 32, true}, {"C", 1, 0, false},
		{"F", 5.0 / 9, 32, false}, {"℃", 1, 0, false}, {"℉", 5.0 / 9, 32, false},
		{"° C", 1, 0, false}, {"° F", 5.0 / 9, 32, false},
		{"deg C", 1, 0, false}, {"deg F", 5.0 / 9, 32, false}, {"degC", 1, 0, false},
		{"degF", 5.0 / 9, 32, false}},
	Charge:   {{"Ah", 1, 0, true}, {"mAh", 1e-3, 0, true}, {"A h", 1, 0, false}, {"A·h", 1, 0, false}},
	Share:    {{"%", 1e-2, 0, true}, {"percent", 1e-2, 0, false}, {"per cent", 1e-2, 0, false}},
	Speed:    {{"rpm", 1, 0, true}, {"r/min", 1, 0, true}, {"1/min", 1, 0, false}, {"min⁻¹", 1, 0, false}},
	Duration: durationUnits,
	CurrentSquareTime: {
		{"A²s", 1, 0, true}, {"A2s", 1, 0, true}, {"kA²s", 1e3, 0, false}, {"A^2s", 1, 0, false}},
	Number: {{"", 1, 0, false}},
	Mass:   {{"g", 1, 0, false}},
}

var durationUnits = []unit{
	{"s", 1, 0, true}, {"ms", 1e-3, 0, true}, {"min", 60, 0, true}, {"h", 3600, 0, true},
	{"days", 86400, 0, true}, {"day", 86400, 0, false}, {"d", 86400, 0, false},
	{"sec", 1, 0, false}, {"seconds", 1, 0, false}, {"minute", 60, 0, false},
	{"minutes", 60, 0, false}, {"hr", 3600, 0, false}, {"hour", 3600, 0, false},
	{"hours", 3600, 0, false}}

// Units are the usual ways to write the unit of a dimension, base unit first.
func Units(dim Dimension) []string {
	var names []string
	for _, u := range units[dim] {
		if u.shown {
			names = append(names, u.text)
		}
	}
	if dim == Area {
		names = append(names, "AWG")
	}
	return names
}

// Base is the base unit of a dimension.
func Base(dim Dimension) string { return units[dim][0].text }

// examples of each dimension, shown where a quantity is expected.
var examples = map[Dimension]string{
	Voltage: "12 V", Current: "2.1 A", Resistance: "9 mΩ", ResistancePerM: "12.7 mΩ/m", Power: "18 W",
	Energy: "160 Wh", Length: "900 mm", Area: "1.5 mm²", Temperature: "80 °C", Charge: "12 Ah",
	Share: "30 %", Speed: "1300 rpm", Duration: "12 min", CurrentSquareTime: "120 A²s",
}

// Example is a quantity of the dimension as people write it.
func Example(dim Dimension) string { return examples[dim] }

// Expected says which quantities are accepted, such as
// "a current in A, mA or µA, such as 2.1 A".
func Expected(dim Dimension) string {
	list := wording.Or(Units(dim))
	article := "a "
	if strings.ContainsAny(string(dim[0]), "aeiou") {
		article = "an "
	}
	return article + string(dim) + " in " + list + ", such as " + examples[dim]
}

// findUnit finds a unit as written, or by letters alone when only one unit of
// the dimension fits: "18 w" is watts, but "5 MOHM" could be two things, and
// "36 MW" is never milliwatts.
func findUnit(text string, dim Dimension) *unit {
	list := units[dim]
	for i := range list {
		if list[i].text == text {
			return &list[i]
		}
	}
	var found *unit
	for i := range list {
		if !strings.EqualFold(list[i].text, text) {
			continue
		}
		if found != nil && found.factor != list[i].factor {
			return nil
		}
		found = &list[i]
	}
	if found != nil && found.couldBeMega(text, dim) {
		return nil
	}
	return found
}

// couldBeMega tells whether a text that fits the unit by its letters alone has a
// capital M, the sign of mega, where the unit has m for milli. "MM" in a text of
// capitals is none: there is no such unit.
func (u *unit) couldBeMega(text string, dim Dimension) bool {
	if strings.Contains(u.text, "mm") {
		return strings.Contains(text, "Mm")
	}
	rest, milli := strings.CutPrefix(u.text, "m")
	return milli && strings.HasPrefix(text, "M") && isUnit(rest, dim)
}

func isUnit(text string, dim Dimension) bool {
	return slices.ContainsFunc(units[dim], func(u unit) bool { return u.text == text })
}
