package library

// Tolerance is how far one figure of a design may be off in use.
type Tolerance struct {
	Name string `key:"name" need:""`
	// Unit is "V" (of a 12 V class system), "share" (of 1), "K", "s" or "times".
	Unit   string  `key:"unit" words:"share|V|K|s|times"`
	Value  float64 `key:"value" need:"" in:"0,1000"`
	Source Source
}

// Tolerance finds a tolerance by name; nil when there is none.
func (l *Library) Tolerance(name string) *Tolerance {
	return find(l.Tolerances, name, toleranceNames)
}

func toleranceNames(t *Tolerance) (string, []string) { return t.Name, nil }
