package slips

import (
	"fmt"
	"regexp"
	"strings"
)

// keyLine is a line that begins with a key or an item of a list.
var keyLine = regexp.MustCompile(`^\s*(- |[^\s#{}\[\],"'-][^#{}\[\],"']*:(\s|$))`)

// line looks at one line and gives the next to look at.
func (f *finder) line(i int) int {
	if f.indents[i] < 0 {
		return i + 1
	}
	if len(f.flow) > 0 {
		if f.indents[i] > f.indents[f.flow[0].line] || !keyLine.MatchString(f.lines[i]) {
			return f.inFlow(place{i, f.start(i).at})
		}
		f.unclosed(i)
	}
	f.foreign(i)
	next := f.block(f.start(i), true)
	f.last = i
	return next
}

// block looks at a line, or what follows the dash of one, outside of brackets.
func (f *finder) block(p place, first bool) int {
	line, i := f.lines[p.line], p.line
	rest := line[p.at:]
	if strings.HasPrefix(rest, "---") || strings.HasPrefix(rest, "...") || rest[0] == '?' || first && rest[0] == '%' {
		return i + 1
	}
	if rest == "-" || strings.HasPrefix(rest, "- ") {
		return f.item(p, first)
	}
	if first && f.dashless(rest) {
		f.place(i, true)
		f.report(place{i, p.at + 1}, `no space after the "-" of a list item`, `"- "`)
		f.mend(place{i, p.at + 1}, 0, " ")
		f.plain, f.opener = false, -1
		return f.after(place{i, p.at + 1}, f.indents[i])
	}
	key, colon := f.key(p)
	if key == "" {
		return f.keyless(p, first)
	}
	if first {
		f.place(i, false)
	} else {
		f.push(f.column(p), false, i)
	}
	f.opener, f.plain = -1, false
	return f.after(place{i, colon + 1}, f.column(p))
}

// column is the indentation of a place, as mended.
func (f *finder) column(p place) int {
	return p.at - f.start(p.line).at + f.indents[p.line]
}

// item is an item of a list.
func (f *finder) item(p place, first bool) int {
	if first {
		f.place(p.line, true)
	} else {
		f.push(f.column(p), true, p.line)
	}
	line := f.lines[p.line]
	at := p.at + 1
	for at < len(line) && line[at] == ' ' {
		at++
	}
	f.opener, f.plain = -1, false
	if at == len(line) || line[at] == '#' {
		f.opener = f.column(p)
		return p.line + 1
	}
	if key, _ := f.key(place{p.line, at}); key != "" || strings.HasPrefix(line[at:], "- ") {
		return f.block(place{p.line, at}, false)
	}
	return f.after(place{p.line, at}, f.column(p))
}

// key is the key that a place begins with and where its colon is; "" = none.
func (f *finder) key(p place) (key string, colon int) {
	line := f.lines[p.line]
	rest := line[p.at:]
	switch rest[0] {
	case '"', '\'':
		end := quoteEnd(rest)
		if end < 0 {
			return "", 0
		}
		if after := strings.TrimLeft(rest[end:], " "); strings.HasPrefix(after, ":") {
			return rest[:end], p.at + len(rest) - len(after)
		}
		return "", 0
	case '{', '[', '#':
		return "", 0
	}
	if at := colonIn(rest); at > 0 {
		return rest[:at], p.at + at
	}
	if at := strings.IndexByte(rest, ':'); at > 0 && !strings.ContainsAny(rest[:at], "{[,\"'#") &&
		(f.isKey(rest[:at]) || !strings.Contains(rest[:at], "//")) {
		if !f.plain || f.isKey(rest[:at]) {
			f.noSpace(place{p.line, p.at + at + 1}, rest[:at])
			return rest[:at], p.at + at
		}
	}
	return "", 0
}

// noSpace reports a colon that a value follows without a space.
func (f *finder) noSpace(p place, key string) {
	f.report(p, fmt.Sprintf("no space after the colon of %q", cut(key)), `"key: value"`)
	f.mend(p, 0, " ")
}

// colonIn is where a key's colon is in a text without quotes: before a blank or
// the end; -1 = nowhere before a comment.
func colonIn(s string) int {
	for at := 0; at < len(s); at++ {
		switch {
		case s[at] == '#' && at > 0 && (s[at-1] == ' ' || s[at-1] == '\t'):
			return -1
		case s[at] == ':' && (at+1 == len(s) || s[at+1] == ' ' || s[at+1] == '\t'):
			return at
		}
	}
	return -1
}

// keyless is a line without a key: the go-on of a text, or a slip.
func (f *finder) keyless(p place, first bool) int {
	line, i := f.lines[p.line], p.line
	rest := strings.TrimRight(uncommented(line[p.at:]), " \t")
	if strings.IndexByte("{[\"'", rest[0]) >= 0 {
		if first && len(f.levels) > 0 && f.opener < 0 {
			f.place(i, false)
		}
		f.opener = -1
		return f.after(p, f.column(p))
	}
	if first && (f.plain || f.opener >= 0) && f.indents[i] > f.top().indent {
		if f.opener >= 0 {
			f.plain = true
		}
		f.opener = -1
		return i + 1
	}
	switch {
	case strings.HasPrefix(rest, "//"):
		f.report(p, `a comment that begins with "//"`, `"#"`)
		f.mend(p, 2, "# ")
	case f.equals(p, rest):
	default:
		f.noColon(p, rest)
	}
	return i + 1
}

// dashless tells a dash that its item follows without a space.
func (f *finder) dashless(rest string) bool {
	return len(rest) > 1 && rest[0] == '-' && (strings.IndexByte("{[\"'", rest[1]) >= 0 ||
		f.top().list && (rest[1] < '0' || rest[1] > '9'))
}

// equals reports "key = value".
func (f *finder) equals(p place, rest string) bool {
	at := strings.IndexByte(rest, '=')
	if at < 0 || !f.isKey(strings.TrimSpace(rest[:at])) {
		return false
	}
	f.place(p.line, false)
	f.opener, f.plain = -1, true
	f.report(place{p.line, p.at + at}, `"=" where a colon belongs`, `"key: value"`)
	f.mend(place{p.line, p.at + at}, 1, ": ")
	return true
}

// noColon reports a line among keys that has no colon.
func (f *finder) noColon(p place, rest string) {
	if len(f.levels) == 0 {
		return // no design at all: the reader says so
	}
	f.place(p.line, f.top().list)
	f.opener, f.plain = -1, false
	words := strings.Fields(rest)
	for n := min(3, len(words)); n > 0; n-- {
		key := strings.Join(words[:n], " ")
		if f.isKey(key) && strings.HasPrefix(rest, key) {
			f.report(place{p.line, p.at + len(key)}, fmt.Sprintf("no colon after %q", key), `"key: value"`)
			f.mend(place{p.line, p.at + len(key)}, 0, ":")
			if n == len(words) {
				f.opener = f.column(p)
			}
			return
		}
	}
	f.report(place{p.line, p.at + len(rest)}, fmt.Sprintf("no colon on a line among keys, after %q", cut(rest)), `"key: value"`)
	f.unsure = true
	f.opener = f.column(p)
}

// uncommented is a text without quotes up to its comment.
func uncommented(s string) string {
	for at := 1; at < len(s); at++ {
		if s[at] == '#' && (s[at-1] == ' ' || s[at-1] == '\t') {
			return s[:at]
		}
	}
	return s
}

// cut shortens a text for a message.
func cut(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
