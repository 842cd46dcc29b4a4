package harness

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// rooms are the rooms of this folder in the order in which the data goes through
// them: none may import one that stands behind it.
var rooms = []string{"design", "formula", "network", "study", "workshop", "review", "sizing", "remedy"}

func TestRoomsLookOneWay(t *testing.T) {
	for place, room := range rooms {
		err := filepath.WalkDir(room, func(path string, _ fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
			if err != nil {
				return err
			}
			for _, i := range file.Imports {
				name, _ := strconv.Unquote(i.Path.Value)
				of, ours := strings.CutPrefix(name, "fusewright/harness/")
				of, _, _ = strings.Cut(of, "/")
				if at := slices.Index(rooms, of); ours && at > place {
					t.Errorf("%s imports %s", path, name)
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
}
