package library

import (
	"fmt"
	"slices"
	"strconv"
)

// ColourCode is how circuits get their colours in a field of use.
type ColourCode struct {
	Name     string          `key:"name" need:""`
	Afloat   bool            `key:"afloat" need:"" show:"afloat"` // of practices that are, or are not
	Returns  string          `key:"returns" need:"" show:"returns *"`
	Tracers  []string        `key:"tracers"`  // in the order in which they are taken
	Reserved []string        `key:"reserved"` // codes that mean something else
	Circuits []CircuitColour `key:"circuits" need:""`
	Source   Source
}

// CircuitColour is the base colour of circuits that serve one thing: what hangs on the
// battery without a fuse ("source"), loads of several kinds, relay coils ("control"), whatever is behind a
// switch or relay of its own ("switched"; where a code has it, it goes before all that follow), lamps that must burn ("navigation lamp"), or loads by their sign.
type CircuitColour struct {
	Serves string `key:"serves" need:"" words:"source|several|control|switched|navigation lamp|lamp|pump|electronics|sensor|heater|motor|horn|socket|other"`
	Colour string `key:"colour" need:""`
	Source Source
}

// ColourCode is the code of practices that are, or are not, afloat; nil when there is none.
func (l *Library) ColourCode(afloat bool) *ColourCode {
	i := slices.IndexFunc(l.ColourCodes, func(c *ColourCode) bool { return c.Afloat == afloat })
	if i < 0 {
		return nil
	}
	return l.ColourCodes[i]
}

// Has tells whether circuits that serve a thing have a colour of their own.
func (c *ColourCode) Has(serves string) bool {
	return slices.ContainsFunc(c.Circuits, func(x CircuitColour) bool { return x.Serves == serves })
}

// Base is the code of the colour of circuits that serve a thing; that of "other" for what
// it does not name, "" when it has neither.
func (c *ColourCode) Base(serves string) string {
	for _, want := range []string{serves, "other"} {
		for _, x := range c.Circuits {
			if x.Serves == want {
				return x.Colour
			}
		}
	}
	return ""
}

func colourCodeNames(c *ColourCode) (string, []string) { return c.Name, nil }

func (c *ColourCode) check(m *row) {
	codes := append([]string{c.Returns}, c.Tracers...)
	for _, x := range c.Circuits {
		codes = append(codes, x.Colour)
	}
	for _, code := range append(codes, c.Reserved...) {
		if base, _ := m.r.lib.ColourPair(code); base == nil {
			m.r.report(m.node, fmt.Sprintf("the library has no colour %s", strconv.Quote(shorten(code))), "codes of its colours", "")
		}
	}
}
