package report

import (
	"fmt"
	"io"
	"path/filepath"
	"regexp"
	"strings"
	"unicode/utf8"

	"fusewright/harness/derivation"
	"fusewright/harness/design"
)

// WhyReport is a figure with its derivation.
type WhyReport struct {
	Fusewright int     `json:"fusewright_why"`
	Design     Heading `json:"design"`
	*derivation.Tree
	Caution string `json:"caution"`
}

// NewWhy makes the report of a derivation.
func NewWhy(d *design.Design, t *derivation.Tree) *WhyReport {
	return &WhyReport{Fusewright: Version, Design: heading(d), Tree: t, Caution: CautionOf(d)}
}

// WriteWhy prints a derivation as a tree; of a long one only what weighs most is taken apart
// to the leaves, unless all is asked for.
func WriteWhy(w io.Writer, rep *WhyReport, width int, all bool) error {
	p := &whyPrinter{width: width, file: rep.Design.File, notes: map[string]int{},
		shown: map[*derivation.Step]bool{}, cut: map[*derivation.Step]bool{}}
	for _, text := range append(rep.Answer, rep.restsText()...) {
		p.prose("", text)
	}
	if len(rep.Lost) > 0 {
		p.prose("", "Lost in "+shares(rep.Lost)+".")
	}
	p.open = opened(rep.Root, all)
	p.b.WriteString("\n")
	p.step(rep.Root, "", "")
	further := rep.Also
	if rep.Limit != nil {
		further = append([]*derivation.Step{rep.Limit}, further...)
	}
	for _, s := range further {
		p.open = opened(s, all)
		p.b.WriteString("\n")
		p.step(s, "", "")
	}
	p.end(rep)
	_, err := io.WriteString(w, p.b.String())
	return err
}

// mostUnsure is how many unsure values are named at the top.
const mostUnsure = 4

// WriteWhyNames prints what may be asked, by kind.
func WriteWhyNames(w io.Writer, names []string, width int) error {
	p := &whyPrinter{width: width}
	var kinds []string
	of := map[string][]string{}
	for _, name := range names {
		kind, what := name, ""
		for _, word := range []string{"spare ", "hours ", "finding ", " of ", " at "} {
			if at := strings.Index(name, word); at >= 0 {
				kind, what = strings.TrimSpace(name[:at]+word), name[at+len(word):]
				break
			}
		}
		if of[kind] == nil {
			kinds = append(kinds, kind)
		}
		of[kind] = append(of[kind], what)
	}
	for _, kind := range kinds {
		if p.prose("", kind); of[kind][0] != "" {
			p.prose("    ", strings.Join(of[kind], ", "))
		}
	}
	_, err := io.WriteString(w, p.b.String())
	return err
}

// restsText says how much of the figure is unsure, and on what.
func (rep *WhyReport) restsText() (list []string) {
	unsure := 0.0
	for _, r := range rep.Rests {
		if r.Unsure {
			unsure += r.Share
		}
	}
	if unsure >= 0.005 {
		list = append(list, fmt.Sprintf("? %.0f %% of it rests on values from memory or without a source. In all: %s.", 100*unsure, shares(rep.Rests)))
	}
	if n := len(rep.Unsure); n > 0 {
		text := strings.Join(rep.Unsure[:min(n, mostUnsure)], "; ")
		if n > mostUnsure {
			text += fmt.Sprintf("; and %d more", n-mostUnsure)
		}
		list = append(list, "? Not sure in it: "+text+".")
	}
	return list
}

// shares lists parts of a figure that show.
func shares(list []derivation.Rest) string {
	var parts []string
	for _, r := range list {
		if r.Share >= 0.005 {
			parts = append(parts, fmt.Sprintf("%s %s (%.0f %%)", r.On, r.Value, 100*r.Share))
		}
	}
	return strings.Join(parts, ", ")
}

