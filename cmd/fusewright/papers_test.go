package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

var updateReadme = flag.Bool("readme", false, "rewrite the table of papers in README.md")

const (
	papersBegin = "| `dossier.pdf` |"
	papersEnd   = "\n\nAll files come together:"
)

// readmeTable is the table of the README without its heading.
func readmeTable() string {
	var b strings.Builder
	b.WriteString("| `dossier.pdf` | all three | everything below in one document, but what is said to be apart: the verdict, " +
		"three numbers that matter, what to look at first, contents, links between pages; `build --for installer`, `builder` or `reviewer` " +
		"makes what the table says is for one of them, and the dossier of it, the installer's with the labels |")
	for _, p := range papers {
		files, shows := "in the dossier", p.shows
		if p.file != "" {
			files = fmt.Sprintf("`%s.%s`", p.file, strings.Join(p.endings(), "` `."))
		}
		if p.apart {
			shows += "; apart"
		}
		fmt.Fprintf(&b, "\n| %s | %s | %s |", files, p.reader, shows)
	}
	return b.String()
}

// TestReadmeTable keeps the table of the README that of the papers.
func TestReadmeTable(t *testing.T) {
	path := filepath.Join("..", "..", "README.md")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	from, to := strings.Index(string(text), papersBegin), strings.Index(string(text), papersEnd)
	if from < 0 || to < from {
		t.Fatal("README.md has no table of papers")
	}
	if *updateReadme {
		made := string(text[:from]) + readmeTable() + string(text[to:])
		if err := os.WriteFile(path, []byte(made), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	if got, want := string(text[from:to]), readmeTable(); got != want {
		t.Errorf("the table in README.md is\n%s\nand the papers are\n%s\n(go test -run ReadmeTable -readme)", got, want)
	}
}

// ownTitles are what sheets of drawings begin with in place of the paper's title.
var ownTitles = map[string]string{"Schematic": "schematic", "Schematic with solved values": "schematic",
	"Layout at full size": "Full size"}

// TestPapers: a paper is complete, its file is its own, its first sheet carries
// its title, and the help names it.
func TestPapers(t *testing.T) {
	_, all := drawnOf(t, demos[0])
	seen := []string{"dossier"}
	for _, d := range all {
		if d.title == "" || d.shows == "" || (len(d.sheets) == 0) != (d.paper.sheets == nil) {
			t.Errorf("%q, %q: not complete, or without sheets", d.title, d.shows)
		}
		for _, reader := range strings.Split(d.reader, ", ") {
			if !slices.Contains([]string{"builder", "installer", "reviewer"}, reader) {
				t.Errorf("%s is for %q", d.title, reader)
			}
		}
		if d.file == "" && (d.apart || len(d.endings()) > 1) {
			t.Errorf("%s is nowhere, or has pictures or texts without a name", d.title)
		}
		for _, name := range []string{d.title, d.file} {
			if name != "" && slices.Contains(seen, name) {
				t.Errorf("%s: %q is given twice", d.title, name)
			}
			seen = append(seen, name)
		}
		want := d.title
		if own, ok := ownTitles[d.title]; ok {
			want = own
		}
		if len(d.sheets) > 0 && !strings.HasPrefix(d.sheets[0].Title, want) {
			t.Errorf("%s has sheets called %q", d.title, d.sheets[0].Title)
		}
		if help := paperHelp(); !strings.Contains(help, d.title) || !strings.Contains(help, d.file) {
			t.Errorf("the help of build does not name %s", d.title)
		}
	}
}
