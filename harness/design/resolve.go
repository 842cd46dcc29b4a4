package design

import (
	"fmt"
	"strings"

	"fusewright/harness/design/problem"
)

// tooManyWires reports a design of more wires than are worked on, at the first
// feed or return beyond them.
func (r *reader) tooManyWires() bool {
	wires, first := 0, problem.Pos{}
	for _, c := range r.connections {
		for i, ref := range c.refs {
			if wires += c.wireTo(i).count(); wires > maxWires && first.Line == 0 {
				first = ref.Pos
			}
		}
	}
	if wires > maxWires {
		r.report(first, fmt.Sprintf("the design has %d wires", wires), fmt.Sprintf("at most %d", maxWires))
	}
	return wires > maxWires
}

// resolveConnections looks up the names of all feeds and returns.
func (r *reader) resolveConnections() {
	r.checkOutputNames()
	battery := &BatteryPart{Common{Name: BatteryName, At: r.d.Battery.At, Pos: r.d.Battery.Pos, kind: "the battery's positive post"}, &r.d.Battery}
	r.d.Battery.Post = battery
	negative := &NegativePart{Common{Name: NegativeName, At: r.d.Battery.At, Pos: r.d.Battery.Pos, kind: "the battery's negative post"}}
	r.names[BatteryName] = namedPart{battery, battery.Pos}
	r.names[NegativeName] = namedPart{negative, negative.Pos}
	if r.unplacedBattery {
		r.unplaced[battery], r.unplaced[negative] = true, true
	}
	if ch := &r.d.Charging; ch.Pos.Line != 0 && r.names[ch.Name].part == nil {
		r.names[ch.Name] = namedPart{ch, ch.Pos}
	}
	if c := r.byFeeds[&r.d.Battery.FedBy]; c != nil {
		c.owner = battery
		r.later = append(r.later, r.checkFirst)
	}
	r.joinString(battery, &r.d.Battery)
	for _, b := range r.d.Batteries {
		r.joinString(b, &b.Store)
	}
	for _, c := range r.connections {
		seen := map[string]bool{}
		for i, text := range c.refs {
			ref, ok := r.resolve(c, text)
			if !ok {
				continue
			}
			if id := ref.Part.PartName() + "\x00" + ref.Terminal; seen[id] {
				r.report(text.Pos, fmt.Sprintf("%s is connected to %s twice", c.of, quoted(text.Value)),
					"it once; of two wires side by side, `parallel: 2` in its "+c.wireKey())
				continue
			} else {
				seen[id] = true
			}
			for range c.wireTo(i).count() {
				*c.feeds = append(*c.feeds, Feed{From: ref})
				c.feedOf = append(c.feedOf, c.wireTo(i))
			}
		}
	}
}

// checkOutputNames reports a part whose name reads like a terminal of another.
func (r *reader) checkOutputNames() {
	for _, p := range r.parts {
		own := outputs(p)
		if _, bank := p.(*Bank); bank {
			own = append(own, bankNegative)
		}
		for _, out := range own {
			if other, ok := r.names[fold(p.PartName()+" "+out)]; ok && out != "" {
				first := p.PartPos()
				r.add(problem.Problem{Pos: other.pos, Also: &first,
					What: fmt.Sprintf("the name %s also means terminal %s of %s",
						quoted(other.part.PartName()), out, quoted(p.PartName()))})
			}
		}
	}
}

// outputs are the terminals of a part that can feed another; one empty name
// stands for a part with a single output, none for a part that feeds nothing.
func outputs(p Part) []string {
	switch p := p.(type) {
	case *Relay:
		if p.Rests {
			return []string{"30"}
		}
		if p.Form != nil && !p.Form.Changeover {
			return []string{"87"}
		}
		return []string{"87", "87a"}
	case *Block:
		names := make([]string, len(p.Ways))
		for i, w := range p.Ways {
			names[i] = w.Number
		}
		return names
	case *Switch:
		if p.Positions != nil {
			return p.Outputs()
		}
	case *Diode:
		return p.Outputs()
	case *Ground, *NegativePart, *Connector:
		return nil
	}
	return []string{""}
}

