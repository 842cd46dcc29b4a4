package quantity

import (
	"regexp"
	"strings"
	"testing"
	"unicode"

	"fusewright/harness/proof/fuzztest"
)

// FuzzSpelling: the pattern of the JSON Schema takes what Parse takes, and the
// usual spelling of a quantity is the same quantity.
func FuzzSpelling(f *testing.F) {
	for _, s := range []string{"18 W", "1/0 AWG", "1.5mm2", "−40 °F", "5 days", "+.5e-3A", `7"`, "36 MW", "00 AWG", "16awg", `10' 6"`, "3 ft 4 1/8 in"} {
		for which := range Dimensions() {
			f.Add(s, which)
		}
	}
	patterns := map[Dimension]*regexp.Regexp{}
	for _, dim := range Dimensions() {
		patterns[dim] = regexp.MustCompile(Pattern(dim, true))
	}
	f.Fuzz(func(t *testing.T, text string, which int) {
		fuzztest.Within(t, func() {
			dims := Dimensions()
			dim := dims[((which%len(dims))+len(dims))%len(dims)]
			was, err := Parse(text, dim)
			if err != nil || strings.ContainsFunc(text, unicode.IsControl) {
				return // no control character is in a design
			}
			if !patterns[dim].MatchString(text) {
				t.Errorf("Parse takes %q for a %s, the pattern does not", text, dim)
			}
			tidied, err := Tidy(text, dim)
			if err != nil {
				t.Fatalf("%q is %v and not tidied: %v", text, was, err)
			}
			if now, err := Parse(tidied, dim); err != nil || now != was {
				t.Errorf("%q is %v; tidied to %q, it is %v (%v)", text, was, tidied, now, err)
			}
			if again, err := Tidy(tidied, dim); err != nil || again != tidied {
				t.Errorf("%q tidied to %q, and that to %q (%v)", text, tidied, again, err)
			}
		})
	})
}
