package design

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/library"
)

const onPostOf = "on post of"

// postKey says on which battery's post a fuse is bolted.
func postKey() key[Fuse] {
	return key[Fuse]{Key: Key{Name: onPostOf, Kind: KindText, Default: "wired", Example: "battery",
		Doc: "the battery on whose positive post it is bolted, with no wire between. Then it needs neither `fed by` nor `at`; at the end of a link it is `fed by` the link, and the battery by it. Its type is left out the battery post fuse, else one that bolts on"},
		read: func(r *reader, x *Fuse, f field) { x.onPost, _ = r.sentence(f, maxName) }}
}

// postFuse is the library's fuse that is made for a battery's post.
func (r *reader) postFuse() *library.FuseType {
	for _, t := range r.lib.FuseTypes {
		if t.OnPost {
			return t
		}
	}
	return nil
}

// onlyOnPost refuses what a fuse on a post cannot have.
func (r *reader) onlyOnPost(x *Fuse, f field) {
	switch {
	case !x.onPost.Given():
	case f.has["returns to"]:
		r.report(x.onPost.Pos, f.where.String()+" is on a positive post and in a return", "one of the two")
	case f.has["wire"] && !f.has["fed by"]:
		r.report(x.onPost.Pos, f.where.String()+" is bolted on a post, and has a wire", "no wire, or no `on post of`")
	case x.Type != nil && !strings.HasPrefix(x.Type.Mounting, "ring "):
		r.report(x.onPost.Pos, fmt.Sprintf("%s: %s does not bolt on a post", f.where, quoted(x.Type.Name)), "a type with holes for studs, or none")
	}
}

// resolvePosts finds the posts on which fuses are bolted, and takes away the connections in place of
// which they are.
func (r *reader) resolvePosts() {
	for _, x := range r.d.Fuses {
		if !x.onPost.Given() {
			continue
		}
		r.unplaced[x] = r.unplaced[x] || x.At == nil // until its battery is found
		post := r.names[fold(x.onPost.Value)].part
		bank, further := post.(*Bank)
		first, isFirst := post.(*BatteryPart)
		if !further && !isFirst {
			names := []string{BatteryName}
			for _, b := range r.d.Batteries {
				names = append(names, b.Name)
			}
			r.unknown(x.onPost.Pos, fmt.Sprintf("fuse %s is on the post of %s, which is no battery", quoted(x.Name), quoted(x.onPost.Value)), x.onPost.Value, names)
			continue
		}
		fed := Feeds(post)[0]
		from := func(p Part) func(Feed) bool { return func(f Feed) bool { return f.From.Part == p } }
		switch at := slices.IndexFunc(x.FedBy, from(post)); {
		case at >= 0 && len(x.FedBy) == 1:
			x.FedBy = nil
		case len(x.FedBy) > 0 && !slices.ContainsFunc(*fed, from(x)):
			r.report(x.onPost.Pos, fmt.Sprintf("fuse %s is fed, and on the post of %s, which is not fed by it", quoted(x.Name), quoted(x.onPost.Value)),
				"no `fed by` of its own; at the end of a link or behind an isolator `fed by: "+x.Name+"` at the battery")
			continue
		case len(x.FedBy) > 0:
			*fed = slices.DeleteFunc(*fed, from(x))
			if c := r.byFeeds[fed]; c != nil {
				c.feedOf = c.feedOf[:0]
				for _, f := range *fed {
					c.feedOf = append(c.feedOf, c.wireFrom(f.From.Text))
				}
			}
		}
		x.Post = post
		switch {
		case x.At != nil:
		case further:
			x.At, r.unplaced[x] = bank.At, r.unplaced[bank]
		default:
			x.At, r.unplaced[x] = first.At, r.unplaced[first]
		}
	}
}

// wireFrom is the wire of a feed by what it comes from, as written.
func (c *connection) wireFrom(text string) *wireDraft {
	for i, ref := range c.refs {
		if ref.Value == text {
			return c.wireTo(i)
		}
	}
	return c.wire
}
