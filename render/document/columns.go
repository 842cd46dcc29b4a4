package document

// columnGapMM is the space between text columns.
const columnGapMM = 6.0

// left, right and width are those of the text column being filled.
func (b *book) left() float64  { return marginMM + float64(b.col)*(b.width()+columnGapMM) }
func (b *book) right() float64 { return b.left() + b.width() }
func (b *book) width() float64 {
	return (b.wholeMM() - columnGapMM*float64(b.cols-1)) / float64(b.cols)
}

// leastColumnsMM is the least height that text columns begin in, columnsAboveMM the
// space above them, levelMM how far the columns of the last page may differ.
const leastColumnsMM, columnsAboveMM, levelMM = 30.0, 2.0, 5.0

// columns fills text columns side by side, those of the last page to one height, so
// that what follows stands right below all of them. Fill may be called several times.
func (b *book) columns(n int, fill func() error) error {
	b.inColumns(n)
	start := b.mark()
	if err := fill(); err != nil {
		return err
	}
	b.levelPage = len(b.sheets)
	try := func(level float64) (fits bool, err error) {
		b.back(start)
		b.level = level
		err = fill()
		// What cannot be parted may reach further down.
		return len(b.sheets) == b.levelPage && max(b.low, b.y) < level+levelMM, err
	}
	short, long := b.top, b.pageBottom()
	for long-short > levelMM {
		middle := (short + long) / 2
		fits, err := try(middle)
		if err != nil {
			return err
		}
		if fits {
			long = middle
		} else {
			short = middle
		}
	}
	_, err := try(long)
	b.levelPage = 0
	b.inColumns(1)
	return err
}

// inColumns fills text columns side by side from here on; one ends them.
func (b *book) inColumns(n int) {
	if b.cols > 1 {
		b.y = max(b.y, b.low)
	}
	if n > 1 && b.y+leastColumnsMM > b.bottom() {
		b.newPage()
	}
	if b.y > b.pageTop {
		b.y += columnsAboveMM
	}
	b.cols, b.col, b.top, b.low = n, 0, b.y, b.y
}

// next goes on at the top of the next column, or page.
func (b *book) next() {
	b.low = max(b.low, b.y)
	if b.col+1 < b.cols {
		b.col++
		b.y = b.top
		return
	}
	b.newPage()
}

// bottom is the lowest place for content in the column being filled, pageBottom that
// of a page.
func (b *book) bottom() float64 {
	if b.levelPage == len(b.sheets) {
		return b.level
	}
	return b.pageBottom()
}

func (b *book) pageBottom() float64 { return b.paper.High - marginMM - footMM }

// mark is a place in a book that back goes back to.
type mark struct {
	book  book
	items int
	title string
}

func (b *book) mark() mark {
	return mark{book: *b, items: len(b.sheet().Items), title: b.sheet().Title}
}

// back forgets what was written since the mark.
func (b *book) back(to mark) {
	level, page := b.level, b.levelPage
	*b = to.book
	b.level, b.levelPage = level, page
	s := b.sheet()
	s.Items, s.Title = s.Items[:to.items:to.items], to.title
}
