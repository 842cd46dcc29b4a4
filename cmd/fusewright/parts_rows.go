package main

import (
	"fmt"
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
	{"wire", "insulated wire by family", wireRows},
	{"fuse", "fuses, circuit breakers and PTCs", fuseRows},
	{"relay", "relays", relayRows},
	{"block", "distribution blocks", blockRows},
	{"switch", "switches", switchRows},
	{"terminal", "crimp parts", terminalRows},
	{"plug", "connector families", plugRows},
	{"cover", "sleeves, tapes and conduit", coverRows},
	{"load", "typical loads", loadRows},
	{"colour", "wire colours", colourRows},
	{"battery", "battery chemistries", batteryRows},
	{"practice", "fields of use with their limits", practiceRows},
}

// listRow makes a row; empty figures are left out.
func listRow(name string, s library.Source, figures ...string) partRow {
	var said []string
	for _, f := range figures {
		if f != "" {
			said = append(said, f)
		}
	}
	return partRow{Name: name, Figures: strings.Join(said, ", "), Source: s.Text, Certainty: s.Certainty}
}

// rowsOf maps a list of the library to rows.
func rowsOf[T any](list []*T, row func(*T) partRow) []partRow {
	rows := make([]partRow, 0, len(list))
	for _, item := range list {
		rows = append(rows, row(item))
	}
	return rows
}

// when prints a figure with its label, or nothing for zero.
func when(label string, value float64, d quantity.Dimension) string {
	if value == 0 {
		return ""
	}
	return label + " " + quantity.Plain(value, d)
}

// yes prints a word when it holds.
func yes(holds bool, word string) string {
	if holds {
		return word
	}
	return ""
}

func wireRows(l *library.Library) []partRow {
	return rowsOf(l.WireTypes, func(t *library.WireType) partRow {
		return listRow(t.Name, t.Source, when("class", t.ClassC, quantity.Temperature),
			when("overload", t.OverloadC, quantity.Temperature), when("short circuit", t.ShortC, quantity.Temperature),
			yes(t.Tinned, "tinned"), "sizes "+strings.Join(t.SizeLabels(), " "))
	})
}

func fuseRows(l *library.Library) []partRow {
	return rowsOf(l.FuseTypes, func(t *library.FuseType) partRow {
		var ratings []string
		for _, r := range t.Ratings {
			text := quantity.Plain(r.RatingA, quantity.Current)
			if r.Colour != "" {
				text += " " + r.Colour
			}
			ratings = append(ratings, text)
		}
		return listRow(t.Name, t.Source, when("up to", t.MaxV, quantity.Voltage),
			breaks(t), strings.Join(ratings, "; "))
	})
}

// breaks is the breaking capacity, with that at lower voltages where published.
func breaks(t *library.FuseType) string {
	text := when("breaks", t.BreakingA, quantity.Current)
	for _, b := range t.Breaks {
		text += fmt.Sprintf(" (%s up to %s)", quantity.Plain(b.BreakingA, quantity.Current), quantity.Plain(b.UpToV, quantity.Voltage))
	}
	return text
}

func relayRows(l *library.Library) []partRow {
	return rowsOf(l.RelayForms, func(t *library.RelayForm) partRow {
		return listRow(t.Name, t.Source, when("coil", t.CoilV, quantity.Voltage), when("of", t.CoilOhm, quantity.Resistance),
			when("make", t.MakeA, quantity.Current), when("break", t.BreakA, quantity.Current),
			when("lamps", t.LampA, quantity.Current), when("motors", t.MotorA, quantity.Current),
			shortTimes(t), when("coil live for at most", t.CoilOnS, quantity.Duration))
	})
}

// shortTimes are the currents that the contact carries for a while.
func shortTimes(t *library.RelayForm) string {
	var list []string
	for _, p := range t.ShortTime {
		list = append(list, fmt.Sprintf("%s for %s", quantity.Plain(p.CurrentA, quantity.Current), quantity.Plain(p.S, quantity.Duration)))
	}
	return strings.Join(list, ", ")
}

