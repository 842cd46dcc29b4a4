package document

import (
	"testing"
	"unicode/utf8"
)

// By hand, in letters: the longest word gives way first, then the next; the last word, and
// the sign after it, stay while anything else can be shorter.
func TestShortened(t *testing.T) {
	for _, c := range []struct {
		text string
		most int
		want string
	}{
		{"W38 reverse lamp left +", 23, "W38 reverse lamp left +"},
		{"W38 reverse lamp left +", 22, "W38 rev. lamp left +"},
		{"W45 awning switch feed", 21, "W45 awn. switch feed"},
		{"W45 awning switch feed", 19, "W45 awn. swi. feed"},
		{"W9 supercapacitor +", 12, "W9 sup. +"},
		{"W9 bar +", 4, "W9 bar +"},
		{"W9", 1, "W9"},
	} {
		if got := shortened(c.text, func(s string) bool { return utf8.RuneCountInString(s) <= c.most }); got != c.want {
			t.Errorf("%s in %d letters: %q, want %q", c.text, c.most, got, c.want)
		}
	}
}
