// Package problem holds what is wrong with an input file: each problem has its
// place (file, line, column), what is wrong, what was expected and the nearest
// valid choice. Readers collect problems and go on, so that one run shows all
// of them. It knows nothing of what the files mean.
package problem

import (
	"fmt"
	"sort"
	"strings"
)

// Pos is a place in a named input file. Line and Col count from 1; a zero Line
// means the whole file.
type Pos struct {
	File string
	Line int
	Col  int
}

// String gives file:line:col, or the file alone when the line is not known.
func (p Pos) String() string {
	if p.Line == 0 {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Col)
}

// Problem is one mistake in an input.
type Problem struct {
	Pos      Pos
	What     string // what is wrong, lower case, no full stop
	Expected string // what was expected; may be empty
	Nearest  string // the nearest valid choice; may be empty
	Also     *Pos   // a second place concerned, such as the first of two same names
}

// String gives `file:line:col: what (expected …; did you mean "…"?; see file:line:col)`.
func (p Problem) String() string {
	var extra []string
	if p.Expected != "" {
		extra = append(extra, "expected "+p.Expected)
	}
	if p.Nearest != "" {
		extra = append(extra, fmt.Sprintf("did you mean %q?", p.Nearest))
	}
	if p.Also != nil {
		extra = append(extra, "see "+p.Also.String())
	}
	if len(extra) == 0 {
		return p.Pos.String() + ": " + p.What
	}
	return p.Pos.String() + ": " + p.What + " (" + strings.Join(extra, "; ") + ")"
}

// List is all problems of a run. It is an error when it is not empty.
type List []Problem

// Add appends a problem.
func (l *List) Add(p Problem) { *l = append(*l, p) }

// Sort orders by file, line, column, then text, so that output is steady.
func (l List) Sort() {
	sort.SliceStable(l, func(i, j int) bool {
		a, b := l[i], l[j]
		switch {
		case a.Pos.File != b.Pos.File:
			return a.Pos.File < b.Pos.File
		case a.Pos.Line != b.Pos.Line:
			return a.Pos.Line < b.Pos.Line
		case a.Pos.Col != b.Pos.Col:
			return a.Pos.Col < b.Pos.Col
		}
		return a.What < b.What
	})
}

// Error gives one line per problem.
func (l List) Error() string {
	lines := make([]string, len(l))
	for i, p := range l {
		lines[i] = p.String()
	}
	return strings.Join(lines, "\n")
}

// Few is the sorted list with no more than n of it, the rest counted in one more; of input that is taken
// down by the thousand.
func (l List) Few(n int) List {
	l.Sort()
	if len(l) <= n {
		return l
	}
	return append(l[:n:n], Problem{Pos: l[n].Pos, What: fmt.Sprintf("and %d more", len(l)-n)})
}

// Err returns the sorted list as an error, or nil when it is empty.
func (l List) Err() error {
	if len(l) == 0 {
		return nil
	}
	l.Sort()
	return l
}
