package problem

import (
	"slices"
	"strings"
)

// Nearest returns the choice closest to word by edit distance, ignoring case,
// or "" when none is near enough to be a likely slip (more than a third of the
// word, at least two edits). Failing that, it is the choice that begins like
// word, since people leave the end of long names away. Ties go to the first
// choice given.
func Nearest(word string, choices []string) string {
	w := []rune(strings.ToLower(word))
	best, bestDist := "", max(2, len(w)/3)+1
	begins, beginsDist := "", len(w)/4+1
	if len(w) < 3 {
		beginsDist = 0
	}
	for _, c := range choices {
		choice := []rune(strings.ToLower(c))
		if d := distance(w, choice); d < bestDist {
			best, bestDist = c, d
		}
		if best != "" || beginsDist == 0 || len(choice) <= len(w) {
			continue
		}
		if d := distance(w, choice[:len(w)]); d < beginsDist {
			begins, beginsDist = c, d
		}
	}
	if best == "" {
		return begins
	}
	return best
}

// Kin are the choices that have a word in common with another, "pressure water pump" with
// "water pump"; all choices where none has.
func Kin(word string, choices []string) []string {
	words := strings.Fields(strings.ToLower(word))
	kin := slices.DeleteFunc(slices.Clone(choices), func(c string) bool {
		return !slices.ContainsFunc(strings.Fields(strings.ToLower(c)), func(w string) bool {
			return len(w) > 2 && slices.Contains(words, w)
		})
	})
	if len(kin) == 0 {
		return choices
	}
	return kin
}

// distance is the edit distance with adjacent transpositions counted as one.
func distance(a, b []rune) int {
	prev2, prev, cur := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := 1; i <= len(a); i++ {
		cur[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			cur[j] = min(prev[j]+1, cur[j-1]+1, prev[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				cur[j] = min(cur[j], prev2[j-2]+1)
			}
		}
		prev2, prev, cur = prev, cur, prev2
	}
	return prev[len(b)]
}
