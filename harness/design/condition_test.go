package design

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Conditions have one spelling; a leg has its situation's unless it names its own.
func TestConditionsOfSituationsAndLegs(t *testing.T) {
	text, err := os.ReadFile("../../testdata/read/ok/conditions.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := Read("conditions.yaml", text, nil)
	if err != nil {
		t.Fatal(err)
	}
	got := []string{fmt.Sprint(d.Conditions)}
	for _, s := range d.Situations {
		got = append(got, fmt.Sprintf("%s %q", s.Name, s.With))
	}
	for _, l := range d.Rides[0].Legs {
		got = append(got, fmt.Sprintf("leg %q", l.With))
	}
	for _, v := range d.VehicleLoads {
		got = append(got, fmt.Sprintf("%s %q and in %d", v.Name, v.While, len(v.In)))
	}
	want := []string{"[Main Beam brake]", `day []`, `night ["Main Beam"]`, `stopping ["brake" "Main Beam"]`, `key off []`,
		`leg ["Main Beam"]`, `leg ["brake"]`, `leg []`, `main beam lamp ["Main Beam"] and in 0`, `brake lamps ["brake"] and in 1`}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// Of a design without situations, those made by the reader have every condition where
// everything is on, and none with the key off.
func TestConditionsOfDerivedSituations(t *testing.T) {
	text, _ := os.ReadFile("../../testdata/read/ok/conditions.yaml")
	short := string(text)[:strings.Index(string(text), "situations:")]
	d, err := Read("conditions.yaml", []byte(strings.Replace(short, "[brake, night]", "brake", 1)), nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range d.Situations {
		if want := map[KeyState]int{KeyOn: 2}[s.Key]; len(s.With) != want {
			t.Errorf("%s: %d conditions, want %d", s.Name, len(s.With), want)
		}
	}
}
