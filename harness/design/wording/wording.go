// Package wording puts names and counts into sentences: "a, b and c", "2 wires".
package wording

import (
	"strconv"
	"strings"
)

// And joins names: "a, b and c"; "nothing" for none.
func And(names []string) string {
	if len(names) == 0 {
		return "nothing"
	}
	return last(names, " and ")
}

// Or joins choices: "a, b or c"; "" for none.
func Or(choices []string) string { return last(choices, " or ") }

func last(names []string, word string) string {
	n := len(names)
	if n < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:n-1], ", ") + word + names[n-1]
}

// Few is And with at most n names and the count of the rest: "a, b and 3 others".
func Few(names []string, n int) string {
	if len(names) <= n {
		return And(names)
	}
	return strings.Join(names[:n], ", ") + " and " + Count(len(names)-n, "other", "others")
}

// Some lists at most n names and how many more there are: "a, b and 3 more".
func Some(names []string, n int) string {
	if len(names) <= n {
		return strings.Join(names, ", ")
	}
	return strings.Join(names[:n], ", ") + " and " + strconv.Itoa(len(names)-n) + " more"
}

// Span lists designations, three and more that follow each other by the first and last: "W3 to W5, W9".
func Span(names []string) string {
	var parts []string
	for i := 0; i < len(names); {
		k := i + 1
		for k < len(names) && follows(names[k-1], names[k]) {
			k++
		}
		if k-i < 3 {
			k = i + 1
			parts = append(parts, names[i])
		} else {
			parts = append(parts, names[i]+" to "+names[k-1])
		}
		i = k
	}
	return strings.Join(parts, ", ")
}

// follows tells whether a designation has the number after another's, and the same letters.
func follows(a, b string) bool {
	letters := strings.TrimRight(a, "0123456789")
	n, err := strconv.Atoi(a[len(letters):])
	return err == nil && b == letters+strconv.Itoa(n+1)
}

// Count is a number of things: "1 wire", "2 wires".
func Count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// Present joins the parts that are not empty.
func Present(parts []string, sep string) string {
	var used []string
	for _, p := range parts {
		if p != "" {
			used = append(used, p)
		}
	}
	return strings.Join(used, sep)
}
