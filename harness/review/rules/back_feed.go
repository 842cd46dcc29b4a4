package rules

import (
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var backFeed = &Rule{
	Name:  "back-feed",
	Title: "a fuse is bypassed by another feed",
	Says:  "bypassed by another feed",
	Doc: "Wherever two feeds meet, each fuse above is taken out in turn: when its load side is still " +
		"connected to the battery through the other feed, it protects nothing. Contacts count as closed, " +
		"the relays all energised or all at rest, but for those that the positions of one switch never close together. Two feeds from the same fuse are fine. " +
		"What charges a further battery is not above what it feeds. " +
		"Paths through a load are not looked at here. Said are fuses side by side of one source, ways of one battery " +
		"that are not live together, and two batteries. What hangs on a link between two batteries without a fuse of its own has two feeds too. " +
		"Of one battery, each feed with a fuse and no contact of its own, it depends on the wires: what stands in a ring carries what the fuses let through " +
		"from one end or from the other, never both at one place; what hangs on it without a fuse of its own, the sum. " +
		"Battery – 50 A – bow bar – 50 A – stern bar – 50 A – battery is a ring, and advice on wires that bear 50 A; with the middle wire good for 30 A it is a danger, " +
		"and so is a lamp's wire of 60 A at a bar. Two fuses of 10 A for one lamp of 15 A are no ring: one opens, then the other.",
	Formula: "none: it is a question of topology",
	Limits:  "none",
	Why: "when the fuse blows, the fault is still fed the other way, and a " +
		"circuit thought dead is live",
	Change: "give the part one feed, of one source with wires side by side (`parallel`) where one is too thin, or use a change-over " +
		"contact so that only one feed can reach it",
	Severity: "danger; advice where feeds of one battery, no contact between, make a ring, joined over a fuse, and every wire stands what the fuses let through; " +
		"advice for a bilge pump on a float switch and a manual switch, or feeds that diodes keep apart, each behind a fuse that suits all the wires; for what hangs on a link, whose wire bears the fuses of both ends",
	Source: "46 CFR 111.50-3(d): protective devices not in parallel with one another (one source)",
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  spare fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: [lamp fuse, spare fuse], wire: {size: 1 mm²}, returns to: frame}
`,
	Good: `
splices:
  left: {at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  right: {at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: [left, right], wire: {size: 1 mm², length: 50 mm}, returns to: frame}
`,
	Run: func(p *Pass) {
		bypassed := p.bypassed()
		for _, t := range p.meetingPoints() {
			if fuses := bypassed[t]; len(fuses) > 0 {
				p.reportBackFeed(t, fuses)
			}
		}
		for _, w := range p.c.Wires {
			if g, tapped := p.guardTap[w.Branch]; tapped && !p.tail(w) {
				p.reportTap(w, g)
			}
		}
	},
}

// bypassed are the fuses that another feed bypasses, by name, by the meeting point at which it does.
func (f *facts) bypassed() map[*circuit.Terminal][]string {
	above := map[*circuit.Branch][]*circuit.Terminal{} // meeting points below each fuse
	for _, t := range f.meetingPoints() {
		for _, fuse := range f.fusesAbove(t.Node) {
			above[fuse] = append(above[fuse], t)
		}
	}
	bypassed := map[*circuit.Terminal][]string{}
	fuses := f.branchesOf(circuit.FuseBranch)
	slices.SortStableFunc(fuses, func(a, b *circuit.Branch) int { return strings.Compare(fusePlace(a), fusePlace(b)) })
	for _, fuse := range fuses {
		for _, t := range f.bypassedAt(fuse, above[fuse]) {
			bypassed[t] = append(bypassed[t], fuseText(fuse))
		}
	}
	return bypassed
}

// meetingPoints lists the terminals at which more than one feed ends.
func (f *facts) meetingPoints() []*circuit.Terminal {
	var list []*circuit.Terminal
	for _, part := range f.c.Parts {
		for _, t := range part.Terminals {
			if len(feedsInto(t)) > 1 {
				list = append(list, t)
			}
		}
	}
	return list
}

func feedsInto(t *circuit.Terminal) []*circuit.Wire {
	var list []*circuit.Wire
	for _, w := range t.Wires {
		if w.To == t && !isReturn(w) {
			list = append(list, w)
		}
	}
	return list
}

func (p *Pass) reportBackFeed(t *circuit.Terminal, fuses []string) {
	feeds := feedsInto(t)
	fin := ofWire(finding.Danger, feeds[len(feeds)-1])
	fin.Why = p.parallelFuses(t)
	if p.apartByDiodes(t) {
		fin.Severity = finding.Advice
		fin.Why = "with one fuse out, what is behind the diodes is still live by the other feed; they keep it from going further"
		fin.Change = "take out both fuses before work, and say so on the fuse card"
	} else if p.pumpOnTwoFeeds(t) {
		fin.Severity = finding.Advice
		fin.Why = "with one fuse out, or the panel off, the pump and the wires up to the other switch are still live " +
			"while the float or the manual switch is closed"
		fin.Change = "take out both fuses before work, and say so on the fuse card"
	} else if p.oneSteadySource(t) {
		p.sideBySide(&fin, t)
	}
	fin.Figure = figure.New(float64(len(feeds)), 1, "", figure.Larger)
	p.say(fin, "%s has %d feeds, so another one bypasses %s",
		t.Part.Name, len(feeds), wording.And(fuses))
}

// oneSteadySource tells whether the feeds of a meeting point come from one battery, each by a fuse, with no contact of
// their own on the way: nothing is made live backwards that a switch or key has made dead. What the link to another battery
// feeds too is none.
func (p *Pass) oneSteadySource(t *circuit.Terminal) bool {
	_, bare := p.nearest.Above(t.Node)
	var post *circuit.Node
	return !bare && p.rings != nil && !slices.ContainsFunc(p.c.Above(t.Node), func(b *circuit.Branch) bool {
		if p.c.IsPost(b.A) && post == nil {
			post = b.A
		}
		return p.c.IsPost(b.A) && b.A != post || p.linked != nil && (p.linked.Bare[b.Index] || len(p.linked.Fuses[b.Index]) > 0) ||
			p.rings.In(b) && (b.Closer != nil || p.rings.Bare[b.Index] || b.Kind == circuit.FuseBranch && fuseRating(b) == 0)
	})
}

// sideBySide judges feeds of one battery that nothing parts: what burns is danger, a ring closed over a fuse is advice.
func (p *Pass) sideBySide(fin *finding.Finding, t *circuit.Terminal) {
	const open = "take out every fuse of the ring before work, or open the battery switch, and say so on the fuse card"
	switch {
	case p.tooThin(t) != nil:
		w := p.tooThin(t)
		fin.Why += "; " + w.Text() + " does not stand what " + p.guardOf(w).text() + p.guardOf(w).verb(" lets", " let") + " through"
	case p.joined(t):
		fin.Severity = finding.Advice
		fin.Why = "this is a ring: with one fuse out all that hangs on it is still live by the other way, and a short is fed from both ends until the fuse of " +
			"each end has opened"
		fin.Change = open
	default:
		fin.Why += "; they share unequally: one opens, then the other"
	}
}

// tooThin is the first wire of the feeds of a meeting point, or of what hangs on them, that stands less than the fuses
// of both ends let through; nil where none burns.
func (p *Pass) tooThin(t *circuit.Terminal) *circuit.Wire {
	for _, w := range p.c.Wires {
		if g, ok := p.guardRing[w.Branch]; ok && p.overFused(w) && p.letsThrough(w, p.guardOf(w).A, finding.Danger) == finding.Danger &&
			(slices.Contains(p.c.Above(t.Node), w.Branch) || len(g.fuses) > 1) {
			return w
		}
	}
	return nil
}

// joined tells of a ring: a feed of the meeting point comes over a fuse from where another fuse of the ring already
// feeds something else.
func (p *Pass) joined(t *circuit.Terminal) bool {
	below := p.drawsBelow(t.Node)
	return slices.ContainsFunc(p.c.Above(t.Node), func(b *circuit.Branch) bool {
		if b.Kind != circuit.FuseBranch || !p.rings.In(b) {
			return false
		}
		up, _ := p.nearest.Above(b.A)
		return slices.ContainsFunc(up, func(u *circuit.Branch) bool {
			return p.rings.In(u) && slices.ContainsFunc(p.drawsBelow(u.B), func(d *circuit.Branch) bool { return !slices.Contains(below, d) })
		})
	})
}

// parallelFuses says what the fuses above a meeting point protect there: of one source they
// lie in parallel, two sources feed each other; "" where a feed has no fuse.
func (p *Pass) parallelFuses(t *circuit.Terminal) string {
	fuses, bare := p.nearest.Above(t.Node)
	if bare || len(fuses) < 2 {
		return ""
	}
	fuses = slices.SortedStableFunc(slices.Values(fuses), func(a, b *circuit.Branch) int { return strings.Compare(fusePlace(a), fusePlace(b)) })
	var ratings, places []string
	var keys []design.When
	sum := 0.0
	posts := map[*circuit.Node]bool{}
	for _, b := range fuses {
		post, _ := p.c.Supply(b.A)
		posts[post], sum = true, sum+fuseRating(b)
		ratings, places = append(ratings, quantity.Plain(fuseRating(b), quantity.Current)), append(places, fusePlace(b))
		key := design.WhenAlways
		for _, x := range p.c.MainFeed(b.A).Branches {
			if x.Closer != nil && x.Closer.Key != "" {
				key = x.Closer.Key
			}
		}
		if !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	switch {
	case len(posts) > 1:
		return "these are two batteries: with one fuse out the other battery still feeds the fault, and with both in, the fuller " +
			"battery charges the other through the wires of both feeds, which must stand the fuse at either end"
	case len(keys) > 1:
		return "this is one battery by two ways that are not live together: the one that is live makes the other one live backwards, up to " +
			"its switch or key and all that hangs there, and when one fuse blows, the fault is still fed the other way"
	}
	return "this is one source twice, fuses in parallel: with both feeds live nothing behind their meeting opens below " + strings.Join(ratings, " + ") + " = " + quantity.Plain(sum, quantity.Current) +
		", and the wires there must stand that; when " + wording.Or(places) + " is out, what is thought dead is live"
}

// tail tells whether a wire leads to fuses alone.
func (p *Pass) tail(w *circuit.Wire) bool {
	return !slices.ContainsFunc(w.To.Node.FeedsOn(), func(b *circuit.Branch) bool { return b.Kind != circuit.FuseBranch }) &&
		len(w.To.Node.FeedsOn()) > 0
}

// reportTap is of a wire that is fed from the middle of a link, without a fuse of its own.
func (p *Pass) reportTap(w *circuit.Wire, g guard) {
	fin := ofWire(finding.Advice, w)
	if p.overFused(w) {
		fin.Severity = finding.Danger
	}
	fin.Change = "put a fuse of its own where it leaves the link, or feed it from one of the batteries"
	fin.Figure = figure.New(float64(len(g.fuses)), 1, "", figure.Larger)
	p.say(fin, "%s leaves the link between two batteries and is fed by both: %s", w.Text(), g.text())
}

// pumpOnTwoFeeds tells whether bilge pumps of the library alone draw below a meeting
// point, each feed of which has a fuse that the wires of the other bear too: that is how
// such a pump is wired, by float and by hand.
func (p *Pass) pumpOnTwoFeeds(t *circuit.Terminal) bool {
	for _, b := range p.drawsBelow(t.Node) {
		if l := accessory(b.Part); l == nil || l.Type == nil || !l.Type.Bilge {
			return false
		}
	}
	return len(p.drawsBelow(t.Node)) > 0 && p.eachBearsAll(t)
}

// apartByDiodes tells whether every feed of a meeting point comes through a diode of its own,
// and the wires bear the fuse of any feed.
func (p *Pass) apartByDiodes(t *circuit.Terminal) bool {
	for _, w := range feedsInto(t) {
		if d, ok := w.From.Part.Source.(*design.Diode); !ok || d.Reversed {
			return false
		}
	}
	return p.eachBearsAll(t)
}

// eachBearsAll tells whether every feed of a meeting point has a fuse that the wires of the
// others bear too.
func (p *Pass) eachBearsAll(t *circuit.Terminal) bool {
	fuses, bare := p.nearest.Above(t.Node)
	if bare {
		return false
	}
	most := 0.0
	for _, b := range fuses {
		most = max(most, fuseRating(b))
	}
	for _, w := range p.feedsAbove(t.Node) {
		if a := p.allowed(w); !a.known() || over(most, p.practice.FuseWireShare*a.AllowedA) {
			return false
		}
	}
	return true
}

// feedsAbove are the wires between a node and the fuses nearest above it.
func (p *Pass) feedsAbove(n *circuit.Node) (wires []*circuit.Wire) {
	seen := map[*circuit.Node]bool{n: true}
	for queue := []*circuit.Node{n}; len(queue) > 0; queue = queue[1:] {
		for _, b := range queue[0].Branches {
			if b.B != queue[0] || !b.Feeds() || b.Kind == circuit.FuseBranch {
				continue
			}
			if b.Wire != nil {
				wires = append(wires, b.Wire)
			}
			if !seen[b.A] {
				seen[b.A] = true
				queue = append(queue, b.A)
			}
		}
	}
	return wires
}

// fusesAbove walks from a node towards the source and lists the fuses on the way.
func (f *facts) fusesAbove(n *circuit.Node) []*circuit.Branch {
	f.markNumber++
	f.mark[n.Index] = f.markNumber
	var fuses []*circuit.Branch
	queue := []*circuit.Node{n}
	for len(queue) > 0 {
		n := queue[0]
		queue = queue[1:]
		if f.c.IsPost(n) { // what charges a battery is not above what it feeds
			continue
		}
		for _, b := range n.Branches {
			if b.B != n || !b.Feeds() {
				continue
			}
			if b.Kind == circuit.FuseBranch { // also one beside another, from the same bus bar
				fuses = append(fuses, b)
			}
			if f.mark[b.A.Index] == f.markNumber || f.c.IsPost(b.A) { // a battery's post feeds by itself
				continue
			}
			f.mark[b.A.Index] = f.markNumber
			queue = append(queue, b.A)
		}
	}
	return fuses
}

// bypassedAt lists those of the meeting points below a fuse that another feed
// reaches when the fuse is out, with the contacts in a state in which the fuse itself is live and joined to the point.
func (f *facts) bypassedAt(fuse *circuit.Branch, meetings []*circuit.Terminal) (list []*circuit.Terminal) {
	for _, t := range meetings {
		var contacts []*circuit.Branch
		for i, on := range f.c.Feeding(fuse.A, t.Node) {
			if b := f.c.Branches[i]; on && b.Closer != nil {
				contacts = append(contacts, b)
			}
		}
		if slices.ContainsFunc(f.apart().Closed(contacts), func(closed func(*circuit.Branch) bool) bool {
			live := f.liveFrom(f.c.Posts(), fuse, closed)
			return live[fuse.A.Index] && f.liveFrom([]*circuit.Node{fuse.B}, nil, closed)[t.Node.Index] &&
				slices.ContainsFunc(feedsInto(t), func(w *circuit.Wire) bool { return live[w.From.Node.Index] })
		}) {
			list = append(list, t)
		}
	}
	return list
}

// liveFrom marks what some nodes feed, downstream only, without a fuse and over closed contacts.
func (f *facts) liveFrom(nodes []*circuit.Node, fuse *circuit.Branch, closed func(*circuit.Branch) bool) []bool {
	live := make([]bool, len(f.c.Nodes))
	for _, post := range nodes {
		live[post.Index] = true
		f.below(post, func(b *circuit.Branch) bool {
			if b == fuse || !b.Feeds() || !closed(b) {
				return false
			}
			live[b.B.Index] = true
			return true
		})
	}
	return live
}
