package document

import (
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/render/scene"
)

// wrap folds a text as scene.Wrap does, and then moves a number to the unit that
// has gone to the next line, where that line has the room.
func wrap(text string, sizeMM, widthMM float64, face scene.Face) []string {
	lines := scene.Wrap(text, sizeMM, widthMM, face)
	for i := 1; i < len(lines); i++ {
		at := strings.LastIndexByte(lines[i-1], ' ')
		unit, _, _ := strings.Cut(lines[i], " ")
		if at < 0 || !quantity.Belong(lines[i-1][at+1:], unit) {
			continue
		}
		if moved := lines[i-1][at+1:] + " " + lines[i]; scene.TextWidthMM(moved, sizeMM, face) <= widthMM {
			lines[i-1], lines[i] = lines[i-1][:at], moved
		}
	}
	return lines
}
