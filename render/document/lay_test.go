package document_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/workshop/diagnosis"
	"fusewright/render/document"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// squeezed is what some sheets say, without blanks: lines are broken anywhere.
func squeezed(sheets []*scene.Sheet) string {
	return strings.Join(strings.Fields(strings.Join(said(sheets), "")), "")
}

// No text of a cell is lost on paper, whatever its kind, column and length.
func TestNoCellIsLost(t *testing.T) {
	cells := []string{"14.21V", "14.21 V", "open", "wrong", "−0.3mV", "13.52 to 14.72 V", "1/8", "≤12.5", "§", "FAIL: 599 mV too low",
		strings.Repeat("long ", 30) + "end", strings.Repeat("x", 60)}
	r := samples(t)["designs/fen-runner"]
	for _, cell := range cells {
		d := &diagnosis.Diagnosis{}
		list := []string{}
		for i := range 5 { // each column of its own, that no other cell makes wide
			of := [5]string{}
			for k := range of {
				of[k] = "–"
			}
			of[i] = fmt.Sprintf("%s%d", cell, i)
			list = append(list, of[i])
			d.Readings = append(d.Readings, &diagnosis.Judged{Check: of[0], What: of[1], Reads: of[2], Allowed: of[3], Verdict: diagnosis.Verdict(of[4])})
		}
		text := squeezed(document.Diagnosis(r, report.NewDiagnosis(report.New(r), d, nil)))
		for i, want := range list {
			if !strings.Contains(text, strings.Join(strings.Fields(want), "")) {
				t.Errorf("%q in column %d is lost", want, i)
			}
		}
	}
}
