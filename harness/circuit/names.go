package circuit

// Look is how one tells a wire at the bench: colour code and size, "RD 4 mm²".
func (w *Wire) Look() string {
	text := w.Spec.Colour.Code()
	if w.Spec.Size != nil {
		text += " " + w.Spec.Size.Label
	}
	return text
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
