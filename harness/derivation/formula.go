package derivation

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A formula is written as it is printed, with {} for each value in turn: "{} × {}",
// "√({} ÷ {})", "1 + {} × ({} − 20)", "smaller of {} and {}".

// expr is a formula ready to be worked out.
type expr func(values []float64) float64

// compile reads a formula of so many values; one that is not understood gives NaN.
func compile(formula string, values int) expr {
	p := &reader{text: formula}
	e := p.terms()
	if p.space(); p.text != "" || p.taken != values {
		return wrong
	}
	return e
}

func wrong([]float64) float64 { return math.NaN() }

// work works the formula out with values put in.
func (x *value) work(values []float64) float64 {
	if x.run == nil || x.ready != x.formula {
		x.ready, x.run, x.sums = x.formula, compile(x.formula, len(x.from)), onlySums(x.formula)
	}
	return x.run(values)
}

type reader struct {
	text  string
	taken int // values so far
}

func (p *reader) space() { p.text = strings.TrimLeft(p.text, " ") }

// take reads one of the signs; "" when none stands there.
func (p *reader) take(signs ...string) string {
	p.space()
	for _, s := range signs {
		if rest, ok := strings.CutPrefix(p.text, s); ok {
			p.text = rest
			return s
		}
	}
	return ""
}

// chain reads operands between the signs, worked out from the left.
func (p *reader) chain(operand func() expr, signs map[string]func(a, b float64) float64, order ...string) expr {
	first := operand()
	type step struct {
		do func(a, b float64) float64
		by expr
	}
	var more []step
	for sign := p.take(order...); sign != ""; sign = p.take(order...) {
		more = append(more, step{signs[sign], operand()})
	}
	if more == nil {
		return first
	}
	return func(values []float64) float64 {
		v := first(values)
		for _, s := range more {
			v = s.do(v, s.by(values))
		}
		return v
	}
}

var dyadic = map[string]func(a, b float64) float64{
	"+": func(a, b float64) float64 { return a + b }, "−": func(a, b float64) float64 { return a - b },
	"×": func(a, b float64) float64 { return a * b }, "÷": func(a, b float64) float64 { return a / b },
}

func (p *reader) terms() expr { return p.chain(p.factors, dyadic, "+", "−") }

func (p *reader) factors() expr { return p.chain(p.power, dyadic, "×", "÷") }

func (p *reader) power() expr {
	e := p.single()
	switch p.take("²", "⁴", "^") {
	case "²":
		return with(e, func(v float64) float64 { return v * v })
	case "⁴":
		return with(e, func(v float64) float64 { return v * v * v * v })
	case "^":
		to := p.single()
		return func(values []float64) float64 { return math.Pow(e(values), to(values)) }
	}
	return e
}

func with(e expr, do func(float64) float64) expr {
	return func(values []float64) float64 { return do(e(values)) }
}

func (p *reader) single() expr {
	switch p.take("{}", "(", "√", "∛", "ln", "e^", "smaller of", "greater of", "−", "π") {
	case "{}":
		at := p.taken
		p.taken++
		return func(values []float64) float64 { return values[at] }
	case "(":
		e := p.terms()
		if p.take(")") == "" {
			return wrong
		}
		return e
	case "√":
		return with(p.single(), math.Sqrt)
	case "∛":
		return with(p.single(), math.Cbrt)
	case "ln":
		return with(p.single(), math.Log)
	case "e^":
		return with(p.single(), math.Exp)
	case "smaller of":
		return p.chain(p.terms, map[string]func(a, b float64) float64{"and": math.Min}, "and")
	case "greater of":
		return p.chain(p.terms, map[string]func(a, b float64) float64{"and": math.Max}, "and")
	case "−":
		return with(p.single(), func(v float64) float64 { return -v })
	case "π":
		return func([]float64) float64 { return math.Pi }
	}
	return p.number()
}

func (p *reader) number() expr {
	end := 0
	for end < len(p.text) {
		r, n := utf8.DecodeRuneInString(p.text[end:])
		if !unicode.IsDigit(r) && r != '.' {
			break
		}
		end += n
	}
	v, err := strconv.ParseFloat(p.text[:end], 64)
	if err != nil {
		return wrong
	}
	p.text = p.text[end:]
	return func([]float64) float64 { return v }
}

// onlySums tells of a formula of sums and differences of whole values.
func onlySums(formula string) bool {
	return strings.Trim(strings.ReplaceAll(formula, "{}", ""), " +−") == "" && strings.Contains(formula, "{}")
}
