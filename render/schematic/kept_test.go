package schematic

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design/edit"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/review/finding"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/paint"
	"fusewright/render/schematic/solved"
	"fusewright/render/symbol"
)

// keptMM is how far a part may move and still be where it was.
const keptMM = 5

// place is where a part stands.
type place struct {
	sheet int
	x, y  float64
}

// placesOf are the places of all parts of a drawing, in mm.
func placesOf(d *paint.Drawing) map[string]place {
	all := map[string]place{}
	for _, c := range d.List {
		if c.Kind == cell.Part && !c.Empty && !c.Coil && c.Piece < 2 {
			all[c.Part.Name] = place{c.Sheet, float64(c.X) * symbol.M, float64(c.Rows[0].Y) * symbol.M}
		}
	}
	return all
}

// kept counts the parts of both drawings and those that stay in place.
func kept(before, after map[string]place) (stay, of int) {
	for name, a := range before {
		b, there := after[name]
		if !there {
			continue
		}
		of++
		if stays(a, b) {
			stay++
		}
	}
	return stay, of
}

// stays tells whether a part stays in place.
func stays(a, b place) bool { return a.sheet == b.sheet && math.Hypot(a.x-b.x, a.y-b.y) <= keptMM }

// edits makes single edits of a kind of a design's text.
type edits struct {
	name string
	make func(text string, n int) string
}

var (
	spareWay  = regexp.MustCompile(`(?m)^( +)(\d+): spare$`)
	blockName = regexp.MustCompile(`(?m)^blocks:\n  ([^:]+):`)
	loadLine  = regexp.MustCompile(`(?m)^  ([^:\n]+): (\{.*returns to: .*\}).*\n`)
	length    = regexp.MustCompile(`length: [\d.]+ (?:mm|in|ft)`)
	wireSize  = regexp.MustCompile(`size: [\d.]+ (?:mm²|AWG)`)
	power     = regexp.MustCompile(`power: [\d.]+ W`)
)

// one replaces the nth match of a pattern.
func one(text string, what *regexp.Regexp, n int, with func(string) string) string {
	all := what.FindAllStringIndex(text, -1)
	at := all[n%len(all)]
	return text[:at[0]] + with(text[at[0]:at[1]]) + text[at[1]:]
}

// loads are the section of the loads with its place in a text.
func loads(text string) (from, to int) {
	from = strings.Index(text, "\nloads:\n") + len("\nloads:\n")
	return from, from + strings.Index(text[from:], "\n\n") + 1
}

var singleEdits = []edits{
	{"add a load in a free way", func(text string, n int) string {
		way := spareWay.FindStringSubmatch(text)[2]
		text = spareWay.ReplaceAllString(text, "${1}${2}: {fuse: 5 A}")
		_, end := loads(text)
		from := loadLine.FindStringSubmatch(text[strings.Index(text, "\nloads:"):])[2]
		where := regexp.MustCompile(`at: [^,]+`).FindString(from)
		back := regexp.MustCompile(`returns to: [^,}]+`).FindString(from)
		sign := []string{"lamp", "motor", "socket", "heater", "horn"}[n%5]
		return text[:end] + fmt.Sprintf("  added one: {power: %d W, behaves: resistor, sign: %s, %s, fed by: %s %s, %s}\n",
			5+n, sign, where, blockName.FindStringSubmatch(text)[1], way, back) + text[end:]
	}},
	{"change a power", func(text string, n int) string {
		return one(text, power, n, func(string) string { return fmt.Sprintf("power: %d W", 3+7*n) })
	}},
	{"change a length", func(text string, n int) string {
		return one(text, length, n, func(string) string { return fmt.Sprintf("length: %d mm", 130+90*n) })
	}},
	{"change a wire size", func(text string, n int) string {
		return one(text, wireSize, n, func(old string) string {
			if strings.HasSuffix(old, "AWG") {
				return "size: 8 AWG"
			}
			return "size: 10 mm²"
		})
	}},
	{"remove a load", remove},
}

// remove takes a load out of the design and of its situations.
func remove(text string, n int) string {
	from, to := loads(text)
	all := loadLine.FindAllStringSubmatchIndex(text[from:to], -1)
	m := all[n%len(all)]
	name := text[from+m[2] : from+m[3]]
	text = text[:from+m[0]] + text[from+m[1]:]
	for _, s := range []string{", " + name, name + ", ", name} {
		text = regexp.MustCompile(`(?m)((?:on|off|reversed): \[[^\]]*)`+regexp.QuoteMeta(s)+`([,\]])`).ReplaceAllString(text, "$1$2")
	}
	return strings.ReplaceAll(text, "[, ", "[")
}

// addInNewWay adds a load behind a way more of one of the blocks that have room, or its
// spare way, among the other loads.
func addInNewWay(text string, n int) string {
	var open [][]int
	for _, m := range blockText.FindAllStringSubmatchIndex(text, -1) {
		size, _ := strconv.Atoi(text[m[4]:m[5]])
		block := text[m[0]:m[1]]
		if spareWay.MatchString(block) || len(wayLine.FindAllString(block, -1)) < size {
			open = append(open, m)
		}
	}
	m := open[n%len(open)]
	name, block := text[m[2]:m[3]], text[m[0]:m[1]]
	way := strconv.Itoa(len(wayLine.FindAllString(block, -1)) + 1)
	if spare := spareWay.FindStringSubmatchIndex(block); spare != nil {
		way = block[spare[4]:spare[5]]
		block = block[:spare[0]] + "      " + way + ": {fuse: 5 A}" + block[spare[1]:]
	} else {
		block += "      " + way + ": {fuse: 5 A}\n"
	}
	text = text[:m[0]] + block + text[m[1]:]
	from, to := loads(text)
	rows := loadLine.FindAllStringSubmatchIndex(text[from:to], -1)
	row := rows[n*2%len(rows)]
	like := text[from+row[4] : from+row[5]]
	where := regexp.MustCompile(`at: \D[^,]+`).FindString(like)
	back := regexp.MustCompile(`returns to: [^,}]+`).FindString(like)
	sign := []string{"lamp", "motor", "socket", "heater", "horn"}[n%5]
	return text[:from+row[1]] + fmt.Sprintf("  added one: {power: %d W, behaves: resistor, sign: %s, %s, fed by: %s %s, %s}\n",
		5+n, sign, where, name, way, back) + text[from+row[1]:]
}

