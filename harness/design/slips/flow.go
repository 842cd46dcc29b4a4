package slips

import (
	"fmt"
	"strings"
)

// bracket is an open { or [ and how far its present entry has come.
type bracket struct {
	place
	sign  byte
	entry place // where the entry, or after its colon the value, begins
	some  bool  // the entry has something in it
	colon bool  // its colon has been
	done  place // after a value that can have no more, the place behind it; line 0, at 0 = not
	comma bool  // a comma has been
}

var closers = map[byte]byte{'{': '}', '[': ']'}

// unclosed reports the brackets open before a line that they cannot hold.
func (f *finder) unclosed(next int) {
	if len(f.flow) > 100 { // no hand's work
		f.flow = nil
	}
	if len(f.flow) == 0 {
		return
	}
	ends := ""
	for _, b := range f.flow {
		f.report(b.place, fmt.Sprintf("%q on line %d is never closed", string(b.sign), b.line+1),
			fmt.Sprintf("%q after its last value", string(closers[b.sign])))
		ends = string(closers[b.sign]) + ends
	}
	for next--; next > 0 && f.indents[next] < 0; next-- {
	}
	f.mend(place{next, f.contentEnd(next)}, 0, ends)
	f.flow = nil
}

// contentEnd is where a line inside brackets ends but for its comment.
func (f *finder) contentEnd(i int) int {
	line := f.lines[i]
	for at := 0; at < len(line); at++ {
		switch c := line[at]; {
		case (c == '"' || c == '\'') && at > 0 && strings.IndexByte(" {[,:", line[at-1]) >= 0:
			if n := quoteEnd(line[at:]); n > 0 {
				at += n - 1
			}
		case c == '#' && at > 0 && line[at-1] == ' ':
			line = line[:at]
		}
	}
	return len(strings.TrimRight(line, " \t"))
}

// inFlow looks at a line from a place inside brackets on, and gives the next line.
func (f *finder) inFlow(p place) int {
	f.last, f.opener, f.plain = p.line, -1, false
	for len(f.flow) > 0 && len(f.slips) < f.most {
		line := f.lines[p.line]
		for p.at < len(line) && (line[p.at] == ' ' || line[p.at] == '\t') {
			p.at++
		}
		if p.at >= len(line) || line[p.at] == '#' && p.at > 0 && line[p.at-1] == ' ' {
			return p.line + 1
		}
		p = f.sign(p, line[p.at])
	}
	if len(f.flow) == 0 {
		f.trailing(p, `"`+f.lines[p.line][p.at-1:p.at]+`"`)
	}
	return p.line + 1
}

// sign looks at what begins at a place inside brackets and gives the place after it.
func (f *finder) sign(p place, c byte) place {
	b := &f.flow[len(f.flow)-1]
	next := place{p.line, p.at + 1}
	switch c {
	case ',':
		if !b.some {
			f.report(p, "a comma with nothing before it", "a value between two commas")
			f.mend(p, 1, " ")
		}
		*b = bracket{place: b.place, sign: b.sign, entry: next, comma: true}
		return next
	case '}', ']':
		return f.closed(p, c)
	case ':':
		b.colon, b.some, b.entry, b.done = true, true, next, place{}
		return next
	}
	if b.done != (place{}) {
		f.noComma(b, p)
	}
	b.some = true
	switch c {
	case '{', '[':
		f.flow = append(f.flow, bracket{place: p, sign: c, entry: next})
		return next
	case '"', '\'':
		end, _ := f.quote(p)
		b.done = end
		return end
	case '*':
		f.alias(p, f.lines[p.line][p.at:])
	case '&':
		return place{p.line, p.at + 1 + len(word(f.lines[p.line][p.at+1:]))}
	case '@', '`', '%':
		f.reserved(p, string(c))
	}
	return f.words(b, p)
}

// closed takes a closing bracket.
func (f *finder) closed(p place, c byte) place {
	b := f.flow[len(f.flow)-1]
	if want := closers[b.sign]; c != want {
		f.report(p, fmt.Sprintf("%q closes the %q of line %d", string(c), string(b.sign), b.line+1),
			fmt.Sprintf("%q", string(want)))
		f.mend(p, 1, string(want))
	}
	f.flow = f.flow[:len(f.flow)-1]
	next := place{p.line, p.at + 1}
	if n := len(f.flow); n > 0 {
		f.flow[n-1].done = next
	}
	return next
}

