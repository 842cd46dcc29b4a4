package main

import (
	_ "embed"
	"strings"

	"github.com/alecthomas/kong"
)

// exampleText holds what --help and the manual page show below each command: a
// line "== COMMAND", then the text. A test takes every example in it through the
// parser.
//
//go:embed examples.txt
var exampleText string

// addExamples puts the worked examples below the help of their commands.
func addExamples(app *kong.Kong) {
	below := map[string]string{}
	for part := range strings.SplitSeq(strings.TrimPrefix(exampleText, "== "), "\n== ") {
		command, text, _ := strings.Cut(part, "\n")
		below[command] = strings.TrimSpace(text)
	}
	below["build"] += "\n\n" + paperHelp()
	for _, leaf := range app.Model.Leaves(true) {
		leaf.Detail = below[leaf.Path()]
	}
}
