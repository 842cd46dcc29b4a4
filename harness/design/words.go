package design

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design/wording"
)

// fold makes names comparable: case and the amount of space do not count.
func fold(name string) string {
	return strings.ToLower(strings.Join(strings.Fields(name), " "))
}

// short cuts a text for a message.
func short(s string) string {
	const most = 48
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	return string([]rune(s)[:most]) + "…"
}

// quoted shows a text from the file in a message: cut, and with anything that
// could confuse a terminal escaped.
func quoted(s string) string { return strconv.Quote(short(s)) }

// oneOf lists choices for "expected": "a, b or c", cut when there are many.
func oneOf(choices []string) string {
	const most = 16
	if n := len(choices); n > most {
		return strings.Join(choices[:most], ", ") + fmt.Sprintf(" … %d in all", n)
	}
	return wording.Or(choices)
}

// kindName says what a node is.
func kindName(n *yaml.Node) string {
	switch n = follow(n); {
	case n.Kind == yaml.MappingNode:
		return "a mapping"
	case n.Kind == yaml.SequenceNode:
		return "a list"
	case n.Tag == "!!null":
		return "nothing"
	}
	return "a single value"
}

// describe shows what a node holds.
func describe(n *yaml.Node) string {
	n = follow(n)
	if n.Kind == yaml.ScalarNode && n.Tag != "!!null" {
		return quoted(n.Value)
	}
	return kindName(n)
}

// badRune is the first character of a text that is neither printable nor a
// space, or -1: NUL is such a character.
func badRune(s string) rune {
	for _, c := range s {
		if !unicode.IsPrint(c) && !unicode.IsSpace(c) {
			return c
		}
	}
	return -1
}
