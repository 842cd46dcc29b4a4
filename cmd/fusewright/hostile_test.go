package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"image/png"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"fusewright/harness/proof/referencetest"

	"gopkg.in/yaml.v3"
)

const hostileDesign = "../../testdata/hostile/hostile.yaml"

// hostileRuns are command lines that bring out every output of a command that
// takes a design. DESIGN, OTHER and OUT are put in; what is printed has the kind
// named first.
var hostileRuns = []struct{ kind, line string }{
	{"text", "build DESIGN -o OUT/all"},
	{"text", "check DESIGN"},
	{"markdown", "survey DESIGN"},
	{"text", "survey DESIGN -o OUT/survey.pdf"},
	{"text", "survey DESIGN -o OUT/form.yaml"},
	{"json", "check DESIGN --format json"},
	{"json", "check DESIGN --format sarif"},
	{"markup", "check DESIGN --format junit"},
	{"text", "diff OTHER DESIGN"},
	{"json", "diff OTHER DESIGN --format json"},
	{"markdown", "diff OTHER DESIGN --format markdown"},
	{"text", "diff OTHER DESIGN --draw OUT/changes.svg"},
	{"text", "diff OTHER DESIGN --draw OUT/changes.pdf"},
	{"text", "diff OTHER DESIGN --draw OUT/changes.png"},
	{"text", "diff OTHER DESIGN --draw OUT/changes.dxf"},
	{"text", "draw DESIGN -o OUT/draw.svg"},
	{"text", "draw DESIGN -o OUT/draw.pdf"},
	{"text", "draw DESIGN -o OUT/draw.png"},
	{"text", "draw DESIGN -o OUT/draw.dxf"},
	{"csv", "cut DESIGN"},
	{"text", "cut DESIGN -o OUT/cut.pdf"},
	{"csv", "bom DESIGN"},
	{"text", "bom DESIGN -o OUT/bom.pdf"},
	{"text", "budget DESIGN"},
	{"json", "budget DESIGN --format json"},
	{"text", "budget DESIGN -o OUT/budget.svg"},
	{"text", "budget DESIGN -o OUT/budget.pdf"},
	{"text", "ride DESIGN"},
	{"json", "ride DESIGN --format json"},
	{"text", "ride DESIGN -o OUT/ride.svg"},
	{"text", "ride DESIGN -o OUT/ride.pdf"},
	{"text", "bench DESIGN"},
	{"json", "bench DESIGN --format json"},
	{"text", "bench DESIGN -o OUT/bench.pdf"},
	{"text", "diagnose DESIGN 1.1=open"},
	{"json", "diagnose DESIGN 1.1=open --format json"},
	{"text", "diagnose DESIGN 1.1=open -o OUT/diagnosis.pdf"},
	{"text", "study DESIGN"},
	{"json", "study DESIGN --format json"},
	{"text", "study DESIGN -o OUT/study.pdf"},
	{"spice", "netlist DESIGN"},
	{"text", "netlist DESIGN -o OUT/netlist.cir"},
	{"text", "size DESIGN"},
	{"json", "size DESIGN --format json"},
	{"text", "why DESIGN"},
	{"text", "why DESIGN cut length of W1 --all"},
	{"json", "why DESIGN cut length of W1 --format json"},
	{"json", "why DESIGN --format json"},
	{"text", "why DESIGN 1 --all"},
	{"text", "fmt DESIGN --check"},
	{"json", "export DESIGN --to json"},
	{"spice", "export DESIGN --to spice"},
	{"dot", "export DESIGN --to dot"},
	{"csv", "export DESIGN --to csv"},
	{"text", "export DESIGN --to dxf -o OUT/schematic.dxf"},
	{"text", "export DESIGN --to dxf --of layout -o OUT/layout.dxf"},
	{"text", "export DESIGN --to dxf --of board -o OUT/board.dxf"},
}

