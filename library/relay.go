package library

import (
	"cmp"
	"fmt"
	"math"
)

// RelayForm finds a relay form by name or alias; nil when there is none.
func (l *Library) RelayForm(name string) *RelayForm {
	return find(l.RelayForms, name, relayNames)
}

// RelayFormFor finds a relay form for a system voltage: the form or family of that name,
// or, when its coil is for another voltage, the member of its family whose
// coil fits. When the family has none, the named form itself comes back, so
// that the mismatch can be reported; nil when no form has the name.
func (l *Library) RelayFormFor(name string, systemV float64) *RelayForm {
	f := cmp.Or(l.RelayForm(name), find(l.RelayForms, name, func(f *RelayForm) (string, []string) { return f.Family, nil }))
	if f == nil || fold(name) == fold(f.Name) || math.Abs(f.CoilV-systemV) < 0.5 {
		return f
	}
	for _, other := range l.RelayForms {
		if other.Family != "" && other.Family == f.Family && math.Abs(other.CoilV-systemV) < 0.5 {
			return other
		}
	}
	return f
}

func relayNames(f *RelayForm) (string, []string) { return f.Name, f.Aliases }

func (f *RelayForm) check(m *row) {
	f.TabMm = m.tabs("tab mm")
	if f.DropOutV >= f.PullInV && f.PullInV != 0 {
		m.r.report(m.node, "\"drop out V\" is not below \"pull in V\"", "", "")
	}
	if f.Changeover != (f.BreakA > 0) {
		m.r.report(m.node, "a changeover form needs \"break A\", and only such a form has it", "", "")
	}
}

// tabs reads tab widths in mm by DIN 72552 terminal number.
func (m *row) tabs(key string) map[string]float64 {
	v := m.get(key)
	if v == nil {
		return nil
	}
	sub, ok := m.r.newRow(v, "\""+key+"\"")
	if !ok {
		return nil
	}
	out := map[string]float64{}
	for _, number := range []string{"30", "85", "86", "87", "87a"} {
		if sub.has(number) {
			out[number] = sub.number(number, 1, 20)
		} else {
			sub.get(number)
		}
	}
	sub.finish()
	return out
}

// End is the terminal kind at a DIN terminal number; "" when nothing says.
func (f *RelayForm) End(number string) string {
	switch mm := f.TabMm[number]; {
	case mm > 0:
		return fmt.Sprintf("tab %g", mm)
	case number == "85" || number == "86":
		return f.CoilEnd
	}
	return f.ContactEnd
}

// Share is what an ambient temperature in °C leaves of the contacts' ratings,
// 0..1: straight between the points of the derating, flat outside; 1 without one.
func (f *RelayForm) Share(ambientC float64) float64 {
	table := f.Derating
	if len(table) == 0 {
		return 1
	}
	if ambientC <= table[0].AmbientC {
		return table[0].Share
	}
	for i := 1; i < len(table); i++ {
		a, b := table[i-1], table[i]
		if ambientC <= b.AmbientC {
			return a.Share + (ambientC-a.AmbientC)/(b.AmbientC-a.AmbientC)*(b.Share-a.Share)
		}
	}
	return table[len(table)-1].Share
}
