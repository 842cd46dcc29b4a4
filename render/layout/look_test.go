package layout

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/pdf"
	"fusewright/render/scene"
)

// demos are the demo designs by name.
func demos(t testing.TB) map[string]*harness.Review {
	names, err := filepath.Glob("../../designs/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("no demo designs: %v", err)
	}
	out := map[string]*harness.Review{}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		out[strings.TrimSuffix(filepath.Base(name), ".yaml")] = reviewtest.Built(t, text)
	}
	return out
}

// fullSizeOf is the pages at full size.
func fullSizeOf(t testing.TB, r *harness.Review, b *formboard.Board) []*scene.Sheet {
	t.Helper()
	pages, err := FullSize(r, b)
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

// LAYOUT_LOOK=FOLDER writes every demo design's sheets there for looking at.
func TestLook(t *testing.T) {
	folder := os.Getenv("LAYOUT_LOOK")
	if folder == "" {
		t.Skip("writes pages only when LAYOUT_LOOK names a folder")
	}
	reviews := demos(t)
	if more := os.Getenv("LAYOUT_MORE"); more != "" {
		text, err := os.ReadFile(more)
		if err != nil {
			t.Fatal(err)
		}
		reviews["more"] = reviewtest.Built(t, text)
	}
	for name, r := range reviews {
		board := formboard.Lay(r.Circuit)
		if size := os.Getenv("LAYOUT_SIZE"); size != "" {
			r.Design.Sheet.Size = size
		}
		sheets, err := Draw(r, board)
		if err != nil {
			t.Error(name, err)
			continue
		}
		writePDF(t, filepath.Join(folder, name+".pdf"), sheets)
		writePDF(t, filepath.Join(folder, name+"-1to1.pdf"), fullSizeOf(t, r, board))
	}
}

func writePDF(t testing.TB, file string, sheets []*scene.Sheet) {
	var b bytes.Buffer
	if err := pdf.Write(&b, &scene.Document{Title: "layout", Sheets: sheets}); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
}
