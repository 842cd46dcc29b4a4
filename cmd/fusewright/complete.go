package main

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/alecthomas/kong"

	"fusewright/harness/review/rules"
)

// completeCmd prints a completion script.
type completeCmd struct {
	Shell string `arg:"" help:"bash, zsh or fish." enum:"bash,zsh,fish"`
}

// Run prints the script for the shell, made from the command line's own model.
func (c *completeCmd) Run(s *streams, _ *program) error {
	app, err := newParser(&program{}, io.Discard, io.Discard, func(int) {})
	if err != nil {
		return err
	}
	spots := spotsOf(app.Model.Node, "")
	return printed(s, func(b *bytes.Buffer) error {
		switch c.Shell {
		case "zsh":
			zsh.script(b, spots)
		case "fish":
			fishScript(b, spots)
		default:
			bash.script(b, spots)
		}
		return nil
	})
}

// spot is a place on the command line: a command with what may follow it.
type spot struct {
	path  string // "calc drop"; "" = the program itself
	subs  []choice
	flags []flagChoice
	words []string // that a positional argument may be
	files bool     // a positional argument is a file
}

// choice is a word with what it means.
type choice struct{ word, help string }

// flagChoice is a flag with what its value may be.
type flagChoice struct {
	long, short, help string
	values            []string // the words its value may be
	takes, file       bool     // it takes a value; the value is a file
}

// fileArgs are the names of positional arguments that are files.
var fileArgs = []string{"design", "model", "old", "new", "file"}

// knownWords are the words of positional arguments that are no fixed choice.
func knownWords(command, arg string) []string {
	switch command + "/" + arg {
	case "explain/rule":
		return rules.Names()
	case "licences/name":
		return licenceNames()
	case "parts/kind":
		var names []string
		for _, k := range partKinds {
			names = append(names, k.name)
		}
		return names
	}
	return nil
}

// spotsOf lists a command and those below it.
func spotsOf(n *kong.Node, path string) []spot {
	here := spot{path: path}
	for _, group := range n.AllFlags(true) {
		for _, f := range group {
			here.flags = append(here.flags, flagOf(f))
		}
	}
	for _, p := range n.Positional {
		if p.Enum != "" {
			here.words = append(here.words, p.EnumSlice()...)
		}
		here.words = append(here.words, knownWords(path, p.Name)...)
		here.files = here.files || slices.Contains(fileArgs, p.Name)
	}
	list := []spot{}
	for _, child := range n.Children {
		if child.Hidden {
			continue
		}
		here.subs = append(here.subs, choice{child.Name, plainHelp(child.Help)})
		list = append(list, spotsOf(child, strings.TrimSpace(path+" "+child.Name))...)
	}
	return append([]spot{here}, list...)
}

func flagOf(f *kong.Flag) flagChoice {
	out := flagChoice{long: "--" + f.Name, help: plainHelp(f.Help), takes: !f.IsBool()}
	if f.Short != 0 {
		out.short = "-" + string(f.Short)
	}
	if f.Enum != "" {
		out.values = slices.DeleteFunc(f.EnumSlice(), func(v string) bool { return v == "" })
	}
	out.file = slices.Contains([]string{"path", "existingfile", "existingdir"}, f.Tag.Type)
	return out
}

// plainHelp keeps a help text within a quoted word of every shell: the first
// sentence, without quotes, colons and other marks that shells know.
func plainHelp(s string) string {
	if first, _, found := strings.Cut(s, ". "); found {
		s = first
	}
	s = strings.NewReplacer("'", "", `"`, "", ":", ",", "$", "", "`", "", `\`, "", "[", "(", "]", ")").Replace(s)
	return strings.TrimSuffix(s, ".")
}

// names are all spellings of the flags of a spot.
func (s spot) names() []string { return wordsOf(flagWords(s)) }

// spellings are a flag's names as alternatives of a shell pattern at a spot.
func (f flagChoice) spellings(path string) string {
	text := fmt.Sprintf("%q", path+"|"+f.long)
	if f.short != "" {
		text += fmt.Sprintf("|%q", path+"|"+f.short)
	}
	return text
}

// key is what stands before the cursor and the word that leads to a spot.
func (s spot) key() string {
	if strings.Contains(s.path, " ") {
		return s.path
	}
	return " " + s.path
}

func wordsOf(list []choice) []string {
	var words []string
	for _, c := range list {
		words = append(words, c.word)
	}
	return words
}
