package remedy

// Put makes the change of a trial, and gives what takes it back.
func (t *Trial) Put() (back func()) { return t.put() }