// The hostile design goes through every output: all files are well formed,
// nothing steers the terminal, no cell is a formula, nothing lands elsewhere.
func TestHostileDesign(t *testing.T) {
	src, err := os.ReadFile(hostileDesign)
	if err != nil {
		t.Fatal(err)
	}
	root := t.TempDir()
	home := filepath.Join(root, "a", "b", "home")
	if err := os.MkdirAll(home, 0o777); err != nil {
		t.Fatal(err)
	}
	t.Chdir(home) // so that ../../etc would stay in the root and be seen
	if err := os.WriteFile("hostile.yaml", src, 0o666); err != nil {
		t.Fatal(err)
	}
	other := strings.NewReplacer("rating: 20 A", "rating: 25 A", "power: 12 W", "power: 60 W", // with changes to show
		"\"<script>\"", "\"<other>\"", "size: 4 mm²", "size: 2.5 mm²").Replace(string(src))
	if err := os.WriteFile("other.yaml", []byte(other), 0o666); err != nil {
		t.Fatal(err)
	}
	for _, r := range hostileRuns {
		line := strings.NewReplacer("DESIGN", "hostile.yaml", "OTHER", "other.yaml", "OUT", "out").Replace(r.line)
		var stdout, stderr bytes.Buffer
		code := run(strings.Fields(line), strings.NewReader(""), &stdout, &stderr)
		if code > exitFindings || stderr.Len() > 0 {
			t.Errorf("%s: exit code %d, %s", line, code, &stderr)
		}
		if err := wellFormed(t, r.kind, stdout.Bytes()); err != nil {
			t.Errorf("%s: %v", line, err)
		}
	}
	made := 0
	err = filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		under, _ := filepath.Rel(home, path) // both are absolute
		if under == "hostile.yaml" || under == "other.yaml" {
			return nil
		}
		if !strings.HasPrefix(under, "out"+string(filepath.Separator)) {
			t.Errorf("%s was written outside the output folder", under)
		}
		made++
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		if err := wellFormed(t, kindOf(path), data); err != nil {
			t.Errorf("%s: %v", under, err)
		}
		return nil
	})
	if err != nil || made < 25 {
		t.Errorf("%d files, %v", made, err)
	}
}

// Every command that takes a design is in the table above.
func TestHostileRunsAreComplete(t *testing.T) {
	app, err := newParser(&program{}, io.Discard, io.Discard, func(int) {})
	if err != nil {
		t.Fatal(err)
	}
	for _, leaf := range app.Model.Leaves(true) {
		for _, p := range leaf.Positional {
			if p.Name != "design" && p.Name != "old" || leaf.Name == "serve" { // its server is attacked in package live
				continue
			}
			found := false
			for _, r := range hostileRuns {
				found = found || strings.HasPrefix(r.line, leaf.Name+" DESIGN") || strings.HasPrefix(r.line, leaf.Name+" OTHER")
			}
			if !found {
				t.Errorf("no hostile run of %s", leaf.Name)
			}
		}
	}
}

func kindOf(path string) string {
	return map[string]string{".svg": "svg", ".pdf": "pdf", ".png": "png", ".csv": "csv", ".json": "json",
		".txt": "text", ".cir": "spice", ".dxf": "dxf", ".html": "page", ".md": "text", ".yaml": "yaml"}[filepath.Ext(path)]
}

// wellFormed checks the bytes of an output of a kind.
func wellFormed(t *testing.T, kind string, data []byte) error {
	t.Helper()
	switch kind {
	case "svg", "markup":
		return errors.Join(checkPlain(data), checkMarkup(data))
	case "page":
		return errors.Join(checkPlain(data), checkPage(data))
	case "pdf":
		return checkPDF(t, data)
	case "png":
		_, err := png.Decode(bytes.NewReader(data))
		return err
	case "csv":
		return errors.Join(checkPlain(data), checkCSV(data))
	case "json":
		if !json.Valid(data) {
			return errors.New("not JSON")
		}
		return checkPlain(data)
	case "dxf":
		return checkDXF(data)
	case "dot":
		return errors.Join(checkPlain(data), checkDot(data))
	case "spice":
		return errors.Join(checkPlain(data), checkSpice(data))
	case "markdown":
		return errors.Join(checkPlain(data), checkMarkdown(data))
	case "text":
		return checkPlain(data)
	case "yaml":
		return errors.Join(checkPlain(data), yaml.Unmarshal(data, new(map[string]any)))
	}
	return fmt.Errorf("no check for this kind of file")
}

// checkPlain finds what steers a terminal or turns text round.
func checkPlain(data []byte) error {
	for i, r := range string(data) {
		if r != '\n' && r != '\t' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || r == unicode.ReplacementChar) {
			return fmt.Errorf("character %U at byte %d", r, i)
		}
	}
	return nil
}

