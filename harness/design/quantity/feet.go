package quantity

import (
	"regexp"
	"strconv"
	"strings"
)

// Feet and inches as a tape is read: `10 ft 6 in`, `10' 6"`, `3 ft 4 1/8 in`, and inches
// with a fraction, `4 1/8 in`. The feet are whole; the fraction needs no feet.
var (
	feetSign   = signsOf(footM)
	inchSign   = signsOf(inchM)
	fraction   = `(([0-9]+)` + space + `+)?([0-9]+)/([1-9][0-9]*)`
	wholeFeet  = `([0-9]+)` + spaces + feetSign
	someInches = `([0-9]+(\.[0-9]*)?)`
	tape       = `(` + wholeFeet + spaces + `(` + fraction + `|` + someInches + `)|` + fraction + `)` + spaces + inchSign
	tapeForm   = regexp.MustCompile(`^([-+]?)` + tape + `$`)
)

// signsOf is a pattern of the ways to write a unit of length.
func signsOf(factor float64) string {
	var signs []string
	for _, u := range units[Length] {
		if u.factor == factor {
			signs = append(signs, AnyCase(u.text))
		}
	}
	return `(` + strings.Join(longestFirst(signs), "|") + `)`
}

// readTape reads feet and inches of a tidied text in metres; false where it is none.
// All is summed in inches, so that 10 ft 6 in is the very length that 126 in is.
func readTape(s string) (inches float64, ok bool) {
	m := tapeForm.FindStringSubmatch(s)
	if m == nil {
		return 0, false
	}
	figure := func(i int) float64 {
		v, _ := strconv.ParseFloat(m[i], 64) // digits alone; what is not there is 0
		return v
	}
	inches = 12*figure(3) + figure(7) + figure(10) + figure(13)
	for _, above := range []int{8, 14} {
		if m[above] != "" {
			inches += figure(above) / figure(above+1)
		}
	}
	if m[1] == "-" {
		inches = -inches
	}
	return inches, true
}

// tidyTape is feet and inches in their usual spelling; s is tidied.
func tidyTape(s string) string {
	m := tapeForm.FindStringSubmatch(s)
	text := strings.TrimPrefix(m[1], "+")
	if m[3] != "" {
		text += m[3] + " ft "
	}
	part := m[5]
	if m[3] == "" {
		part = strings.TrimSpace(m[12] + m[14] + "/" + m[15])
	}
	return text + part + " in"
}