// resolve finds the part and terminal that a feed or return names.
func (r *reader) resolve(c *connection, text Text) (Ref, bool) {
	ref := Ref{Text: text.Value, Pos: text.Pos}
	if found, ok := r.names[fold(text.Value)]; ok {
		ref.Part = found.part
	}
	for at := strings.LastIndexByte(text.Value, ' '); at > 0 && ref.Part == nil; at = strings.LastIndexByte(text.Value[:at], ' ') {
		if found, ok := r.names[fold(text.Value[:at])]; ok {
			ref.Part, ref.Terminal = found.part, text.Value[at+1:]
		}
	}
	if s, ok := ref.Part.(*Switch); ok && ref.Terminal != "" {
		ref.Terminal = s.output(ref.Terminal)
	}
	switch {
	case r.ofString(c, text):
		return ref, false
	case ref.Part == nil:
		r.noName(text.Pos, fmt.Sprintf("%s: nothing is named %s", c.of, quoted(text.Value)),
			text.Value, r.targetsOf(c))
		return ref, false
	case c.back:
		return r.checkReturn(c, ref)
	case c.after:
		return r.checkInSeries(c, ref)
	}
	return r.checkFeed(c, ref)
}

// targetsOf are those that a connection could mean.
func (r *reader) targetsOf(c *connection) []string {
	if !c.after {
		return r.targets(c.back)
	}
	var loads []string
	for _, l := range r.d.Loads {
		if l != c.owner {
			loads = append(loads, l.Name)
		}
	}
	return loads
}

// targets are the names that a feed or return could mean.
func (r *reader) targets(back bool) []string {
	var names []string
	if back {
		for _, g := range r.d.Grounds {
			names = append(names, g.Name)
		}
		for _, p := range r.parts {
			switch s, _ := p.(*Switch); {
			case s != nil && s.Positions != nil && r.inReturn(p):
				names = append(names, prefixed(s.Name, s.Outputs())...)
			case !isGround(p) && (r.inReturn(p) || rests(p)):
				names = append(names, p.PartName())
			}
		}
		for _, b := range r.d.Batteries {
			names = append(names, b.NegativeOf())
		}
		return append(names, NegativeName)
	}
	for _, p := range r.parts {
		if _, load := p.(*Load); load { // may be meant, and seldom is
			continue
		}
		for _, out := range outputs(p) {
			names = append(names, strings.TrimSpace(p.PartName()+" "+out))
		}
		if _, ok := p.(*Relay); ok {
			names = append(names, p.PartName())
		}
	}
	return append(names, BatteryName)
}

// checkReturn accepts grounds, the negative post and what stands in a return; of loads,
// relays that rest on one.
func (r *reader) checkReturn(c *connection, ref Ref) (Ref, bool) {
	_, negative := ref.Part.(*NegativePart)
	bank, isBank := ref.Part.(*Bank)
	switch {
	case isBank && ref.Terminal == bankNegative:
		ref.Terminal = "-"
		if c.owner != ref.Part {
			return ref, true
		}
		r.report(ref.Pos, fmt.Sprintf("%s returns to its own negative post", c.of), NegativeName)
	case isBank:
		r.report(ref.Pos, fmt.Sprintf("%s returns to %s, a battery, but by which post", c.of, quoted(ref.Text)), bank.NegativeOf())
	case negative || isGround(ref.Part):
		if ref.Terminal == "" {
			return ref, true
		}
		r.report(ref.Pos, fmt.Sprintf("%s: a ground has no terminals, but %s names one", c.of,
			quoted(ref.Text)), "such as "+ref.Part.PartName())
	case r.givesNothing(c, ref):
	case r.inReturn(ref.Part):
		return r.checkOutput(c, ref)
	case rests(ref.Part) && loadOwns(c) && (ref.Terminal == "" || ref.Terminal == "30"):
		ref.Terminal = "30"
		return ref, true
	case returnsOf(ref.Part) != nil:
		r.report(ref.Pos, fmt.Sprintf("%s returns to %s, %s that is not in a return", c.of, quoted(ref.Text),
			kindOf(ref.Part)), oneOf(append(r.targets(true), "`returns to` at "+quoted(ref.Part.PartName()))))
	default:
		if l, ok := ref.Part.(*Load); ok {
			return r.checkOnward(c, ref, l)
		}
		r.report(ref.Pos, fmt.Sprintf("%s returns to %s, which is %s", c.of, quoted(ref.Text), kindOf(ref.Part)), oneOf(r.targets(true)))
	}
	return ref, false
}

