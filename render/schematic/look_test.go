package schematic

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/proof/reviewtest"
	"fusewright/render/scene"
	"fusewright/render/svg"
	"fusewright/render/symbol"
)

// SCHEMATIC_LOOK=FOLDER writes every demo design's sheets there for looking at.
func TestLook(t *testing.T) {
	folder := os.Getenv("SCHEMATIC_LOOK")
	if folder == "" {
		t.Skip("writes pictures only when SCHEMATIC_LOOK names a folder")
	}
	names, _ := filepath.Glob("../../designs/*.yaml")
	if more := os.Getenv("SCHEMATIC_MORE"); more != "" {
		extra, _ := filepath.Glob(more)
		names = append(names, extra...)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		review := reviewtest.Built(t, text)
		if full, err := harness.Assess(review.Design); err == nil {
			review = full
		}
		base := strings.TrimSuffix(filepath.Base(name), ".yaml")
		for _, v := range variants(review) {
			writeSheets(t, folder, base+v.name, laidOut(t, review, v).Paint())
		}
	}
}

type variant struct {
	name string
	Options
	places  bool // what the design's sheet would ask for
	lengths string
}

// variants are the ways to draw a design that are worth looking at.
func variants(review *harness.Review) []variant {
	list := []variant{
		{name: ""},
		{name: "-bench", Options: Options{NoFindings: true}},
		{name: "-IEEE-feet", Options: Options{Symbols: symbol.IEEE()}, lengths: "ft"},
		{name: "-detached", Options: Options{Relays: "detached"}},
		{name: "-places", places: true},
	}
	if n := len(review.Solutions); n > 0 {
		list = append(list, variant{name: "-study", Options: Options{Situation: review.Solutions[max(n-2, 0)].Situation.Name}},
			variant{name: "-study-detached", Options: Options{Situation: review.Solutions[0].Situation.Name, Relays: "detached"}})
	}
	return list
}

func writeSheets(t testing.TB, folder, base string, sheets []*scene.Sheet) {
	for i, s := range sheets {
		var out bytes.Buffer
		if err := svg.Write(&out, s); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(folder, fmt.Sprintf("%s-%d.svg", base, i+1)), out.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// svgText is the sheets as one text, to compare drawings.
func svgText(t testing.TB, sheets []*scene.Sheet) string {
	t.Helper()
	var out bytes.Buffer
	for _, s := range sheets {
		if err := svg.Write(&out, s); err != nil {
			t.Fatal(err)
		}
	}
	return out.String()
}
