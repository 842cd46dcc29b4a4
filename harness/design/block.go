package design

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/library"

	"gopkg.in/yaml.v3"
)

// Block is a distribution block.
type Block struct {
	Common
	Type *library.BlockType // nil when the design gives its figures only
	// TypeAuto tells that type and figures are left to package sizing.
	TypeAuto bool
	WayA     Quantity // limit of each way
	TotalA   Quantity
	FedBy    []Feed
	Ways     []*Way
}

// Way is one output of a block.
type Way struct {
	Number   string
	FuseType *library.FuseType
	Fuse     *library.FuseRating // nil = no fuse in this way
	// FuseAuto and TypeAuto tell that rating and type are left to package sizing.
	FuseAuto, TypeAuto bool
	Spare              bool
	Pos                problem.Pos
}

var blockSection = section[Block]{
	Section: Section{Name: "block", Shape: KindNamed,
		Doc: "A distribution block: one input and ways, with a fuse in each or none. A part on way 2 of the " +
			"block `rear` is fed by `rear 2`.",
		Example: "blocks:\n  rear:\n    way limit: 20 A\n    total limit: 60 A\n    at: under seat\n" +
			"    fed by: keyed\n    ways:\n      1: {fuse: 15 A}\n      2: 7.5 A\n      3: {fuse: none}\n" +
			"      4: spare\n"},
	keys: withCommon(append([]key[Block]{
		orAuto(libraryKey(Key{Name: "type", Library: "blocks", Example: "fuse block 6 way blade C",
			Default: "`auto`, unless the limits are given",
			Doc:     "block of the library; `auto` is chosen by sizing"},
			(*library.Library).Block, func(x *Block) **library.BlockType { return &x.Type }),
			func(x *Block) { x.TypeAuto = true }),
		quantityKey(Key{Name: "way limit", Unit: quantity.Current, Min: 0.1, Max: 2000,
			Doc: "maximum current of one way", Default: "the type's", Example: "20 A"},
			func(x *Block) *Quantity { return &x.WayA }),
		quantityKey(Key{Name: "total limit", Unit: quantity.Current, Min: 0.1, Max: 2000,
			Doc: "maximum current of all ways together", Default: "the type's", Example: "60 A"},
			func(x *Block) *Quantity { return &x.TotalA }),
		namedKey(Key{Name: "ways", Doc: "the ways by number", Required: true, Example: "{1: {fuse: 15 A}, 2: spare}"},
			&waySection, addWay),
	}, feedKeys(func(x *Block) *[]Feed { return &x.FedBy })...)...),
	finish: finishBlock,
}

var waySection = section[Way]{
	Section: Section{Name: "way", Shape: KindNamed,
		Doc: "One output of a block.", Short: "the rating of its fuse, `auto`, `none` for no fuse, or `spare`",
		Example: "ways: {1: {fuse: 15 A, type: blade C}, 2: 7.5 A, 3: {fuse: none}, 4: spare}\n"},
	keys: []key[Way]{wayFuseKey(),
		orAuto(fuseTypeKey(Key{Name: "type", Default: "what the block takes, else " + UsualFuseType,
			Doc: "kind of fuse", Example: UsualFuseType},
			func(w *Way) **library.FuseType { return &w.FuseType }), func(*Way) {})},
	finish: func(_ *reader, w *Way, f field) { w.FuseAuto = w.FuseAuto || !f.has["fuse"] },
	short: func(r *reader, w *Way, f field) bool {
		switch fold(follow(f.node).Value) {
		case "spare":
			w.Spare = true
		case "none":
		case autoWord:
			w.FuseAuto = true
		case "":
			return false
		default:
			if q, ok := r.quantity(f, &ratingLimits); ok {
				w.Fuse = r.asked(q)
			}
		}
		return true
	},
}