// checkMarkup reads it all and allows no element or attribute that could act.
func checkMarkup(data []byte) error {
	dec := xml.NewDecoder(bytes.NewReader(data))
	for {
		token, err := dec.Token()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		if name := strings.ToLower(start.Name.Local); name == "script" || name == "img" || name == "foreignobject" {
			return fmt.Errorf("an element <%s>", name)
		}
		for _, a := range start.Attr {
			if strings.HasPrefix(strings.ToLower(a.Name.Local), "on") {
				return fmt.Errorf("an attribute %s", a.Name.Local)
			}
			if a.Name.Local == "href" && !strings.HasPrefix(a.Value, "#") {
				return fmt.Errorf("a link to %s", a.Value)
			}
		}
	}
}

// checkPage takes the page as one file apart: what comes of the design stands in data that nothing
// ends too early, and in the title; there are two scripts, data and the page's own.
func checkPage(data []byte) error {
	head, rest, found := strings.Cut(string(data), `<script type="application/json" id="held">`)
	held, script, ended := strings.Cut(rest, "</script>")
	switch {
	case !found || !ended || !json.Valid([]byte(held)) || strings.ContainsAny(held, "<>"):
		return errors.New("its data are not whole")
	case strings.Count(head+script, "<script") != 1 || strings.Count(script, "</script>") != 1:
		return errors.New("another script")
	case strings.Count(head, "<title>") != 1 || strings.Contains(head, "<img"):
		return errors.New("a title that is more than that")
	}
	return nil
}

// checkPDF lets qpdf look, and allows nothing that could act.
func checkPDF(t *testing.T, data []byte) error {
	for _, word := range []string{"/JavaScript", "/Launch", "/OpenAction", "/SubmitForm", "/Type /EmbeddedFile"} {
		if bytes.Contains(data, []byte(word)) {
			return fmt.Errorf("holds %s", word)
		}
	}
	if _, err := exec.LookPath("qpdf"); err != nil && !referencetest.Required() {
		return nil
	}
	file := filepath.Join(t.TempDir(), "check.pdf")
	if err := os.WriteFile(file, data, 0o666); err != nil {
		return err
	}
	if out, err := exec.Command("qpdf", "--check", file).CombinedOutput(); err != nil {
		return fmt.Errorf("%v: %s", err, out)
	}
	return nil
}

// checkCSV allows no cell that a spreadsheet would run.
func checkCSV(data []byte) error {
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		return err
	}
	for _, row := range rows {
		for _, cell := range row {
			text := strings.TrimLeft(cell, " ")
			if text != "" && strings.ContainsRune("=+-@|%", rune(text[0])) && strings.Trim(text, "+-.0123456789") != "" {
				return fmt.Errorf("cell %q", cell)
			}
		}
	}
	return nil
}

// checkDXF: printable ASCII in pairs of lines, one ENTITIES section, one EOF.
func checkDXF(data []byte) error {
	lines := strings.Split(strings.TrimSuffix(string(data), "\n"), "\n")
	if len(lines)%2 != 0 || strings.TrimFunc(string(data), func(r rune) bool { return r == '\n' || r >= ' ' && r <= '~' }) != "" {
		return errors.New("not pairs of ASCII lines")
	}
	ends, sections := 0, 0
	for i := 0; i < len(lines); i += 2 {
		switch lines[i] + " " + lines[i+1] {
		case "0 EOF":
			ends++
		case "0 SECTION":
			sections++
		}
	}
	if ends != 1 || sections != 3 || lines[len(lines)-1] != "EOF" {
		return fmt.Errorf("%d sections and %d ends", sections, ends)
	}
	return nil
}

// checkDot: outside quotes there is nothing but the words of this writer.
func checkDot(data []byte) error {
	var outside strings.Builder
	quoted, escaped := false, false
	for _, c := range string(data) {
		switch {
		case escaped:
			escaped = false
		case quoted && c == '\\':
			escaped = true
		case c == '"':
			quoted = !quoted
		case !quoted:
			outside.WriteRune(c)
		}
	}
	if quoted || strings.Count(outside.String(), "{") != 1 || strings.Count(outside.String(), "}") != 1 {
		return errors.New("a quote is open or a second graph begins")
	}
	return nil
}

// checkSpice: each line is a comment, an element or one of three cards.
func checkSpice(data []byte) error {
	ends := 0
	for _, line := range strings.Split(strings.TrimSuffix(string(data), "\n"), "\n") {
		switch {
		case line == ".end":
			ends++
		case strings.HasPrefix(line, "*"), strings.HasPrefix(line, ".nodeset v("), strings.HasPrefix(line, ".options "), line == ".op":
		case line != "" && strings.ContainsRune("RVB", rune(line[0])):
		default:
			return fmt.Errorf("line %q", line)
		}
	}
	if ends != 1 {
		return fmt.Errorf("%d ends", ends)
	}
	return nil
}

