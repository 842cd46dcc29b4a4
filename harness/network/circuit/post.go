package circuit

import "fusewright/harness/design"

// OnPost is the battery's post on which a fuse's terminal is bolted, with no wire between; nil of
// others.
func (t *Terminal) OnPost() *Terminal {
	f, ok := t.Part.Source.(*design.Fuse)
	if !ok || f.Post == nil || (t.Name == "in") != f.AtPost() {
		return nil
	}
	for _, x := range t.Node.Terminals {
		if x.isPost() {
			return x
		}
	}
	return nil
}

// isPost tells of a battery's positive terminal.
func (t *Terminal) isPost() bool {
	return (t.Part.Kind == Battery || t.Part.Kind == Bank) && t.Name == "+"
}

// Bolted are the terminals of the fuses on a battery's post.
func (t *Terminal) Bolted() (list []*Terminal) {
	for _, x := range t.Node.Terminals {
		if x.OnPost() == t {
			list = append(list, x)
		}
	}
	return list
}