// noComma reports a value that follows another without a comma.
func (f *finder) noComma(b *bracket, p place) {
	line := f.lines[b.done.line]
	last := line[b.done.at-1 : b.done.at]
	if (last == `"` || last == "'") && p.line == b.done.line {
		rest := f.lines[p.line][p.at:]
		if at := strings.Index(rest, last); at >= 0 && colonIn(rest[:at]) < 0 {
			f.report(place{p.line, b.done.at - 1}, "a quote inside text in quotes ends it", `'…' around text that holds ", "…" around text that holds '`)
			f.mend(p, strings.LastIndex(rest, last)+1, "")
			f.unsure = strings.Count(rest, last) > 1
			b.entry, b.some = p, true
			return
		}
	}
	f.report(b.done, fmt.Sprintf("a comma is missing after %q", last), "a comma between two values")
	f.mend(b.done, 0, ",")
	*b = bracket{place: b.place, sign: b.sign, entry: p, some: true}
}

// words looks at text without quotes inside brackets, up to what ends it.
func (f *finder) words(b *bracket, p place) place {
	line := f.lines[p.line]
	at := p.at + 1
	for ; at < len(line); at++ {
		c := line[at]
		if c == ',' || c == '}' || c == ']' || c == '{' || c == '[' || c == '#' && line[at-1] == ' ' {
			break
		}
		if c == ':' && (at+1 == len(line) || strings.IndexByte(" \t,}]{[", line[at+1]) >= 0) {
			if b.colon {
				f.secondColon(b, p, at)
			}
			b.colon, b.some, b.entry = true, true, place{p.line, at + 1}
			return b.entry
		}
	}
	return f.opened(b, p, at)
}

// opened reports a bracket that follows text without a colon.
func (f *finder) opened(b *bracket, p place, at int) place {
	line := f.lines[p.line]
	if at == len(line) || line[at] != '{' && line[at] != '[' {
		return place{p.line, at}
	}
	text := strings.TrimRight(line[p.at:at], " ")
	end := place{p.line, p.at + len(text)}
	if b.colon || !f.isKey(text) {
		f.report(place{p.line, at}, fmt.Sprintf("%q inside text", line[at:at+1]), "quotes around the text, or a comma")
		f.unsure = true
	} else {
		f.report(end, fmt.Sprintf("no colon after %q", cut(text)), `"key: value"`)
		f.mend(end, 0, ":")
		b.colon = true
	}
	return place{p.line, at}
}

// secondColon is a second key in an entry: the comma before it is missing.
func (f *finder) secondColon(b *bracket, p place, colon int) {
	line := f.lines[p.line]
	if p.line > b.entry.line { // the value ended on a line before
		end := place{f.last2(p.line), 0}
		end.at = f.contentEnd(end.line)
		f.report(end, fmt.Sprintf("a comma is missing before %q", cut(line[p.at:colon])), "a comma between two values")
		f.mend(end, 0, ",")
		return
	}
	text := line[p.at:colon]
	start := f.lastKey(text)
	if start <= 0 && b.sign == '{' && strings.TrimSpace(text) != "" {
		if last := strings.LastIndexByte(strings.TrimRight(text, " "), ' '); last > 0 && digits(text[last+1:]) {
			start = last + 1 // the number of a way
		}
	}
	if start <= 0 {
		f.report(place{p.line, colon}, "a second colon in one entry", "a comma between two entries, or quotes around text that holds a colon")
		f.mend(place{p.line, colon}, 1, ";")
		return
	}
	before := strings.TrimRight(text[:start], " \t")
	key := strings.TrimSpace(text[start:])
	end := place{p.line, p.at + len(before)}
	if strings.HasSuffix(before, ";") || strings.HasSuffix(before, ".") {
		end.at--
		f.report(end, fmt.Sprintf("%q where a comma belongs", before[len(before)-1:]), "a comma between two values")
		f.mend(end, 1, ",")
		return
	}
	f.report(end, fmt.Sprintf("a comma is missing before %q", cut(key)), "a comma between two values")
	f.mend(end, 0, ",")
}

// last2 is the last line with content before a line.
func (f *finder) last2(i int) int {
	for i--; i > 0 && f.indents[i] < 0; i-- {
	}
	return max(i, 0)
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }
