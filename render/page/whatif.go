package page

import (
	"math"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/quantity"
	"fusewright/harness/remedy/whatif"
	"fusewright/harness/review/compare"
	"fusewright/harness/review/finding"
	"fusewright/render/report"
)

// WhatIf is what may be changed of a design, and how it is asked.
type WhatIf struct {
	Offers []Offer `json:"offers"`
}

// Offer is a value that may be changed.
type Offer struct {
	At      string   `json:"at"`
	About   string   `json:"about"`
	What    string   `json:"what"`
	Refs    []string `json:"refs"`
	Now     string   `json:"now"`
	Line    int      `json:"line"`
	Given   bool     `json:"given"` // the file says it
	Choices []string `json:"choices"`
	Free    bool     `json:"free,omitempty"`
}

// WhatIfOf lists what may be changed of a review whose text is given.
func WhatIfOf(r *harness.Review, text []byte) (*WhatIf, error) {
	offers, err := whatif.Offers(r, text)
	if err != nil {
		return nil, err
	}
	w := &WhatIf{Offers: []Offer{}}
	for _, o := range offers {
		refs := o.Refs
		if refs == nil {
			refs = []string{}
		}
		w.Offers = append(w.Offers, Offer{o.ID, o.About, o.What, refs, o.Now, o.Line, o.Given, o.Choices, o.Free})
	}
	return w, nil
}

// Tried is what changes come to.
type Tried struct {
	Lines    []ChangedLine `json:"lines"`
	Figures  []FigureRow   `json:"figures"`
	Findings []FateRow     `json:"findings"`
	Was      Open          `json:"was"`
	Now      Open          `json:"now"`
	Mended   int           `json:"mended"`
	New      int           `json:"new"`
	Shopping []ShoppingRow `json:"shopping"`
	Alone    []AloneRow    `json:"alone"`
	Caution  string        `json:"caution"`
}

// Open are open findings by severity.
type Open struct {
	Danger int `json:"danger"`
	Fault  int `json:"fault"`
	Advice int `json:"advice"`
}

// ChangedLine is a whole line of the file, gone or put in.
type ChangedLine struct {
	Number int    `json:"number"` // in the file as it was, of one put in in the new one
	Put    bool   `json:"put"`
	Text   string `json:"text"`
}

// FigureRow is a figure before and after.
type FigureRow struct {
	About  string `json:"about"`
	What   string `json:"what,omitempty"`
	Note   string `json:"note,omitempty"`
	Was    string `json:"was"`
	Now    string `json:"now"`
	Change string `json:"change"`
	Better int    `json:"better"`         // 1, -1; 0 = it says nothing
	Over   string `json:"over,omitempty"` // it is above its limit now: how grave the worst finding there is
}

// FateRow is a finding with what became of it.
type FateRow struct {
	Number   int    `json:"number"` // as before; 0 = it is new
	Severity string `json:"severity"`
	Was      string `json:"was,omitempty"` // its severity before, where that differs
	Says     string `json:"says"`
	Value    string `json:"value,omitempty"`
	Limit    string `json:"limit,omitempty"`
	Became   string `json:"became"`
	Accepted bool   `json:"accepted,omitempty"`
}

// ShoppingRow is a line of the shopping list that changes.
type ShoppingRow struct {
	Item string `json:"item"`
	Was  string `json:"was,omitempty"` // amounts; "" = not on the list
	Now  string `json:"now,omitempty"`
}

// AloneRow is one of several changes by itself.
type AloneRow struct {
	What    string `json:"what"`
	Mends   []int  `json:"mends"` // numbers of findings
	New     int    `json:"new"`
	Copper  string `json:"copper"`
	Trouble string `json:"trouble,omitempty"`
}