// wayFuseKey reads a rating or "none".
func wayFuseKey() key[Way] {
	k := orNone(orAuto(ratingKey("fuse", func(w *Way) **library.FuseRating { return &w.Fuse }),
		func(w *Way) { w.FuseAuto = true }))
	k.Doc = "rating of its fuse; `none` when the way has none; `auto` is chosen by sizing"
	return k
}

// addWay takes the number of a way.
func addWay(r *reader, b *Block, name string, n *yaml.Node) *Way {
	if strings.Contains(name, " ") || len(name) > 8 {
		r.report(r.pos(n), fmt.Sprintf("block %s: %s is not a way number", quoted(b.Name), quoted(name)),
			"a number or a short word without spaces")
		return nil
	}
	if len(b.Ways) == maxWays {
		r.report(r.pos(n), fmt.Sprintf("block %s has more than %d ways", quoted(b.Name), maxWays),
			"several blocks")
		return nil
	}
	w := &Way{Number: name, Pos: r.pos(n)}
	b.Ways = append(b.Ways, w)
	return w
}

// place is the number of a way; 0 of one that goes by a word.
func (w *Way) place() int {
	n, _ := strconv.Atoi(w.Number)
	return n
}

// Needs is how many ways a block's type must have: as many as are named, up to the highest
// number.
func (b *Block) Needs() int {
	most := len(b.Ways)
	for _, w := range b.Ways {
		most = max(most, w.place())
	}
	return most
}

// finishBlock takes what the design leaves out from the block's type and looks
// up the fuses of its ways.
func finishBlock(r *reader, b *Block, f field) {
	usual := r.lib.FuseType(UsualFuseType)
	b.TypeAuto = b.TypeAuto || !f.has["type"] && !f.has["way limit"] && !f.has["total limit"]
	if t := b.Type; t != nil {
		fromLibrary(&b.WayA, t.WayA)
		fromLibrary(&b.TotalA, t.TotalA)
		if t.FuseType != "" {
			usual = r.lib.FuseType(t.FuseType)
		}
		switch at := slices.IndexFunc(b.Ways, func(w *Way) bool { return w.place() > t.Ways }); {
		case t.Ways > 0 && at >= 0:
			r.report(b.Ways[at].Pos, fmt.Sprintf("%s: %s has no way %s", f.where, quoted(t.Name), b.Ways[at].Number),
				fmt.Sprintf("a way from 1 to %d", t.Ways))
		case t.Ways > 0 && len(b.Ways) > t.Ways:
			r.report(b.Ways[t.Ways].Pos, fmt.Sprintf("%s: %d ways are more than %s has", f.where, len(b.Ways),
				quoted(t.Name)), fmt.Sprintf("at most %d ways", t.Ways))
		}
	}
	for _, w := range b.Ways {
		if w.Fuse == nil && !w.FuseAuto {
			continue
		}
		if w.FuseType == nil {
			w.FuseType, w.TypeAuto = usual, b.TypeAuto
		}
		if w.FuseAuto {
			w.Fuse = largest(w.FuseType)
			continue
		}
		w.Fuse = r.rating(f, "way "+w.Number, w.FuseType, w.Fuse)
	}
}

// fromLibrary sets a figure that the design leaves to the library.
func fromLibrary(q *Quantity, amps float64) {
	if !q.Given() && amps > 0 {
		*q = Quantity{Value: amps, Text: quantity.Plain(amps, quantity.Current)}
	}
}

// WayLimitA is the most that each way of a block may carry; 0 when nothing says.
func (b *Block) WayLimitA() float64 {
	if b.WayA.Given() || b.Type == nil {
		return b.WayA.Value
	}
	return b.Type.WayA
}

// TotalLimitA is the most that all ways of a block may carry together; 0 when
// nothing says.
func (b *Block) TotalLimitA() float64 {
	if b.TotalA.Given() || b.Type == nil {
		return b.TotalA.Value
	}
	return b.Type.TotalA
}
