package design

import (
	"fmt"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/library"
)

// Fuse is an overcurrent device on its own.
type Fuse struct {
	Common
	Type   *library.FuseType
	Rating *library.FuseRating
	// TypeAuto and RatingAuto tell that they are left to package sizing; until
	// then they are the usual type and its largest rating.
	TypeAuto, RatingAuto bool
	FedBy                []Feed
	Returns              []Feed // where it stands in a return
	// Post is the battery on whose positive post it is bolted, with no wire between; nil = none. Of one
	// that is fed by something it is the output that is bolted there.
	Post   Part
	onPost Text
}

// AtPost tells of a fuse that is bolted to a battery's post with its input.
func (x *Fuse) AtPost() bool { return x.Post != nil && len(x.FedBy) == 0 }

// UsualFuseType is the fuse of a block's ways when nothing says otherwise:
// the common blade fuse of ISO 8820-3.
const UsualFuseType = "blade C"

var fuseSection = section[Fuse]{
	Section: Section{Name: "fuse", Shape: KindNamed,
		Doc:     "A fuse, breaker or resettable device in a holder of its own.",
		Example: "fuses:\n  main: {type: blade C, rating: 30 A, at: battery tray, fed by: battery}\n"},
	keys: withCommon(append([]key[Fuse]{
		orAuto(fuseTypeKey(Key{Name: "type", Doc: "kind of fuse", Example: UsualFuseType,
			Default: "of a given rating, " + UsualFuseType + "; else `auto`"},
			func(x *Fuse) **library.FuseType { return &x.Type }),
			func(x *Fuse) { x.TypeAuto = true }),
		orAuto(ratingKey("rating", func(x *Fuse) **library.FuseRating { return &x.Rating }),
			func(x *Fuse) { x.RatingAuto = true }),
		postKey(),
	}, eitherKeys(func(x *Fuse) *[]Feed { return &x.FedBy }, func(x *Fuse) *[]Feed { return &x.Returns })...)...),
	finish: func(r *reader, x *Fuse, f field) {
		x.RatingAuto = x.RatingAuto || !f.has["rating"]
		x.TypeAuto = x.TypeAuto || !f.has["type"] && x.RatingAuto
		if x.onPost.Given() && !f.has["type"] {
			x.Type, x.TypeAuto = r.postFuse(), false
		}
		if x.Type == nil && (x.TypeAuto || !f.has["type"]) {
			x.Type = usualType(r.lib, x.Rating, x.TypeAuto)
		}
		r.oneSide(f)
		r.onlyOnPost(x, f)
		r.chosenInReturn(f, x.RatingAuto || x.TypeAuto, "rating")
		if x.RatingAuto {
			x.Rating = largest(x.Type)
			return
		}
		x.Rating = r.rating(f, "rating", x.Type, x.Rating)
	},
}

// LeaveOpen takes back what was chosen for a fuse whose type the design leaves open.
func (x *Fuse) LeaveOpen(lib *library.Library) {
	switch {
	case !x.TypeAuto:
	case x.RatingAuto:
		x.Type = usualType(lib, nil, true)
		x.Rating = largest(x.Type)
	default:
		x.Type = usualType(lib, x.Rating, true)
		x.Rating = x.Type.Rating(x.Rating.RatingA)
	}
}

// usualType is the fuse type where none is given: the usual one, or, when the
// type is free and the usual one is not made in the rating, the first that is.
func usualType(lib *library.Library, asked *library.FuseRating, free bool) *library.FuseType {
	usual := lib.FuseType(UsualFuseType)
	if !free || asked == nil || usual != nil && usual.Rating(asked.RatingA) != nil {
		return usual
	}
	for _, t := range lib.FuseTypes {
		if t.Rating(asked.RatingA) != nil {
			return t
		}
	}
	return usual
}

// largest is the rating that stands in until sizing chooses one: it hinders no
// load.
func largest(t *library.FuseType) *library.FuseRating {
	if t == nil || len(t.Ratings) == 0 {
		return nil
	}
	return t.Ratings[len(t.Ratings)-1]
}

func fuseTypeKey[T any](k Key, to func(*T) **library.FuseType) key[T] {
	k.Library = "fuse types"
	return libraryKey(k, (*library.Library).FuseType, to)
}

var ratingLimits = Key{Kind: KindQuantity, Unit: quantity.Current, Min: 0.01, Max: 2000}

// ratingKey reads the rating of a fuse. Its type may stand after it, so the
// rating is a placeholder until the record is complete: see rating.
func ratingKey[T any](name string, to func(*T) **library.FuseRating) key[T] {
	k := Key{Name: name, Kind: KindQuantity, Unit: quantity.Current, Default: "`auto`",
		Min: ratingLimits.Min, Max: ratingLimits.Max, Example: "15 A",
		Doc: "rating, one that the type is made in; `auto` is chosen by sizing"}
	return key[T]{Key: k, read: func(r *reader, t *T, f field) {
		if q, ok := r.quantity(f, &ratingLimits); ok {
			*to(t) = r.asked(q)
		}
	}}
}

// asked is a placeholder for a rating that the file asks for.
func (r *reader) asked(q Quantity) *library.FuseRating {
	placeholder := &library.FuseRating{RatingA: q.Value}
	r.ratings[placeholder] = q.Pos
	return placeholder
}

// rating replaces the placeholder by the library's row.
func (r *reader) rating(f field, key string, t *library.FuseType, asked *library.FuseRating) *library.FuseRating {
	if asked == nil || t == nil {
		return nil // reported already, or no fuse
	}
	if found := t.Rating(asked.RatingA); found != nil {
		return found
	}
	ratings := t.RatingsA()
	texts, near := make([]string, len(ratings)), 0
	for i, a := range ratings {
		texts[i] = quantity.Plain(a, quantity.Current)
		if distance(a, asked.RatingA) < distance(ratings[near], asked.RatingA) {
			near = i
		}
	}
	p := problem.Problem{Pos: r.ratings[asked], Expected: oneOf(texts),
		What: fmt.Sprintf("%s, %s: %s is not made in %s", f.where, key, quoted(t.Name),
			quantity.Plain(asked.RatingA, quantity.Current))}
	if len(texts) > 0 {
		p.Nearest = texts[near]
	}
	r.add(p)
	return nil
}

func distance(a, b float64) float64 { return max(a-b, b-a) }
