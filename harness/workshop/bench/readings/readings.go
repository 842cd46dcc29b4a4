// Package readings is the file that is kept beside a design at the bench: what the meter
// showed at each reading of the bench test, and which wires of the cut list are made. It reads
// and writes the file and finds the checks again that its readings are of; it judges nothing.
//
//	fusewright bench: 1
//	date: 2026-05-09
//	meter: common
//	readings:
//	  - {check: "10.5", in: night cruise, of: "E1 + and −", reads: 13.21 V}
//	  - {check: "2.3", in: fuses, of: F2 way 1, reads: right}
//	  - {check: "E1 − to G1 −", in: night cruise, reads: 820 mV}
//	cut list:
//	  - {wire: W1, of: "G1 + to F1 in, RD 4 mm², 185 mm"}
//
// A CSV file has the same in the columns check, in, of, engine, reads; rows with date, by, meter,
// design, revision or cut in their first column say the rest. Semicolons may part them, and a comma may
// be the decimal point of what was read.
package readings

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
)

// Ending is what stands in place of a design's own at the end of the file's name.
const Ending = ".bench.yaml"

// Beside is the name of the file beside a design: "fen-runner.yaml" has "fen-runner.bench.yaml".
func Beside(design string) string {
	return strings.TrimSuffix(design, filepath.Ext(design)) + Ending
}

// MaxBytes is the longest file that is read, MaxReadings the most readings in it.
const (
	MaxBytes    = 1 << 20
	MaxReadings = 2000
)

// File is what is kept. All but the readings and ticks is free text of one line.
type File struct {
	Design, Revision string // what was measured
	Date, By         string // when, in the form 2026-05-09, and who; this package has no clock
	Meter            string // class of the meter by the library; "" = not said
	MeterPos         problem.Pos
	Readings         []*Reading
	Cut              []*Tick // wires cut, stripped, crimped and labelled
}

// Reading is what was read once.
type Reading struct {
	// Check is the number in the bench test, "10.5", or where else was read: between two terminals,
	// "E1 − to G1 −", or by a clamp round a wire, "round W6".
	Check string
	In    string // situation or section, as Key gives it; "" = not said
	Of    string // what the check was of when it was read, as Key gives it; "" = not said
	// Engine is the speed of the running engine in rpm; 0 = as the bench test has it.
	Engine float64
	// Value in base units; infinite for "open". Of what is only looked at Quantity is "" and Right the answer.
	Value    float64
	Quantity quantity.Dimension
	Right    bool
	Text     string // as it was written: "13.21 V", "open", "right", "wrong"
	Pos      problem.Pos
}

// Tick is a wire that is made, with what it was then.
type Tick struct {
	Wire string // "W1", of a parted one "W1a"
	Of   string
	Pos  problem.Pos
}

// The words that may stand in place of a quantity.
const (
	Right = "right"
	Wrong = "wrong"
	Open  = "open" // no continuity: what meters show as OL
)

// Take sets what was read from a text. The error is a *quantity.Error.
func (r *Reading) Take(text string) error {
	r.Text = strings.Join(strings.Fields(text), " ")
	r.Value, r.Quantity, r.Right = 0, "", false
	switch strings.ToLower(r.Text) {
	case Right, Wrong:
		r.Right = strings.EqualFold(r.Text, Right)
		return nil
	case Open, "ol":
		r.Value, r.Quantity = math.Inf(1), quantity.Resistance
		return nil
	}
	v, dim, err := quantity.ParseAny(r.Text)
	if q, ok := err.(*quantity.Error); ok && strings.Contains(r.Text, ",") && q.Nearest != "" { // a decimal comma that can be nothing else
		r.Text = q.Nearest
		v, dim, err = quantity.ParseAny(r.Text)
	}
	switch {
	case err != nil:
		return err
	case dim == "":
		return &quantity.Error{What: fmt.Sprintf("%q has no unit", r.Text), Expected: "a reading with its unit, such as 13.21 V, or " + Open + ", " + Right + ", " + Wrong}
	}
	if text, err := quantity.Tidy(r.Text, dim); err == nil {
		r.Text = text // "13.21V" is "13.21 V"
	}
	r.Value, r.Quantity = v, dim
	return nil
}

// Numbered tells whether a reading is of a check of the bench test by its number.
func (r *Reading) Numbered() bool {
	section, check, ok := strings.Cut(r.Check, ".")
	return ok && digits(section) && digits(check)
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// Argument is a reading as on a command line, "10.5=13.21V" or "E1 - to G1 -=820mV", in a situation.
func Argument(text, in string) (*Reading, error) {
	at := strings.LastIndexByte(text, '=')
	pos := problem.Pos{File: fmt.Sprintf("reading %q", text)}
	if at < 1 {
		return nil, problem.List{{Pos: pos, What: "no =", Expected: "a check and what was read, such as 10.5=13.21V"}}
	}
	r := &Reading{Check: plain(text[:at]), In: in, Pos: pos}
	if err := r.Take(text[at+1:]); err != nil {
		return nil, problem.List{of(pos, err)}
	}
	return r, nil
}

// plain puts a check's words into one form: one blank between them, a minus for a terminal's hyphen.
func plain(check string) string {
	words := strings.Fields(check)
	for i, w := range words {
		if w == "-" {
			words[i] = "−"
		}
	}
	return strings.Join(words, " ")
}

// of makes a problem of a quantity's mistake.
func of(pos problem.Pos, err error) problem.Problem {
	if q, ok := err.(*quantity.Error); ok {
		return problem.Problem{Pos: pos, What: q.What, Expected: q.Expected, Nearest: q.Nearest}
	}
	return problem.Problem{Pos: pos, What: err.Error()}
}
