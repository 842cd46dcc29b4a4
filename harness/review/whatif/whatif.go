// Package whatif tries changes of a design on a copy of its text: it is edited as a hand would,
// read and reviewed again, and held against the review as it was. Nothing is written; what a
// caller writes is the very text that was reviewed.
package whatif

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/edit"
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/compare"
	"fusewright/harness/review/finding"
	"fusewright/harness/sizing"
)

// Change gives an offer another value.
type Change struct{ At, Value string }

// Outcome is what changes come to.
type Outcome struct {
	Text     []byte      // of the changed design, whole
	Lines    []edit.Line // that differ, whole
	Review   *harness.Review
	Compared *compare.Comparison
	Findings []Finding // of both, in the order of the design as it was, then the new ones
	Figures  []Figure  // that changed, and those that are always of interest
}

// Finding is a finding with what the changes did to it.
type Finding struct {
	*finding.Finding // as it is now, or as it was where it is mended
	Was              *finding.Finding
	Became           Became
}

// Became says what changes did to a finding.
type Became string

// What a finding may become.
const (
	Mended   Became = "mended"
	Eased    Became = "eased" // less severe
	New      Became = "new"
	Worse    Became = "worse"
	AsBefore Became = "as before"
)

// mostChanges is how many are tried at once.
const mostChanges = 100

// Wrong is what is wrong with the changes themselves, for who asked for them.
type Wrong struct{ error }

func wrong(format string, a ...any) error { return Wrong{fmt.Errorf(format, a...)} }

// Try makes changes of a design, whose text and review are given, on a copy, which assess takes
// through all stages. The text given is not changed.
func Try(r *harness.Review, src []byte, changes []Change, assess func([]byte) (*harness.Review, error)) (*Outcome, error) {
	text, err := Edited(r, src, changes)
	if err != nil {
		return nil, err
	}
	after, err := assess(text)
	if err != nil {
		return nil, Wrong{err}
	}
	return outcome(r, src, after, text), nil
}

// Edited is the text of a design with changes made.
func Edited(r *harness.Review, src []byte, changes []Change) ([]byte, error) {
	if len(changes) > mostChanges {
		return nil, wrong("more than %d changes", mostChanges)
	}
	offers, err := Offers(r, src)
	if err != nil {
		return nil, err
	}
	var edits []edit.Change
	lists := map[*design.Situation][]*design.Load{}
	for _, c := range changes {
		i := slices.IndexFunc(offers, func(o *Offer) bool { return o.ID == c.At })
		if i < 0 {
			return nil, wrong("%q is nothing that can be changed here", c.At)
		}
		o := offers[i]
		if err := o.takes(c.Value); err != nil {
			return nil, err
		}
		switch {
		case o.onOf != nil:
			if _, met := lists[o.onOf]; !met {
				lists[o.onOf] = slices.Clone(o.onOf.On)
			}
			lists[o.onOf] = inOrder(r.Design, o.onOf, lists[o.onOf], o.load, c.Value == "on")
		case o.key == "type" && o.load != nil:
			edits = append(edits, o.typed(r, src, c.Value)...)
		default:
			edits = append(edits, edit.Change{Path: o.path, Key: o.key, Value: c.Value})
		}
	}
	for _, s := range r.Design.Situations {
		if on, changed := lists[s]; changed {
			items := []string{}
			for _, l := range on {
				items = append(items, l.Name)
			}
			edits = append(edits, edit.Change{Path: []string{"situations", s.Name}, Key: "on", Items: items})
		}
	}
	text, err := edit.Set(src, edits)
	if err != nil {
		return nil, Wrong{err}
	}
	return text, nil
}

// takes tells whether a value may stand there; what it means is for the reader of designs to say.
func (o *Offer) takes(value string) error {
	switch {
	case slices.Contains(o.Choices, value), o.Free && value != "" && len(value) <= 80 && !strings.ContainsAny(value, "\n\r\x00"):
		return nil
	case o.Free:
		return wrong("%s, %s: %q is no value (expected such as %s)", o.About, o.What, value, o.Now)
	}
	return wrong("%s, %s: %q is not for choice (expected %s)", o.About, o.What, value, strings.Join(o.Choices, ", "))
}

// inOrder is what is on in a situation with a load more or less: what stays as the file has it.
func inOrder(d *design.Design, s *design.Situation, on []*design.Load, l *design.Load, is bool) []*design.Load {
	if !is {
		return slices.DeleteFunc(on, func(x *design.Load) bool { return x == l })
	}
	if slices.Contains(on, l) {
		return on
	}
	if at := slices.Index(s.On, l); at >= 0 { // back where it stood
		before := 0
		for _, x := range on {
			if i := slices.Index(s.On, x); i >= 0 && i < at {
				before++
			}
		}
		return slices.Insert(on, before, l)
	}
	return append(on, l)
}

// typed sets the type of a load, and what the file gives of its draw as that type has it: a
// figure of the old lamp would stand for the new one.
func (o *Offer) typed(r *harness.Review, src []byte, name string) []edit.Change {
	list := []edit.Change{{Path: o.path, Key: "type", Value: name}}
	t := r.Design.Library.Load(name)
	tree, err := edit.Open(src)
	if t == nil || err != nil {
		return list
	}
	for _, x := range []struct{ key, value string }{{"power", quantity.Plain(t.PowerW, quantity.Power)},
		{"rated at", quantity.Plain(t.RatedV, quantity.Voltage)}, {"behaves", t.Behaves}} {
		if _, _, found := tree.Value(o.path, x.key); found {
			list = append(list, edit.Change{Path: o.path, Key: x.key, Value: x.value})
		}
	}
	return list
}

func outcome(was *harness.Review, src []byte, now *harness.Review, text []byte) *Outcome {
	o := &Outcome{Text: text, Lines: edit.Lines(src, text), Review: now, Compared: compare.Reviews(was, now)}
	o.findings(was)
	o.figures(was, now)
	return o
}

// findings tells each open finding's fate, as the comparison of the two reviews has it.
func (o *Outcome) findings(was *harness.Review) {
	changed := map[*finding.Finding]compare.Finding{}
	for _, c := range o.Compared.Findings {
		if c.Old != nil {
			changed[c.Old] = c
		}
	}
	for _, f := range was.Findings {
		c, differs := changed[f]
		x := Finding{Finding: f, Was: f, Became: AsBefore}
		switch {
		case !differs && f.Accepted != "":
			continue
		case !differs:
		case c.What == compare.Removed:
			x.Became = Mended
		case c.Rank() > 0:
			x.Finding, x.Became = c.New, Worse
		case c.Rank() < 0:
			x.Finding, x.Became = c.New, Eased
		default:
			x.Finding = c.New
		}
		if x.Became == Mended && f.Accepted != "" {
			continue
		}
		o.Findings = append(o.Findings, x)
	}
	for _, c := range o.Compared.Findings {
		if c.What == compare.Added && c.New.Accepted == "" {
			o.Findings = append(o.Findings, Finding{Finding: c.New, Became: New})
		}
	}
}

// CopperG is the copper of the loom before and after, as it is cut, in grams.
func (o *Outcome) CopperG() (was, now float64) {
	return sizing.CopperG(o.Compared.Old.Circuit), sizing.CopperG(o.Review.Circuit)
}

// IsWrong tells of an error that the changes themselves have.
func IsWrong(err error) bool { var w Wrong; return errors.As(err, &w) }