// Characters that steer a terminal or turn its text are refused on reading, raw
// or written as escapes, and the message itself does not hold them.
func TestSteeringCharactersAreRefused(t *testing.T) {
	src, err := os.ReadFile(hostileDesign)
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct{ text, want string }{
		"raw NUL":            {"a\x00b", "U+0000"},
		"raw escape":         {"a\x1b[2Jb", "U+001B"},
		"raw delete":         {"a\x7fb", "U+007F"},
		"raw C1":             {"a\u009b2Jb", "control characters"},
		"written NUL":        {`a\0b`, "U+0000"},
		"written escape":     {`a\x1b[2Jb`, "U+001B"},
		"written bell":       {`a\ab`, "U+0007"},
		"written C1":         {`a\x9b2Jb`, "U+009B"},
		"turned round":       {"a\u202eb", "U+202E"},
		"turned, written":    {`a\u202Eb`, "U+202E"},
		"isolate":            {"a\u2066b", "U+2066"},
		"zero width":         {"a\u200bb", "U+200B"},
		"byte order":         {"a\ufeffb", "U+FEFF"},
		"tag characters":     {"a\U000e0041b", "U+E0041"},
		"no character":       {"a\xffb", "not UTF-8"},
		"private characters": {"a\ue000b", "U+E000"},
	} {
		t.Run(name, func(t *testing.T) {
			text := strings.Replace(string(src), "author: \"../../etc/passwd\"", "author: \""+c.text+"\"", 1)
			var stdout, stderr bytes.Buffer
			code := run([]string{"check", "-"}, strings.NewReader(text), &stdout, &stderr)
			if code != exitBadInput || !strings.Contains(stderr.String(), c.want) {
				t.Errorf("exit code %d, %q", code, stderr.String())
			}
			if err := checkPlain(stderr.Bytes()); err != nil {
				t.Error(err)
			}
		})
	}
}

// File names and arguments may hold anything; what is said of them is plain.
func TestMessagesArePlain(t *testing.T) {
	t.Chdir(t.TempDir())
	const bad = "x\x1b[2J\u202e.yaml"
	for _, args := range [][]string{
		{"check", bad}, {"explain", bad}, {"parts", bad}, {bad}, {"check", "--" + bad}, {"replay", bad},
		{"--library", bad, "check", "none.yaml"}, {"draw", bad, "-o", bad},
	} {
		var stdout, stderr bytes.Buffer
		if code := run(args, strings.NewReader(""), &stdout, &stderr); code != exitBadInput {
			t.Errorf("%q: exit code %d", args, code)
		}
		for _, r := range stdout.String() + stderr.String() {
			if r != '\n' && r != unicode.ReplacementChar && !unicode.IsPrint(r) {
				t.Errorf("%q: character %U in %q", args, r, stderr.String())
			}
		}
	}
}

// A file name of several lines cannot look like lines of the report.
func TestFileNameIsOneLine(t *testing.T) {
	src := sourceOf(t, demos[1])
	t.Chdir(t.TempDir())
	const name = "a\nb.yaml:1:1: advice: forged\tx.yaml"
	if err := os.WriteFile(name, src, 0o666); err != nil {
		t.Skipf("no such names here: %v", err)
	}
	var stdout, stderr bytes.Buffer
	run([]string{"check", name}, strings.NewReader(""), &stdout, &stderr)
	for _, line := range strings.Split(stdout.String(), "\n") {
		if strings.HasPrefix(line, "b.yaml:1:1: advice: forged") {
			t.Fatalf("line %q", line)
		}
	}
}

// checkMarkdown allows no mark-up of HTML outside code, as in a comment of a
// code-review site, and no picture or link.
func checkMarkdown(data []byte) error {
	code := false
	for _, line := range strings.Split(string(data), "\n") {
		for i, part := range strings.Split(line, "`") {
			code = i%2 == 1
			if !code && (markdownTag.MatchString(part) || strings.Contains(part, "](")) {
				return fmt.Errorf("mark-up in %q", line)
			}
		}
		if code {
			return fmt.Errorf("code without end in %q", line)
		}
	}
	return nil
}

// markdownTag is the beginning of an element that a page would show as such;
// one with a backslash in front is text.
var markdownTag = regexp.MustCompile(`(^|[^\\])<[a-zA-Z/!]`)
