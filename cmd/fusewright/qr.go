package main

import "strings"

// quiet is the white margin of a QR code in modules (ISO/IEC 18004 asks for four).
const quiet = 4

// halfBlocks draws a QR code with two rows of modules in a line of text, light on dark as
// terminals mostly are: a full block is light.
func halfBlocks(size int, black func(x, y int) bool) string {
	light := func(x, y int) bool { return x < 0 || y < 0 || x >= size || y >= size || !black(x, y) }
	var b strings.Builder
	for y := -quiet; y < size+quiet; y += 2 {
		for x := -quiet; x < size+quiet; x++ {
			upper, lower := light(x, y), y+1 < size+quiet && light(x, y+1)
			switch {
			case upper && lower:
				b.WriteRune('█')
			case upper:
				b.WriteRune('▀')
			case lower:
				b.WriteRune('▄')
			default:
				b.WriteByte(' ')
			}
		}
		b.WriteByte('\n')
	}
	return b.String()
}
