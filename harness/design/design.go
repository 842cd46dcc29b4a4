// Package design is a harness as its builder describes it: source, vehicle
// loads, places, runs, and parts that each name what feeds them and where they
// return. Read turns YAML text into it, keeping the line and column of every
// value and collecting every mistake. It knows no network and no physics.
//
// All quantities are SI (volts, amperes, ohms, watts, metres, seconds; areas in
// square metres are avoided: wire areas are in mm² as the trade prints them;
// temperatures in °C; engine speed in revolutions per minute; charge in Ah).
package design

import (
	"fusewright/harness/design/problem"
	"fusewright/library"
)

// Quantity is a value with its unit as it was read.
type Quantity struct {
	Value float64     // in the base unit named by the field that holds it
	Text  string      // as written; empty when not given
	Pos   problem.Pos // zero when not given
}

// Given tells whether the design says the value.
func (q Quantity) Given() bool { return q.Text != "" }

// Or is the value, or a fallback when it is not given.
func (q Quantity) Or(fallback float64) float64 {
	if q.Given() {
		return q.Value
	}
	return fallback
}

// Text is a word or sentence with its place in the file.
type Text struct {
	Value string
	Pos   problem.Pos
}

// Given tells whether the design says it.
func (t Text) Given() bool { return t.Pos.Line != 0 }

// Design is one harness.
type Design struct {
	File     string
	Title    Text
	Vehicle  Text
	Author   Text
	Revision Text
	Date     Text     // ISO 8601 day
	SystemV  Quantity // 6, 12, 24 or 48
	Practice *library.Practice
	Limits   Limits
	Notes    []Text

	Battery      Battery
	Batteries    []*Bank // further ones
	Charging     Charging
	VehicleLoads []*VehicleLoad

	Places []*Place
	Runs   []*Run
	Wire   WireSpec // defaults
	// AllSizes tells that sizing may choose sizes that no shop has.
	AllSizes bool

	Conditions []When // those that taps name, in the order of the file

	Taps      []*Tap
	Fuses     []*Fuse
	Relays    []*Relay
	Blocks    []*Block
	Switches  []*Switch
	Diodes    []*Diode
	Resistors []*DroppingResistor
	Chargers  []*Charger
	Loads     []*Load
	Grounds   []*Ground
	Splices   []*Splice
	Partings  []*Connector

	Situations []*Situation // derived when none is given
	Rides      []*Ride
	Accepted   []*Acceptance
	Prices     []*Price
	Sheet      Sheet
	Numbers    Numbers

	Library *library.Library

	// OldKeys are keys by names that they had before, and short names with which several
	// rows of the library begin, one of each.
	OldKeys problem.List
}
