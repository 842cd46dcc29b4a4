package document

import (
	"fmt"
	"strings"

	"fusewright/harness"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// Findings lays the findings on pages, most severe first, accepted ones last
// with their reasons.
func Findings(r *harness.Review) []*scene.Sheet {
	return upright("Findings", r, func(b *book) {
		if len(r.Findings) == 0 {
			b.para("No findings. That means that no rule of this program objects; it does not mean that the "+
				"harness is safe: the rules see only what the design says.", plain)
		}
		said := map[string]bool{}
		b.inColumns(2)
		for _, block := range report.New(r).Blocks() {
			writeFinding(b, block, said)
		}
		b.inColumns(1)
	})
}

// writeFinding writes one block. What an earlier one of its rule has said of why, change
// and source is not said again.
func writeFinding(b *book, f report.Block, said map[string]bool) {
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
