package document

import (
	"encoding/csv"
	"io"
	"strings"

	"fusewright/render/scene"
)

// SafeCell makes a cell harmless in a spreadsheet: text that would run as a
// formula (it begins with = + - @, a tab or a return) gets an apostrophe in
// front, which spreadsheets show as text. Control characters are dropped.
// Plain numbers such as -1.5 stay as they are.
func SafeCell(s string) string {
	s = scene.Clean(s)
	trimmed := strings.TrimLeft(s, " ")
	if trimmed == "" || isNumber(trimmed) {
		return s
	}
	if strings.ContainsRune("=+-@\t\r|%", rune(trimmed[0])) {
		return "'" + s
	}
	return s
}

// isNumber tells a plain decimal number.
func isNumber(s string) bool {
	digits, dots := 0, 0
	for i, r := range s {
		switch {
		case r >= '0' && r <= '9':
			digits++
		case r == '.':
			dots++
		case (r == '-' || r == '+') && i == 0:
		default:
			return false
		}
	}
	return digits > 0 && dots <= 1
}

// writeCSV writes a table with a head row; every cell is made safe.
func writeCSV(w io.Writer, head []string, rows [][]string) error {
	out := csv.NewWriter(w)
	for _, row := range append([][]string{head}, rows...) {
		safe := make([]string, len(row))
		for i, cell := range row {
			safe[i] = SafeCell(cell)
		}
		if err := out.Write(safe); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}
