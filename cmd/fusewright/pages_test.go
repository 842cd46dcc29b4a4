package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/render/document"
	"fusewright/render/scene"
)

var updatePages = flag.Bool("pages", false, "write the table of page counts anew")

// TestPageCounts records how many pages the whole and each reader's set have, so that
// a change that makes them more is seen: of the demo designs, and of every sixth of
// the clean corpus.
func TestPageCounts(t *testing.T) {
	files := slices.Clone(demos)
	clean, _ := filepath.Glob("../../testdata/corpus-clean-trade/*.yaml")
	for i := 0; i < len(clean); i += 6 {
		files = append(files, clean[i])
	}
	var b strings.Builder
	b.WriteString("design whole builder installer reviewer\n")
	for _, file := range files {
		r, all := drawnOf(t, file)
		fmt.Fprint(&b, filepath.Base(file))
		for _, reader := range []string{"", builder, installer, reviewer} {
			doc := document.Dossier(r, setTitle(reader), sectionsOf(r, all, reader))
			if err := doc.Validate(); err != nil {
				t.Errorf("%s for %q: %v", file, reader, err)
			}
			fmt.Fprintf(&b, " %d", len(doc.Sheets))
		}
		b.WriteString("\n")
	}
	golden := "testdata/pages.txt"
	if *updatePages {
		if err := os.WriteFile(golden, []byte(b.String()), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if b.String() != string(want) {
		t.Errorf("pages are now\n%s\nand were\n%s\n(go test -run PageCounts -pages)", b.String(), want)
	}
}

// TestNothingIsCut: no paper of the demo designs has a word cut short, nor a page with
// nothing on it but its frame.
func TestNothingIsCut(t *testing.T) {
	for _, file := range demos {
		_, all := drawnOf(t, file)
		for _, d := range all {
			for i, s := range slices.Concat(d.sheets, d.legend.Sheets) {
				if cut := cutWords(s); len(cut) > 0 {
					t.Errorf("%s, %s, page %d: cut short: %q", file, d.title, i+1, cut)
				}
				if texts := writtenOn(s); texts == 0 {
					t.Errorf("%s, %s, page %d is blank", file, d.title, i+1)
				}
			}
		}
	}
}

func cutWords(s *scene.Sheet) (cut []string) {
	for _, item := range s.Items {
		if item.Text != nil && strings.Contains(item.Text.String, "…") {
			cut = append(cut, item.Text.String)
		}
	}
	return cut
}

// writtenOn counts the texts of a sheet outside its frame, heading, foot and window.
func writtenOn(s *scene.Sheet) (texts int) {
	depth := 0
	for _, item := range s.Items {
		switch {
		case item.Begin != nil && (depth > 0 || slices.Contains([]string{"frame", "heading", "foot", "window"}, item.Begin.Class)):
			depth++
		case item.End && depth > 0:
			depth--
		case item.Text != nil && depth == 0:
			texts++
		}
	}
	return texts
}
