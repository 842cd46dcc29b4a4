package edit

import (
	"bytes"
	"fmt"
	"strings"
)

// context is how many unchanged lines a difference shows around changed ones.
const context = 2

// Diff shows the lines that differ between two texts in the unified form of
// POSIX diff -u; empty when none does. Texts of more than maxDiffLines changed
// lines are shown as one block. Line ends that both texts have from Windows are not
// shown.
func Diff(name string, was, now []byte) string {
	if bytes.Contains(was, []byte("\r\n")) && bytes.Contains(now, []byte("\r\n")) {
		was, now = plainBreaks(was), plainBreaks(now)
	}
	a, b := lines(was), lines(now)
	ops := compare(a, b)
	var out strings.Builder
	for i := 0; i < len(ops); {
		if ops[i].same {
			i++
			continue
		}
		end := i
		for k := i; k < len(ops) && k-end <= 2*context; k++ {
			if !ops[k].same {
				end = k + 1
			}
		}
		from, to := max(i-context, 0), min(end+context, len(ops))
		if out.Len() == 0 {
			fmt.Fprintf(&out, "--- %s\n+++ %s\n", name, name)
		}
		hunk(&out, ops[from:to])
		i = end
	}
	return out.String()
}

// op is a line of a difference.
type op struct {
	same    bool
	added   bool
	line    string
	atA, aB int // line numbers from 1
}

func hunk(out *strings.Builder, ops []op) {
	nA, nB := 0, 0
	for _, o := range ops {
		if o.same || !o.added {
			nA++
		}
		if o.same || o.added {
			nB++
		}
	}
	fmt.Fprintf(out, "@@ -%d,%d +%d,%d @@\n", ops[0].atA, nA, ops[0].aB, nB)
	for _, o := range ops {
		mark := "-"
		switch {
		case o.same:
			mark = " "
		case o.added:
			mark = "+"
		}
		fmt.Fprintf(out, "%s%s\n", mark, o.line)
	}
}

func lines(s []byte) []string {
	return strings.Split(strings.TrimSuffix(string(s), "\n"), "\n")
}

// maxDiffLines bounds the table of common lines.
const maxDiffLines = 3000

// compare aligns two lists of lines by their longest common subsequence, after
// what is common at both ends.
func compare(a, b []string) []op {
	head := 0
	for head < len(a) && head < len(b) && a[head] == b[head] {
		head++
	}
	tail := 0
	for tail < len(a)-head && tail < len(b)-head && a[len(a)-1-tail] == b[len(b)-1-tail] {
		tail++
	}
	var ops []op
	i, j := 0, 0
	same := func() { ops = append(ops, op{true, false, a[i], i + 1, j + 1}); i++; j++ }
	drop := func() { ops = append(ops, op{false, false, a[i], i + 1, j + 1}); i++ }
	add := func() { ops = append(ops, op{false, true, b[j], i + 1, j + 1}); j++ }
	for i < head {
		same()
	}
	common := table(a[head:len(a)-tail], b[head:len(b)-tail])
	for i < len(a)-tail || j < len(b)-tail {
		switch {
		case i < len(a)-tail && j < len(b)-tail && a[i] == b[j] && common != nil:
			same()
		case j == len(b)-tail || i < len(a)-tail && (common == nil || common[i-head+1][j-head] >= common[i-head][j-head+1]):
			drop()
		default:
			add()
		}
	}
	for i < len(a) {
		same()
	}
	return ops
}

// table is the length of the longest common subsequence of what follows each
// pair of places; nil when it would be too large.
func table(a, b []string) [][]int32 {
	if len(a) > maxDiffLines || len(b) > maxDiffLines {
		return nil
	}
	t := make([][]int32, len(a)+1)
	for i := range t {
		t[i] = make([]int32, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			if a[i] == b[j] {
				t[i][j] = t[i+1][j+1] + 1
			} else {
				t[i][j] = max(t[i+1][j], t[i][j+1])
			}
		}
	}
	return t
}
