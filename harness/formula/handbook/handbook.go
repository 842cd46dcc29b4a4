// Package handbook answers the bench's quick questions without a design: drop,
// wire, power, battery, heat, fuse, short circuit and fault current. Each
// answer shows the formula, the formula with the numbers put in, and its
// source. One file holds one question.
//
// The formulas themselves live in packages conductor and fusing; here they are
// asked and written out. Answers are estimates: local codes, the makers'
// instructions and licensed practice come first.
//
//	answer, err := handbook.Power(handbook.PowerInput{PowerW: 276, Volts: 12})
//	fmt.Println(answer.Text())
package handbook

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"fusewright/harness/design/caution"
	"fusewright/harness/design/quantity"
)

// Caution stands under every answer.
const Caution = caution.Estimate

// Value is a quantity going into or coming out of a question. Its Text holds
// the number with its unit as printed; Number is in the base unit Unit.
type Value struct {
	Name   string
	Number float64
	Unit   string
	Text   string
	// Words tells that there is only the text.
	Words bool
}

// MarshalJSON leaves out the number where there is none, such as a time that
// never ends.
func (v Value) MarshalJSON() ([]byte, error) {
	out := struct {
		Name   string   `json:"name"`
		Number *float64 `json:"number,omitempty"`
		Unit   string   `json:"unit,omitempty"`
		Text   string   `json:"text"`
	}{Name: v.Name, Unit: v.Unit, Text: v.Text}
	if !math.IsNaN(v.Number) && !math.IsInf(v.Number, 0) && !v.Words {
		out.Number = &v.Number
	}
	return json.Marshal(out)
}

// Step is one line of the working.
type Step struct {
	Formula string `json:"formula"` // in symbols: "U = I · R' · L"
	Numbers string `json:"numbers"` // with the numbers put in and the result
}

// Answer is what a question gives.
type Answer struct {
	Question string   `json:"question"` // "drop"
	Title    string   `json:"title"`
	Inputs   []Value  `json:"inputs"`
	Steps    []Step   `json:"steps"`
	Results  []Value  `json:"results"`
	Sources  []string `json:"sources"`
	Warnings []string `json:"warnings,omitempty"`
	Caution  string   `json:"caution"`
}

func newAnswer(question, title string) *Answer {
	return &Answer{Question: question, Title: title, Caution: Caution}
}

// Result finds a result by name; ok is false when there is none.
func (a *Answer) Result(name string) (v Value, ok bool) {
	for _, v := range a.Results {
		if v.Name == name {
			return v, true
		}
	}
	return Value{}, false
}

func (a *Answer) in(name string, number float64, dim quantity.Dimension) {
	a.Inputs = append(a.Inputs, Value{Name: name, Number: number, Unit: units[dim], Text: quantity.Plain(number, dim)})
}

func (a *Answer) inText(name, text string) {
	a.Inputs = append(a.Inputs, Value{Name: name, Text: text, Words: true})
}

func (a *Answer) out(name string, number float64, dim quantity.Dimension) {
	a.Results = append(a.Results, Value{Name: name, Number: number, Unit: units[dim], Text: form(number, dim)})
}

func (a *Answer) outNumber(name string, number float64, unit string) {
	a.Results = append(a.Results, Value{Name: name, Number: number, Unit: unit,
		Text: strings.TrimSpace(quantity.Digits(number, 4) + " " + unit)})
}

func (a *Answer) outText(name, text string) {
	a.Results = append(a.Results, Value{Name: name, Text: text, Words: true})
}

func (a *Answer) step(formula, numbers string, args ...any) {
	a.Steps = append(a.Steps, Step{formula, say(numbers, args...)})
}

func (a *Answer) source(list ...string) { a.Sources = append(a.Sources, list...) }

func (a *Answer) warn(text string, args ...any) {
	a.Warnings = append(a.Warnings, say(text, args...))
}

// say is fmt.Sprintf whose numbers are printed as quantities are: without an
// exponent, with the minus sign of print.
func say(text string, args ...any) string {
	for i, x := range args {
		if v, ok := x.(float64); ok {
			args[i] = figure(v)
		}
	}
	return fmt.Sprintf(text, args...)
}

// figure prints itself for the verbs g, by significant digits, and f.
type figure float64

// Format is of fmt.Formatter.
func (f figure) Format(s fmt.State, verb rune) {
	digits, given := s.Precision()
	switch {
	case verb == 'f':
		io.WriteString(s, quantity.Fixed(float64(f), digits))
	case given:
		io.WriteString(s, quantity.Digits(float64(f), digits))
	default:
		io.WriteString(s, quantity.Digits(float64(f), 15))
	}
}

// form is a result as printed; a time without end is "never".
func form(number float64, dim quantity.Dimension) string {
	if dim == quantity.Duration && math.IsInf(number, 1) {
		return "never"
	}
	return quantity.Format(number, dim)
}

// units are the base units of the dimensions that answers use.
var units = map[quantity.Dimension]string{
	quantity.Voltage: "V", quantity.Current: "A", quantity.Resistance: "Ω",
	quantity.ResistancePerM: "Ω/m", quantity.Power: "W", quantity.Energy: "Wh",
	quantity.Length: "m", quantity.Area: "mm²", quantity.Temperature: "°C",
	quantity.Charge: "Ah", quantity.Share: "share", quantity.Duration: "s",
	quantity.CurrentSquareTime: "A²s",
}

// Text is the whole answer for a terminal.
func (a *Answer) Text() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n", a.Title)
	block(&b, "Given", a.Inputs)
	if len(a.Steps) > 0 {
		b.WriteString("\nWorking\n")
		for i, s := range a.Steps {
			if i == 0 || s.Formula != a.Steps[i-1].Formula {
				fmt.Fprintf(&b, "  %s\n", s.Formula)
			}
			fmt.Fprintf(&b, "    %s\n", s.Numbers)
		}
	}
	block(&b, "Result", a.Results)
	lines(&b, "Mind", a.Warnings)
	lines(&b, "Source", a.Sources)
	fmt.Fprintf(&b, "\n%s\n", a.Caution)
	return b.String()
}

func block(b *strings.Builder, title string, values []Value) {
	if len(values) == 0 {
		return
	}
	width := 0
	for _, v := range values {
		width = max(width, len([]rune(v.Name)))
	}
	fmt.Fprintf(b, "\n%s\n", title)
	for _, v := range values {
		pad := strings.Repeat(" ", width-len([]rune(v.Name)))
		fmt.Fprintf(b, "  %s%s  %s\n", v.Name, pad, v.Text)
	}
}

func lines(b *strings.Builder, title string, list []string) {
	if len(list) == 0 {
		return
	}
	fmt.Fprintf(b, "\n%s\n", title)
	for _, l := range list {
		fmt.Fprintf(b, "  %s\n", l)
	}
}
