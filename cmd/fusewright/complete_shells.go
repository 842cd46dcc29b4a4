package main

import (
	"fmt"
	"io"
	"strings"
)

// shell is how bash and zsh say what their scripts have in common.
type shell struct {
	head, tail string
	walk       [3]any                // the first word of the command, the word at the cursor, all words
	oneOf      func([]string) string // offers words
	files      string                // offers files
	flags      func(spot) string     // offers the flags of a spot
	commands   func([]choice) string // offers commands
}

var bash = shell{
	head: "# bash completion for fusewright, made by 'fusewright complete bash'.\n" +
		"# Load it with: source <(fusewright complete bash)\n" +
		"_fusewright() {\n\tlocal word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} where= i\n" +
		"\tif [[ $word == = ]]; then word=\n" +
		"\telif [[ $before == = ]]; then before=${COMP_WORDS[COMP_CWORD-2]}; fi\n" +
		"\tCOMPREPLY=()\n",
	walk:     [3]any{"1", "COMP_CWORD", "COMP_WORDS"},
	oneOf:    bashWords,
	files:    `compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -f -- "$word"))`,
	flags:    func(s spot) string { return bashWords(s.names()) },
	commands: func(list []choice) string { return bashWords(wordsOf(list)) },
	tail:     "complete -F _fusewright fusewright\n",
}

func bashWords(words []string) string {
	return fmt.Sprintf("COMPREPLY=($(compgen -W %q -- \"$word\"))", strings.Join(words, " "))
}

var zsh = shell{
	head: "#compdef fusewright\n# zsh completion for fusewright, made by 'fusewright complete zsh'.\n" +
		"# Keep it as _fusewright in a folder of $fpath.\n" +
		"_fusewright() {\n\tlocal word=${words[CURRENT]} before=${words[CURRENT-1]} where= i\n\tlocal -a list\n",
	walk:     [3]any{"2", "CURRENT", "words"},
	oneOf:    func(words []string) string { return "compadd -- " + strings.Join(words, " ") },
	files:    "_files",
	flags:    func(s spot) string { return described("flag", flagWords(s)) },
	commands: func(list []choice) string { return described("command", list) },
	tail:     "if [[ $funcstack[1] == _fusewright ]]; then _fusewright \"$@\"; else compdef _fusewright fusewright; fi\n",
}

// script writes the script for a shell.
func (sh shell) script(w io.Writer, spots []spot) {
	fmt.Fprintf(w, sh.head+"\tfor ((i = %s; i < %s; i++)); do\n\t\tcase \"$where ${%s[i]}\" in\n", sh.walk[:]...)
	for _, s := range spots[1:] { // which command the words before the cursor name
		fmt.Fprintf(w, "\t\t%q) where=%q ;;\n", s.key(), s.path)
	}
	fmt.Fprint(w, "\t\tesac\n\tdone\n\tcase \"$where|$before\" in\n")
	for _, s := range spots {
		for _, f := range s.flags {
			switch {
			case len(f.values) > 0:
				fmt.Fprintf(w, "\t%s) %s; return ;;\n", f.spellings(s.path), sh.oneOf(f.values))
			case f.file:
				fmt.Fprintf(w, "\t%s) %s; return ;;\n", f.spellings(s.path), sh.files)
			case f.takes:
				fmt.Fprintf(w, "\t%s) return ;;\n", f.spellings(s.path))
			}
		}
	}
	fmt.Fprint(w, "\tesac\n\tif [[ $word == -* ]]; then\n\t\tcase \"$where\" in\n")
	for _, s := range spots {
		fmt.Fprintf(w, "\t\t%q) %s ;;\n", s.path, sh.flags(s))
	}
	fmt.Fprint(w, "\t\tesac\n\t\treturn\n\tfi\n\tcase \"$where\" in\n")
	for _, s := range spots {
		switch {
		case len(s.subs) > 0:
			fmt.Fprintf(w, "\t%q) %s ;;\n", s.path, sh.commands(s.subs))
		case len(s.words) > 0:
			fmt.Fprintf(w, "\t%q) %s ;;\n", s.path, sh.oneOf(s.words))
		case s.files:
			fmt.Fprintf(w, "\t%q) %s ;;\n", s.path, sh.files)
		}
	}
	fmt.Fprint(w, "\tesac\n}\n"+sh.tail)
}

func flagWords(s spot) []choice {
	var list []choice
	for _, f := range s.flags {
		list = append(list, choice{f.long, f.help})
		if f.short != "" {
			list = append(list, choice{f.short, f.help})
		}
	}
	return list
}

// described offers words with what they mean, to zsh.
func described(kind string, list []choice) string {
	var words []string
	for _, c := range list {
		words = append(words, "'"+c.word+":"+c.help+"'")
	}
	return fmt.Sprintf("list=(%s); _describe %s list", strings.Join(words, " "), kind)
}

// fishScript writes the script for fish.
func fishScript(w io.Writer, spots []spot) {
	fmt.Fprint(w, "# fish completion for fusewright, made by 'fusewright complete fish'.\n"+
		"# Load it with: fusewright complete fish | source\n"+
		"function __fusewright_at\n\tset -l where ''\n\tfor word in (commandline -opc)[2..]\n\t\tswitch \"$where $word\"\n")
	for _, s := range spots[1:] {
		fmt.Fprintf(w, "\t\t\tcase '%s'\n\t\t\t\tset where '%s'\n", s.key(), s.path)
	}
	fmt.Fprint(w, "\t\tend\n\tend\n\ttest \"$where\" = \"$argv[1]\"\nend\ncomplete -c fusewright -f\n")
	for _, s := range spots {
		at := fmt.Sprintf("complete -c fusewright -n '__fusewright_at \"%s\"'", s.path)
		for _, c := range s.subs {
			fmt.Fprintf(w, "%s -a '%s' -d '%s'\n", at, c.word, c.help)
		}
		if len(s.words) > 0 {
			fmt.Fprintf(w, "%s -a '%s'\n", at, strings.Join(s.words, " "))
		} else if s.files {
			fmt.Fprintf(w, "%s -F\n", at)
		}
		for _, f := range s.flags {
			fmt.Fprintln(w, at+fishFlag(f))
		}
	}
}

func fishFlag(f flagChoice) string {
	text := " -l " + strings.TrimPrefix(f.long, "--")
	if f.short != "" {
		text += " -s " + strings.TrimPrefix(f.short, "-")
	}
	text += " -d '" + f.help + "'"
	switch {
	case len(f.values) > 0:
		text += " -x -a '" + strings.Join(f.values, " ") + "'"
	case f.file:
		text += " -r -F"
	case f.takes:
		text += " -x"
	}
	return text
}
