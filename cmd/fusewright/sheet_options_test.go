package main

import (
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/proof/referencetest"
	"fusewright/library"
	"fusewright/render/document"
)

var everySheet = flag.Bool("every-sheet", false, "make every paper of every design in every combination of sheet options")

// sheetOptions are all combinations of what a design's sheet may say. The first
// eight already have every pair of values of every two options: with the bits of
// their number x, y and z, the size is x and y, the others are z, x+z, y+z and
// x+y+z.
func sheetOptions() []design.Sheet {
	pick := func(n int, values ...string) string { return values[n%len(values)] }
	var all []design.Sheet
	for n := range 64 {
		x, y, z := n&1, n>>1&1, n>>2&1
		flip := [3]int{n >> 3 & 1, n >> 4 & 1, n >> 5 & 1}
		all = append(all, design.Sheet{
			Size:       pick(x+2*y, "A4", "A3", "Letter", "Tabloid"),
			PlaceBoxes: z == 1,
			Symbols:    pick(x+z+flip[0], "IEC", "IEEE"),
			Relays:     pick(y+z+flip[1], "assembled", "detached"),
			Lengths:    pick(x+y+z+flip[2], "m", "ft"),
		})
	}
	return all
}

// TestSheetOptions makes every paper of the project's designs that are good
// enough to be drawn: the demos and those that have every key each on two sheets
// that between them have every value of all options but the size, which goes
// round; the others on one. The corpora have hundreds of designs of one make for what
// is found in them, which no paper hangs on: every third of them is drawn, so that each
// combination still meets many, and all where reference programs are required. All
// designs in all combinations, and with them the files, take -every-sheet.
func TestSheetOptions(t *testing.T) {
	rows := sheetOptions()
	drawn := map[design.Sheet]int{}
	for number, file := range readable(t) {
		own := rows[number%8 : number%8+1]
		switch folder := filepath.Base(filepath.Dir(file)); {
		case *everySheet:
			own = rows
		case folder == "designs" || folder == "ok":
			own = []design.Sheet{rows[number%4], rows[number%4+4]}
		case strings.Contains(file, "/corpus") && number%3 > 0 && !referencetest.Required():
			continue
		}
		for _, sheet := range own {
			drawn[sheet]++
		}
		t.Run(strings.TrimPrefix(file, "../../"), func(t *testing.T) {
			t.Parallel()
			for _, sheet := range own {
				if err := papersOn(t, file, sheet); err != nil {
					t.Errorf("%+v: %v", sheet, err)
				}
			}
		})
	}
	for _, sheet := range rows[:8] {
		if drawn[sheet] < 30 {
			t.Errorf("%+v on %d designs only", sheet, drawn[sheet])
		}
	}
}

// readable lists the project's designs that read without a mistake.
func readable(t *testing.T) []string {
	var files []string
	for _, root := range []string{"../../designs", "../../testdata"} {
		err := filepath.WalkDir(root, func(file string, entry fs.DirEntry, err error) error {
			if err != nil || filepath.Ext(file) != ".yaml" {
				return err
			}
			if _, err := readDesign(file); err == nil {
				files = append(files, file)
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if len(files) < 200 {
		t.Errorf("only %d designs", len(files))
	}
	return files
}

func readDesign(file string) (*design.Design, error) {
	src, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	return design.Read(file, src, library.Default())
}

// papersOn binds the dossier of a design on a sheet, whose PDF is refused with a
// link that leads nowhere; with -every-sheet all other files are rendered too.
func papersOn(t *testing.T, file string, sheet design.Sheet) error {
	d, err := readDesign(file)
	if err != nil {
		t.Fatal(err)
	}
	d.Sheet = sheet
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	if *everySheet {
		out := newOutputs(t.TempDir())
		if err := renderAll(out, r, ""); err != nil {
			return err
		}
		return out.finish()
	}
	all, err := drawAll(r)
	if err != nil {
		return err
	}
	return document.Dossier(r, "Dossier", sectionsOf(r, all, "")).Validate()
}
