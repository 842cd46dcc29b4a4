package library

// Verdict says against which figure a limit holds.
type Verdict struct {
	Limit  string // "voltage drop"
	Figure string // "nominal", "likely" or "worst"
	Why    string
	Source Source
}

// Verdict finds what decides a limit; nil when there is none of the name.
func (l *Library) Verdict(limit string) *Verdict { return find(l.Verdicts, limit, verdictNames) }

func verdictNames(v *Verdict) (string, []string) { return v.Limit, nil }

func readVerdict(m *row, s Source) {
	v := &Verdict{
		Limit:  m.needText("limit"),
		Figure: m.choice("figure", "nominal", "likely", "worst"),
		Why:    m.needText("why"),
		Source: s,
	}
	m.r.sourced(m.node, s)
	m.r.lib.Verdicts = add(m, "verdicts", m.r.lib.Verdicts, v, v.Limit, nil)
}
