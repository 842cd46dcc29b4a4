package document

import (
	"fmt"
	"strings"

	"fusewright/harness"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// Findings lays the findings on pages, most severe first, accepted ones last
// with their reasons. What follows from another is named there too.
func Findings(r *harness.Review) []*scene.Sheet {
	return upright("Findings", r, func(b *book) {
		if len(r.Findings) == 0 {
			b.para("No findings. That means that no rule of this program objects; it does not mean that the "+
				"harness is safe: the rules see only what the design says.", plain)
		}
		said, blocks := map[string]bool{}, report.New(r).Blocks()
		links := followers(blocks, r.Plan.Follows())
		b.inColumns(2)
		for _, block := range blocks {
			writeFinding(b, block, links[block.Number], said)
		}
		b.inColumns(1)
	})
}

// followers is what is said of causes with each number: what follows from it, or from
// what it follows.
func followers(blocks []report.Block, follows map[int]int) map[int]string {
	links, lists := map[int]string{}, map[int][]string{}
	for _, f := range blocks {
		if n := follows[f.Number]; n != 0 {
			links[f.Number] = fmt.Sprintf("Follows from %d.", n)
			lists[n] = append(lists[n], fmt.Sprintf("%d %s, %s", f.Number, f.About(), f.Rule))
		}
	}
	for n, list := range lists {
		links[n] = "From this follow: " + strings.Join(list, "; ") + "."
		if len(list) == 1 {
			links[n] = "From this follows: " + list[0] + "."
		}
	}
	return links
}

// writeFinding writes one block. What an earlier one of its rule has said of why, change
// and source is not said again.
func writeFinding(b *book, f report.Block, link string, said map[string]bool) {
	fresh := func(text string) bool {
		key := f.Rule + text
		defer func() { said[key] = true }()
		return text != "" && !said[key]
	}
	b.need(22)
	severity := f.Severity
	if f.Accepted != "" {
		severity = "accepted " + severity
	}
	title := fmt.Sprintf("%d  %s · %s · %s", f.Number, severity, f.Rule, f.About())
	b.paraIn(title, bold, b.left(), b.width())
	say := func(text string, style scene.TextStyle) { b.paraIn(text, style, b.left()+6, b.width()-6) }
	say(f.What, plain)
	if f.Others != "" {
		say(f.Others, plain)
	}
	if link != "" {
		say(link, plain)
	}
	say(numbers(f, fresh(f.Source)), smallQuiet)
	if fresh(f.Why) {
		say("Why: "+f.Why, smallQuiet)
	}
	if fresh(f.Change) {
		say("Change: "+f.Change, plain)
	}
	if f.Accepted != "" {
		say("Accepted because: "+f.Accepted, italic)
	}
	b.y += 2
}

func numbers(f report.Block, source bool) string {
	parts := append([]string{fmt.Sprintf("line %d", f.Line)}, f.Figures()...)
	if f.Situation != "" {
		parts = append(parts, "worst in "+f.Situation)
	}
	if source {
		parts = append(parts, "source: "+f.Source)
	}
	return strings.Join(parts, " · ")
}
