package library

import (
	"strings"
	"testing"
)

// A practice that is like another has all that it does not say from there, each with its source.
func TestPracticeLikeAnother(t *testing.T) {
	lib, err := LoadTexts(Text{File: "own.yaml", Data: []byte(`fusewright library: 1
source: "habits of an invented workshop"
certainty: user data
practices:
  - {name: expedition vans, like: camper, limits: {drop critical: {value: 0.02}, least mm2: {value: 1}}}
  - {name: night vans, like: expedition vans}
`)})
	if err != nil {
		t.Fatal(err)
	}
	vans, camper, offRoad := lib.Practice("night vans"), lib.Practice("camper"), lib.Practice("off-road")
	for _, c := range []struct {
		what      string
		got, want any
	}{
		{"own share", vans.DropCritical, 0.02}, {"own size", vans.MinMm2, 1.0}, {"the camper's", vans.DropOther, 0.05},
		{"the camper's aim", camper.DropAim, 0.03}, {"off-road's", vans.FuseRatio, offRoad.FuseRatio}, {"longest run", vans.LongestRunM, 20.0},
		{"usual wire", vans.UsualWire, offRoad.UsualWire}, {"land", vans.Afloat, false}, {"the base is as it was", offRoad.DropOther, 0.10},
		{"own source", vans.Source["drop critical"].Certainty, UserData}, {"the base's source", vans.Source["drop critical"].Text == camper.Source["drop critical"].Text, false},
		{"source from far", vans.Source["fuse ratio"], offRoad.Source["fuse ratio"]}, {"source of the camper", vans.Source["drop other"], camper.Source["drop other"]},
	} {
		if c.got != c.want {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
	for name, want := range map[string]bool{"off-road": true, "camper": true, "night vans": true, "marine": false} {
		if got := lib.Among(vans, []string{name}); got != want {
			t.Errorf("among %s: %v", name, got)
		}
	}
}

// A practice that is like none, or lacks a name, is refused with its place.
func TestPracticeLikeNone(t *testing.T) {
	for row, want := range map[string]string{
		"{name: vans, like: campr}":   `own.yaml:5:24: unknown practice "campr" (did you mean "camper"?)`,
		"{name: vans, like: vans}":    `unknown practice "vans"`,
		"{like: camper}":              `"name" is missing`,
		"{name: vans, afloat: false}": `"limits" is missing`,
		"{name: vans, like: camper, limits: {drop critical: {value: 2}}}":   `"value" is out of range: 2 (expected a number from 0.001 to 0.5)`,
		"{name: vans, like: camper, limits: {drop critica: {value: 0.02}}}": `unknown key "drop critica" (did you mean "drop critical"?)`,
	} {
		_, err := LoadTexts(Text{File: "own.yaml", Data: []byte("fusewright library: 1\nsource: s\ncertainty: user data\npractices:\n  - " + row + "\n")})
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %s", row, err, want)
		}
	}
}
