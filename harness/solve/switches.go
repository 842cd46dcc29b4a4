package solve

import "fusewright/harness/design"

// switchesClosed lists the switches that are closed in a situation: those it
// names, and those that a load which is on needs: on the way from the source to
// the load and back, and on the way of the coils of the relays on it.
func switchesClosed(s *design.Situation) map[*design.Switch]bool {
	w := switchWalk{closed: map[*design.Switch]bool{}, seen: map[design.Part]bool{}}
	for _, sw := range s.Closed {
		w.closed[sw] = true
	}
	for _, l := range s.On {
		w.feeds(l.FedBy)
		w.feeds(l.Returns)
	}
	return w.closed
}

type switchWalk struct {
	closed map[*design.Switch]bool
	seen   map[design.Part]bool
}

// feeds walks towards the source from what is fed.
func (w *switchWalk) feeds(feeds []design.Feed) {
	for _, f := range feeds {
		w.part(f.From.Part)
	}
}

func (w *switchWalk) part(p design.Part) {
	if p == nil || w.seen[p] {
		return
	}
	w.seen[p] = true
	switch p := p.(type) {
	case *design.Fuse:
		w.feeds(p.FedBy)
	case *design.Relay:
		w.feeds(p.FedBy)
		w.feeds(p.Coil.FedBy)
		w.feeds(p.Coil.Returns)
	case *design.Block:
		w.feeds(p.FedBy)
	case *design.Switch:
		w.closed[p] = true
		w.feeds(p.FedBy)
	case *design.Splice:
		w.feeds(p.FedBy)
	case *design.Ground:
		w.feeds(p.Returns)
	}
}
