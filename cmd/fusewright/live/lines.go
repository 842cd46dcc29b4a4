package live

import (
	"bytes"
)

// changedLines are the lines of a text, from 1, that an earlier one has not at their place:
// those between what both begin with and what both end with, and of them only such as the
// earlier one has nowhere. What was taken out is told by the line that stands there now.
func changedLines(was, now []byte) (lines []int) {
	old, new := bytes.Split(was, []byte("\n")), bytes.Split(now, []byte("\n"))
	head := 0
	for head < min(len(old), len(new)) && bytes.Equal(old[head], new[head]) {
		head++
	}
	tail := 0
	for tail < min(len(old), len(new))-head && bytes.Equal(old[len(old)-1-tail], new[len(new)-1-tail]) {
		tail++
	}
	had := map[string]bool{}
	for _, l := range old[head : len(old)-tail] {
		had[string(l)] = true
	}
	for i, l := range new[head : len(new)-tail] {
		if !had[string(l)] {
			lines = append(lines, head+i+1)
		}
	}
	if lines == nil && len(old) != len(new) {
		lines = []int{min(head+1, len(new))}
	}
	return lines
}
