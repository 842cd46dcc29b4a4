package library

import (
	"fmt"
	"math"
)

// RelayForm finds a relay form by name or alias; nil when there is none.
func (l *Library) RelayForm(name string) *RelayForm {
	return find(l.RelayForms, name, relayNames)
}

// RelayFormFor finds a relay form for a system voltage: the form of that name,
// or, when its coil is for another voltage, the member of its family whose
// coil fits. When the family has none, the named form itself comes back, so
// that the mismatch can be reported; nil when no form has the name.
func (l *Library) RelayFormFor(name string, systemV float64) *RelayForm {
	f := l.RelayForm(name)
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

// RelayFormNames lists the relay forms in file order.
func (l *Library) RelayFormNames() []string { return namesOf(l.RelayForms, relayNames) }

func relayNames(f *RelayForm) (string, []string) { return f.Name, f.Aliases }

func readRelayForm(m *row, s Source) {
	f := &RelayForm{
		Name:       m.needText("name"),
		Aliases:    m.texts("aliases"),
		Family:     m.text("family"),
		Standard:   m.text("standard"),
		CoilV:      m.needNumber("coil V", 1, 120),
		CoilOhm:    m.needNumber("coil ohm", 1, 100000),
		PullInV:    m.needNumber("pull in V", 0.5, 120),
		DropOutV:   m.needNumber("drop out V", 0.05, 120),
		Changeover: m.yes("changeover"),
		MakeA:      m.needNumber("make A", 0.1, 2000),
		MakingA:    m.number("making A", 0.1, 2000),
		BreakA:     m.number("break A", 0.1, 2000),
		LampA:      m.number("lamp A", 0.1, 2000),
		MotorA:     m.number("motor A", 0.1, 2000),
		ContactOhm: m.needNumber("contact mohm", 0.01, 1000) / 1e3,
		MaxC:       m.needNumber("max C", 20, 300),
		Derating:   m.ratedAt("carries", s),
		TabMm:      m.tabs("tab mm"),
		ContactEnd: m.text("contact end"),
		CoilEnd:    m.text("coil end"),
		CoilOnS:    m.number("coil on s", 0.1, 3600),
		Source:     s,
	}
	m.each("short time", s, func(z *row, _ Source) {
		f.ShortTime = append(f.ShortTime, CarriesFor{z.needNumber("s", 0.001, 1e5), z.needNumber("A", 0.1, 1e5)})
	})
	m.r.ascending(m.node, "short time", len(f.ShortTime), func(i int) float64 { return f.ShortTime[i].S })
	m.r.sourced(m.node, s)
	if f.DropOutV >= f.PullInV && f.PullInV != 0 {
		m.r.report(m.node, "\"drop out V\" is not below \"pull in V\"", "", "")
	}
	if f.Changeover != (f.BreakA > 0) {
		m.r.report(m.node, "a changeover form needs \"break A\", and only such a form has it", "", "")
	}
	m.r.lib.RelayForms = add(m, "relay forms", m.r.lib.RelayForms, f, f.Name, f.Aliases)
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
