package design

import (
	"strings"
	"testing"
)

// Mistakes about positions, each with its place and what would be right.
func TestPositionMistakes(t *testing.T) {
	tests := []struct{ name, switches, feed, situation, want string }{
		{"no such output", "{lights: {rating: 5 A, fed by: battery, positions: [off, ride, camp]}}", "lights rid", "{}",
			`has no output "rid" (did you mean "lights ride"?)`},
		{"which output", "{lights: {rating: 5 A, fed by: battery, positions: [off, ride, camp]}}", "lights", "{}",
			`is fed by switch "lights", but by which output (expected lights ride or lights camp)`},
		{"no such position", "{lights: {rating: 5 A, fed by: battery, positions: [off, ride, camp]}}", "lights ride", "{switches: {lights: camping}}",
			`switch "lights" has no position "camping" (expected off, ride or camp)`},
		{"no positions", "{lights: {rating: 5 A, fed by: battery}}", "lights", "{switches: {lights: on}}", `switch "lights" has no positions`},
		{"closed", "{lights: {rating: 5 A, fed by: battery, positions: [off, ride]}}", "lights ride", "{closed: [lights]}",
			"\"lights\" has positions (expected `switches: {lights: ride}`"},
		{"twice", "{lights: {rating: 5 A, fed by: battery, positions: [off, ride, Ride]}}", "lights ride", "{}", `"Ride" is named twice`},
		{"one", "{lights: {rating: 5 A, fed by: battery, positions: [ride]}}", "lights ride", "{}", "has a single position (expected two or more"},
		{"a word", "{lights: {rating: 5 A, fed by: battery, positions: ride}}", "battery", "{}", "is a single value (expected a list of positions"},
		{"in a return, no such output", "{lights: {rating: 5 A, returns to: battery negative, positions: [off, ride, camp]}}", "battery, returns to: lights rid", "{}",
			`has no output "rid" (did you mean "lights ride"?)`},
		{"in a return, which output", "{lights: {rating: 5 A, returns to: battery negative, positions: [off, ride, camp]}}", "battery, returns to: lights", "{}",
			`load "lamp" returns to switch "lights", but by which output (expected lights ride or lights camp)`},
		{"in a return, gives nothing", "{lights: {rating: 5 A, returns to: battery negative, positions: {off: none, on: none}}}", "battery, returns to: lights on", "{}",
			`returns to switch "lights", no position of which gives anything`},
		{"in a return, fed by it", "{lights: {rating: 5 A, returns to: battery negative, positions: [off, ride]}}", "lights ride", "{}", "a switch that is in a return"},
		{"pole of a pole", "{a: {rating: 5 A, fed by: battery}, b: {pole of: a, fed by: battery}, c: {pole of: b, fed by: battery}}", "c", "{}",
			`"b" has no handle of its own`},
		{"rating of a pole", "{a: {rating: 5 A, fed by: battery}, b: {pole of: a, rating: 5 A, fed by: battery}}", "b", "{}", `"rating" is that of the switch`},
		{"momentary without rest", "{lights: {rating: 5 A, fed by: battery, momentary: yes, positions: [ride, camp]}}", "lights ride", "{}",
			"is momentary and gives something in each position (expected a position to spring back to, such as `off: none`)"},
		{"output named as a terminal", "{winch: {rating: 5 A, fed by: battery, positions: [in, off]}}", "winch in", "{}",
			`output "in" would read as the switch's own terminal of that name (expected another name for the output, such as "reel in"`},
		{"another position of a pole", "{a: {rating: 5 A, fed by: battery, positions: [off, ride]}, b: {pole of: a, fed by: battery, positions: {camp: x}}}", "b x", "{}",
			`"a" has no position "camp"`},
	}
	for _, tt := range tests {
		text := heading + "wire: {size: 1 mm²}\nswitches: " + tt.switches + "\nloads: {lamp: {power: 5 W, fed by: " + tt.feed
		if !strings.Contains(tt.feed, "returns to") {
			text += ", returns to: battery negative"
		}
		text += "}}\nsituations: {s: " + tt.situation + "}\n"
		_, err := Read("test.yaml", []byte(text), nil)
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v\nwant %s", tt.name, err, tt.want)
		}
	}
}

// A rocker that springs back may have positions, some of them called in and out.
func TestMomentaryPositions(t *testing.T) {
	text := heading + "wire: {size: 1 mm²}\nswitches: {winch: {rating: 5 A, fed by: {battery: {length: 1 m}}, momentary: yes, positions: {in: pull, off: none, out: pay}}}\n" +
		"loads: {lamp: {power: 5 W, fed by: winch pull, wire: {length: 1 m}, returns to: battery negative, return wire: {length: 1 m}}}\n"
	d, err := Read("test.yaml", []byte(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	if s := d.Switches[0]; !s.Momentary || len(s.Positions) != 3 || !s.Gives("in", "pull") || s.Gives("off", "pull") {
		t.Errorf("%+v", s)
	}
}
