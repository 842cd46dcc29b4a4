package document_test

import (
	"testing"

	"fusewright/render/document"
)

// The budget of a demo fits on one page: the picture gives way before a few lines
// spill over to a second.
func TestBudgetOnOnePage(t *testing.T) {
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		sheets, err := document.Budget(demo(t, name+".yaml"))
		if err != nil || len(sheets) != 1 {
			t.Errorf("%s: %d pages, %v", name, len(sheets), err)
		}
	}
}
