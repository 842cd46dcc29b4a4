package document

import (
	"fusewright/harness"
	"fusewright/harness/design/wording"
	"fusewright/harness/review/sources"
	"fusewright/render/scene"
)

// mostUses is how many uses of a source are named before the rest is counted.
const mostUses = 12

// Sources lists every source of the parts data that the design uses, surest
// first, and the values taken for want of data.
func Sources(r *harness.Review) []*scene.Sheet {
	b := newBook("Sources", r)
	b.para("Where the numbers of this design come from, as far as it does not give them itself, with how sure each is. Parts are "+
		"generic, by standard: the data of the part that is bought come first. A standard quoted here is not thereby met.", quiet)
	t := b.newTable([]column{{head: "source", wide: 82}, {head: "how sure", wide: 30}, {head: "used for", wide: 68}})
	for _, u := range sources.Of(r.Circuit) {
		t.row(u.Source.Text, u.Source.Certainty, wording.Some(u.For, mostUses))
	}
	if list := sources.Assumptions(r.Circuit); len(list) > 0 {
		b.head("Taken from common practice for want of data")
		t := b.newTable([]column{{head: "what", wide: 90}, {head: "where", wide: 90}})
		for _, a := range list {
			t.row(a.What, wording.Some(a.At, mostUses))
		}
	}
	return b.finish()
}
