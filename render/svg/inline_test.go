package svg_test

import (
	"bytes"
	"strings"
	"testing"

	"fusewright/render/scene"
	"fusewright/render/svg"
)

// A picture for a page says what its groups are of, takes the page's ink, and has nothing that a
// policy against inline styles refuses; a picture of its own is as before.
func TestInline(t *testing.T) {
	s := scene.NewSheet(40, 20, `"title"`)
	s.Begin(scene.Group{ID: "a", Class: "wire", Title: "t", Desc: "d", Of: `W1"><script>`})
	s.Line(scene.Point{X: 1, Y: 1}, scene.Point{X: 9, Y: 1}, scene.Pen(0.5))
	s.TextAt(scene.Point{X: 1, Y: 9}, "<x>", scene.TextStyle{SizeMM: 3, Colour: scene.RGB{R: 1, G: 2, B: 3}})
	s.End()
	var inline, whole bytes.Buffer
	if err := svg.WriteInline(&inline, s); err != nil {
		t.Fatal(err)
	}
	if err := svg.Write(&whole, s); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"`, `data-of="W1&quot;&gt;&lt;script&gt;"`, `stroke="currentColor"`, `fill="#010203"`, "&lt;x&gt;"} {
		if !strings.Contains(inline.String(), want) {
			t.Errorf("no %s in\n%s", want, &inline)
		}
	}
	for _, no := range []string{"<?xml", "style=", "<title", "<rect", "<script", "width="} {
		if strings.Contains(strings.ReplaceAll(inline.String(), "stroke-width=", ""), no) {
			t.Errorf("%s in\n%s", no, &inline)
		}
	}
	if strings.Contains(whole.String(), "data-of") || strings.Contains(whole.String(), "currentColor") {
		t.Errorf("a picture of its own has\n%s", &whole)
	}
}
