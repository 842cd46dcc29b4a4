package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/render/document"
)

var updatePages = flag.Bool("pages", false, "write the table of page counts anew")

// TestPageCounts records how many pages the whole and each reader's set have, so that
// a change that makes them more is seen: of the demo designs, and of every sixth of
// the clean corpus.
func TestPageCounts(t *testing.T) {
	files, _ := filepath.Glob("../../designs/*.yaml")
	clean, _ := filepath.Glob("../../testdata/corpus-clean-trade/*.yaml")
	for i := 0; i < len(clean); i += 6 {
		files = append(files, clean[i])
	}
	var b strings.Builder
	b.WriteString("design whole builder installer reviewer\n")
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		r := review(t, src)
		all, err := drawAll(r)
		if err != nil {
			t.Fatal(err)
		}
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
