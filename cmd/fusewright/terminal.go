package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"time"
	"unicode"

	"golang.org/x/term"
)

// isTerminal tells whether what is written to w is shown at once.
func isTerminal(w io.Writer) bool {
	if p, ok := w.(*watched); ok {
		w = p.w
	}
	f, ok := w.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// mayColour tells whether text may carry colours: on a terminal that shows
// them, unless NO_COLOR (no-color.org) is set to anything.
func mayColour(terminal bool, system string, getenv func(string) string) bool {
	if !terminal || getenv("NO_COLOR") != "" || getenv("TERM") == "dumb" {
		return false
	}
	// Old Windows consoles print the codes; those that understand them say so.
	return system != "windows" || getenv("WT_SESSION") != "" || getenv("TERM") != ""
}

// severityWord finds the severity of a finding at its place in the text form:
// "file:line:col: danger: "; or behind the letter of its cause.
var severityWord = regexp.MustCompile(`(?m)^(\S[^\n]*?:\d+:\d+: |[0-9 ]{2,} )((?:accepted )?(danger|fault|advice))(: |  +)`)

// severityCodes are the colours of the severities: bold red, yellow, cyan, of
// the 16 that every terminal lets its user choose.
var severityCodes = map[string]string{"danger": "1;31", "fault": "33", "advice": "36"}

// colourSeverities colours the severity words of a report for a terminal.
func colourSeverities(text []byte) []byte {
	return severityWord.ReplaceAllFunc(text, func(match []byte) []byte {
		m := severityWord.FindSubmatch(match)
		code := severityCodes[string(m[3])]
		if bytes.HasPrefix(m[2], []byte("accepted")) {
			code = "2" // faint
		}
		return fmt.Appendf(nil, "%s\x1b[%sm%s\x1b[0m%s", m[1], code, m[2], m[4])
	})
}

// usualWidth is that of a terminal that does not tell.
const usualWidth, mostWidth = 80, 120

// width is how many characters stand in a line of standard output.
func (s *streams) width() int {
	w := s.out
	if p, ok := w.(*watched); ok {
		w = p.w
	}
	if f, ok := w.(*os.File); ok {
		if n, _, err := term.GetSize(int(f.Fd())); err == nil && n > 0 {
			return min(n, mostWidth)
		}
	}
	return usualWidth
}

// colour tells whether standard output may carry colours.
func (s *streams) colour() bool {
	return mayColour(isTerminal(s.out), runtime.GOOS, os.Getenv)
}

// say prints what is good to know but is no result: --quiet leaves it out.
func (s *streams) say(format string, args ...any) {
	if !s.quiet {
		io.WriteString(s.out, harmless(fmt.Sprintf(format, args...)))
	}
}

// hint prints what is good to know beside a result: --quiet leaves it out.
func (s *streams) hint(format string, args ...any) {
	if !s.quiet {
		fmt.Fprintln(s.err, harmless("fusewright: hint: "+fmt.Sprintf(format, args...)))
	}
}

// note prints what a design should say otherwise: --quiet leaves it out.
func (s *streams) note(text string) {
	if !s.quiet {
		fmt.Fprintln(s.err, harmless("note: "+text))
	}
}

// sayFiles names the files that were put in place.
func (s *streams) sayFiles(o *outputs) {
	for _, f := range o.files {
		s.say("%s\n", filepath.Join(o.dir, f.name))
	}
}

// harmless keeps what could steer a terminal or turn its text round out of a line:
// file names and arguments may hold anything. A space of another width, as in a
// quantity that was copied from a page, is shown as a space.
func harmless(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || unicode.IsPrint(r):
			return r
		case unicode.Is(unicode.Zs, r):
			return ' '
		}
		return unicode.ReplacementChar
	}, s)
}

// watched remembers that something could not be written, whoever wrote it.
type watched struct {
	w    io.Writer
	lost error
}

// Write passes text on.
func (p *watched) Write(text []byte) (int, error) {
	n, err := p.w.Write(text)
	if err != nil && p.lost == nil {
		p.lost = err
	}
	return n, err
}

// plainWriter passes text on harmless.
type plainWriter struct{ w io.Writer }

// Write takes whole messages, as Fprint hands them over.
func (p plainWriter) Write(text []byte) (int, error) {
	if _, err := io.WriteString(p.w, harmless(string(text))); err != nil {
		return 0, err
	}
	return len(text), nil
}

// patience is how long work may take before its steps are shown.
const patience = 500 * time.Millisecond

// progress shows the steps of long work on one line of a terminal and wipes the
// line at the end. Anywhere else it is silent.
type progress struct {
	w     io.Writer // nil = silent
	since time.Time
	shown bool
}

// progress begins some work.
func (s *streams) progress() *progress {
	p := &progress{since: time.Now()}
	if !s.quiet && isTerminal(s.err) && mayColour(true, runtime.GOOS, os.Getenv) {
		p.w = s.err
	}
	return p
}

// step says what is being done, when the work has taken a while already.
func (p *progress) step(what string) {
	if p.w != nil && time.Since(p.since) > patience {
		fmt.Fprintf(p.w, "\r\x1b[K%s …", what)
		p.shown = true
	}
}

// done wipes the line.
func (p *progress) done() {
	if p.shown {
		fmt.Fprint(p.w, "\r\x1b[K")
	}
}
