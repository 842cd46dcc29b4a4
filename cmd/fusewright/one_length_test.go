package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/workshop/cutting"
	"fusewright/library"
	"fusewright/render/document"
	"fusewright/render/report"
	"fusewright/render/scene"
	"fusewright/render/schematic"
)

// TestOneLength holds every paper that prints a wire's length against the cut
// list: what is drawn is what is cut. The designs are the demos and the clean
// corpora, each in metres and in feet.
func TestOneLength(t *testing.T) {
	var files []string
	for _, folder := range []string{"../../designs", "../../testdata/corpus/clean", "../../testdata/corpus-clean-trade"} {
		list, err := filepath.Glob(folder + "/*.yaml")
		if err != nil || len(list) == 0 {
			t.Fatal(folder, err)
		}
		files = append(files, list...)
	}
	wires := 0
	for _, file := range files {
		r := reviewOf(t, file)
		wires += len(r.Circuit.Wires)
		for _, unit := range []string{"", "ft"} {
			r.Design.Sheet.Lengths = unit
			for _, fault := range differingLengths(t, r) {
				t.Errorf("%s, unit %q: %s", file, unit, fault)
			}
		}
	}
	if wires < 400 {
		t.Errorf("only %d wires were looked at", wires)
	}
}

// differingLengths is where a paper has another length than the cut list.
func differingLengths(t *testing.T, r *harness.Review) (faults []string) {
	drawn, dot := schematicWords(t, r), dotWords(t, r)
	rows := cutting.List(r.Circuit)
	table := csvColumn(t, len(r.Circuit.Wires), func(b *bytes.Buffer) error { return document.WiresCSV(b, r) })
	list := csvColumn(t, len(rows), func(b *bytes.Buffer) error {
		return document.CutListCSV(b, lengths.Of(r.Design), rows)
	})
	cutM := map[string]float64{}
	for _, row := range rows {
		cutM[row.Number] = row.CutM
		if list[row.Number] != fmt.Sprintf("%.3f", row.CutM) {
			faults = append(faults, fmt.Sprintf("the cut list has %s of %s", list[row.Number], row.Number))
		}
	}
	model, rep := report.NewModel(r, library.Text{}, nil), report.New(r)
	for i, wire := range r.Circuit.Wires {
		row := cutting.Row{Number: wire.Number}
		for _, piece := range wire.Cut() { // what a connector parts is as long as its pieces
			row.CutM += cutM[piece.Number]
		}
		text := lengths.Of(r.Design).Cut(row.CutM)
		say := func(paper string, same bool) {
			if !same {
				faults = append(faults, fmt.Sprintf("%s of %s is not the %s of the cut list", paper, row.Number, text))
			}
		}
		say("the schematic's length", drawn.has(row.Number, text))
		say("the graph's length", dot.has(row.Number, text))
		say("the table's length", table[row.Number] == fmt.Sprintf("%.3f", row.CutM))
		say("the model's length", math.Abs(*model.Wires[i].LengthM-row.CutM) < 1e-9)
		for _, s := range rep.Situations {
			for _, w := range s.Wires {
				if w.Number == row.Number {
					say("the report's length", math.Abs(w.LengthM-row.CutM) < 1e-9)
				}
			}
		}
	}
	return faults
}

// byWire is the words that stand at each wire.
type byWire map[string]string

// has tells whether a wire's words end with a length, or with it and a plug's cavity.
func (b byWire) has(wire, text string) bool {
	return strings.HasSuffix(cavity.ReplaceAllString(b[wire], ""), " "+text)
}

var (
	cavity     = regexp.MustCompile(` X[0-9]+:[0-9]+$`)
	wireNumber = regexp.MustCompile(`^W[0-9]+$`)
	wireLabel  = regexp.MustCompile(`^W[0-9]+ ([0-9/.]+ (mm²|AWG)|[A-Z]{2})`) // number, and size or colour
)

// schematicWords reads the labels of wires off the drawing, of one line or two.
func schematicWords(t *testing.T, r *harness.Review) byWire {
	sheets, err := schematic.Draw(r, schematic.Options{})
	if err != nil {
		t.Fatal(err)
	}
	out := byWire{}
	for _, s := range sheets {
		for i, item := range s.Items {
			if item.Text == nil {
				continue
			}
			words := strings.Fields(item.Text.String)
			if !wireLabel.MatchString(item.Text.String) || out[words[0]] != "" {
				continue
			}
			out[words[0]] = item.Text.String + nextText(s.Items[i+1:])
		}
	}
	return out
}

// nextText is the second line of a label: what stands straight after it.
func nextText(items []scene.Item) string {
	for _, item := range items {
		if item.Text != nil && !wireNumber.MatchString(strings.Fields(item.Text.String + " -")[0]) {
			return " " + item.Text.String
		}
		if item.End {
			break
		}
	}
	return ""
}

func dotWords(t *testing.T, r *harness.Review) byWire {
	var b bytes.Buffer
	if err := report.WriteDot(&b, r); err != nil {
		t.Fatal(err)
	}
	out := byWire{}
	for _, m := range regexp.MustCompile(`label="(W[0-9]+)\\n([^"]*)"`).FindAllStringSubmatch(b.String(), -1) {
		out[m[1]] = m[2]
	}
	return out
}

// csvColumn is the cut length of each wire in a table.
func csvColumn(t *testing.T, lines int, write func(*bytes.Buffer) error) map[string]string {
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(rows) != lines+1 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	at := -1
	for i, head := range rows[0] {
		if head == "cut length m" {
			at = i
		}
	}
	out := map[string]string{}
	for _, row := range rows[1:] {
		out[row[0]] = row[at]
	}
	return out
}
