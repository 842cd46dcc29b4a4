package design

import (
	"fmt"
	"strings"
)

// checkLoops reports feeds, and returns of grounds, that lead in a circle. A
// coil fed from its own contact is none: that is a latch.
func (r *reader) checkLoops() {
	l := &loopSearch{r: r, state: map[Part]int{}, onward: map[Part][]Feed{}}
	for _, c := range r.connections {
		if c.link {
			continue
		}
		if relay, ok := c.owner.(*Relay); c.back == r.inReturn(c.owner) && !(ok && (c.feeds == &relay.Coil.FedBy || c.feeds == &relay.Coil.Returns)) {
			l.onward[c.owner] = append(l.onward[c.owner], *c.feeds...)
		}
	}
	back := &loopSearch{r: r, state: map[Part]int{}, onward: map[Part][]Feed{}, back: true}
	for _, x := range r.d.Loads { // of what hangs one on the other
		for _, f := range x.Returns {
			if _, on := f.From.Part.(*Load); on {
				back.onward[x] = append(back.onward[x], f)
			}
		}
	}
	for _, p := range r.parts {
		l.visit(p)
		back.visit(p)
	}
}

// loopSearch is a depth-first search with the path walked so far.
type loopSearch struct {
	r     *reader
	state map[Part]int // 0 not visited, 1 on the path, 2 done
	path  []Part
	// onward are the connections that a part's current comes through, or, of a
	// ground or of what stands in a return, goes through.
	onward map[Part][]Feed
	back   bool // it follows returns of loads
}

func (l *loopSearch) visit(p Part) {
	if l.state[p] != 0 {
		return
	}
	l.state[p] = 1
	l.path = append(l.path, p)
	for _, f := range l.onward[p] {
		if l.state[f.From.Part] == 1 {
			l.report(f)
			continue
		}
		l.visit(f.From.Part)
	}
	l.path = l.path[:len(l.path)-1]
	l.state[p] = 2
}

// report prints the loop that a feed closes.
func (l *loopSearch) report(f Feed) {
	start := len(l.path) - 1
	for l.path[start] != f.From.Part {
		start--
	}
	const most = 12
	loop := l.path[start:]
	names := make([]string, 0, most+2)
	for i, p := range loop {
		if i == most {
			names = append(names, fmt.Sprintf("… %d more", len(loop)-most))
			break
		}
		names = append(names, quoted(p.PartName()))
	}
	names = append(names, quoted(f.From.Part.PartName()))
	verb, what := " is fed by ", "a circuit feeds itself"
	if l.back || l.r.inReturn(f.From.Part) {
		verb, what = " returns to ", "a return leads in a circle"
	}
	l.r.report(f.From.Pos, what+": "+strings.Join(names, verb), "a way to the battery; what joins two points of a ring is fed by one and feeds the other")
}
