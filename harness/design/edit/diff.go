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
