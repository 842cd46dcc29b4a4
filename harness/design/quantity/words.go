package quantity

import (
	"strings"
	"unicode/utf8"
)

// Belong tells whether a word and the next are a number and its unit, as in
// "3.0 %" or "16 AWG,", or its fraction, so that no line may end between them.
func Belong(word, next string) bool {
	word = strings.TrimLeft(word, "(<≥≤±−-+")
	if word == "" || strings.Trim(word, digits+".,/") != "" || strings.HasSuffix(word, ",") {
		return false
	}
	next = strings.TrimRight(next, ".,;:)")
	return shownUnit(next) || isFraction(next) && strings.Trim(word, digits) == ""
}

func shownUnit(word string) bool {
	if word == "AWG" {
		return true
	}
	for _, list := range units {
		for _, u := range list {
			if u.shown && u.text == word {
				return true
			}
		}
	}
	return false
}

const digits = "0123456789"

// isFraction tells of a fraction of an inch: "11/32".
func isFraction(word string) bool {
	above, below, ok := strings.Cut(word, "/")
	return ok && above != "" && below != "" && strings.Trim(above+below, digits) == ""
}

// mostWhole is the most characters that stay together: what is longer is no
// quantity that anybody wrote.
const mostWhole = 24

// Words are the words of a text between which a line may end: a number, its
// fraction and its unit are one, and so are feet and inches. They are joined by
// one space.
func Words(text string) []string {
	fields := strings.Fields(text)
	var list []string
	for i, word := range fields {
		if n := len(list); n > 0 && (Belong(fields[i-1], word) || inchesFollow(fields, i)) &&
			utf8.RuneCountInString(list[n-1])+utf8.RuneCountInString(word) < mostWhole {
			list[n-1] += " " + word
		} else {
			list = append(list, word)
		}
	}
	return list
}

// inchesFollow tells that a word is the inches behind feet: the "4" of "3 ft 4 1/8 in".
func inchesFollow(fields []string, i int) bool {
	if i < 2 || fields[i-1] != "ft" || !Belong(fields[i-2], "ft") || i+1 >= len(fields) || !Belong(fields[i], fields[i+1]) {
		return false
	}
	unit := fields[i+1]
	if isFraction(unit) && i+2 < len(fields) {
		unit = fields[i+2]
	}
	return strings.TrimRight(unit, ".,;:)") == "in"
}

// Whole tells of a word of Words that must not be parted either: a quantity, or a
// number with its signs, such as "11/32" or "(≤12.5".
func Whole(word string) bool {
	if utf8.RuneCountInString(word) > mostWhole {
		return false
	}
	return strings.Contains(word, " ") || strings.ContainsAny(word, digits) && strings.Trim(word, digits+".,/()<>≥≤±×~−-+;:%") == ""
}