// TriedOf puts an outcome into words.
func TriedOf(r *harness.Review, o *whatif.Outcome) *Tried {
	t := &Tried{Lines: []ChangedLine{}, Figures: []FigureRow{}, Findings: []FateRow{}, Shopping: []ShoppingRow{}, Alone: []AloneRow{},
		Was: openOf(r.Findings), Now: openOf(o.Review.Findings)}
	for _, l := range o.Lines {
		t.Lines = append(t.Lines, ChangedLine{max(l.Old, l.New), l.New > 0, l.Text})
	}
	for _, f := range o.Figures {
		row := figureRow(f)
		if f.Now > f.Limit {
			row.Over = gravest(o.Review.Findings, f.Ref)
		}
		t.Figures = append(t.Figures, row)
	}
	before, after := findings(r, report.New(r)), findings(o.Review, report.New(o.Review))
	for _, f := range o.Findings {
		row := FateRow{Severity: f.Severity.String(), Became: string(f.Became), Accepted: f.Accepted != ""}
		list, of := after, o.Review.Findings
		if f.Became == whatif.Mended || f.Finding == f.Was {
			list, of = before, r.Findings
		}
		if i := slices.Index(of, f.Finding); i >= 0 {
			x := list[i]
			row.Says, row.Value, row.Limit = x.About+": "+x.Says, x.Value, x.Limit
		} else {
			row.Says = f.What
		}
		if f.Was != nil {
			row.Number = f.Was.Number
			if f.Was.Severity != f.Severity {
				row.Was = f.Was.Severity.String()
			}
		}
		switch f.Became {
		case whatif.Mended:
			t.Mended++
		case whatif.New:
			t.New++
		}
		t.Findings = append(t.Findings, row)
	}
	for _, a := range o.Compared.Purchase {
		t.Shopping = append(t.Shopping, shoppingRow(a))
	}
	return t
}

// gravest is how grave the worst open finding at a part or wire is; what nothing is found at is only suspected.
func gravest(list []*finding.Finding, ref string) string {
	worst := finding.Advice
	for _, f := range list {
		if f.Accepted == "" && f.Ref == ref {
			worst = max(worst, f.Severity)
		}
	}
	return worst.String()
}

// Alone says what one change of several does by itself.
func Alone(what string, o *whatif.Outcome) AloneRow {
	row := AloneRow{What: what, Mends: []int{}}
	for _, f := range o.Findings {
		switch f.Became {
		case whatif.Mended:
			row.Mends = append(row.Mends, f.Was.Number)
		case whatif.New:
			row.New++
		}
	}
	was, now := o.CopperG()
	row.Copper = change(was, now, quantity.Mass)
	return row
}

func openOf(list []*finding.Finding) Open {
	return Open{finding.Count(list, finding.Danger), finding.Count(list, finding.Fault), finding.Count(list, finding.Advice)}
}

func figureRow(f whatif.Figure) FigureRow {
	said := func(v float64) string {
		if math.IsInf(v, 1) && f.Dim == quantity.Duration {
			return "for ever"
		}
		return quantity.Format(v, f.Dim)
	}
	return FigureRow{f.About, f.What, f.Note, said(f.Was), said(f.Now), change(f.Was, f.Now, f.Dim), f.Better, ""}
}

// change is a difference with its sign; "" where there is none or it cannot be given.
func change(was, now float64, dim quantity.Dimension) string {
	by := now - was
	if by == 0 || math.IsNaN(by) || math.IsInf(by, 0) {
		return ""
	}
	text := quantity.Format(by, dim)
	if by > 0 {
		text = "+" + text
	}
	return text
}

func shoppingRow(a compare.Amount) ShoppingRow {
	_, item, found := strings.Cut(a.Name, ": ")
	if !found {
		item = a.Name
	}
	amount := func(v float64) string {
		if math.IsNaN(v) || v == 0 {
			return ""
		}
		return quantity.Digits(v, 4) + " " + a.Unit
	}
	return ShoppingRow{item, amount(a.Old), amount(a.New)}
}

// whatIfOf is nothing: the page asks for the offers, which stand in the text of the file.
func whatIfOf(*harness.Review) any { return nil }
