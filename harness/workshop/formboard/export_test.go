package formboard

// Fan lays a section as a crowded one.
func (s *Section) Fan() { s.fan() }