// whyPrinter writes steps as lines of a tree.
type whyPrinter struct {
	b       strings.Builder
	width   int
	file    string
	open    map[*derivation.Step]bool // taken apart
	shown   map[*derivation.Step]bool // taken apart already
	cut     map[*derivation.Step]bool // left whole though it could be taken apart
	notes   map[string]int
	ordered []string
	folded  bool
}

// step prints a step and those below it; first stands before its line, rest before the lines
// below.
func (p *whyPrinter) step(s *derivation.Step, first, rest string) {
	below := rest
	s, kids := p.seen(s)
	if len(kids) > 0 {
		below += "│ "
	} else {
		below += "  "
	}
	p.line(s, first, below)
	for i, k := range kids {
		if i < len(kids)-1 {
			p.step(k, rest+"├ ", rest+"│ ")
		} else {
			p.step(k, rest+"└ ", rest+"  ")
		}
	}
}

// seen is a step as it is printed here, with what is taken apart below it: nothing of one that
// was taken apart further up, or is not to be.
func (p *whyPrinter) seen(s *derivation.Step) (*derivation.Step, []*derivation.Step) {
	first := s.First()
	switch shown := *s; {
	case p.shown[first] && len(first.From) > 0:
		shown.Above, shown.From = true, nil
		return &shown, nil
	case !p.open[first]:
		shown.Above, shown.From = false, nil
		p.cut[&shown] = len(first.From) > 0
		return &shown, nil
	default:
		p.shown[first] = true
		shown.Above = false
		return &shown, first.From
	}
}

// leastLabel is the least room that a label has, however deep it stands.
const leastLabel = 20

// formulaColumn is where formulas begin, if the label leaves room.
const formulaColumn = 38

func (p *whyPrinter) line(s *derivation.Step, first, below string) {
	indent := below + strings.Repeat(" ", max(0, utf8.RuneCountInString(s.Value)+utf8.RuneCountInString(first)-utf8.RuneCountInString(below)+2))
	line := first + s.Value + "  "
	for i, text := range fold(s.Label, max(leastLabel, p.width-utf8.RuneCountInString(line)), true) {
		if i > 0 {
			p.b.WriteString(line + "\n")
			line = indent
		}
		line += text
	}
	mark := p.mark(s)
	formula := ""
	if s.Formula != "" && !s.Above {
		formula = "= " + s.Formula
		at := max(formulaColumn, utf8.RuneCountInString(line)+2)
		if at+utf8.RuneCountInString(formula) <= p.width {
			line, formula = pad(line, at)+formula, ""
		}
	}
	if room := p.width - utf8.RuneCountInString(mark); utf8.RuneCountInString(line)+3 <= room && mark != "" {
		line, mark = pad(line, room)+mark, ""
	}
	p.b.WriteString(line + "\n")
	if formula != "" {
		p.folding(indent, formula)
	}
	if mark != "" {
		p.b.WriteString(pad(indent, p.width-utf8.RuneCountInString(mark)) + mark + "\n")
	}
}

// folding prints a formula over as many lines as it takes, broken before an operator.
func (p *whyPrinter) folding(indent, formula string) {
	line := indent
	for i, piece := range operators.Split(formula, -1) {
		sign := ""
		if i > 0 {
			sign = formula[:operators.FindStringIndex(formula)[1]]
			sign = sign[strings.LastIndex(strings.TrimRight(sign, " "), " ")+1:]
			formula = formula[operators.FindStringIndex(formula)[1]:]
			if utf8.RuneCountInString(line+" "+sign+piece) > p.width {
				p.b.WriteString(line + "\n")
				line = indent + " "
			}
			line += " "
		}
		line += sign + piece
	}
	p.b.WriteString(line + "\n")
}

// operators are where a formula may be broken.
var operators = regexp.MustCompile(` (?:[+−×÷]|and) `)

// prose folds a text to the width.
func (p *whyPrinter) prose(lead, text string) {
	indent := strings.Repeat(" ", len(lead))
	for _, line := range fold(text, p.width-len(lead), false) {
		p.b.WriteString(lead + line + "\n")
		lead = indent
	}
}

