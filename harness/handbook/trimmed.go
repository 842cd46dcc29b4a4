package handbook

import "strconv"

// trimmed prints a plain number without needless digits.
func trimmed(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
