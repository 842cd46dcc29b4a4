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
	b := newBook("Findings", r)
	body := scene.TextStyle{SizeMM: textSizeMM, Colour: ink}
	if len(r.Findings) == 0 {
		b.para("No findings. That means that no rule of this program objects; it does not mean that the "+
			"harness is safe: the rules see only what the design says.", body)
	}
	for i, block := range report.New(r).Blocks() {
		writeFinding(b, i+1, block, body)
	}
	return b.finish()
}

func writeFinding(b *book, n int, f report.Block, body scene.TextStyle) {
	b.need(22)
	severity := f.Severity
	if f.Accepted != "" {
		severity = "accepted " + severity
	}
	title := fmt.Sprintf("%d  %s · %s · %s", n, severity, f.Rule, f.About())
	b.paraIn(title, scene.TextStyle{SizeMM: textSizeMM, Face: scene.Bold, Colour: ink}, b.left(), b.width())
	x, w := b.left()+6, b.width()-6
	b.paraIn(f.What, body, x, w)
	if f.Others != "" {
		b.paraIn(f.Others, body, x, w)
	}
	quiet := scene.TextStyle{SizeMM: smallSizeMM, Colour: grey}
	b.paraIn(numbers(f), quiet, x, w)
	b.paraIn("Why: "+f.Why, quiet, x, w)
	b.paraIn("Change: "+f.Change, body, x, w)
	if f.Accepted != "" {
		b.paraIn("Accepted because: "+f.Accepted, scene.TextStyle{SizeMM: textSizeMM, Face: scene.Italic, Colour: ink}, x, w)
	}
	b.y += 3
}

func numbers(f report.Block) string {
	parts := append([]string{fmt.Sprintf("line %d", f.Line)}, f.Figures()...)
	if f.Situation != "" {
		parts = append(parts, "worst in "+f.Situation)
	}
	if f.Source != "" {
		parts = append(parts, "source: "+f.Source)
	}
	return strings.Join(parts, " · ")
}
