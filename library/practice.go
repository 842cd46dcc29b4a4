package library

import (
	"maps"
	"reflect"
	"slices"
)

// Practice finds a field of use by name or alias; nil when there is none.
func (l *Library) Practice(name string) *Practice { return find(l.Practices, name, practiceNames) }

// inherit takes all of the practice that this one is like, but its name.
func (p *Practice) inherit(m *row) bool {
	like := m.text("like")
	if like == "" {
		return false
	}
	base := m.r.lib.Practice(like)
	if base == nil {
		m.r.reportUnknown(m.values["like"], "practice", like, m.r.lib.Names("practices"))
		return true // what it lacks follows from that
	}
	*p = *base
	p.Name, p.Source = "", maps.Clone(base.Source)
	return true
}

// Among tells whether a practice, or one that it is like, is in a list of names.
func (l *Library) Among(p *Practice, names []string) bool {
	for range l.Practices { // no longer than there are
		if p == nil || slices.Contains(names, p.Name) {
			return p != nil
		}
		p = l.Practice(p.Like)
	}
	return false
}

func practiceNames(p *Practice) (string, []string) { return p.Name, nil }

// check reads the limits, each a mapping of value and source, since they come from
// different documents.
func (p *Practice) check(m *row) {
	if p.UsualWire != "" && m.r.lib.WireType(p.UsualWire) == nil {
		m.r.reportUnknown(m.values["usual wire"], "wire type", p.UsualWire, m.r.lib.Names("wire types"))
	}
	if m.inherits && p.Name == "" {
		m.missing("name")
	}
	if p.Source == nil {
		p.Source = map[string]Source{}
	}
	z := &row{r: m.r, node: m.node}
	if v := m.get("limits"); v == nil {
		if m.inherits {
			return
		}
		m.missing("limits")
	} else if sub, ok := m.r.newRow(v, "\"limits\""); ok {
		z = sub
	}
	z.around, z.inherits = m.around, m.inherits
	v := reflect.ValueOf(p).Elem()
	for i := range v.NumField() {
		if tag := v.Type().Field(i).Tag; tag.Get("limit") != "" {
			z.limit(v.Field(i), tag, p)
		}
	}
	z.finish()
}

// limit reads {value, source, certainty} of a practice.
func (m *row) limit(to reflect.Value, tag reflect.StructTag, p *Practice) {
	key := tag.Get("limit")
	v := m.get(key)
	if v == nil {
		if !m.inherits {
			m.missing(key)
		}
		return
	}
	z, ok := m.r.newRow(v, "\""+key+"\"")
	if !ok {
		return
	}
	p.Source[key] = m.r.source(z, m.around)
	m.r.sourced(v, p.Source[key])
	z.field(to, "value", tag+` need:""`, Source{})
	z.finish()
}
