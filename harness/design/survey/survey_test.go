package survey_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/design/edit"
	"fusewright/harness/design/survey"
)

const machine = `fusewright: 1
title: machine
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, at: tray}
charging: {regulated: 14 V, output: {1300 rpm: 14 A, 3000 rpm: 24 A}, idle: 1300 rpm, cruise: 3000 rpm}
vehicle loads:
  ignition: 60 W
  lamps: {current: 5 A, when: key}
places: {tray: {ambient: 40 °C}, "a: b": {ambient: 40 °C}}
runs:
  - {from: tray, to: "a: b", length: 1 m}
taps: {tail: {at: tray, hot: key}}
grounds: {stud: {at: tray, kind: frame stud}}
`

func groups(t *testing.T) []*survey.Group {
	t.Helper()
	d, err := design.Read("machine.yaml", []byte(machine), nil)
	if err != nil {
		t.Fatal(err)
	}
	return survey.Of(d)
}

// The form asks for each thing once and, filled in, gives the design these values: 12.7 V to 12.25 V
// at 45 A are 10 mΩ; 4 A at 14 V are 56 W; where the design has amperes they stay amperes.
func TestFilledFormByHand(t *testing.T) {
	all := groups(t)
	form := string(survey.Form(all))
	for blank, reading := range map[string]string{"capacity": "14 Ah", "volts at rest": "12.7 V", "volts with load": "12.25 V", "amperes of load": "45 A",
		"3000 rpm": "22 A", "hot derating": "12 %", "ignition": "4 A", "lamps": "4.5 A", "at rest": "3 mA", "fuse": "10 A", "supervised": "no",
		"frame resistance": "2.5 mΩ", "length": "1250 mm"} {
		if strings.Count(form, blank+":\n") < 1 {
			t.Fatalf("no blank %q in\n%s", blank, form)
		}
		form = strings.Replace(form, "  "+blank+":\n", "  "+blank+": "+reading+"\n", 1)
	}
	form = strings.Replace(form, "\"a: b\":\n    ambient:", "\"a: b\":\n    ambient: 55 °C", 1)
	form = strings.Replace(form, "'a: b':\n    ambient:", "'a: b':\n    ambient: 55 °C", 1)
	changes, err := survey.Read("form.yaml", []byte(form), all)
	if err != nil {
		t.Fatal(err)
	}
	text, err := edit.Set([]byte(machine), changes)
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read("machine.yaml", text, nil)
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	rest := d.VehicleLoads[len(d.VehicleLoads)-1]
	got := fmt.Sprint(d.Battery.CapacityAh.Text, " ", d.Battery.ResistanceOhm.Text, " ", d.Charging.Output[1].CurrentA.Text, " ", d.Charging.HotDerating.Text, " ",
		d.VehicleLoads[0].PowerW.Text, " ", d.VehicleLoads[1].CurrentA.Text, " ", rest.CurrentA.Text, " ", rest.When, " ", d.Taps[0].FuseA.Text, " ",
		d.Taps[0].SupervisedGiven, " ", d.Grounds[0].FrameOhm.Text, " ", d.Runs[0].LengthM.Text, " ", d.Places[1].AmbientC.Text)
	if want := "14 Ah 10 mΩ 22 A 12 % 56 W 4.5 A 3 mA always 10 A true 2.5 mΩ 1250 mm 55 °C"; got != want {
		t.Errorf("%s\nwant %s\n%s", got, want, text)
	}
}

// An engine that idles below the first speed of the design has its output there in a row of its own.
func TestOtherSpeeds(t *testing.T) {
	changes, err := survey.Read("form.yaml", []byte("fusewright survey: 1\ncharging: {idle: 1180 rpm, output: {1180 rpm: 9 A}}\n"), groups(t))
	if err != nil {
		t.Fatal(err)
	}
	text, err := edit.Set([]byte(machine), changes)
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read("machine.yaml", text, nil)
	if err != nil {
		t.Fatal(err)
	}
	if out := d.Charging.Output; len(out) != 3 || out[0].RPM.Value != d.Charging.IdleRPM.Value || out[0].CurrentA.Value != 9 {
		t.Errorf("%s", text)
	}
	for _, speed := range []string{"idle", "-3 rpm", "7 kg"} {
		if _, err := survey.Read("form.yaml", []byte("fusewright survey: 1\ncharging: {output: {"+speed+": 9 A}}\n"), groups(t)); err == nil {
			t.Errorf("%q is taken for a speed", speed)
		}
	}
}

