// Package example makes whole designs of the rules' examples, for tests.
package example

import "strings"

// base is a small clean design on an invented machine. The examples of
// the rules replace or add whole sections of it.
const base = `fusewright: 1
title: example
vehicle: invented machine
revision: A
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 12 mΩ, at: battery tray}
charging:
  regulated: 14.3 V
  output: {1300 rpm: 14 A, 3000 rpm: 24 A, 6000 rpm: 28 A}
  idle: 1300 rpm
  cruise: 4000 rpm
  hot derating: 0 %
vehicle loads:
  machine: {power: 90 W, when: running}
places:
  battery tray: {ambient: 40 °C}
  rear: {ambient: 35 °C}
runs:
  - {from: battery tray, to: rear, length: 600 mm}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 10 A, spare: 6 A, supervised: no}
grounds:
  frame: {kind: frame stud, at: battery tray, limit: 60 A, frame resistance: 2 mΩ}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`

// Design makes a whole design of a rule's example: the base with the example's
// sections in place of its own.
func Design(snippet string) string {
	order, sections := splitSections(base)
	added, own := splitSections(snippet)
	for _, key := range added {
		if _, ok := sections[key]; !ok {
			order = append(order, key)
		}
		sections[key] = own[key]
	}
	var b strings.Builder
	for _, key := range order {
		if key == "grounds" && own[key] == "" && !returnsToFrame(sections) {
			continue // a ground that nothing uses is a finding
		}
		b.WriteString(sections[key])
	}
	return b.String()
}

// returnsToFrame tells whether another section names the base's ground.
func returnsToFrame(sections map[string]string) bool {
	for key, text := range sections {
		if key != "grounds" && strings.Contains(text, "frame") {
			return true
		}
	}
	return false
}

// splitSections cuts YAML text at its top-level keys.
func splitSections(text string) (order []string, sections map[string]string) {
	sections = map[string]string{}
	key := ""
	for _, line := range strings.SplitAfter(text, "\n") {
		if strings.TrimSpace(line) == "" {
			continue
		}
		if name, _, ok := strings.Cut(line, ":"); ok && line[0] != ' ' && line[0] != '-' && line[0] != '#' {
			key = name
			order = append(order, key)
		}
		sections[key] += line
	}
	return order, sections
}
