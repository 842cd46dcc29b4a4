package quantity

import "strings"

// Belong tells whether a word and the next are a number and its unit, as in
// "3.0 %" or "16 AWG,", so that a line should not end between them.
func Belong(word, next string) bool {
	word = strings.TrimLeft(word, "(<≥≤±−-+")
	if word == "" || strings.Trim(word, "0123456789.,/") != "" || strings.HasSuffix(word, ",") {
		return false
	}
	next = strings.TrimRight(next, ".,;:)")
	if next == "AWG" {
		return true
	}
	for _, list := range units {
		for _, u := range list {
			if u.shown && u.text == next {
				return true
			}
		}
	}
	return false
}
