package scene

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Limits of what is drawn: beyond them a sheet is refused, because a viewer
// would fail on it (a PDF page is at most 14 400 pt long) or hang (a dash far
// shorter than can be seen).
const (
	maxPageMM   = 5080 // of a document
	maxPlaceMM  = 1e5
	minDashSum  = 0.01
	maxLineMM   = 100
	maxTextMM   = 500
	maxProblems = 20
)

// Backend draws what Replay hands it, in drawing order. Texts come cleaned,
// groups balanced, numbers finite.
type Backend interface {
	Path(p *Path)
	// Text draws one line; widthMM is TextWidthMM of it.
	Text(t Text, widthMM float64)
	Begin(g Group)
	End()
}

// Replay checks the sheet and hands its items to a back-end.
func (s *Sheet) Replay(to Backend) error {
	if err := s.Validate(); err != nil {
		return err
	}
	for _, item := range s.Items {
		switch {
		case item.Path != nil:
			to.Path(withVisibleDots(item.Path))
		case item.Text != nil:
			t := *item.Text
			t.String = Clean(t.String)
			if t.String != "" {
				to.Text(t, TextWidthMM(t.String, t.SizeMM, t.Face))
			}
		case item.Begin != nil:
			g := *item.Begin
			g.Title, g.Desc, g.Of = Clean(g.Title), Clean(g.Desc), Clean(g.Of)
			to.Begin(g)
		case item.End:
			to.End()
		}
	}
	return nil
}

// withVisibleDots gives the dashes of no length, which round ends make dots, a
// hundredth of a millimetre: viewers that draw with Cairo leave them out.
func withVisibleDots(p *Path) *Path {
	const dot = 0.01
	if p.Stroke == nil || !p.Stroke.Round {
		return p
	}
	for i, length := range p.Stroke.Dash {
		if i%2 == 0 && length < dot {
			stroke, path := *p.Stroke, *p
			stroke.Dash = slices.Clone(stroke.Dash)
			for j := 0; j < len(stroke.Dash); j += 2 {
				stroke.Dash[j] = max(stroke.Dash[j], dot)
			}
			path.Stroke = &stroke
			return &path
		}
	}
	return p
}

// checker gathers what is wrong with a sheet.
type checker struct {
	problems []error
	ids      map[string]bool
	depth    int
}

func (c *checker) refuse(format string, args ...any) {
	if len(c.problems) < maxProblems {
		c.problems = append(c.problems, fmt.Errorf(format, args...))
	}
}

// Validate tells what no back-end could draw: sheets or places without a finite
// size, paths whose points do not fit their steps, groups without an end, IDs
// used twice. Missing glyphs and control characters are no error; see Clean.
func (s *Sheet) Validate() error {
	if s == nil {
		return errors.New("scene: no sheet")
	}
	c := &checker{ids: map[string]bool{}}
	if !within(s.WidthMM, 1, maxPlaceMM) || !within(s.HeightMM, 1, maxPlaceMM) {
		c.refuse("size %g × %g mm (expected 1 to %g mm each way)", s.WidthMM, s.HeightMM, maxPlaceMM)
	}
	if s.ID != "" {
		c.id(s.ID)
	}
	for number, item := range s.Items {
		c.item(number, item)
	}
	if c.depth > 0 {
		c.refuse("%d groups without an end", c.depth)
	}
	if len(c.problems) == 0 {
		return nil
	}
	return fmt.Errorf("sheet %q: %w", Clean(s.Title), errors.Join(c.problems...))
}

// Validate checks every sheet and that each link leads somewhere.
func (d *Document) Validate() error {
	targets := map[string]bool{}
	var problems []error
	for _, sheet := range d.Sheets {
		if err := sheet.Validate(); err != nil {
			problems = append(problems, err)
			continue
		}
		if sheet.WidthMM > maxPageMM || sheet.HeightMM > maxPageMM {
			problems = append(problems, fmt.Errorf("sheet %q: size %g × %g mm (expected at most %d mm each way on a page)", sheet.Title,
				sheet.WidthMM, sheet.HeightMM, maxPageMM))
		}
		targets[sheet.ID] = true
		for _, item := range sheet.Items {
			if item.Begin != nil {
				targets[item.Begin.ID] = true
			}
		}
	}
	for _, sheet := range d.Sheets {
		problems = append(problems, sheet.deadLinks(targets)...)
	}
	if len(d.Sheets) == 0 {
		problems = append(problems, errors.New("document without sheets"))
	}
	return errors.Join(problems...)
}

