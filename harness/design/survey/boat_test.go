package survey_test

import (
	"fmt"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/design/edit"
	"fusewright/harness/design/survey"
	"fusewright/harness/proof/buildtest"
)

const boat = `fusewright: 1
title: boat
system: 12 V
practice: marine
battery: {chemistry: flooded, capacity: 75 Ah, at: box}
batteries:
  house: {chemistry: AGM, capacity: 120 Ah, at: box, fed by: [dock end, sun end], returns to: battery negative, return wire: {length: 400 mm}}
charging: {regulated: 14.4 V, output: {800 rpm: 25 A, 2000 rpm: 55 A}, idle: 800 rpm, cruise: 2000 rpm}
places: {box: {ambient: 40 °C}, helm: {ambient: 40 °C}}
runs:
  - {from: box, to: helm, length: 2 m}
fuses:
  dock end: {type: marine strip, rating: 50 A, at: box, fed by: dock, wire: {length: 300 mm}}
  sun end: {type: marine strip, rating: 35 A, at: box, fed by: solar, wire: {length: 300 mm}}
chargers:
  dock: {type: shore charger 20 A, at: box, returns to: house negative, return wire: {length: 500 mm}}
  solar: {type: MPPT controller 10 A 12 V, panel: 100 W, at: box, returns to: house negative, return wire: {length: 500 mm}}
`

// A boat's survey asks for each of its batteries and chargers, in words of a boat, and reads back
// into the design: 12.8 V to 12.6 V at 20 A are 10 mΩ, 12.7 V to 12.55 V at 30 A are 5 mΩ.
func TestBoat(t *testing.T) {
	d, err := design.Read("boat.yaml", []byte(boat), nil)
	if err != nil {
		t.Fatal(err)
	}
	all := survey.Of(d)
	form := string(survey.Form(all))
	for _, want := range []string{"batteries:\n  house:\n    capacity:\n", "chargers:\n  dock:\n    output:\n  solar:\n    panel:\n    output:\n"} {
		if !strings.Contains(form, want) {
			t.Errorf("the form lacks %q\n%s", want, form)
		}
	}
	words := ""
	for _, g := range all {
		words += fmt.Sprintln(g.Title, g.Setup, g.Cautions)
		for _, x := range g.Blanks {
			words += x.How + "\n"
		}
	}
	for _, not := range []string{"ride", "head lamps", "steering", "machine", "vehicle", "airbag"} {
		if strings.Contains(words, not) {
			t.Errorf("a boat is told of %q\n%s", not, words)
		}
	}
	changes, err := survey.Read("form.yaml", []byte(`fusewright survey: 1
battery: {load step: {volts at rest: 12.8 V, volts with load: 12.6 V, amperes of load: 20 A}}
batteries: {house: {capacity: 110 Ah, load step: {volts at rest: 12.7 V, volts with load: 12.55 V, amperes of load: 30 A}}}
chargers: {dock: {output: 14.6 V}, solar: {panel: 120 W}}
`), all)
	if err != nil {
		t.Fatal(err)
	}
	text, err := edit.Set([]byte(boat), changes)
	if err != nil {
		t.Fatal(err)
	}
	if d, err = design.Read("boat.yaml", text, nil); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	house := d.Batteries[0].Store
	got := fmt.Sprint(d.Battery.ResistanceOhm.Text, " ", house.CapacityAh.Text, " ", house.ResistanceOhm.Text, " ", d.Chargers[0].OutputV.Text, " ", d.Chargers[1].PanelW.Text)
	if want := "10 mΩ 110 Ah 5 mΩ 14.6 V 120 W"; got != want {
		t.Errorf("%s, want %s\n%s", got, want, text)
	}
	_, err = survey.Read("form.yaml", []byte("fusewright survey: 1\nbatteries: {house: {load step: {volts at rest: 12 V}}}\n"), all)
	if err == nil || !strings.Contains(err.Error(), `the load step of house lacks "volts with load"`) {
		t.Errorf("%v", err)
	}
}

// A second alternator is read with the engine running, by speed, at its own stud, as the first one is behind an isolator;
// what was measured, at a speed with no row too, comes back into its curve.
func TestSecondAlternator(t *testing.T) {
	d, err := design.Read("machines.yaml", []byte(buildtest.Machines), nil)
	if err != nil {
		t.Fatal(err)
	}
	all := survey.Of(d)
	words := map[string]string{}
	for _, g := range all {
		words[g.Title] = strings.Join(g.Setup, " ") + strings.Join(g.Cautions, " ")
	}
	if _, other := words["Other chargers"]; other || strings.Contains(words["Charging"], "positive post") || !strings.Contains(words["Charging"], "machine's own stud") {
		t.Errorf("%q", words)
	}
	for _, want := range []string{"Engine warm and running", "own stud", "exhaust outdoors"} {
		if !strings.Contains(words["Other alternators"], want) {
			t.Errorf("the second one lacks %q: %q", want, words["Other alternators"])
		}
	}
	changes, err := survey.Read("form.yaml", []byte(`fusewright survey: 1
chargers: {starboard: {output: 14.3 V, output by speed: {700 rpm: 16 A, 780 rpm: 19 A}, hot derating: 20 %}}
`), all)
	if err != nil {
		t.Fatal(err)
	}
	text, err := edit.Set([]byte(buildtest.Machines), changes)
	if err != nil {
		t.Fatal(err)
	}
	if d, err = design.Read("machines.yaml", text, nil); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	got := d.Chargers[0].OutputV.Text + " " + d.Chargers[0].Engine.HotDerating.Text
	for _, p := range d.Chargers[0].Engine.Output {
		got += " " + p.RPM.Text + " " + p.CurrentA.Text
	}
	if want := "14.3 V 20 % 700 rpm 16 A 780 rpm 19 A 1500 rpm 45 A 3000 rpm 58 A"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	if _, err := survey.Read("form.yaml", []byte("fusewright survey: 1\nchargers: {port: {output by speed: {780 rpm: 19 A}}}\n"), all); err == nil {
		t.Error("a machine that the design has not is taken")
	}
}
