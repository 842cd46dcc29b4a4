package library

import (
	"fmt"
	"strings"
	"unicode"

	"fusewright/harness/design/problem"

	"gopkg.in/yaml.v3"
)

// Text is the text of a library file with the name it has in messages.
type Text struct {
	File string
	Data []byte
}

// ReadTexts reads a user's own files, each a regular one of at most
// MaxFileBytes. The error is a problem.List with every file that cannot be read.
func ReadTexts(paths ...string) ([]Text, error) {
	var texts []Text
	var problems problem.List
	for _, p := range paths {
		src, err := readLimited(p)
		if err != nil {
			problems.Add(problem.Problem{Pos: problem.Pos{File: p}, What: err.Error()})
			continue
		}
		texts = append(texts, Text{File: p, Data: src})
	}
	return texts, problems.Err()
}

// LoadTexts is Load with the texts of the user's own files.
func LoadTexts(texts ...Text) (*Library, error) {
	l := newLoading()
	if err := l.readEmbedded(); err != nil {
		return nil, err
	}
	for _, t := range texts {
		l.read(t.File, t.Data)
	}
	return l.result()
}

func (l *loading) readEmbedded() error {
	entries, err := embedded.ReadDir(".")
	if err != nil {
		return err
	}
	for _, e := range entries {
		src, err := embedded.ReadFile(e.Name())
		if err != nil {
			return err
		}
		l.read("library/"+e.Name(), src)
	}
	return nil
}

// printable gives the text of a node, or "" after reporting a character that
// could confuse a terminal or turn the reading direction.
func (r *reader) printable(n *yaml.Node, what string) string {
	for _, c := range n.Value {
		if !unicode.IsPrint(c) && !unicode.IsSpace(c) {
			r.report(n, fmt.Sprintf("%s has the unprintable character %U", what, c), "printable text", "")
			return ""
		}
	}
	return n.Value
}

// tidy puts one space between words, also where a line was broken.
func tidy(s string) string { return strings.Join(strings.Fields(s), " ") }
