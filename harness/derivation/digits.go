package derivation

import (
	"math"
	"strings"
)

// usualDigits is what a value has where no formula asks for more.
const usualDigits = 4

// settle gives every value under some roots as many digits as it takes for each formula to
// give its value to the last digit printed from the digits printed.
func settle(roots ...*value) {
	var all []*value
	users := map[*value][]*value{}
	var walk func(x *value)
	walk = func(x *value) {
		if x.digits != 0 {
			return
		}
		x.digits = usualDigits
		all = append(all, x)
		for _, y := range x.from {
			if x.formula != "" {
				users[y] = append(users[y], x)
			}
			walk(y)
		}
	}
	for _, r := range roots {
		walk(r)
	}
	align(all, roots)
	queue := append([]*value(nil), all...)
	for len(queue) > 0 {
		x := queue[0]
		queue = queue[1:]
		for x.formula != "" {
			more := x.refine()
			if more == nil {
				break
			}
			queue = append(queue, more)
			queue = append(queue, users[more]...)
		}
	}
}

// align gives the terms of sums no more decimals than the sum has, so long as nothing else
// asks for them.
func align(all, roots []*value) {
	asked := map[*value]bool{}
	for _, r := range roots {
		asked[r] = true
	}
	for _, x := range all {
		if x.formula == "" || !onlySums(x.formula) {
			for _, y := range x.from {
				asked[y] = true
			}
		}
	}
	for _, x := range all { // from the root down
		if x.formula == "" || !onlySums(x.formula) {
			continue
		}
		_, _, _, last := x.print()
		x.shareUnit()
		for _, y := range x.from {
			if !asked[y] && y.v != 0 && last > 0 {
				y.digits = min(max(1+int(math.Floor(math.Log10(math.Abs(y.v)/last)+1e-9)), 1), mostDigits)
			}
		}
	}
}

// shareUnit has the terms of a long sum printed in its unit where most of them are anyhow.
func (x *value) shareUnit() {
	unit, alike := x.scale(), 0
	for _, y := range x.from {
		if y.dim == x.dim && y.scale() == unit {
			alike++
		}
	}
	if len(x.from) < 3 || 2*alike < len(x.from) {
		return
	}
	for _, y := range x.from {
		if y.unit == nil && y.dim == x.dim && y != x {
			y.unit = &unit
		}
	}
}

// refine gives one more digit to the value that upsets the step most, and says which;
// nil when the step holds, or cannot be made to.
func (x *value) refine() *value {
	_, _, shown, last := x.print()
	if math.IsInf(x.v, 0) || math.IsNaN(x.v) {
		return nil
	}
	values := make([]float64, len(x.from))
	for i, y := range x.from {
		_, _, values[i], _ = y.print()
	}
	base := x.work(values)
	if math.Abs(base-shown) <= (0.5+1e-6)*last {
		x.off = false
		return nil
	}
	var worst *value
	most := 0.0
	for i, y := range x.from {
		if y.exact || y.digits >= mostDigits {
			continue
		}
		by := math.Abs(y.v - values[i])
		if !x.sums {
			was := values[i]
			values[i] = y.v
			by = math.Abs(x.work(values) - base)
			values[i] = was
		}
		if by > most {
			worst, most = y, by
		}
	}
	if worst == nil && x.digits < mostDigits && !x.exact && x.holds() {
		worst = x // on the edge of rounding: one more digit of its own
	}
	if worst == nil {
		x.off = true
		return nil
	}
	worst.digits++
	return worst
}

// orSolved is the value, or, where its formula does not hold as things are, one that was
// solved together with others.
func (x *value) orSolved(how string) *value {
	if x.holds() {
		return x
	}
	return solved(x.label, x.dim, x.v, how)
}

// holds tells whether the formula gives the value before any rounding.
func (x *value) holds() bool {
	values := make([]float64, len(x.from))
	for i, y := range x.from {
		values[i] = y.v
	}
	return math.Abs(x.work(values)-x.v) <= 1e-7*math.Abs(x.v)
}

// printed is the formula with the values put in. In a sum of one unit the numbers stand
// without it.
func (x *value) printed() string {
	if x.formula == "" {
		return ""
	}
	same := onlySums(x.formula)
	_, own, _, _ := x.print()
	for _, y := range x.from {
		_, unit, _, _ := y.print()
		same = same && unit == own
	}
	var out strings.Builder
	pieces := strings.Split(x.formula, "{}")
	for i, piece := range pieces {
		out.WriteString(piece)
		if i == len(x.from) {
			break
		}
		text := x.from[i].text()
		if same {
			text, _, _, _ = x.from[i].print()
		}
		raised := i+1 < len(pieces) && strings.ContainsRune("²⁴^", first(pieces[i+1]))
		if strings.HasPrefix(text, "−") || raised && strings.Contains(text, " ") {
			text = "(" + text + ")"
		}
		out.WriteString(text)
	}
	return out.String()
}

func first(s string) rune {
	for _, r := range s {
		return r
	}
	return 0
}
