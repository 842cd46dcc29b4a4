package quantity

import (
	"regexp"
	"testing"
)

// What the pattern takes Parse takes, and the other way round.
func TestPatternAgreesWithParse(t *testing.T) {
	texts := []string{"", "12", "12 V", "12V", "12 v", " 12 V ", "-12 V", "+1.5 A", "1.5e-3 A", ".5 A", "5. A",
		"350 mA", "350mA", "9 mΩ", "9 mohm", "9 m\u2126", "5 uA", "5 \u03bcA", "900 mm", "3 ft", `7"`, "1.5 mm²",
		"10 ft 6 in", `10' 6"`, `10'6"`, `1′ 6″`, "1.5 ft 6 in", "10 ft 6", "3 ft 4 1/8 in", "4 1/8 in", "1/8 in", "1/0 in", "-3 ft 1 in", "10 ft 6 m", "6 in 10 ft", "4 1/8 ft", "1 FOOT 2 INCHES",
		"1.5mm2", "16 AWG", "16awg", "AWG 16", "2/0 AWG", "00 AWG", "#16 AWG", "big", "80 °C", "80 C", "-40 °F",
		"30 %", "30%", "4200 rpm", "12 min", "21 days", "12 Ah", "7,5 A", "NaN W", "-Inf W", "18 W", "60 W x", "18\u00a0W", "16\u202fAWG", "12 V DC",
		"36 MW", "36 mw", "9 MΩ", "9 mω", "9 M\u2126", "9 MOHM", "9 Mohm", "9 mOhm", "9 MΩ/m", "900 MM", "900 Mm", "900 mM",
		"1.5 MM²", "1.5 Mm²", "1.5 sq Mm", "1.5 SQ MM", "5 MS", "5 MIN", "12 MAH", "50 MA", "80 MV"}
	for _, dim := range Dimensions() {
		form := regexp.MustCompile(Pattern(dim, true))
		for _, text := range texts {
			_, err := Parse(text, dim)
			if got := form.MatchString(text); got != (err == nil) {
				t.Errorf("%s, %q: pattern says %v, Parse %v", dim, text, got, err)
			}
		}
	}
	if regexp.MustCompile(Pattern(Current, false)).MatchString("-5 A") {
		t.Error("a negative current passes where none may be")
	}
}