func pad(s string, to int) string {
	return s + strings.Repeat(" ", max(0, to-utf8.RuneCountInString(s)))
}

// mark is the sign of a step with where it is from.
func (p *whyPrinter) mark(s *derivation.Step) string {
	switch {
	case s.Above:
		return "see above"
	case s.Line > 0 && s.File == p.file:
		return fmt.Sprintf("%s line %d", s.Mark.Sign(), s.Line)
	case s.Line > 0:
		return fmt.Sprintf("%s %s:%d", s.Mark.Sign(), filepath.Base(s.File), s.Line)
	case p.cut[s] && s.Formula != "":
		p.folded = true
		return p.weakest(s)
	case s.Source == "":
		return ""
	}
	return s.Mark.Sign() + " " + p.note(s.Source)
}

// weakest is what a step that is not taken apart rests on.
func (p *whyPrinter) weakest(s *derivation.Step) string {
	switch {
	case s.Unsure >= 0.005:
		return fmt.Sprintf("? %.0f %%", 100*s.Unsure)
	case s.Weakest == derivation.Unsure:
		return "? in it"
	}
	return "= …"
}

// note is the number of a source, which is printed once at the end.
func (p *whyPrinter) note(source string) string {
	if utf8.RuneCountInString(source) <= 20 {
		return source
	}
	n, ok := p.notes[source]
	if !ok {
		p.ordered = append(p.ordered, source)
		n = len(p.ordered)
		p.notes[source] = n
	}
	return fmt.Sprintf("[%d]", n)
}

func (p *whyPrinter) end(rep *WhyReport) {
	p.b.WriteString("\n")
	for i, source := range p.ordered {
		p.prose(fmt.Sprintf("[%d] ", i+1), source)
	}
	p.b.WriteString("Marks: ●● two sources  ● one source  ▪ your design  = computed\n" +
		"       ? from memory or without a source: check before you rely on it\n")
	if p.folded {
		p.prose("       ", "? 80 %: so much of the line rests on values marked ?. --all takes every line apart.")
	}
	for _, text := range rep.Notes {
		p.prose("", text)
	}
	if len(rep.Next) > 0 {
		p.prose("Next: ", strings.Join(rep.Next, " · "))
	}
	p.b.WriteString("\n")
	p.prose("", rep.Caution)
}

// A tree of up to shortSteps is printed whole.
const shortSteps = 40

// opened are the steps that are taken apart: all of a short tree; of a long one all sums, and
// at each step what weighs most.
func opened(root *derivation.Step, all bool) map[*derivation.Step]bool {
	open := map[*derivation.Step]bool{}
	if all || steps(root) <= shortSteps {
		each(root, func(s *derivation.Step) { open[s] = true })
		return open
	}
	weighed := map[*derivation.Step]bool{}
	var weigh func(s *derivation.Step)
	weigh = func(s *derivation.Step) {
		s = s.First()
		if weighed[s] {
			return
		}
		open[s], weighed[s] = true, true
		if steps(s) <= shortSteps/2 {
			each(s, func(s *derivation.Step) { open[s.First()] = true })
			return
		}
		var most *derivation.Step
		terms(s, func(k *derivation.Step, sum bool) {
			if sum {
				open[k.First()] = true
			} else if len(k.First().From) > 0 && (most == nil || k.Number > most.Number) {
				most = k
			}
		})
		if most != nil {
			weigh(most)
		}
	}
	weigh(root)
	return open
}

// terms goes through the values of a step; of those that are sums of the same unit through
// theirs too.
func terms(s *derivation.Step, do func(k *derivation.Step, sum bool)) {
	for _, k := range s.From {
		sum := k.Unit == s.Unit && len(k.From) > 0 && strings.Contains(k.Formula, " + ")
		if do(k, sum); sum {
			terms(k, do)
		}
	}
}

func each(s *derivation.Step, do func(*derivation.Step)) {
	do(s)
	for _, k := range s.From {
		each(k, do)
	}
}

func steps(s *derivation.Step) (n int) {
	each(s, func(*derivation.Step) { n++ })
	return n
}
