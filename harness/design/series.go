package design

import "fmt"

const inSeriesWith = "in series with"

// seriesKey takes the feed of a load from the load before it.
func seriesKey() key[Load] {
	return key[Load]{Key: Key{Name: inSeriesWith, Kind: KindLoad, Example: "left lamp", Default: "alone between feed and return",
		Doc: "in place of `fed by`: the load whose current flows on through this one; `wire` is that between the two. The load named has no `returns to`, which the last of the string has"},
		read: func(r *reader, x *Load, f field) {
			if f.has["fed by"] {
				return
			}
			c := r.connection(f, &x.FedBy, false)
			c.refs, c.after = r.texts(f, 2*maxName), true
			if len(c.refs) > 1 {
				r.report(c.refs[1].Pos, fmt.Sprintf("%s is in series with %d loads", c.of, len(c.refs)), "the one before it; each of a string names the one before it")
				c.refs = nil
			}
		}}
}

// fedOrInSeries refuses a load that says both.
func (r *reader) fedOrInSeries(f field) {
	if f.has["fed by"] && f.has[inSeriesWith] {
		r.report(r.pos(f.node), f.where.String()+" is fed, and in series with a load that feeds it", "`fed by` or `in series with`")
	}
}

// checkInSeries accepts a load that has no return of its own, and nothing else after it.
func (r *reader) checkInSeries(c *connection, ref Ref) (Ref, bool) {
	x := c.owner.(*Load)
	before, ok := ref.Part.(*Load)
	switch back := r.byFeeds[returnsOfLoad(before)]; {
	case !ok:
		r.report(ref.Pos, fmt.Sprintf("%s is in series with %s, which is %s", c.of, quoted(ref.Text), kindOf(ref.Part)), "a load; of other parts `fed by`")
	case ref.Terminal != "":
		r.report(ref.Pos, fmt.Sprintf("%s: a load has one way on, but %s names one", c.of, quoted(ref.Text)), before.Name)
	case before == x:
		r.report(ref.Pos, c.of.String()+" is in series with itself", "the load before it")
	case back != nil && len(back.refs) > 0:
		r.report(back.refs[0].Pos, fmt.Sprintf("%s has its own return, but its current flows on through %s", quoted(before.Name), quoted(x.Name)),
			"`returns to` at the last of the string alone; of loads side by side `fed by`")
	case before.Next != nil:
		r.report(ref.Pos, fmt.Sprintf("%s and %s are both in series with %s", quoted(before.Next.Name), quoted(x.Name), quoted(before.Name)),
			fmt.Sprintf("one of them; another beside it is `fed by: %s` and returns as that does", before.Next.Name))
	default:
		before.Next, x.Before, ref.Terminal = x, before, "-"
		return ref, true
	}
	return ref, false
}

func returnsOfLoad(x *Load) *[]Feed {
	if x == nil {
		return nil
	}
	return &x.Returns
}

// InSeries are the loads of a string from the source on, x among them; x alone where it is in none.
func (x *Load) InSeries() []*Load {
	for x.Before != nil {
		x = x.Before
	}
	list := []*Load{x}
	for x.Next != nil {
		x = x.Next
		list = append(list, x)
	}
	return list
}
