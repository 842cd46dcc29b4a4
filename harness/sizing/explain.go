package sizing

import (
	"fmt"
	"strings"

	"fusewright/harness/finding"
)

// Explain fills in, for every choice, what decided it, the runner-up and why it
// lost: the next smaller candidate is put in its place and judged. What remains
// wrong gets its ways out. It takes one judgement a choice, and leaves the
// design as it was.
func (p *Plan) Explain() error {
	s := p.s
	for i, x := range s.slots {
		if err := s.explain(i, x, p.Choices[i]); err != nil {
			return err
		}
		s.take(s.best)
	}
	if len(p.Remaining) > 0 {
		p.WaysOut = s.waysOut()
		s.take(s.best)
	}
	return nil
}

// explain compares a choice with the candidate below it, or, when that is the
// smallest, with the one above.
func (s *search) explain(i int, x *slot, c *Choice) error {
	if x.count() == 1 {
		c.Decided = "the only one that fits"
		return nil
	}
	other := x.at - 1
	if other < 0 {
		other = x.at + 1
	}
	c.RunnerUp = x.label(other)
	if x.kind == RunCover {
		c.Decided, c.Lost = "what the run needs, at the least loss of current", "it lowers the current more"
		return nil
	}
	smallest := other > x.at
	x.set(other)
	if x.kind == BlockType {
		s.waysTake(x)
	}
	a, err := s.answer()
	if err != nil {
		return err
	}
	switch worse := firstNew(s.best.verdict.findings, a.verdict.findings); {
	case worse != nil:
		c.Decided, c.Lost = worse.Rule, worse.What
	case x.kind == BlockType || x.kind == RelayForm:
		c.Decided, c.Lost = "the first that bears its load where it stands", "it comes later in the order: larger, or not sealed as the place asks"
		if !smallest {
			c.Decided, c.Lost = "margin of the contacts at the first look", "it would do as well"
		}
	default:
		c.Decided, c.Lost = "cost", difference(s.best.cost, a.cost)
	}
	switch {
	case smallest && (x.kind == WireSize || x.kind == Fuse):
		c.Decided = "the smallest there is"
	case smallest:
		c.Decided = "the first that bears its load where it stands"
	case x.kind == WireSize && c.Decided == "cost" && a.cost.Sizes > s.best.cost.Sizes:
		c.Decided = s.oneSize(x)
	}
	return nil
}

// oneSize says what sets a size that a wire shares with others: what goes wrong
// first when all of them take the next smaller one.
func (s *search) oneSize(x *slot) string {
	of := stock{x.feeds[0].Wire.Type, x.sizes[s.best.at[s.index(x)]]}
	if text, ok := s.shared[of]; ok {
		return text
	}
	s.take(s.best)
	for _, y := range s.slots {
		if y.kind == WireSize && y.at > 0 && (stock{y.feeds[0].Wire.Type, y.sizes[y.at]}) == of {
			y.set(y.at - 1)
		}
	}
	text := "one size for many wires"
	if a, err := s.answer(); err == nil {
		if f := firstNew(s.best.verdict.findings, a.verdict.findings); f != nil {
			text += ", set by " + f.Rule + ": " + f.What
		}
	}
	if s.shared == nil {
		s.shared = map[stock]string{}
	}
	s.shared[of] = text
	return text
}

// index is where a slot stands.
func (s *search) index(x *slot) int {
	for i, y := range s.slots {
		if x == y {
			return i
		}
	}
	return -1
}

// firstNew is the gravest finding that was not there before.
func firstNew(before, after []*finding.Finding) *finding.Finding {
	known := map[string]int{}
	for _, f := range before {
		known[f.Rule+"\x00"+f.Ref+"\x00"+f.Part]++
	}
	for _, f := range after {
		id := f.Rule + "\x00" + f.Ref + "\x00" + f.Part
		if known[id]--; known[id] < 0 {
			return f
		}
	}
	return nil
}

// difference says what a second choice costs more, piece by piece.
func difference(best, other Cost) string {
	var parts []string
	grams := func(g float64, what string) {
		switch {
		case g > 0.05:
			parts = append(parts, fmt.Sprintf("%.1f g more %s", g, what))
		case g < -0.05:
			parts = append(parts, fmt.Sprintf("%.1f g less %s", -g, what))
		}
	}
	count := func(n int, one, many string, each float64) {
		words, more := many, "more"
		if n < 0 {
			n, more = -n, "fewer"
		}
		if n == 1 {
			words = one
		}
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s %s at %g g each", n, more, words, each))
		}
	}
	grams(other.CopperG-best.CopperG, "copper")
	count(other.Sizes-best.Sizes, "size to buy", "sizes to buy", distinctSizeG)
	count(other.Terminals-best.Terminals, "kind of crimp part", "kinds of crimp parts", distinctTerminalG)
	grams(fuseGPerA*(other.FusesA-best.FusesA), "for the fuse rating")
	total := other.TotalG() - best.TotalG()
	if len(parts) == 0 {
		return "costs the same and comes later in the order"
	}
	text := strings.Join(parts, ", ")
	if total < 0 {
		return fmt.Sprintf("%s: %.1f g less in all, but not found by the search", text, -total)
	}
	return fmt.Sprintf("%s: %.1f g more in all", text, total)
}