// checkFeed accepts parts with outputs and gives the terminal its full name.
func (r *reader) checkFeed(c *connection, ref Ref) (Ref, bool) {
	outs := outputs(ref.Part)
	if r.givesNothing(c, ref) {
		return ref, false
	}
	if len(outs) == 0 {
		if b, ok := ref.Part.(*Block); ok {
			r.report(ref.Pos, fmt.Sprintf("%s is fed by block %s, which has no ways", c.of,
				quoted(b.Name)), "a way in the block")
			return ref, false
		}
		expected := "a part that passes current on"
		if _, ok := ref.Part.(*Connector); ok {
			expected = "what feeds it; wires that pass the connector's place go through it by themselves"
		}
		r.report(ref.Pos, fmt.Sprintf("%s is fed by %s, which is %s", c.of, quoted(ref.Text), kindOf(ref.Part)), expected)
		return ref, false
	}
	if !isGround(ref.Part) && r.inReturn(ref.Part) {
		r.report(ref.Pos, fmt.Sprintf("%s is fed by %s, %s that is in a return", c.of, quoted(ref.Text),
			kindOf(ref.Part)), "a part that is fed")
		return ref, false
	}
	if r.hangsOnPlug(c, ref) {
		return ref, false
	}
	if ch, ok := ref.Part.(*Charging); ok && !r.feedsAt(c, ref, ch) {
		return ref, false
	}
	return r.checkOutput(c, ref)
}

// feedsAt has the charging system feed at its own stud, unless its cable is seen from the battery.
func (r *reader) feedsAt(c *connection, ref Ref, ch *Charging) bool {
	if cable := r.byFeeds[&ch.FedBy]; cable != nil {
		r.report(ref.Pos, fmt.Sprintf("%s is fed by %s, which is itself `fed by` %s", c.of, quoted(ref.Text), quoted(cable.refs[0].Value)),
			"no `fed by` at charging: what leads to the first battery stands as `battery: {fed by: …}`")
		return false
	}
	if !ch.Feeds {
		ch.Feeds, r.parts = true, append(r.parts, ch)
	}
	return true
}

// givesNothing refuses a switch that has positions and in none of them an output.
func (r *reader) givesNothing(c *connection, ref Ref) bool {
	s, ok := ref.Part.(*Switch)
	if !ok || s.Positions == nil || len(s.Outputs()) > 0 {
		return false
	}
	r.report(ref.Pos, fmt.Sprintf("%s %s switch %s, no position of which gives anything", c.of, c.verb(), quoted(s.Name)), "outputs in its positions")
	return true
}

// checkOutput gives the terminal of a part that is named its full name: an output, or of
// what stands in a return the one on the side of the load.
func (r *reader) checkOutput(c *connection, ref Ref) (Ref, bool) {
	outs := outputs(ref.Part)
	relay, isRelay := ref.Part.(*Relay)
	if isRelay && ref.Terminal == "" {
		ref.Terminal = "87"
		if relay.Rests {
			ref.Terminal = "30"
		}
	}
	for _, out := range outs {
		if out == ref.Terminal {
			return ref, r.checkWay(c, ref)
		}
	}
	switch {
	case ref.Terminal == "":
		what := "block %s, but by which way"
		switch ref.Part.(type) {
		case *Switch:
			what = "switch %s, but by which output"
		case *Diode:
			what = "isolator %s, but by which output"
		}
		r.report(ref.Pos, fmt.Sprintf("%s %s "+what, c.of, c.verb(), quoted(ref.Text)), oneOf(prefixed(ref.Part.PartName(), outs)))
	case isRelay && relay.Form != nil:
		r.report(ref.Pos, fmt.Sprintf("%s: relay %s (%s) has no contact %s", c.of,
			quoted(relay.Name), relay.Form.Name, quoted(ref.Terminal)), oneOf(outs))
	case outs[0] == "":
		r.report(ref.Pos, fmt.Sprintf("%s: %s has a single output, but %s names one", c.of,
			quoted(ref.Part.PartName()), quoted(ref.Text)), ref.Part.PartName())
	default:
		r.unknown(ref.Pos, fmt.Sprintf("%s: %s has no output %s", c.of, quoted(ref.Part.PartName()),
			quoted(ref.Terminal)), ref.Text, prefixed(ref.Part.PartName(), outs))
	}
	return ref, false
}

// checkWay refuses a way that is set down as spare.
func (r *reader) checkWay(c *connection, ref Ref) bool {
	b, ok := ref.Part.(*Block)
	if !ok {
		return true
	}
	for _, w := range b.Ways {
		if w.Number == ref.Terminal && w.Spare {
			also := w.Pos
			r.add(problem.Problem{Pos: ref.Pos, Also: &also, Expected: "a way with a fuse, or none",
				What: fmt.Sprintf("%s is fed by %s, which is spare", c.of, quoted(ref.Text))})
			return false
		}
	}
	return true
}

func prefixed(name string, outs []string) []string {
	list := make([]string, len(outs))
	for i, out := range outs {
		list[i] = name + " " + out
	}
	return list
}

func loadOwns(c *connection) bool {
	_, load := c.owner.(*Load)
	return load
}