// What stands in the wrong place or is no quantity is said with line and column, all in one run;
// an empty form changes nothing.
func TestFormMistakes(t *testing.T) {
	all := groups(t)
	if changes, err := survey.Read("form.yaml", survey.Form(all), all); err != nil || len(changes) != 0 {
		t.Errorf("empty form: %v, %v", changes, err)
	}
	const top = "fusewright survey: 1\n"
	for form, want := range map[string][]string{
		"fusewright: 1\n": {`form.yaml:1:1: this is no survey form (expected "fusewright survey: 1" as the first key)`},
		"\t":              {"form.yaml:1:1: the form is no YAML"},
		top + "battery: {capacty: 12 Ah, rate: 10, load step: {volts at rest: 12 V}}\n": {`form.yaml:2:11: the survey has no "capacty" (did you mean "capacity"?)`,
			"form.yaml:2:33: rate: ", `the load step lacks "volts with load"`},
		top + "taps: {tail: {supervised: perhaps, spare: {}}}\n": {`form.yaml:2:27: supervised: "perhaps" (expected yes or no)`, `"spare" is no single value`},
		top + "battery: 12 Ah\n":                                 {`form.yaml:2:10: "battery" has a value of its own`},
		top + "battery: {load step: {volts at rest: 12 V, volts with load: 12 V, amperes of load: 20 A}}\n":  {"do not fall with the load"},
		top + "battery: {load step: {volts at rest: 12.5 V, volts with load: 12 V, amperes of load: 0 A}}\n": {"do not fall with the load"},
	} {
		_, err := survey.Read("form.yaml", []byte(form), all)
		if err == nil || slices.ContainsFunc(want, func(w string) bool { return !strings.Contains(err.Error(), w) }) {
			t.Errorf("%s%v\nwant %q", form, err, want)
		}
	}
}

// No text makes the reader panic.
func FuzzForm(f *testing.F) {
	d, err := design.Read("machine.yaml", []byte(machine), nil)
	if err != nil {
		f.Fatal(err)
	}
	all := survey.Of(d)
	f.Add(string(survey.Form(all)))
	f.Add("fusewright survey: 1\nbattery: {capacity: 12 Ah}\n")
	f.Fuzz(func(t *testing.T, text string) { survey.Read("form.yaml", []byte(text), all) })
}

// A converter charges nothing: it is asked for as such, and a panel and the mains are named only where there are any.
func TestChargersByKind(t *testing.T) {
	for kind, want := range map[string]struct{ title, how, caution string }{
		"24 V to 12 V converter 20 A, fed by: f": {"Converters", "meter on its output", ""},
		"shore charger 20 A":                     {"Other chargers", "no longer rises", "shore charger kills"},
	} {
		src := strings.NewReplacer("system: 12 V", "system: 24 V", "taps:", "fuses: {f: {at: tray, fed by: battery}}\nchargers: {unit: {type: "+kind+", at: tray}}\ntaps:").Replace(machine)
		d, err := design.Read("machine.yaml", []byte(src), nil)
		if d == nil {
			t.Fatal(err)
		}
		found := false
		for _, g := range survey.Of(d) {
			if g.Title != want.title {
				continue
			}
			found = true
			said := strings.Join(g.Cautions, " ")
			if !strings.Contains(g.Blanks[0].How, want.how) || !strings.Contains(said, want.caution) || strings.Contains(said, "panel") || want.caution == "" && said != "" {
				t.Errorf("%s: %q, %q", kind, g.Blanks[0].How, said)
			}
		}
		if !found {
			t.Errorf("%s: no %q", kind, want.title)
		}
	}
}
