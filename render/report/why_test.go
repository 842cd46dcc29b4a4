package report_test

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"fusewright/harness/derivation"
	"fusewright/render/report"
)

// The demo designs.
var demos = []string{"fen-runner", "reed-skiff", "sedge-sloop", "hay-wain"}

// TestWhyMultipliesOut reworks every step of every figure of the demo designs from its
// printed text alone, as a person with a pocket calculator would: the printed numbers with
// their units put into the printed formula give the printed result to its last digit.
func TestWhyMultipliesOut(t *testing.T) {
	figures, steps := 0, 0
	for _, demo := range demos {
		r := reviewOf(t, "../../designs/"+demo+".yaml")
		for _, name := range derivation.Names(r) {
			tree, err := derivation.Of(r, name)
			if err != nil {
				t.Fatalf("%s, %s: %v", demo, name, err)
			}
			figures++
			for _, all := range []bool{true, false} {
				var b bytes.Buffer
				if err := report.WriteWhy(&b, report.NewWhy(r.Design, tree), 80, all); err != nil {
					t.Fatal(err)
				}
				text := b.String()
				for _, line := range strings.Split(text, "\n") {
					if utf8.RuneCountInString(line) > 80 {
						t.Errorf("%s, %s: over 80 columns: %s", demo, name, line)
					}
				}
				for _, s := range printedSteps(text) {
					if all {
						steps++
					}
					if problem := s.rework(); problem != "" {
						t.Errorf("%s, %s: %s  %s: %s", demo, name, s.value, s.formula, problem)
					}
				}
			}
		}
	}
	t.Logf("%d figures, %d steps", figures, steps)
	if figures < 400 {
		t.Errorf("%d figures, want 400", figures)
	}
}

// The weakest short that why names for a fuse is the one for which study has the fuse open last: the same
// latest opening, to the last digit, and no short of that fuse with one beyond it.
func TestWeakestShortIsTheStudys(t *testing.T) {
	files, err := filepath.Glob("../../testdata/corpus/*/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no corpus: %v", err)
	}
	var some []string
	for i := 0; i < len(files); i += 3 {
		some = append(some, files[i])
	}
	for _, demo := range demos {
		some = append(some, "../../designs/"+demo+".yaml")
	}
	fuses := 0
	for _, file := range some {
		r, err := reviewIf(file)
		if err != nil {
			continue // a design that is to be refused
		}
		latest := map[string]float64{}
		for _, row := range report.NewStudy(r).Shorts {
			for _, s := range []*report.ShortState{row.Greatest, row.Least} {
				if s == nil || s.Opens == "" {
					continue
				}
				slow := math.Inf(1)
				if s.SlowS != nil {
					slow = *s.SlowS
				}
				latest[s.Opens] = max(latest[s.Opens], slow)
			}
		}
		for ref, want := range latest {
			tree, err := derivation.Of(r, "time to open of "+ref)
			if err != nil {
				continue // of a factory loom, or all its current is drawn past it
			}
			fuses++
			got := tree.Root.Number * map[string]float64{"s": 1, "ms": 1e-3}[tree.Root.Unit]
			if tree.Root.Unit == "" { // how many times its rating, where it may never open
				got = math.Inf(1)
			}
			if nine := func(x float64) string { return strconv.FormatFloat(x, 'g', 9, 64) }; nine(got) != nine(want) {
				t.Errorf("%s, %s: %.9g s, the study has %.9g s", file, ref, got, want)
			}
		}
	}
	if fuses < 200 {
		t.Errorf("%d fuses compared", fuses)
	}
}

// printedStep is a line of a printed tree with a formula.
type printedStep struct{ value, formula string }

var (
	stepLine    = regexp.MustCompile(`^[│├└ ]*(−?[0-9][0-9.]*(?: [^ ]+)?)  `)
	markAtEnd   = regexp.MustCompile(` {2,}(?:[●▪?=] ?.*|●● .*|see above)$`)
	formulaFrom = regexp.MustCompile(`(?:^|  )= (.*)$`)
)

// printedSteps finds the steps that have a formula in the text of a tree.
func printedSteps(text string) (list []printedStep) {
	value, formula := "", ""
	keep := func() {
		if value != "" && formula != "" {
			list = append(list, printedStep{value, formula})
		}
		value, formula = "", ""
	}
	for _, line := range strings.Split(text, "\n") {
		bare := strings.TrimLeft(line, "│├└ ")
		if strings.HasPrefix(line, "[1]") || strings.HasPrefix(line, "Marks:") {
			break
		}
		m := stepLine.FindStringSubmatch(line)
		switch {
		case line == "":
			keep()
		case m != nil && !strings.HasPrefix(bare, "= "):
			keep()
			value = m[1]
			rest := "  " + line[len(m[0]):]
			if found := formulaFrom.FindStringSubmatch(markAtEnd.ReplaceAllString(rest, "")); found != nil {
				formula = found[1]
			} else if found := formulaFrom.FindStringSubmatch(rest); found != nil && !isMark(found[1]) {
				formula = markAtEnd.ReplaceAllString(found[1], "")
			}
		case value != "" && strings.HasPrefix(bare, "= ") && formula == "":
			formula = markAtEnd.ReplaceAllString(strings.TrimPrefix(bare, "= "), "")
		case value != "" && formula != "" && strings.ContainsAny(bare[:min(len(bare), 3)], "+−×÷a"):
			formula += " " + markAtEnd.ReplaceAllString(bare, "")
		}
	}
	keep()
	return list
}

