package design_test

import (
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/library"
)

// A short name with which several rows begin is read as it was, and said once.
func TestShortNamesThatMaySeveralMean(t *testing.T) {
	const text = `fusewright: 1
title: short
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 12 mΩ, at: tray}
places: {tray: {ambient: 40 °C}, rear: {ambient: 40 °C}, side: {ambient: 40 °C}}
runs:
  - {from: tray, to: rear, length: 1 m, cover: COVER}
  - {from: rear, to: side, length: 1 m, cover: COVER}
`
	for cover, want := range map[string]string{
		"braided":        `run, cover: "braided" is taken as "braided sleeve"; it may also be braided glass sleeve`,
		"braided sleeve": "",
		"glass sleeve":   "",
	} {
		d, err := design.Read("short.yaml", []byte(strings.ReplaceAll(text, "COVER", cover)), library.Default())
		if err != nil {
			t.Fatal(err)
		}
		var said []string
		for _, p := range d.OldKeys {
			said = append(said, p.What)
		}
		if got := strings.Join(said, "\n"); got != want {
			t.Errorf("%s: %q, want %q", cover, got, want)
		}
	}
}
