package design

import (
	"fmt"
	"slices"
)

// inSeriesChoice is what to write of loads in series.
const inSeriesChoice = "of loads in series, `in series with` in place of `fed by` at the one further from the source, and `returns to` at the last alone"

// checkOnward accepts the return terminal of a load, from which its own return goes on: of
// loads that hang one on the other.
func (r *reader) checkOnward(c *connection, ref Ref, l *Load) (Ref, bool) {
	feeds, back := r.byFeeds[&l.FedBy], r.byFeeds[&l.Returns]
	switch {
	case ref.Terminal != "":
		r.report(ref.Pos, fmt.Sprintf("%s: of a load the return terminal is meant, but %s names one", c.of, quoted(ref.Text)), l.Name)
	case feeds == nil || len(feeds.refs) == 0:
		r.report(ref.Pos, fmt.Sprintf("%s returns to %s, a load that nothing feeds beside it", c.of, quoted(ref.Text)), inSeriesChoice)
	case (back == nil || len(back.refs) == 0) && !r.hasNext(l):
		r.report(ref.Pos, fmt.Sprintf("%s returns to %s, a load that does not say where it returns itself", c.of, quoted(ref.Text)),
			"`returns to` at "+quoted(l.Name))
	case !r.hangsOnPlug(c, ref):
		ref.Terminal = "-"
		return ref, true
	}
	return ref, false
}

// hasNext tells whether some load says that it is in series with one.
func (r *reader) hasNext(l *Load) bool {
	return slices.ContainsFunc(r.connections, func(c *connection) bool {
		return c.after && len(c.refs) > 0 && fold(c.refs[0].Value) == fold(l.Name)
	})
}

// hangsOnPlug refuses what hangs on a load that comes off at a plug, a cavity of which takes one wire.
func (r *reader) hangsOnPlug(c *connection, ref Ref) bool {
	l, ok := ref.Part.(*Load)
	if !ok || l.Plug == nil && !l.PlugAuto {
		return false
	}
	r.report(ref.Pos, fmt.Sprintf("%s hangs on %s, which comes off at a plug: a cavity takes one wire", c.of, quoted(l.Name)),
		"what feeds it, or a splice or ground block before the plug")
	return true
}

// checkHanging refuses loads that hang on each other in series, and what hangs on a motor that
// gets either polarity.
func (r *reader) checkHanging() {
	for _, c := range r.connections {
		for _, f := range *c.feeds {
			on, ok := f.From.Part.(*Load)
			switch {
			case !ok:
			case f.From.Terminal == "-" && !c.back: // in series
				if slices.ContainsFunc(c.owner.(*Load).Returns, func(f Feed) bool { return rests(f.From.Part) }) || slices.ContainsFunc(on.FedBy, func(f Feed) bool { return rests(f.From.Part) }) {
					r.report(f.From.Pos, fmt.Sprintf("%s is in series with %s, between two relays that rest: either polarity turns a single motor", c.of, quoted(on.Name)), "one motor between them")
				}
			case on.Reverses():
				r.report(f.From.Pos, fmt.Sprintf("%s hangs on %s, which gets either polarity between two relays that rest", c.of, quoted(on.Name)), "what feeds it")
			case c.back && slices.ContainsFunc(on.FedBy, func(f Feed) bool { return f.From.Part == c.owner }):
				r.report(f.From.Pos, fmt.Sprintf("%s returns to %s and feeds it: the current of one would have to flow on through the other", c.of, quoted(on.Name)), inSeriesChoice)
			}
		}
	}
}
