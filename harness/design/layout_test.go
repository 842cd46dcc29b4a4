package design

import (
	"strings"
	"testing"
)

// sound is a design without a mistake, in which the slips below are made.
const sound = `fusewright: 1
title: "Yard quad: lamps"
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, at: tray}
wire: {insulation: ISO 6722 thin wall class B, size: 1.5 mm²}
places:
  tray: {ambient: 40 °C}
  seat: {ambient: 35 °C}
runs:
  - {from: tray, to: seat, length: 500 mm}
  - from: tray
    to: seat
    length: 700 mm
fuses:
  main:
    rating: 20 A
    at: tray
    fed by: battery
  spare: {rating: 5 A, at: tray, fed by: main, wire: {size: 1 mm²}}
loads:
  lamp: {power: 18 W, at: seat, fed by: main, returns to: stud}
  horn: {power: 30 W, symbol: horn, at: seat, fed by: main, returns to: stud}
grounds:
  stud: {at: seat}
notes: [keep clear of the fork, "tie every 100 mm"]
`

// slip is one mistake made by hand: what is put in place of what, and what is said
// of it, and of nothing else.
type slip struct{ name, was, now, want string }

var layoutSlips = []slip{
	// indentation
	{"a key too deep", "    at: tray\n    fed by", "     at: tray\n    fed by", "18:6: line 18 is indented by 5 spaces, its neighbours by 4"},
	{"a key not deep enough", "    at: tray\n    fed by", "   at: tray\n    fed by", "18:4: line 18 is indented by 3 spaces, its neighbours by 4"},
	{"the first key too deep", "    rating: 20 A", "     rating: 20 A", "17:6: line 17 is indented by 5 spaces, its neighbours by 4"},
	{"a name too deep", "  seat: {ambient", "   seat: {ambient", "9:4: line 9 is indented by 3 spaces, its neighbours by 2"},
	{"a name with its keys too deep", "  main:\n", "   main:\n", "16:4: line 16 is indented by 3 spaces, its neighbours by 2"},
	{"a section indented", "\nloads:", "\n loads:", "21:2: line 21 is indented by 1 space, its neighbours by 0"},
	{"the keys of a list item under its dash", "    to: seat", "  to: rack", "13:3: line 13 is indented by 2 spaces, its neighbours by 4 (expected the keys of a list item in one column, 5)"},
	{"a tab", "    at: tray\n    fed by", "\tat: tray\n    fed by", "18:1: line 18 is indented with a tab (expected spaces)"},
	{"tabs on lines in a row", "    rating: 20 A\n    at: tray\n    fed by", "\t\trating: 20 A\n\t\tat: tray\n\t\tfed by", "17:1: line 17 is indented with a tab (expected spaces)"},
	{"a no-break space", "  seat: {ambient", "  seat: {ambient", "9:1: line 9 is indented with a no-break space (expected spaces)"},
	// brackets
	{"a brace never closed", "at: tray}\nwire", "at: tray\nwire", `5:10: "{" on line 5 is never closed`},
	{"a brace never closed before a neighbour", "  tray: {ambient: 40 °C}", "  tray: {ambient: 40 °C", `8:9: "{" on line 8 is never closed`},
	{"the inner brace never closed", "{size: 1 mm²}}", "{size: 1 mm²}", `20:10: "{" on line 20 is never closed`},
	{"a bracket never closed", `"tie every 100 mm"]`, `"tie every 100 mm"`, `26:8: "[" on line 26 is never closed`},
	{"a brace never closed, then a comment", "  stud: {at: seat}", "  stud: {at: seat   # by the hinge", `25:9: "{" on line 25 is never closed`},
	{"a brace too many", "  stud: {at: seat}", "  stud: {at: seat}}", `25:19: "}" closes nothing`},
	{"a bracket for a brace", "  stud: {at: seat}", "  stud: {at: seat]", `25:18: "]" closes the "{" of line 25 (expected "}")`},
	{"a brace never opened", "  stud: {at: seat}", "  stud: at: seat}", `25:9: "}" at the end of line 25 has no "{" (expected "{" here)`},
	// commas
	{"a comma left out", "{power: 18 W, at", "{power: 18 W at", `22:21: a comma is missing before "at"`},
	{"a comma left out before two words", "at: seat, fed by: main, returns to: stud}\n  horn", "at: seat fed by: main, returns to: stud}\n  horn", `22:31: a comma is missing before "fed by"`},
	{"a comma left out after a quote", `fork, "tie every 100 mm"]`, `fork, "a" "tie every 100 mm"]`, `26:35: `},
	{"a comma left out after a brace", "fed by: main, wire: {size: 1 mm²}}", "wire: {size: 1 mm²} fed by: main}", `20:53: a comma is missing after "}"`},
	{"two commas", "{power: 18 W, at", "{power: 18 W,, at", "22:22: a comma with nothing before it"},
	{"a comma first", "{power: 18 W, at", "{, power: 18 W, at", "22:10: a comma with nothing before it"},
	{"a semicolon", "{power: 18 W, at", "{power: 18 W; at", `22:21: ";" where a comma belongs`},
	{"a comma after a record", "  stud: {at: seat}", "  stud: {at: seat},", "25:19: a comma at the end of a value"},
	// quotes
	{"a quote never closed", `lamps"`, "lamps", `2:8: the quote on line 2 is never closed (expected a closing quote, ")`},
	{"a quote never closed in a list", `100 mm"]`, "100 mm]", `26:33: the quote on line 26 is never closed`},
	{"a quote in quotes", `"Yard quad: lamps"`, `"Yard "quad": lamps"`, `2:14: a quote inside text in quotes ends it`},
	{"an apostrophe in quotes", `"Yard quad: lamps"`, `'Yard's quad: lamps'`, `2:13: a quote inside text in quotes ends it`},
	{"a backslash in quotes", `"Yard quad: lamps"`, `"Yard\quad: lamps"`, `2:13: a backslash in text between "…"`},
	// colons
	{"no space after a colon", "    at: tray\n    fed by", "    at:tray\n    fed by", `18:8: no space after the colon of "at"`},
	{"no space after a colon in braces", "{power: 18 W, at: seat", "{power: 18 W, at:seat", `22:26: load "lamp": no space after the colon of "at"`},
	{"no colon", "    at: tray\n    fed by", "    at tray\n    fed by", `18:7: no colon after "at"`},
	{"no colon in braces", "{power: 18 W, at: seat", "{power: 18 W, at seat", `22:25: load "lamp": no colon after "at"`},
	{"no colon after a section", "loads:\n", "loads\n", `21:6: no colon after "loads"`},
	{"an equals sign", "    at: tray\n    fed by", "    at = tray\n    fed by", `18:8: "=" where a colon belongs`},
	{"an equals sign in braces", "{power: 18 W, at: seat", "{power: 18 W, at=seat", `22:25: load "lamp": "=" where a colon belongs, after "at"`},
	{"a colon in text", `"Yard quad: lamps"`, "Yard quad: lamps", "2:17: a colon inside text (expected quotes around the text"},
	{"two keys on a line", "    at: tray\n    fed by", "    at: tray fed by", `18:14: a second key, "fed by", on one line`},
	{"a colon in text in braces", "  tray: {ambient: 40 °C}", "  tray: {ambient: 40 °C, label: rack: left}", `8:37: a second colon in one entry`},
	// lists, names, signs
	{"a key twice", "    at: tray\n    fed by", "    at: tray\n    at: tray\n    fed by", `19:5: fuse "main": the key "at" is given twice (see slips.yaml:18:5)`},
	{"a section twice", "notes: [", "system: 12 V\nnotes: [", `26:1: the design: the key "system" is given twice (see slips.yaml:3:1)`},
	{"a list for a mapping", "  tray: {ambient: 40 °C}\n  seat: {ambient: 35 °C}", "  - {ambient: 40 °C}\n  - {ambient: 35 °C}", `8:3: "places" is a list (expected a mapping with the name of each place as key`},
	{"an item among keys", "  seat: {ambient: 35 °C}", "  - seat: {ambient: 35 °C}", `9:3: an item of a list ("-") among keys`},
	{"no space after a dash", "  - {from: tray, to: seat", "  -{from: tray, to: seat", `11:4: no space after the "-" of a list item`},
	{"no dash", "  - {from: tray, to: seat, length: 500 mm}\n  - from: tray\n    to: seat\n    length: 700 mm", "  - {from: tray, to: seat, length: 500 mm}\n  from: tray\n  to: rack\n  length: 700 mm", `12:3: no "-" before an item of a list`},
	{"a value and keys below", "  main:\n", "  main: 20 A\n", "16:9: a value here, and more indented below it"},
	{"a reserved sign", "    at: tray\n    fed by", "    at: @tray\n    fed by", `18:9: text that begins with "@" (expected quotes around it)`},
	{"a star", "    at: tray\n    fed by", "    at: *tray\n    fed by", `18:9: "*tray" repeats a value that no "&tray" marks`},
	{"a comment of another language", "grounds:\n", "// the stud\ngrounds:\n", `24:1: a comment that begins with "//" (expected "#")`},
}

// Each slip is said where it is, in words for what a person did, and brings on no
// further message; also with the line ends and the mark of other systems.
func TestLayoutSlips(t *testing.T) {
	base := strings.Replace(sound, "to: rack", "to: seat", 1)
	if _, err := Read("slips.yaml", []byte(base), nil); err != nil {
		t.Fatal(err)
	}
	for _, c := range layoutSlips {
		t.Run(c.name, func(t *testing.T) {
			c.was, c.now = strings.ReplaceAll(c.was, "rack", "seat"), strings.ReplaceAll(c.now, "rack", "seat")
			if strings.Count(base, c.was) != 1 {
				t.Fatalf("%q stands %d times", c.was, strings.Count(base, c.was))
			}
			text := strings.Replace(base, c.was, c.now, 1)
			for _, src := range []string{text, strings.ReplaceAll(text, "\n", "\r\n"), "\uFEFF" + text} {
				_, err := Read("slips.yaml", []byte(src), nil)
				if err == nil || !strings.HasPrefix(err.Error(), "slips.yaml:"+c.want) || strings.Contains(err.Error(), "\n") {
					t.Errorf("got  %v\nwant slips.yaml:%s", err, c.want)
				}
			}
		})
	}
}
