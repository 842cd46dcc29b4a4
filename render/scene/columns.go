package scene

import "math"

// ColumnWidths shares a width among the columns of a table so that its rows take the
// fewest lines: each column gets at least its least width, the rest goes where it saves
// most. Cells are the widths of the texts by row and column, all in millimetres; a
// least sum beyond the width is given as it is.
func ColumnWidths(cells [][]float64, least []float64, widthMM float64) []float64 {
	s := sharing{cells: cells, wide: append([]float64(nil), least...)}
	left := widthMM
	for _, w := range least {
		left -= w
	}
	for left > 0 {
		column, stepMM := s.best(left)
		if column < 0 {
			break
		}
		s.wide[column] += stepMM
		left -= stepMM
	}
	for i := range s.wide {
		s.wide[i] += max(0, left) / float64(len(s.wide))
	}
	return s.wide
}

// sharing is the widths so far.
type sharing struct {
	cells [][]float64
	wide  []float64
}

// best is the column and the step that save most lines for each millimetre; none when
// no step saves any.
func (s *sharing) best(leftMM float64) (column int, stepMM float64) {
	rest := s.others()
	column = -1
	most := 0.0
	for i := range s.wide {
		for _, step := range [...]float64{0.5, 1, 2, 3, 4, 6, 8, 12, 18, 27, 40} {
			if step > leftMM {
				break
			}
			if saved := s.saved(rest, i, step) / step; saved > most {
				column, stepMM, most = i, step, saved
			}
		}
	}
	return column, stepMM
}

// twoLongest is the lines of a row's longest cell, and of the longest but that.
type twoLongest struct {
	at            int
	first, second float64
}

func (s *sharing) others() []twoLongest {
	rows := make([]twoLongest, len(s.cells))
	for r, row := range s.cells {
		two := twoLongest{first: 1, second: 1, at: -1}
		for i, cell := range row {
			switch lines := linesIn(cell, s.wide[i]); {
			case lines > two.first:
				two = twoLongest{i, lines, two.first}
			case lines > two.second:
				two.second = lines
			}
		}
		rows[r] = two
	}
	return rows
}

// aside weighs a line saved in a cell that does not decide its row's height.
const aside = 0.1

func (s *sharing) saved(rows []twoLongest, column int, stepMM float64) (sum float64) {
	for r, row := range s.cells {
		now, then := linesIn(row[column], s.wide[column]), linesIn(row[column], s.wide[column]+stepMM)
		sum += aside * (now - then)
		if rows[r].at == column {
			sum += rows[r].first - max(then, rows[r].second)
		}
	}
	return sum
}

// raggedMM is what a line of several leaves empty at its end, on average.
const raggedMM = 3.0

// linesIn estimates the lines of a text in a column.
func linesIn(textMM, wideMM float64) float64 {
	if textMM <= wideMM {
		return 1
	}
	return max(2, math.Ceil(textMM/max(wideMM-raggedMM, raggedMM)))
}
