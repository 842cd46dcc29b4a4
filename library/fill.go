package library

import (
	"reflect"
	"strconv"
	"strings"
)

// inheritor is a type of row that may take what it leaves out from another.
type inheritor interface{ inherit(m *row) bool }

// checker is a type of row that has more to read or to check than its tags say.
type checker interface{ check(m *row) }

var sourceType = reflect.TypeFor[Source]()

// fill reads the fields of a row by their tags, which are all there is to say of
// most of them:
//
//	key        name in the file; fields without one are read by check
//	need       the value must be there
//	in         the range of a number as the file has it, both ends allowed
//	per        units of the file in one of the field: 1000 of milliohms
//	usual      the number that holds when none is given; without it, 0
//	words      the words a text may be; the first holds when none is given
//	ascending  the field by which the entries of a list rise
//	show       how the command line lists it: * is the value, *% a share; of a field
//	           that is true or false, what is said when it holds
//
// The field Source takes where the row's numbers come from.
func (m *row) fill(to any, s Source) {
	if x, ok := to.(inheritor); ok {
		m.inherits = x.inherit(m)
	}
	v := reflect.ValueOf(to).Elem()
	for i := range v.NumField() {
		f := v.Type().Field(i)
		if f.Name == "Source" && f.Type == sourceType {
			v.Field(i).Set(reflect.ValueOf(s))
		}
		if key, ok := f.Tag.Lookup("key"); ok {
			m.field(v.Field(i), key, f.Tag, s)
		}
	}
	if c, ok := to.(checker); ok {
		c.check(m)
	}
}

// field reads one value.
func (m *row) field(to reflect.Value, key string, tag reflect.StructTag, s Source) {
	_, need := tag.Lookup("need")
	if m.inherits && !m.has(key) {
		m.mark(key)
		return
	}
	switch p := to.Addr().Interface().(type) {
	case *string:
		if words, ok := tag.Lookup("words"); ok {
			*p = m.choice(key, strings.Split(words, "|")...)
			need = need && !m.has(key)
		} else {
			*p = m.text(key)
			need = need && *p == ""
		}
	case *[]string:
		*p = m.texts(key)
	case *bool:
		*p = m.yes(key)
		need = need && !m.has(key)
	case *float64:
		*p = m.tagged(key, tag)
		need = need && !m.has(key)
	case *int:
		*p = int(m.tagged(key, tag))
		need = need && !m.has(key)
	case *[]float64, *[]int:
		lo, hi := limits(tag)
		for _, n := range m.list(key) {
			x := reflect.ValueOf(m.r.number(n, key, lo, hi))
			to.Set(reflect.Append(to, x.Convert(to.Type().Elem())))
		}
		need = need && to.Len() == 0
	default:
		if to.Kind() == reflect.Struct {
			m.part(to.Addr().Interface(), key, s)
			break
		}
		m.entries(to, key, s)
		need = need && to.Len() == 0
	}
	if need {
		m.missing(key)
	}
	if by, ok := tag.Lookup("ascending"); ok {
		m.r.ascending(m.node, key, to.Len(), func(i int) float64 {
			return reflect.Indirect(to.Index(i)).FieldByName(by).Float()
		})
	}
}

// part reads a mapping inside a row. It may have a source of its own; that of the
// row is around it.
func (m *row) part(to any, key string, s Source) {
	node := m.get(key)
	if node == nil {
		if own := reflect.ValueOf(to).Elem().FieldByName("Source"); own.IsValid() {
			own.Set(reflect.ValueOf(s))
		}
		return
	}
	if z, ok := m.r.newRow(node, strconv.Quote(key)); ok {
		s = m.r.source(z, s)
		m.r.sourced(z.node, s)
		z.fill(to, s)
		z.finish()
	}
}

// entries reads a list of rows inside a row.
func (m *row) entries(to reflect.Value, key string, s Source) {
	of := to.Type().Elem()
	m.each(key, s, func(z *row, s Source) {
		if of.Kind() == reflect.Pointer {
			entry := reflect.New(of.Elem())
			z.fill(entry.Interface(), s)
			to.Set(reflect.Append(to, entry))
			return
		}
		entry := reflect.New(of)
		z.fill(entry.Interface(), s)
		to.Set(reflect.Append(to, entry.Elem()))
	})
}

// tagged reads a number by its tags.
func (m *row) tagged(key string, tag reflect.StructTag) float64 {
	if usual, ok := tag.Lookup("usual"); ok && !m.has(key) {
		m.mark(key)
		return decimal(usual)
	}
	lo, hi := limits(tag)
	x := m.number(key, lo, hi)
	if per, ok := tag.Lookup("per"); ok {
		x /= decimal(per)
	}
	return x
}

// limits are the two ends of the tag "in".
func limits(tag reflect.StructTag) (lo, hi float64) {
	from, to, _ := strings.Cut(tag.Get("in"), ",")
	return decimal(from), decimal(to)
}

// decimal is a number of a tag.
func decimal(s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic("library: a tag has the number " + strconv.Quote(s))
	}
	return x
}
