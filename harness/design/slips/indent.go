package slips

import (
	"fmt"
	"strings"
)

// level is an open block: a mapping or a list whose lines stand in one column.
type level struct {
	indent  int
	list    bool
	members []int // its lines so far
}

// place puts a line into the block that it belongs to, and says so when its
// indentation fits none.
func (f *finder) place(i int, list bool) {
	c := f.indents[i]
	if f.opener >= 0 && (c > f.opener || c == f.opener && list && !f.top().list) {
		f.push(c, list, i)
		return
	}
	var inner *level
	for len(f.levels) > 0 && f.top().indent > c {
		inner = f.pop()
	}
	switch {
	case len(f.levels) > 0 && f.top().indent == c:
		f.belongs(i, list)
	case inner != nil:
		f.between(i, list, inner)
	case len(f.levels) == 0:
		f.push(c, list, i)
	default:
		f.deeper(i, list)
	}
}

func (f *finder) top() *level {
	if len(f.levels) == 0 {
		return &level{indent: -1}
	}
	return &f.levels[len(f.levels)-1]
}

func (f *finder) pop() *level {
	l := f.levels[len(f.levels)-1]
	f.levels = f.levels[:len(f.levels)-1]
	return &l
}

func (f *finder) push(indent int, list bool, line int) {
	f.levels = append(f.levels, level{indent, list, []int{line}})
}

// belongs takes a line into the innermost block, whose column it stands in.
func (f *finder) belongs(i int, list bool) {
	t := f.top()
	if t.list && !list && len(f.levels) > 1 && f.levels[len(f.levels)-2].indent == t.indent {
		f.pop() // a list in the column of its key ends with the next key
		t = f.top()
	}
	switch {
	case t.list == list:
		t.members = append(t.members, i)
	case list:
		f.report(f.start(i), `an item of a list ("-") among keys`, `"key: value", as the lines around it`)
		f.unsure = true
	default:
		f.noDash(i)
	}
}

// noDash is a key in the column of the dashes of a list.
func (f *finder) noDash(i int) {
	t := f.top()
	before := f.lines[t.members[len(t.members)-1]]
	if item := strings.TrimLeft(before, " -"); item != "" && strings.IndexByte("{[\"'", item[0]) < 0 {
		inside := len(before) - len(item)
		f.askews(i, inside, fmt.Sprintf("the keys of a list item in one column, %d", inside+1))
		f.shift(i, inside-t.indent)
		f.push(inside, false, i)
		return
	}
	f.report(f.start(i), `no "-" before an item of a list`, `"- ", as the lines around it`)
	f.mend(f.start(i), 0, "- ")
	f.push(t.indent+2, false, i)
	for n := f.after1(i); n > i && f.indents[n] == t.indent && f.lines[n][f.start(n).at] != '-'; n = f.after1(n) {
		f.indents[n] += 2
		i = n
	}
}

// between is a line that stands left of its neighbours and right of what holds
// them: the line is wrong, or those before it.
func (f *finder) between(i int, list bool, inner *level) {
	c, p, want := f.indents[i], inner.indent, 0
	if len(f.levels) > 0 {
		want = f.top().indent + f.unit
	}
	if c == want && p != want || p != want && f.ahead(i) > len(inner.members) {
		for _, m := range inner.members {
			f.askews(m, c, "")
			f.shift(m, c-p)
		}
		inner.indent, inner.list = c, list
		inner.members = append(inner.members, i)
		f.levels = append(f.levels, *inner)
		return
	}
	if t := f.top(); len(f.levels) > 0 && (c-t.indent < p-c || c-t.indent == p-c && f.opens(i) && f.indents[f.after1(i)] <= p) {
		f.askews(i, t.indent, "")
		f.shift(i, t.indent-c)
	} else {
		f.askews(i, p, "")
		f.shift(i, p-c)
		f.levels = append(f.levels, *inner)
	}
	f.belongs(i, list)
}

// opens tells a line that others are indented under.
func (f *finder) opens(i int) bool {
	text := strings.TrimSpace(uncommented(f.lines[i]))
	return strings.HasSuffix(text, ":") || strings.HasPrefix(text, "- ")
}

// after1 is the next line with content; the line itself at the end.
func (f *finder) after1(i int) int {
	for n := i + 1; n < len(f.lines); n++ {
		if f.indents[n] >= 0 {
			return n
		}
	}
	return i
}

// deeper is a line indented under one that has its value already.
func (f *finder) deeper(i int, list bool) {
	t := f.top()
	if n := f.ahead(i); n > 1 && f.plain && !t.list {
		f.report(f.value, "a value here, and more indented below it", "the value, or what is below, not both")
		f.unsure = true
		f.push(f.indents[i], list, i)
		return
	}
	f.askews(i, t.indent, "")
	f.shift(i, t.indent-f.indents[i])
	f.belongs(i, list)
}

// ahead counts the lines from a line on that stand in its column, up to the end of
// what holds them.
func (f *finder) ahead(i int) int {
	n, c, outer := 0, f.indents[i], f.top().indent
	for ; i < len(f.lines); i++ {
		switch d := f.indents[i]; {
		case d == c:
			n++
		case d >= 0 && d <= outer:
			return n
		}
	}
	return n
}

// askews reports a line whose neighbours stand in another column.
func (f *finder) askews(i, neighbours int, expected string) {
	if f.tabs[i] >= 0 {
		return // said already
	}
	if expected == "" {
		expected = "all keys of one record, and all items of one list, in the same column"
	}
	f.report(f.start(i), fmt.Sprintf("line %d is indented by %s, its neighbours by %d", i+1,
		spaces(f.indents[i]), neighbours), expected)
}

func spaces(n int) string {
	if n == 1 {
		return "1 space"
	}
	return fmt.Sprintf("%d spaces", n)
}

// shift moves a line and what is indented under it.
func (f *finder) shift(i, by int) {
	c := f.indents[i]
	f.indents[i] += by
	if !f.opens(i) {
		return
	}
	for i++; i < len(f.lines) && (f.indents[i] < 0 || f.indents[i] > c); i++ {
		if f.indents[i] >= 0 {
			f.indents[i] += by
		}
	}
}

// start is where the content of a line begins.
func (f *finder) start(i int) place {
	return place{i, len(f.lines[i]) - len(strings.TrimLeft(f.lines[i], " \t\u00a0\uFEFF"))}
}

// foreign reports an indentation of anything but spaces, once for lines in a row,
// and guesses how deep it was meant.
func (f *finder) foreign(i int) {
	at := f.tabs[i]
	if at < 0 {
		return
	}
	steps, before := f.steps(i), f.steps(f.last)
	switch {
	case i > f.last && f.tabs[f.last] >= 0:
		f.indents[i] = max(0, f.indents[f.last]+(steps-before)*f.unit)
		return
	case f.opener >= 0:
		f.indents[i] = f.opener + f.unit
	case len(f.levels) > 0:
		f.indents[i] = f.top().indent
	}
	sign := "a tab"
	if f.lines[i][at] != '\t' {
		sign = "a no-break space"
	}
	f.report(place{i, at}, fmt.Sprintf("line %d is indented with %s", i+1, sign), "spaces")
}

// steps counts the tabs that a line is indented by.
func (f *finder) steps(i int) int {
	return strings.Count(f.lines[i][:f.start(i).at], "\t")
}
