package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"fusewright/harness/proof/fuzztest"
	"fusewright/render/scene"
	"fusewright/render/scene/scenetest"
	"fusewright/render/svg"
)

// read parses an SVG and returns the element names in order and all text.
func read(t *testing.T, file string) (elements []string, texts []string) {
	t.Helper()
	decoder := xml.NewDecoder(strings.NewReader(file))
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return elements, texts
		}
		if err != nil {
			t.Fatalf("not well-formed: %v\n%s", err, file)
		}
		switch token := token.(type) {
		case xml.StartElement:
			elements = append(elements, token.Name.Local)
		case xml.CharData:
			texts = append(texts, string(token))
		}
	}
}

func write(t testing.TB, sheet *scene.Sheet) string {
	t.Helper()
	var b bytes.Buffer
	if err := svg.Write(&b, sheet); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestNoMarkupGetsThrough(t *testing.T) {
	for _, sheet := range scenetest.Sheets() {
		elements, texts := read(t, write(t, sheet))
		for _, element := range elements {
			switch element {
			case "svg", "g", "a", "title", "desc", "rect", "path", "text":
			default:
				t.Errorf("sheet %q holds an element %q", sheet.Title, element)
			}
		}
		if sheet.ID == "parts" && !strings.Contains(strings.Join(texts, "\n"), scene.Clean(scenetest.Hostile)) {
			t.Error("hostile text does not come out as it went in")
		}
	}
}

func FuzzText(f *testing.F) {
	f.Add("<b>&amp;\x00]]>\"'")
	f.Fuzz(func(t *testing.T, s string) {
		fuzztest.Within(t, func() {
			sheet := scene.NewSheet(50, 50, s)
			sheet.Begin(scene.Group{ID: scene.ID(s), Class: s, Title: s, Desc: s})
			sheet.TextAt(scene.Point{X: 1, Y: 9}, s, scene.TextStyle{SizeMM: 3})
			sheet.End()
			elements, _ := read(t, write(t, sheet))
			for _, element := range elements {
				if !strings.Contains(" svg title rect g desc text ", " "+element+" ") {
					t.Errorf("element %q from %q", element, s)
				}
			}
		})
	})
}

// TestGolden pins the form. The length of the text is the sum of the widths of
// Helvetica-Bold in Adobe's Core 14 metrics, from memory: 4923 thousandths.
func TestGolden(t *testing.T) {
	sheet := scene.NewSheet(60, 20, "One wire")
	pen := scene.Stroke{WidthMM: 0.5, Colour: scene.RGB{R: 0xC0}, Dash: []float64{2, 1}, Round: true}
	sheet.Begin(scene.Group{ID: "w1", Class: "wire", Title: "wire W1", Desc: "red, 1.5 mm²"})
	sheet.Line(scene.Point{X: 5, Y: 10}, scene.Point{X: 55.00049, Y: -0.0001}, pen)
	sheet.Text(scene.Text{At: scene.Point{X: 5, Y: 9}, String: "a <b> & 'c'", SizeMM: 2.8, Face: scene.Bold, Align: scene.Middle, Turn: 90})
	sheet.End()
	const want = `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="20mm" viewBox="0 0 60 20" role="graphics-document" font-family="Liberation Sans, Arial, Helvetica, sans-serif" style="font-kerning:none;white-space:pre" fill="none" stroke-miterlimit="10" xml:space="preserve">
<title>One wire</title>
<rect width="60" height="20" fill="#ffffff"/>
<g id="w1" class="wire" role="img">
<title>wire W1</title>
<desc>red, 1.5 mm²</desc>
<path d="M5 10L55 0" stroke="#c00000" stroke-width="0.5" stroke-linecap="round" stroke-linejoin="round" stroke-dasharray="2 1"/>
<text x="5" y="9" font-size="2.8" font-weight="bold" text-anchor="middle" transform="rotate(-90 5 9)" textLength="13.783" lengthAdjust="spacingAndGlyphs" fill="#000000">a &lt;b&gt; &amp; &#39;c&#39;</text>
</g>
</svg>
`
	if got := write(t, sheet); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestBadSheetWritesNothing(t *testing.T) {
	sheet := scene.NewSheet(50, 50, "")
	sheet.End()
	var b bytes.Buffer
	if err := svg.Write(&b, sheet); err == nil || b.Len() > 0 {
		t.Errorf("error %v, %d bytes", err, b.Len())
	}
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

func TestWriteErrorIsTold(t *testing.T) {
	if err := svg.Write(failing{}, scenetest.Crowded(100)); !errors.Is(err, io.ErrClosedPipe) {
		t.Errorf("got %v", err)
	}
}

func BenchmarkWrite2000(b *testing.B) {
	sheet := scenetest.Crowded(2000)
	for b.Loop() {
		if err := svg.Write(io.Discard, sheet); err != nil {
			b.Fatal(err)
		}
	}
}
