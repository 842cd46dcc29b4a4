package scene

import (
	"strings"
	"sync/atomic"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// Replacement stands for a rune that the embedded faces cannot show.
const Replacement = '□'

// lookalikes are runes that the faces lack, or that the back-ends treat
// differently, with what is shown instead.
var lookalikes = map[rune]string{
	'\u00a0': " ", // spaces of other widths: viewers disagree about them
	'\u2002': " ", '\u2003': " ", '\u2007': " ", '\u2009': " ", '\u200a': " ", '\u202f': " ",
	'\u2028': " ", '\u2029': " ",
	'\u2010': "-", '\u2011': "-",
	'✓': "√", '✔': "√", // tick: the root sign is the nearest shape in the faces
	'✗': "×", '✘': "×",
	'☐': "□", '☑': "√",
	'△': "▲", '▽': "▼",
	'➔': "→", '⟶': "→",
	'⎓': "=",
	'⚠': "!",
}

// Clean makes a text that every back-end shows alike, and is the only place
// where this is done: builder methods and Replay both call it. Bytes that are
// not UTF-8, runes without a glyph and scripts that need shaping become
// Replacement; letters with marks are composed (Unicode NFC); control
// characters and line breaks become a space; invisible format characters, such
// as those that turn the reading direction, are dropped.
func Clean(s string) string {
	if isPlain(s) {
		return s
	}
	s = norm.NFC.String(strings.ToValidUTF8(s, string(Replacement)))
	var b strings.Builder
	b.Grow(len(s))
	for _, r := range s {
		cleanRune(&b, r)
	}
	return b.String()
}

// isPlain tells that a text is as Clean leaves it, the usual case.
func isPlain(s string) bool {
	for _, r := range s {
		if (r < ' ' || r > '~') && !stays(r) {
			return false
		}
	}
	return true
}

// staying has of the runes up to the last of the usual signs whether Clean leaves them
// as they are, from when it was first asked; 0 = not yet.
var staying [0x2800]atomic.Int32

func stays(r rune) bool {
	if int(r) >= len(staying) {
		return false
	}
	known := staying[r].Load()
	if known == 0 {
		var b strings.Builder
		cleanRune(&b, r)
		if known = -1; b.String() == string(r) && norm.NFC.IsNormalString(string(r)) {
			known = 1
		}
		staying[r].Store(known)
	}
	return known > 0
}

func cleanRune(b *strings.Builder, r rune) {
	like, found := lookalikes[r]
	switch {
	case found:
		b.WriteString(like)
	case unicode.IsControl(r):
		b.WriteByte(' ')
	case unicode.Is(unicode.Cf, r):
	case unicode.IsMark(r) || needsShaping(r) || r == utf8.RuneError || !HasGlyph(r):
		b.WriteRune(Replacement)
	default:
		b.WriteRune(r)
	}
}

// needsShaping tells of scripts that are written from the right: a browser
// turns them round and the PDF and the PNG would not, so the pictures differ.
func needsShaping(r rune) bool {
	return unicode.In(r, unicode.Hebrew, unicode.Arabic, unicode.Syriac, unicode.Thaana, unicode.Nko)
}

// ID makes a valid and readable XML name from a part's name: letters and digits
// stay, everything else becomes a hyphen. Two names can give the same ID; see
// Sheet.UniqueID.
func ID(name string) string {
	var b strings.Builder
	for _, r := range Clean(name) {
		switch {
		case r < utf8.RuneSelf && (unicode.IsLetter(r) || unicode.IsDigit(r)), r == '_':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	id := strings.TrimRight(b.String(), "-")
	if id == "" || !unicode.IsLetter(rune(id[0])) {
		id = "n-" + id
	}
	return strings.TrimRight(id, "-")
}

// validID tells whether an ID is a plain XML name of ASCII runes.
func validID(id string) bool {
	for i, r := range id {
		letter := r < utf8.RuneSelf && (unicode.IsLetter(r) || r == '_')
		if !letter && (i == 0 || r >= utf8.RuneSelf || !unicode.IsDigit(r) && r != '-' && r != '.') {
			return false
		}
	}
	return id != ""
}
