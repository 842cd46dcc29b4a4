package formboard

// Fan lays a section as a crowded one.
func (s *Section) Fan() { s.fan() }

// Cross tells whether two limbs that meet at no spot cross or touch, or two
// that meet lie on top of each other.
func Cross(a, b *Limb) bool {
	if base := shared(a, b); base != nil {
		return angleDeg(base, a.Far(base), b.Far(base)) < 1e-6
	}
	return Distance(a, b) < 1e-6
}
