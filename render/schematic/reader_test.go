package schematic

import (
	"bytes"
	"encoding/xml"
	"io"
	"os"
	"strings"
	"testing"

	"fusewright/render/pdf"
	"fusewright/render/scene"
	"fusewright/render/svg"
)

// Every group of an SVG sheet has an ID of its own, and every part, wire, flag
// and ground a title to be read aloud.
func TestSheetsCanBeReadAloud(t *testing.T) {
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		review := demo(t, name)
		for _, v := range variants(review) {
			t.Run(name+v.name, func(t *testing.T) {
				parts := map[string]bool{}
				for _, s := range laidOut(t, review, v).Paint() {
					for id := range readAloud(t, s) {
						parts[id] = true
					}
				}
				for _, p := range review.Circuit.Parts {
					id := "part-" + p.Ref
					drawn := parts[id] || parts[id+"-1"] || parts[id+"-coil"] && parts[id+"-contact"]
					if own := p.Kind != "ground" && p.Kind != "generator" && p.Kind != "vehicle loads"; own && !drawn {
						t.Errorf("%s has no group", p.Ref)
					}
				}
				for _, w := range review.Circuit.Wires {
					if !parts["wire-"+w.Number] {
						t.Errorf("%s has no group", w.Number)
					}
				}
			})
		}
	}
}

// readAloud reads the IDs of an SVG sheet and checks them.
func readAloud(t *testing.T, sheet *scene.Sheet) map[string]bool {
	t.Helper()
	var out bytes.Buffer
	if err := svg.Write(&out, sheet); err != nil {
		t.Fatal(err)
	}
	ids := map[string]bool{}
	decoder := xml.NewDecoder(&out)
	waiting := ""
	for {
		token, err := decoder.Token()
		if err == io.EOF {
			return ids
		}
		if err != nil {
			t.Fatal(err)
		}
		e, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		if waiting != "" && e.Name.Local != "title" {
			t.Errorf("%s has no title", waiting)
		}
		waiting = ""
		id, class := attribute(e, "id"), attribute(e, "class")
		if id == "" {
			continue
		}
		if ids[id] {
			t.Errorf("two elements %q", id)
		}
		ids[id] = true
		switch class {
		case "part", "wire", "finding", "ground", "reference", "place":
			waiting = id
		}
	}
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// Every flag leads to the other end of its line, and no link is dead.
func TestFlagsLeadOn(t *testing.T) {
	text, err := os.ReadFile("../../designs/reed-skiff.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d := planned(t, "reed-skiff.yaml", text, Options{Relays: "detached"})
	sheets := d.Paint()
	doc := &scene.Document{Title: "reed skiff", Sheets: sheets}
	if err := doc.Validate(); err != nil {
		t.Fatal(err)
	}
	on := map[string]int{}
	for i, s := range sheets {
		for _, item := range s.Items {
			if item.Begin != nil {
				on[item.Begin.ID] = i
			}
		}
	}
	links := 0
	for i, s := range sheets {
		for _, item := range s.Items {
			if g := item.Begin; g != nil && g.Class == "reference" {
				links++
				if g.Link == "" {
					t.Errorf("%s leads nowhere", g.ID)
				} else if on[g.Link] == i {
					t.Errorf("%s on sheet %d leads to %s on the same sheet", g.ID, i+1, g.Link)
				}
			} else if g != nil && g.Link != "" {
				links++
			}
		}
	}
	var out bytes.Buffer
	if err := pdf.Write(&out, doc); err != nil {
		t.Fatal(err)
	}
	if got := strings.Count(out.String(), "/Subtype /Link"); links == 0 || got != links {
		t.Errorf("%d links in the PDF, %d on the sheets", got, links)
	}
}
