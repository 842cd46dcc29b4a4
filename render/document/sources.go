package document

import (
	"fusewright/harness"
	"fusewright/harness/design/wording"
	"fusewright/harness/review/sources"
	"fusewright/render/scene"
)

// mostUses is how many uses of a source are named before the rest is counted.
const mostUses = 4

// Sources lists every source of the parts data that the design uses, surest
// first, and the values taken for want of data.
func Sources(r *harness.Review) []*scene.Sheet {
	return upright("Sources", r, func(b *book) {
		b.para("Where the numbers come from that the design does not give itself, and how certain each is. Parts are "+
			"generic, by standard: the data of the part you buy come first. Quoting a standard here does not mean that it is met.", smallQuiet)
		b.inColumns(2)
		for _, u := range sources.Of(r.Circuit) {
			b.sourceLine(u.Source.Text, u.Source.Certainty+"; "+wording.Some(u.For, mostUses))
		}
		if list := sources.Assumptions(r.Circuit); len(list) > 0 {
			b.head("Assumed by common practice for want of data")
			for _, a := range list {
				b.sourceLine(a.What, wording.Some(a.At, mostUses))
			}
		}
		b.inColumns(1)
	})
}

// sourceLine is a source with what it is used for below it.
func (b *book) sourceLine(source, uses string) {
	b.paraIn(source, small, b.left(), b.width())
	b.paraIn(uses, smallQuiet, b.left()+4, b.width()-4)
	b.y += 0.8
}
