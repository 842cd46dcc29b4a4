package report

import (
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
)

// unsourcedText says how much of what a finding is judged by is from memory, common
// practice or assumed: "0.21 V of
// 0.67 V rest on values without a source"; "" where none does. Where its margin is smaller
// it is none.
func unsourcedText(f *finding.Finding) string {
	if f == nil || f.Unsourced.Share() == 0 {
		return ""
	}
	u := f.Unsourced
	print := func(v float64) string { return quantity.Brief(v, quantity.OfUnit(u.Unit)) }
	text := print(u.Share()*u.Of) + " of " + print(u.Of) + " rest on values without a source"
	if u.NoMargin() {
		return "no margin: " + text
	}
	return text
}
