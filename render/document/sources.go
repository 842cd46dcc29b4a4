package document

import (
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/wording"
	"fusewright/harness/review/sources"
	"fusewright/render/scene"
)

// mostUses is how many uses of a source are named before the rest is counted, tightUses where that
// saves a page.
const mostUses, tightUses = 2, 1

// Sources lists every source of the parts data that the design uses, surest
// first, and the values taken for want of data.
func Sources(r *harness.Review) []*scene.Sheet {
	return upright("Sources", r, func(b *book) {
		b.para("Where the numbers come from that the design does not give itself, and how certain each is. Parts are "+
			"generic, by standard: the data of the part you buy come first. Quoting a standard here does not mean that it is met.", smallQuiet)
		b.inColumns(2)
		certainty := ""
		for _, u := range sources.Of(r.Circuit) {
			if c := u.Source.Certainty; c != certainty {
				b.need(4 * scene.LineHeightMM(textSizeMM))
				b.paraIn(strings.ToUpper(c[:1])+c[1:], bold, b.left(), b.width())
				certainty = c
			}
			b.sourceLine(u.Source.Text, u.For)
		}
		if list := sources.Assumptions(r.Circuit); len(list) > 0 {
			b.head("Assumed by common practice for want of data")
			for _, a := range list {
				b.sourceLine(a.What, a.At)
			}
		}
		b.inColumns(1)
	})
}

// sourceLine is a source with what it is used for.
func (b *book) sourceLine(source string, uses []string) {
	named := mostUses
	if b.tight {
		named = tightUses
	}
	lines := scene.Wrap(source+": "+wording.Some(sparing(uses), named), smallSizeMM, b.width()-3, scene.Regular)
	b.need(scene.LineHeightMM(smallSizeMM) * float64(min(len(lines), keptLines)))
	for i, line := range lines {
		b.paraIn(line, small, b.left()+3*float64(min(i, 1)), b.width())
	}
	if b.tight {
		b.y += 0.1
	} else {
		b.y += 0.8
	}
}

// sparing leaves out of each name the words with which it begins as the one before it.
func sparing(names []string) []string {
	out := slices.Clone(names)
	for i := 1; i < len(names); i++ {
		before, words := strings.Fields(names[i-1]), strings.Fields(names[i])
		n := 0
		for n < len(words)-1 && n < len(before) && strings.TrimRight(words[n], ",") == strings.TrimRight(before[n], ",") {
			n++
		}
		out[i] = strings.Join(words[n:], " ")
	}
	return out
}
