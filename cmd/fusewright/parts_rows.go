package main

import (
	"fmt"
	"reflect"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/library"
)

// partRow is one part as listed.
type partRow struct {
	Kind      string `json:"kind,omitempty"` // set when rows of several kinds are listed
	Name      string `json:"name"`
	Figures   string `json:"figures"`
	Source    string `json:"source"`
	Certainty string `json:"certainty"`
}

// partKind is a list of the library under the name the command takes.
type partKind struct {
	name, what string
	rows       func(*library.Library) []partRow
}

// partKinds are the lists in the order they are shown.
var partKinds = []partKind{
	{"wire", "insulated wire by family", func(l *library.Library) []partRow { return rowsOf(l.WireTypes, wireSizes) }},
	{"fuse", "fuses, circuit breakers and PTCs", func(l *library.Library) []partRow { return rowsOf(l.FuseTypes, fuseRatings) }},
	{"relay", "relays", func(l *library.Library) []partRow { return rowsOf(l.RelayForms, nil) }},
	{"block", "distribution blocks", func(l *library.Library) []partRow { return rowsOf(l.Blocks, nil) }},
	{"switch", "switches", func(l *library.Library) []partRow { return rowsOf(l.Switches, nil) }},
	{"diode", "diodes", func(l *library.Library) []partRow { return rowsOf(l.Diodes, nil) }},
	{"charger", "chargers of a battery", func(l *library.Library) []partRow { return rowsOf(l.Chargers, nil) }},
	{"terminal", "crimp parts", func(l *library.Library) []partRow { return rowsOf(l.Terminals, nil) }},
	{"plug", "connector families", func(l *library.Library) []partRow { return rowsOf(l.Connectors, nil) }},
	{"cover", "sleeves, tapes and conduit", func(l *library.Library) []partRow { return rowsOf(l.Covers, nil) }},
	{"load", "typical loads", func(l *library.Library) []partRow { return rowsOf(l.Loads, nil) }},
	{"colour", "wire colours", func(l *library.Library) []partRow { return rowsOf(l.Colours, nil) }},
	{"battery", "battery chemistries", func(l *library.Library) []partRow { return rowsOf(l.Batteries, nil) }},
	{"practice", "fields of use with their limits", func(l *library.Library) []partRow { return rowsOf(l.Practices, nil) }},
}

// rowsOf lists rows of the library: the name, which is the first field, and the
// fields that the library labels for it; more = what comes behind those.
func rowsOf[T any](list []*T, more func(*T) string) []partRow {
	rows := make([]partRow, 0, len(list))
	for _, item := range list {
		v, said := reflect.ValueOf(item).Elem(), []string{}
		for i := range v.NumField() {
			switch text := figure(v.Field(i), v.Type().Field(i)); {
			case text == "":
			case strings.HasPrefix(text, "to "), strings.HasPrefix(text, "("): // the other end of a range, a remark
				said[len(said)-1] += " " + text
			default:
				said = append(said, text)
			}
		}
		if more != nil {
			said = append(said, more(item))
		}
		source, ok := v.FieldByName("Source").Interface().(library.Source)
		if !ok { // a practice has one for each limit
			source.Text = "see 'fusewright explain'"
		}
		rows = append(rows, partRow{Name: v.Field(0).String(), Figures: strings.Join(said, ", "),
			Source: source.Text, Certainty: source.Certainty})
	}
	return rows
}

// figure prints a field as the library says it is shown, with the value in place of
// the star; "" when it is not, or has nothing to say.
func figure(v reflect.Value, f reflect.StructField) string {
	form := f.Tag.Get("show")
	if v.IsZero() {
		return ""
	}
	var text string
	switch x := v.Interface().(type) {
	case float64:
		if before, isShare := strings.CutSuffix(form, "%"); isShare {
			form, text = before, quantity.Plain(x, quantity.Share)
		} else {
			text = inUnit(x, f.Name)
		}
	case []int:
		text = strings.Trim(strings.ReplaceAll(fmt.Sprint(x), " ", ", "), "[]")
	default:
		text = inner(v)
	}
	return strings.Replace(form, "*", text, 1)
}

// inner prints what is neither a number nor a list of them: of a row inside a row
// what its fields show, of a list its entries.
func inner(v reflect.Value) string {
	var said []string
	switch v.Kind() {
	case reflect.Slice:
		for i := range v.Len() {
			said = append(said, inner(v.Index(i)))
		}
		return strings.Join(said, ", ")
	case reflect.Struct:
		for i := range v.NumField() {
			if text := figure(v.Field(i), v.Type().Field(i)); text != "" {
				said = append(said, text)
			}
		}
		return strings.Join(said, " ")
	}
	return fmt.Sprint(v)
}

// units are the endings of the names of fields with what they are figures of.
var units = []struct {
	ending string
	of     quantity.Dimension
	in     float64 // base units
}{
	{"Mm2", quantity.Area, 1}, {"Mm", quantity.Length, 1e-3}, {"M", quantity.Length, 1}, {"Ohm", quantity.Resistance, 1},
	{"A", quantity.Current, 1}, {"V", quantity.Voltage, 1}, {"W", quantity.Power, 1}, {"C", quantity.Temperature, 1},
	{"S", quantity.Duration, 1},
}

// inUnit prints a figure with the unit that the name of its field ends in.
func inUnit(x float64, name string) string {
	for _, u := range units {
		if strings.HasSuffix(name, u.ending) {
			return quantity.Plain(x*u.in, u.of)
		}
	}
	return fmt.Sprintf("%.3g", x)
}

func wireSizes(t *library.WireType) string { return "sizes " + strings.Join(t.SizeLabels(), " ") }

func fuseRatings(t *library.FuseType) string {
	var ratings []string
	for _, r := range t.Ratings {
		ratings = append(ratings, strings.TrimSpace(quantity.Plain(r.RatingA, quantity.Current)+" "+r.Colour))
	}
	return strings.Join(ratings, "; ")
}
