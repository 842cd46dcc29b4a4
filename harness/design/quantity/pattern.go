package quantity

import (
	"fmt"
	"regexp"
	"sort"
	"strings"
	"unicode"
)

// space is one white space that Parse overlooks; engines differ in whether \s has
// the unbreakable ones.
const (
	space  = "[\\s\u00a0\u2007\u202f]"
	spaces = space + "*"
)

// Pattern is a regular expression, in the common subset of RE2 and ECMA 262, of
// the texts that Parse takes for a dimension, apart from rare white space. Where
// negative is false it has no minus sign.
func Pattern(dim Dimension, negative bool) string {
	sign := `\+?`
	if negative {
		sign = `[-+−–]?`
	}
	number := sign + `([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][-+]?[0-9]+)?`
	var names []string
	for _, u := range units[dim] {
		names = append(names, u.pattern(dim))
	}
	one := number + spaces + `(` + strings.Join(longestFirst(names), "|") + `)`
	switch dim {
	case Length:
		one = "(" + one + "|" + sign + tape + ")"
	case Area:
		gauge := AnyCase("AWG")
		one = "(" + one + "|#?" + spaces + "[0-9]+(/0)?" + spaces + gauge +
			"|" + gauge + spaces + "#?" + spaces + "[0-9]+(/0)?)"
	}
	return "^" + spaces + one + spaces + "$"
}

// longestFirst keeps "mm" from being read as "m" by simple engines.
func longestFirst(names []string) []string {
	sort.SliceStable(names, func(i, j int) bool { return len(names[i]) > len(names[j]) })
	return names
}

// pattern is a pattern of the texts that findUnit takes for the unit. A capital M
// is never milli, and what a capital M makes another unit has its M as it stands.
func (u *unit) pattern(dim Dimension) string {
	rest, milli := u.text[1:], u.text[0] == 'm'
	switch {
	case strings.Contains(u.text, "mm"):
		before, after, _ := strings.Cut(u.text, "mm")
		return AnyCase(before) + "(mm|mM|MM)" + AnyCase(after)
	case u.text[0] == 'M', milli && isUnit("M"+rest, dim):
		return strings.ReplaceAll(u.text, "Ω", "[Ω\u2126]")
	case milli && isUnit(rest, dim):
		return "m" + AnyCase(rest)
	}
	return AnyCase(u.text)
}

// AnyCase is a pattern of a text in any case and with any space in it. The ohm
// and micro signs exist twice each; both are taken.
func AnyCase(text string) string {
	var b strings.Builder
	for _, r := range text {
		lower, upper := unicode.ToLower(r), unicode.ToUpper(r)
		switch {
		case r == ' ':
			b.WriteString(space + "+")
		case r == 'Ω':
			b.WriteString("[Ωω\u2126]")
		case r == 'µ':
			b.WriteString("[µ\u03bc]")
		case lower != upper && r < 0x80:
			fmt.Fprintf(&b, "[%c%c]", upper, lower)
		default:
			b.WriteString(regexp.QuoteMeta(string(r)))
		}
	}
	return b.String()
}