// A block with its ways.
var (
	blockText = regexp.MustCompile(`(?m)^  ([^:\n ][^:\n]*):\n(?:    .*\n)*?    type: \D*(\d+) way.*\n(?:    .*\n)*?    ways:.*\n(?:      .*\n)+`)
	wayLine   = regexp.MustCompile(`(?m)^      \d+:`)
)

// withNumbers is the text of a design with the labels of its parts and wires.
func withNumbers(t *testing.T, r *harness.Review, text string) string {
	t.Helper()
	out, err := edit.Numbers([]byte(text), r.Design.Revision.Value, r.Circuit.Labels())
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// flagged is a review with a finding more on one of its parts or wires.
func flagged(r *harness.Review, n int) *harness.Review {
	more := *r
	f := &finding.Finding{Rule: "voltage-drop", Severity: finding.Advice, What: "made up"}
	if n%2 == 0 {
		w := r.Circuit.Wires[n*3%len(r.Circuit.Wires)]
		f.Ref = w.Number
	} else {
		f.Ref = r.Circuit.Parts[n*3%len(r.Circuit.Parts)].Ref
	}
	more.Findings = append([]*finding.Finding{f}, r.Findings...)
	return &more
}

// What share of the parts stays in place over single edits is recorded.
func TestEditsKeepPlaces(t *testing.T) {
	const file = "testdata/kept.txt"
	var b strings.Builder
	fmt.Fprintf(&b, "# design size, edit: parts within %d mm after single edits\n", keptMM)
	all, most, sumStay, sumOf := 0, 9, 0, 0
	byKind, order := map[string][2]int{}, []string{}
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		text, err := os.ReadFile("../../designs/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		for _, size := range []string{"A4", "A3"} {
			base := reviewtest.Built(t, text)
			draw := func(r *harness.Review) map[string]place {
				d, err := plan(r, Options{Size: size})
				if err != nil {
					t.Fatal(err)
				}
				return placesOf(d)
			}
			before := draw(base)
			row := func(kind string, stay, of int) {
				fmt.Fprintf(&b, "%s %s, %s: %.1f %%\n", name, size, kind, 100*float64(stay)/float64(of))
				sumStay, sumOf = sumStay+stay, sumOf+of
				if _, known := byKind[kind]; !known {
					order = append(order, kind)
				}
				byKind[kind] = [2]int{byKind[kind][0] + stay, byKind[kind][1] + of}
			}
			numbered := withNumbers(t, base, string(text))
			kinds := append(slices.Clone(singleEdits), edits{"remove a load, with numbers", func(_ string, n int) string { return remove(numbered, n) }})
			for _, e := range kinds {
				stay, of := 0, 0
				for n := range most {
					edited := e.make(string(text), n)
					s, o := kept(before, draw(reviewtest.Built(t, []byte(edited))))
					stay, of = stay+s, of+o
					all++
				}
				row(e.name, stay, of)
			}
			stay, of := 0, 0
			for n := range most {
				s, o := kept(before, draw(flagged(base, n)))
				stay, of = stay+s, of+o
				all++
			}
			row("add a finding", stay, of)
		}
	}
	for _, kind := range order {
		fmt.Fprintf(&b, "all, %s: %.1f %%\n", kind, 100*float64(byKind[kind][0])/float64(byKind[kind][1]))
	}
	fmt.Fprintf(&b, "all %d edits: %.1f %%\n", all, 100*float64(sumStay)/float64(sumOf))
	checkRecorded(t, file, b.String())
}

// checkRecorded compares a text with a recorded one; -update records it anew.
func checkRecorded(t *testing.T, file, now string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(now), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if now != string(want) {
		t.Errorf("%s: layouts changed; if they are better, record them with -update:\n%s", file, now)
	}
}

// With findings and without them, every part stands at the same place; how many stand
// there on the study sheets too is recorded.
func TestVariantsStandAlike(t *testing.T) {
	var b strings.Builder
	fmt.Fprintf(&b, "# design size: parts within %d mm of where they stand with findings, without them and solved\n", keptMM)
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		review := demo(t, name)
		for _, size := range []string{"A4", "A3"} {
			with := map[string]place{}
			share := func(v Options) float64 {
				v.Size = size
				d, err := plan(review, v)
				if err != nil {
					t.Fatal(err)
				}
				if len(with) == 0 {
					with = placesOf(d)
				}
				stay, of := kept(with, placesOf(d))
				return 100 * float64(stay) / float64(of)
			}
			share(Options{})
			bare := share(Options{NoFindings: true})
			if bare != 100 {
				t.Errorf("%s %s: %.1f %% of the parts stand without findings where they stand with them", name, size, bare)
			}
			fmt.Fprintf(&b, "%s %s: %.1f %%, %.1f %%\n", name, size, bare, share(Options{Situation: solved.HeaviestSituation(review)}))
		}
	}
	checkRecorded(t, "testdata/alike.txt", b.String())
}
