package library

// Verdict says against which figure a limit holds.
type Verdict struct {
	Limit  string `key:"limit" need:""` // "voltage drop"
	Figure string `key:"figure" words:"nominal|likely|worst"`
	Why    string `key:"why" need:""`
	Source Source
}

// Verdict finds what decides a limit; nil when there is none of the name.
func (l *Library) Verdict(limit string) *Verdict { return find(l.Verdicts, limit, verdictNames) }

func verdictNames(v *Verdict) (string, []string) { return v.Limit, nil }
