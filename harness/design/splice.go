package design

// Splice joins feeds.
type Splice struct {
	Common
	FedBy []Feed
}

var spliceSection = section[Splice]{
	Section: Section{Name: "splice", Shape: KindNamed,
		Doc:     "A joint where one feed goes on to several parts.",
		Example: "splices:\n  lamp pair: {at: headstock, fed by: lamps}\n"},
	keys: withCommon(feedKeys(func(x *Splice) *[]Feed { return &x.FedBy })...),
}
