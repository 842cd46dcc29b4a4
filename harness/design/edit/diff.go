package edit

import (
	"bytes"
	"strings"

	"github.com/aymanbagabas/go-udiff"
)

// context is how many unchanged lines a difference shows around changed ones.
const context = 2

// Diff shows the lines that differ between two texts in the unified form of
// POSIX diff -u; empty when none does. Line ends that both texts have from Windows
// are not shown, and neither is whether the last line has one.
func Diff(name string, was, now []byte) string {
	if bytes.Contains(was, []byte("\r\n")) && bytes.Contains(now, []byte("\r\n")) {
		was, now = plainBreaks(was), plainBreaks(now)
	}
	old := ended(was)
	// The edits are of this very text, so that they can be applied to it.
	text, _ := udiff.ToUnified(name, name, old, udiff.Lines(old, ended(now)), context)
	return text
}

func ended(text []byte) string { return strings.TrimSuffix(string(text), "\n") + "\n" }

// Line is a line that differs: gone (New 0) or put in (Old 0), by its number from 1.
type Line struct {
	Old, New int
	Text     string
}

// Lines are the lines that differ between two texts, whole, in the order of the new one, what
// is gone before what is put in.
func Lines(was, now []byte) (list []Line) {
	old, next := ended(was), ended(now)
	shift := 0
	split := func(text string) []string {
		if text == "" {
			return nil
		}
		return strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	}
	for _, e := range udiff.Lines(old, next) {
		at := 1 + strings.Count(old[:e.Start], "\n")
		gone, put := split(old[e.Start:e.End]), split(e.New)
		for i, text := range gone {
			list = append(list, Line{Old: at + i, Text: strings.TrimSuffix(text, "\r")})
		}
		for i, text := range put {
			list = append(list, Line{New: at + shift + i, Text: strings.TrimSuffix(text, "\r")})
		}
		shift += len(put) - len(gone)
	}
	return list
}
