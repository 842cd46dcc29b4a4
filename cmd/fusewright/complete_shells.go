package main

import (
	"fmt"
	"io"
	"strings"
)

// walkWords is the loop of both scripts that finds which command the words
// before the cursor name; %s are the first index, the end and the words.
const walkWords = `	for ((i = %s; i < %s; i++)); do
		case "$where ${%s[i]}" in
%s		esac
	done
`

// walkCases are the arms of that loop.
func walkCases(spots []spot) string {
	var b strings.Builder
	for _, s := range spots {
		if s.path == "" {
			continue
		}
		key := s.path
		if !strings.Contains(key, " ") {
			key = " " + key
		}
		fmt.Fprintf(&b, "\t\t%q) where=%q ;;\n", key, s.path)
	}
	return b.String()
}

// bashScript writes the script for bash 3 and later.
func bashScript(w io.Writer, spots []spot) {
	fmt.Fprint(w, "# bash completion for fusewright, made by 'fusewright complete bash'.\n"+
		"# Load it with: source <(fusewright complete bash)\n"+
		"_fusewright() {\n\tlocal word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} where= i\n"+
		"\tif [[ $word == = ]]; then word=\n"+
		"\telif [[ $before == = ]]; then before=${COMP_WORDS[COMP_CWORD-2]}; fi\n"+
		"\tCOMPREPLY=()\n")
	fmt.Fprintf(w, walkWords, "1", "COMP_CWORD", "COMP_WORDS", walkCases(spots))
	fmt.Fprint(w, "\tcase \"$where|$before\" in\n")
	for _, s := range spots {
		for _, f := range s.flags {
			switch {
			case len(f.values) > 0:
				fmt.Fprintf(w, "\t%s) COMPREPLY=($(compgen -W %q -- \"$word\")); return ;;\n",
					f.spellings(s.path), strings.Join(f.values, " "))
			case f.file:
				fmt.Fprintf(w, "\t%s) compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -f -- \"$word\")); return ;;\n",
					f.spellings(s.path))
			case f.takes:
				fmt.Fprintf(w, "\t%s) return ;;\n", f.spellings(s.path))
			}
		}
	}
	fmt.Fprint(w, "\tesac\n\tif [[ $word == -* ]]; then\n\t\tcase \"$where\" in\n")
	for _, s := range spots {
		fmt.Fprintf(w, "\t\t%q) COMPREPLY=($(compgen -W %q -- \"$word\")) ;;\n", s.path, strings.Join(s.names(), " "))
	}
	fmt.Fprint(w, "\t\tesac\n\t\treturn\n\tfi\n\tcase \"$where\" in\n")
	for _, s := range spots {
		words := append(s.subWords(), s.words...)
		if len(words) > 0 {
			fmt.Fprintf(w, "\t%q) COMPREPLY=($(compgen -W %q -- \"$word\")) ;;\n", s.path, strings.Join(words, " "))
		} else if s.files {
			fmt.Fprintf(w, "\t%q) compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -f -- \"$word\")) ;;\n", s.path)
		}
	}
	fmt.Fprint(w, "\tesac\n}\ncomplete -F _fusewright fusewright\n")
}

// zshScript writes the script for zsh.
func zshScript(w io.Writer, spots []spot) {
	fmt.Fprint(w, "#compdef fusewright\n# zsh completion for fusewright, made by 'fusewright complete zsh'.\n"+
		"# Keep it as _fusewright in a folder of $fpath.\n"+
		"_fusewright() {\n\tlocal word=${words[CURRENT]} before=${words[CURRENT-1]} where= i\n\tlocal -a list\n")
	fmt.Fprintf(w, walkWords, "2", "CURRENT", "words", walkCases(spots))
	fmt.Fprint(w, "\tcase \"$where|$before\" in\n")
	for _, s := range spots {
		for _, f := range s.flags {
			switch {
			case len(f.values) > 0:
				fmt.Fprintf(w, "\t%s) compadd -- %s; return ;;\n", f.spellings(s.path), strings.Join(f.values, " "))
			case f.file:
				fmt.Fprintf(w, "\t%s) _files; return ;;\n", f.spellings(s.path))
			case f.takes:
				fmt.Fprintf(w, "\t%s) return ;;\n", f.spellings(s.path))
			}
		}
	}
	fmt.Fprint(w, "\tesac\n\tif [[ $word == -* ]]; then\n\t\tcase \"$where\" in\n")
	for _, s := range spots {
		fmt.Fprintf(w, "\t\t%q) list=(%s) ;;\n", s.path, described(flagWords(s)))
	}
	fmt.Fprint(w, "\t\tesac\n\t\t_describe flag list\n\t\treturn\n\tfi\n\tcase \"$where\" in\n")
	for _, s := range spots {
		switch {
		case len(s.subs) > 0:
			fmt.Fprintf(w, "\t%q) list=(%s); _describe command list ;;\n", s.path, described(s.subs))
		case len(s.words) > 0:
			fmt.Fprintf(w, "\t%q) compadd -- %s ;;\n", s.path, strings.Join(s.words, " "))
		case s.files:
			fmt.Fprintf(w, "\t%q) _files ;;\n", s.path)
		}
	}
	fmt.Fprint(w, "\tesac\n}\nif [[ $funcstack[1] == _fusewright ]]; then _fusewright \"$@\"; else compdef _fusewright fusewright; fi\n")
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

// described is a list of 'word:what it means'.
func described(list []choice) string {
	var words []string
	for _, c := range list {
		words = append(words, "'"+c.word+":"+c.help+"'")
	}
	return strings.Join(words, " ")
}

// fishScript writes the script for fish.
func fishScript(w io.Writer, spots []spot) {
	fmt.Fprint(w, "# fish completion for fusewright, made by 'fusewright complete fish'.\n"+
		"# Load it with: fusewright complete fish | source\n"+
		"function __fusewright_at\n\tset -l where ''\n\tfor word in (commandline -opc)[2..]\n\t\tswitch \"$where $word\"\n")
	for _, s := range spots {
		if s.path == "" {
			continue
		}
		key := s.path
		if !strings.Contains(key, " ") {
			key = " " + key
		}
		fmt.Fprintf(w, "\t\t\tcase '%s'\n\t\t\t\tset where '%s'\n", key, s.path)
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
