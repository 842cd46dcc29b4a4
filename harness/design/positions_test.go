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
		{"in a return", "{lights: {rating: 5 A, returns to: battery negative, positions: [off, ride]}}", "battery", "{}", "is in a return and has positions"},
		{"pole of a pole", "{a: {rating: 5 A, fed by: battery}, b: {pole of: a, fed by: battery}, c: {pole of: b, fed by: battery}}", "c", "{}",
			`"b" has no handle of its own`},
		{"rating of a pole", "{a: {rating: 5 A, fed by: battery}, b: {pole of: a, rating: 5 A, fed by: battery}}", "b", "{}", `"rating" is that of the switch`},
		{"another position of a pole", "{a: {rating: 5 A, fed by: battery, positions: [off, ride]}, b: {pole of: a, fed by: battery, positions: {camp: x}}}", "b x", "{}",
			`"a" has no position "camp"`},
	}
	for _, tt := range tests {
		text := heading + "wire: {size: 1 mm²}\nswitches: " + tt.switches + "\nloads: {lamp: {power: 5 W, fed by: " + tt.feed +
			", returns to: battery negative}}\nsituations: {s: " + tt.situation + "}\n"
		_, err := Read("test.yaml", []byte(text), nil)
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v\nwant %s", tt.name, err, tt.want)
		}
	}
}
