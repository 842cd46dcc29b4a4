package library

import "reflect"

// Practice finds a field of use by name or alias; nil when there is none.
func (l *Library) Practice(name string) *Practice { return find(l.Practices, name, practiceNames) }

func practiceNames(p *Practice) (string, []string) { return p.Name, nil }

// check reads the limits, each a mapping of value and source, since they come from
// different documents.
func (p *Practice) check(m *row) {
	if p.UsualWire != "" && m.r.lib.WireType(p.UsualWire) == nil {
		m.r.reportUnknown(m.values["usual wire"], "wire type", p.UsualWire, m.r.lib.Names("wire types"))
	}
	p.Source = map[string]Source{}
	z := &row{r: m.r, node: m.node}
	if v := m.get("limits"); v == nil {
		m.missing("limits")
	} else if sub, ok := m.r.newRow(v, "\"limits\""); ok {
		z = sub
	}
	z.around = m.around
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
		m.missing(key)
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
