package document

import (
	"strings"
	"unicode/utf8"
)

// shortWord is the letters of a word that is shortened, its full stop apart.
const shortWord = 3

// shortened is a label's text in fewer letters until it fits: the longest word first, what
// tells one wire from another (its number, the last words) last. It may still not fit.
func shortened(text string, fits func(string) bool) string {
	if fits(text) {
		return text
	}
	words := strings.Fields(text)
	last := func() int {
		if n := len(words) - 1; n > 0 && len(words[n]) == 1 { // "+"
			return n - 1
		}
		return len(words) - 1
	}()
	for !fits(strings.Join(words, " ")) {
		best, most := -1, shortWord+1
		for i := 1; i <= last; i++ {
			n := utf8.RuneCountInString(words[i])
			if i == last && best >= 0 {
				break
			}
			if n > most && !strings.HasSuffix(words[i], ".") {
				best, most = i, n
			}
		}
		if best < 0 {
			break
		}
		words[best] = string([]rune(words[best])[:shortWord]) + "."
	}
	return strings.Join(words, " ")
}
