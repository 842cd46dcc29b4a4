package dxf

import (
	"fmt"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"fusewright/render/scene"
)

// Escape makes a text of ASCII that drawing programs show as it was: degree,
// plus-minus and diameter by the format's own codes, everything else beyond
// ASCII as \U+XXXX. A percent sign beside another and a backslash would begin
// such a code and a caret would begin a control character; they are escaped.
func Escape(s string) string {
	s = scene.Clean(s)
	var b strings.Builder
	for i, r := range s {
		switch {
		case r == '°':
			b.WriteString("%%d")
		case r == '±':
			b.WriteString("%%p")
		case r == 'Ø':
			b.WriteString("%%c")
		case r == '\\', r == '^', r == '%' && besidePercent(s, i):
			fmt.Fprintf(&b, `\U+%04X`, r)
		case r < 0x7f:
			b.WriteRune(r)
		default:
			for _, unit := range utf16.Encode([]rune{r}) {
				fmt.Fprintf(&b, `\U+%04X`, unit)
			}
		}
	}
	return b.String()
}

// besidePercent tells that the percent sign at i touches another, or the code
// that a neighbour is written with.
func besidePercent(s string, i int) bool {
	before, _ := utf8.DecodeLastRuneInString(s[:i])
	after, _ := utf8.DecodeRuneInString(s[i+1:])
	return strings.ContainsRune("%°±Ø", before) || strings.ContainsRune("%°±Ø", after)
}