func (s *Sheet) deadLinks(targets map[string]bool) []error {
	if s == nil {
		return nil
	}
	var dead []error
	for _, item := range s.Items {
		if g := item.Begin; g != nil && g.Link != "" && !targets[g.Link] {
			dead = append(dead, fmt.Errorf("sheet %q: group %q links to %q, which no sheet has",
				Clean(s.Title), g.ID, g.Link))
		}
	}
	return dead
}

func (c *checker) item(number int, item Item) {
	set := 0
	for _, given := range []bool{item.Path != nil, item.Text != nil, item.Begin != nil, item.End} {
		if given {
			set++
		}
	}
	if set != 1 {
		c.refuse("item %d: %d fields set (expected exactly one)", number, set)
		return
	}
	switch {
	case item.Path != nil:
		c.path(number, item.Path)
	case item.Text != nil:
		c.text(number, item.Text)
	case item.Begin != nil:
		c.depth++
		if item.Begin.ID != "" {
			c.id(item.Begin.ID)
		}
	default:
		c.depth--
		if c.depth < 0 {
			c.refuse("item %d: end of a group that was not opened", number)
			c.depth = 0
		}
	}
}

func (c *checker) id(id string) {
	if !validID(id) {
		c.refuse("group ID %q is no plain XML name", id)
	}
	if c.ids[id] {
		c.refuse("group ID %q is used twice", id)
	}
	c.ids[id] = true
}

func (c *checker) text(number int, t *Text) {
	if !within(t.SizeMM, math.SmallestNonzeroFloat64, maxTextMM) {
		c.refuse("item %d: text size %g mm", number, t.SizeMM)
	}
	if !placed(t.At) || math.IsNaN(t.Turn) || math.IsInf(t.Turn, 0) {
		c.refuse("item %d: text at %g, %g turned by %g", number, t.At.X, t.At.Y, t.Turn)
	}
}

func (c *checker) path(number int, p *Path) {
	need := 0
	for i, verb := range p.Verbs {
		if verb < 0 || int(verb) >= len(pointsOf) {
			c.refuse("item %d: path step %d unknown", number, verb)
			continue
		}
		need += pointsOf[verb]
		// After Close only a new line may start: back-ends disagree otherwise.
		if (i == 0 || p.Verbs[i-1] == Close) && verb != Move {
			c.refuse("item %d: path step %d does not start with a move", number, i)
		}
	}
	if need != len(p.Points) {
		c.refuse("item %d: path with %d points (its steps need %d)", number, len(p.Points), need)
	}
	for _, point := range p.Points {
		if !placed(point) {
			c.refuse("item %d: path through %g, %g", number, point.X, point.Y)
			break
		}
	}
	if p.Stroke != nil {
		c.stroke(number, p.Stroke)
	}
}

func (c *checker) stroke(number int, s *Stroke) {
	if !within(s.WidthMM, math.SmallestNonzeroFloat64, maxLineMM) {
		c.refuse("item %d: line width %g mm", number, s.WidthMM)
	}
	sum := 0.0
	for _, length := range s.Dash {
		if !within(length, 0, maxPlaceMM) {
			c.refuse("item %d: dash length %g mm", number, length)
		}
		sum += length
	}
	if len(s.Dash)%2 != 0 || len(s.Dash) > 0 && !(sum >= minDashSum) {
		c.refuse("item %d: dash pattern %v (expected pairs of on and off)", number, s.Dash)
	}
}

func placed(p Point) bool {
	return within(p.X, -maxPlaceMM, maxPlaceMM) && within(p.Y, -maxPlaceMM, maxPlaceMM)
}

// within is false for NaN.
func within(v, low, high float64) bool { return v >= low && v <= high }
