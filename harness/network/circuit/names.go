package circuit

import "fusewright/harness/design/wording"

// Text is a wire in words: "wire W3 (1.5 mm², main to lamps)".
func (w *Wire) Text() string {
	size := ""
	if w.Spec.Size != nil {
		size = w.Spec.Size.Label + ", "
	}
	return "wire " + w.Number + " (" + size + w.From.Text() + " to " + w.To.Text() + ")"
}

// Owner is the part that a wire serves: the one it feeds, or takes the current
// back from.
func (w *Wire) Owner() *Part {
	if w.Whole != nil {
		w = w.Whole
	}
	if w.Role.Returns() {
		return w.From.Part
	}
	return w.To.Part
}

// Look is how one tells a wire at the bench: colour code and size, "RD 4 mm²".
func (w *Wire) Look() string {
	size := ""
	if w.Spec.Size != nil {
		size = w.Spec.Size.Label
	}
	return wording.Present([]string{w.Spec.Colour.Code(), size}, " ")
}

// Purpose is what a wire is for in short, as its labels say it: "left lamp +", "left lamp -",
// "keyed coil +", "rear feed", "rear bar return".
func (w *Wire) Purpose() string {
	part, words := w.Owner(), map[Role]string{FeedWire: "feed", ReturnWire: "return", CoilFeedWire: "coil +", CoilReturnWire: "coil -", LinkWire: "link"}
	if part.Kind == Load {
		words[FeedWire], words[ReturnWire] = "+", "-"
	}
	return part.Name + " " + words[w.Role]
}

// Text is a terminal in words, its part's only outlet by the part alone.
func (t *Terminal) Text() string {
	switch t.Name {
	case "", "+", "-", "in", "out":
		return t.Part.Name
	}
	return t.Part.Name + " " + t.Name
}

// Address is a terminal by its part's designation and its own name, then the
// part's name: "K1:87 keyed".
func (t *Terminal) Address() string {
	text := t.Part.Ref + ":" + t.Name
	if t.Part.Name != "" && t.Part.Name != t.Part.Ref {
		text += " " + t.Part.Name
	}
	return text
}

// Way names a fuse by its part, and by the way of a block that it is in: "main", "rear 2".
func (b *Branch) Way() string {
	for _, t := range b.Part.Terminals {
		if t.FuseRef != "" && b.Fuse != nil && t.FuseRef == b.Fuse.Ref {
			return b.Part.Name + " " + t.Name
		}
	}
	return b.Part.Name
}
