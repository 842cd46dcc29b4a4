package slips

import (
	"fmt"
	"strings"
)

// after looks at what follows a key's colon or a dash; column is that of the key
// or dash. It gives the next line to look at.
func (f *finder) after(p place, column int) int {
	line, i := f.lines[p.line], p.line
	for p.at < len(line) && (line[p.at] == ' ' || line[p.at] == '\t') {
		p.at++
	}
	rest := line[p.at:]
	f.value = p
	if rest == "" || rest[0] == '#' && p.at > 0 && line[p.at-1] != ':' {
		f.opener = column
		return i + 1
	}
	switch rest[0] {
	case '|', '>':
		for i++; i < len(f.lines) && (f.indents[i] > column || strings.TrimSpace(f.lines[i]) == "" ||
			f.indents[i] < 0 && len(f.lines[i])-len(strings.TrimLeft(f.lines[i], " ")) > column); i++ {
		}
		return i
	case '&':
		return f.after(place{i, p.at + 1 + len(word(rest[1:]))}, column)
	case '*':
		f.alias(p, rest)
		return i + 1
	case '"', '\'':
		return f.quoted(p)
	case '{', '[':
		f.flow = append(f.flow, bracket{place: p, sign: rest[0], entry: place{i, p.at + 1}})
		return f.inFlow(place{i, p.at + 1})
	case '@', '`', '%', ',', '}', ']':
		f.reserved(p, uncommented(rest))
		return i + 1
	case '!':
		return i + 1
	}
	f.plain = true
	f.text(p, strings.TrimRight(uncommented(rest), " \t"))
	return i + 1
}

// alias reports a star before the name of no anchor.
func (f *finder) alias(p place, rest string) {
	if !f.anchors[word(rest[1:])] {
		f.report(p, fmt.Sprintf("%q repeats a value that no \"&%s\" marks", cut(word(rest)), cut(word(rest[1:]))),
			`quotes around text that begins with "*"`)
		f.mend(p, 1, "x")
	}
}

// reserved reports a value that begins with a sign that YAML keeps for itself.
func (f *finder) reserved(p place, rest string) {
	if c := rest[0]; c == '}' || c == ']' || c == ',' {
		f.report(p, fmt.Sprintf(`a value that begins with "%c"`, c), "a value, or quotes around text")
	} else {
		f.report(p, fmt.Sprintf(`text that begins with "%c"`, c), "quotes around it")
	}
	f.mend(p, 1, "x")
}

// text looks at a value without quotes that ends with its line.
func (f *finder) text(p place, rest string) {
	at := colonIn(rest)
	if at < 0 {
		return
	}
	f.plain = false
	if end := rest[len(rest)-1]; (end == '}' || end == ']') && !strings.ContainsAny(rest, "{[") {
		open := map[byte]string{'}': "{", ']': "["}[end]
		f.report(p, fmt.Sprintf("%q at the end of line %d has no %q", string(end), p.line+1, open), fmt.Sprintf("%q here", open))
		f.mend(p, 0, open)
		return
	}
	if start := f.lastKey(rest[:at]); start > 0 {
		f.report(place{p.line, p.at + start}, fmt.Sprintf("a second key, %q, on one line", cut(rest[start:at])),
			"each key on its own line, or all between { } with commas")
		f.unsure = true
		return
	}
	f.report(place{p.line, p.at + at}, "a colon inside text", "quotes around the text, or one key on each line")
	f.mend(place{p.line, p.at + at}, 1, ";")
}

// lastKey is where the key begins that a text ends with; -1 = with none.
func (f *finder) lastKey(s string) int {
	end := strings.TrimRight(s, " ")
	best := -1
	for n, at := 0, len(end); n < 4 && at > 0; n++ {
		at = strings.LastIndexAny(end[:at], " \t;")
		if f.isKey(end[at+1:]) {
			best = at + 1
		}
		if at < 0 {
			break
		}
	}
	return best
}

// quoted looks at a value in quotes outside of brackets.
func (f *finder) quoted(p place) int {
	end, ok := f.quote(p)
	if !ok {
		return p.line + 1
	}
	f.trailing(end, "the closing quote")
	return end.line + 1
}

// trailing reports what follows the end of a value on its line.
func (f *finder) trailing(p place, what string) {
	line := f.lines[p.line]
	rest := strings.TrimLeft(line[p.at:], " \t")
	at := place{p.line, len(line) - len(rest)}
	if rest == "" || rest[0] == '#' && at.at > p.at {
		return
	}
	del := len(strings.TrimRight(uncommented(rest), " \t"))
	switch {
	case rest[0] == '}' || rest[0] == ']':
		f.report(at, fmt.Sprintf("%q closes nothing", rest[:1]), "")
	case rest[0] == ',':
		f.report(at, "a comma at the end of a value", "commas only between { } and [ ]")
	case what == "the closing quote":
		f.report(place{at.line, p.at - 1}, "a quote inside text in quotes ends it", `'…' around text that holds ", "…" around text that holds '`)
	default:
		f.report(at, "text after "+what, "the next key on a line of its own")
		f.unsure = true
	}
	f.mend(at, del, "")
}

// quote finds the end of a text in quotes; false = it has none, which is said.
func (f *finder) quote(p place) (end place, ok bool) {
	rest := f.lines[p.line][p.at:]
	if n := quoteEnd(rest); n > 0 {
		f.escapes(p, rest[:n])
		return place{p.line, p.at + n}, true
	}
	for i := p.line + 1; i < len(f.lines); i++ {
		if f.indents[i] >= 0 && keyLine.MatchString(f.lines[i]) {
			break
		}
		if n := quoteEnd(rest[:1] + f.lines[i]); n > 0 {
			return place{i, n - 1}, true
		}
	}
	f.report(p, fmt.Sprintf("the quote on line %d is never closed", p.line+1), "a closing quote, "+rest[:1])
	stop := len(strings.TrimRight(uncommented(rest), " \t"))
	if len(f.flow) > 0 {
		if at := strings.IndexAny(rest, ",}]"); at > 0 {
			stop = at
		}
	}
	f.mend(place{p.line, p.at + stop}, 0, rest[:1])
	return place{p.line, p.at + stop}, false
}

// quoteEnd is the length of a text in quotes that ends on its line; -1 = it does not.
func quoteEnd(s string) int {
	for at := 1; at < len(s); at++ {
		switch {
		case s[at] == '\\' && s[0] == '"':
			at++
		case s[at] == s[0]:
			if s[0] == '\'' && at+1 < len(s) && s[at+1] == '\'' {
				at++
				continue
			}
			return at + 1
		}
	}
	return -1
}

// escapes reports a backslash in double quotes that stands for nothing.
func (f *finder) escapes(p place, s string) {
	for at := 1; s[0] == '"' && at+1 < len(s); at++ {
		if s[at] != '\\' {
			continue
		}
		if strings.IndexByte("0abt\tnvfre \"/\\N_LPxuU", s[at+1]) < 0 {
			f.report(place{p.line, p.at + at}, `a backslash in text between "…"`, `'…' around it, or two backslashes`)
			f.mend(place{p.line, p.at + at}, 0, `\`)
		}
		at++
	}
}