func blockRows(l *library.Library) []partRow {
	return rowsOf(l.Blocks, func(t *library.BlockType) partRow {
		return listRow(t.Name, t.Source, fmt.Sprintf("%d ways", t.Ways), when("each", t.WayA, quantity.Current),
			when("in total", t.TotalA, quantity.Current), t.FuseType, yes(t.Sealed, "sealed"))
	})
}

func switchRows(l *library.Library) []partRow {
	return rowsOf(l.Switches, func(t *library.SwitchType) partRow {
		return listRow(t.Name, t.Source, when("resistive", t.ResistiveA, quantity.Current),
			when("lamps", t.LampA, quantity.Current), when("motors", t.MotorA, quantity.Current), yes(t.Sealed, "sealed"), yes(t.Isolates, "isolates"))
	})
}

func terminalRows(l *library.Library) []partRow {
	return rowsOf(l.Terminals, func(t *library.Terminal) partRow {
		return listRow(t.Name, t.Source, t.Kind,
			fmt.Sprintf("%s to %s", quantity.Plain(t.MinMm2, quantity.Area), quantity.Plain(t.MaxMm2, quantity.Area)),
			when("up to", t.MaxA, quantity.Current), when("strip", t.StripMm/1000, quantity.Length), yes(t.Sealed, "sealed"))
	})
}

func plugRows(l *library.Library) []partRow {
	return rowsOf(l.Connectors, func(c *library.Connector) partRow {
		ways := strings.Trim(strings.ReplaceAll(fmt.Sprint(c.Ways), " ", ", "), "[]") + " ways"
		return listRow(c.Name, c.Source, ways, "contact "+c.PinKind,
			fmt.Sprintf("%s to %s", quantity.Plain(c.MinMm2, quantity.Area), quantity.Plain(c.MaxMm2, quantity.Area)),
			when("up to", c.MaxA, quantity.Current), yes(c.Sealed, "sealed"))
	})
}

func coverRows(l *library.Library) []partRow {
	return rowsOf(l.Covers, func(t *library.Cover) partRow {
		return listRow(t.Name, t.Source, t.Kind, when("up to", t.MaxC, quantity.Temperature),
			yes(t.Abrasion, "against chafing"), yes(t.Pinch, "against pinching"), yes(t.Heat, "against heat"), yes(t.Stiff, "stiff"))
	})
}

func loadRows(l *library.Library) []partRow {
	return rowsOf(l.Loads, func(t *library.LoadType) partRow {
		return listRow(t.Name, t.Source, t.Behaves, when("", t.PowerW, quantity.Power),
			when("", t.CurrentA, quantity.Current), when("at", t.RatedV, quantity.Voltage), yes(t.Highest, "the most it draws"),
			when("at most", t.Most.PowerW, quantity.Power), when("on for", t.OnForS, quantity.Duration), when("every", t.EveryS, quantity.Duration))
	})
}

func colourRows(l *library.Library) []partRow {
	return rowsOf(l.Colours, func(t *library.Colour) partRow { return listRow(t.Code, t.Source, t.Name) })
}

func batteryRows(l *library.Library) []partRow {
	return rowsOf(l.Batteries, func(t *library.Chemistry) partRow {
		return listRow(t.Name, t.Source, fmt.Sprintf("Peukert %.3g", t.Peukert),
			when("start reserve", t.StartReserve, quantity.Share))
	})
}

func practiceRows(l *library.Library) []partRow {
	return rowsOf(l.Practices, func(t *library.Practice) partRow {
		return listRow(t.Name, library.Source{Text: "see 'fusewright explain'"},
			when("drop, critical", t.DropCritical, quantity.Share), when("drop, other", t.DropOther, quantity.Share),
			when("fuse within", t.FuseDistanceM, quantity.Length), when("least conductor", t.MinMm2, quantity.Area),
			"currents from "+t.Ampacity, yes(t.UsualWire != "", "usual wire "+t.UsualWire), yes(t.Afloat, "boats"))
	})
}
