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

// evaluate works a formula out; NaN of one that is not understood.
func evaluate(formula string, values []float64) float64 {
	p := &reader{text: formula, values: values}
	v := p.terms()
	if p.space(); p.text != "" || len(p.values) > 0 {
		return math.NaN()
	}
	return v
}

type reader struct {
	text   string
	values []float64
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

func (p *reader) terms() float64 {
	v := p.factors()
	for {
		switch p.take("+", "−") {
		case "+":
			v += p.factors()
		case "−":
			v -= p.factors()
		default:
			return v
		}
	}
}

func (p *reader) factors() float64 {
	v := p.power()
	for {
		switch p.take("×", "÷") {
		case "×":
			v *= p.power()
		case "÷":
			v /= p.power()
		default:
			return v
		}
	}
}

func (p *reader) power() float64 {
	v := p.single()
	switch p.take("²", "⁴", "^") {
	case "²":
		return v * v
	case "⁴":
		return v * v * v * v
	case "^":
		return math.Pow(v, p.single())
	}
	return v
}

func (p *reader) single() float64 {
	switch p.take("{}", "(", "√", "∛", "ln", "e^", "smaller of", "greater of", "−", "π") {
	case "{}":
		if len(p.values) == 0 {
			return math.NaN()
		}
		v := p.values[0]
		p.values = p.values[1:]
		return v
	case "(":
		v := p.terms()
		if p.take(")") == "" {
			return math.NaN()
		}
		return v
	case "√":
		return math.Sqrt(p.single())
	case "∛":
		return math.Cbrt(p.single())
	case "ln":
		return math.Log(p.single())
	case "e^":
		return math.Exp(p.single())
	case "smaller of":
		return p.two(math.Min)
	case "greater of":
		return p.two(math.Max)
	case "−":
		return -p.single()
	case "π":
		return math.Pi
	}
	return p.number()
}

func (p *reader) two(pick func(a, b float64) float64) float64 {
	v := p.terms()
	for p.take("and") != "" {
		v = pick(v, p.terms())
	}
	return v
}

func (p *reader) number() float64 {
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
		return math.NaN()
	}
	p.text = p.text[end:]
	return v
}

// onlySums tells of a formula of sums and differences of whole values.
func onlySums(formula string) bool {
	return strings.Trim(strings.ReplaceAll(formula, "{}", ""), " +−") == "" && strings.Contains(formula, "{}")
}
