package schematic

// placeBoxes draws the outlines of places when the design asks for them.
func (a *painter) placeBoxes() {}