// isMark tells of the sign for a computed value with its source, which is no formula.
func isMark(text string) bool {
	return !strings.ContainsAny(text, "0123456789") || strings.HasPrefix(text, "[")
}

// units are what a person makes of a unit beside a number: prefixes and per cent count, what
// stands behind them does not.
var units = map[string]float64{"mV": 1e-3, "mA": 1e-3, "mΩ": 1e-3, "mΩ/m": 1e-3, "mW": 1e-3, "ms": 1e-3, "mm": 1e-3, "%": 1e-2,
	"mm²/s": 1e-6, "nW/(m²·K⁴)": 1e-9}

var quantityText = regexp.MustCompile(`([0-9][0-9.]*)(?: (/K|[A-Za-zΩ%°][^ ()]*(?:\([^ ()]*\))?))?`)

// rework works the step out from its text and says what is wrong; "" = nothing.
func (s printedStep) rework() string {
	number, unit, _ := strings.Cut(s.value, " ")
	printed, err := strconv.ParseFloat(strings.Replace(number, "−", "-", 1), 64)
	if err != nil {
		return err.Error()
	}
	scale := factorOf(unit)
	formula := s.formula
	if !strings.ContainsAny(formula, "ΩVAWKms%°/hd") || onlyNumbers(formula) {
		formula = "(" + formula + ")" // a sum in the result's own unit
	} else {
		printed *= scale
		scale = 1
	}
	got, err := work(formula)
	if err != nil {
		return err.Error()
	}
	_, decimals, _ := strings.Cut(number, ".")
	last := math.Pow10(-len(decimals))
	if unit != "" && scale == 1 {
		last *= factorOf(unit)
	}
	if !(math.Abs(got-printed) <= 0.5000011*last) {
		return fmt.Sprintf("gives %.10g, printed %.10g to %.3g", got, printed, last)
	}
	return ""
}

var numbersOnly = regexp.MustCompile(`^[0-9. +−()]*$`)

func onlyNumbers(text string) bool { return numbersOnly.MatchString(text) }

func factorOf(unit string) float64 {
	if f, ok := units[unit]; ok {
		return f
	}
	return 1
}

// work evaluates a printed formula by way of Go's own parser.
func work(formula string) (float64, error) {
	text := quantityText.ReplaceAllStringFunc(formula, func(q string) string {
		m := quantityText.FindStringSubmatch(q)
		if m[2] == "and" || m[2] == "" {
			return m[1] + strings.TrimPrefix(q, m[1])
		}
		return fmt.Sprintf("(%s*%g)", m[1], factorOf(m[2]))
	})
	text = smaller.ReplaceAllString(text, "min($1)")
	text = strings.ReplaceAll(strings.NewReplacer("×", "*", "÷", "/", "−", "-", "π", "pi", "√", "root", "²", " %2", "⁴", " %4", "^", "%").Replace(text), " and ", ",")
	expr, err := parser.ParseExpr(text)
	if err != nil {
		return 0, fmt.Errorf("%q: %w", text, err)
	}
	return eval(expr)
}

var smaller = regexp.MustCompile(`smaller of (.*)$`)

// eval works out an expression; % is raising to a power, which Go's grammar gives the rank
// of a product: it is taken first within one.
func eval(e ast.Expr) (float64, error) {
	switch x := e.(type) {
	case *ast.BasicLit:
		return strconv.ParseFloat(x.Value, 64)
	case *ast.Ident:
		if v, ok := map[string]float64{"pi": math.Pi, "e": math.E}[x.Name]; ok {
			return v, nil
		}
	case *ast.ParenExpr:
		return eval(x.X)
	case *ast.UnaryExpr:
		v, err := eval(x.X)
		return -v, err
	case *ast.CallExpr:
		return call(x)
	case *ast.BinaryExpr:
		return binary(x)
	}
	return 0, fmt.Errorf("%T is not understood", e)
}

func call(x *ast.CallExpr) (float64, error) {
	var args []float64
	for _, a := range x.Args {
		v, err := eval(a)
		if err != nil {
			return 0, err
		}
		args = append(args, v)
	}
	switch name := x.Fun.(*ast.Ident).Name; name {
	case "root":
		return math.Sqrt(args[0]), nil
	case "ln":
		return math.Log(args[0]), nil
	case "min":
		least := args[0]
		for _, v := range args {
			least = math.Min(least, v)
		}
		return least, nil
	default:
		return 0, fmt.Errorf("%s is not known", name)
	}
}

func binary(x *ast.BinaryExpr) (float64, error) {
	b, err := eval(x.Y)
	if err != nil {
		return 0, err
	}
	if left, ok := x.X.(*ast.BinaryExpr); ok && x.Op == token.REM && (left.Op == token.MUL || left.Op == token.QUO) {
		base, err := eval(left.Y) // a · b^c is parsed as (a · b) % c
		if err != nil {
			return 0, err
		}
		rest, err := eval(left.X)
		if left.Op == token.MUL {
			return rest * math.Pow(base, b), err
		}
		return rest / math.Pow(base, b), err
	}
	a, err := eval(x.X)
	switch x.Op {
	case token.ADD:
		return a + b, err
	case token.SUB:
		return a - b, err
	case token.MUL:
		return a * b, err
	case token.QUO:
		return a / b, err
	case token.REM:
		return math.Pow(a, b), err
	}
	return 0, fmt.Errorf("%s is not understood", x.Op)
}
