package main

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"fusewright/library"
	"fusewright/render/report"
)

// partsCmd lists the library.
type partsCmd struct {
	Kind   string `arg:"" optional:"" help:"Kind of part; the kinds and how many of each when not given."`
	Search string `arg:"" optional:"" help:"Show only rows with these words."`
	Find   string `help:"Show rows of any kind with these words." placeholder:"WORDS"`
	format
}

// partsReport is the JSON shape of a listing.
type partsReport struct {
	Fusewright int       `json:"fusewright_parts"`
	Parts      []partRow `json:"parts"`
}

// Run prints the kinds, or the rows of one.
func (c *partsCmd) Run(s *streams, lib *library.Library) error {
	if c.Find != "" {
		return c.everywhere(s, lib)
	}
	if c.Kind == "" {
		return printed(s, func(b *bytes.Buffer) error {
			t := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
			for _, k := range partKinds {
				fmt.Fprintf(t, "%s\t%d\t%s\n", k.name, len(k.rows(lib)), k.what)
			}
			return t.Flush()
		})
	}
	var names []string
	for _, k := range partKinds {
		names = append(names, k.name)
		if k.name == strings.ToLower(c.Kind) {
			rows := matching(k.rows(lib), c.Search)
			return printed(s, func(b *bytes.Buffer) error { return c.print(b, rows) })
		}
	}
	return notFound("kind of part", c.Kind, names)
}

// Validate refuses a search of one kind and of all at once.
func (c *partsCmd) Validate() error {
	if c.Find != "" && c.Kind != "" {
		return fmt.Errorf("--find looks through every kind (expected 'parts %s WORDS' for one)", c.Kind)
	}
	return nil
}

// everywhere prints the rows of all kinds that hold the words.
func (c *partsCmd) everywhere(s *streams, lib *library.Library) error {
	rows := []partRow{}
	for _, k := range partKinds {
		for _, r := range matching(k.rows(lib), c.Find) {
			r.Kind = k.name
			rows = append(rows, r)
		}
	}
	return printed(s, func(b *bytes.Buffer) error { return c.print(b, rows) })
}

func (c *partsCmd) print(w io.Writer, rows []partRow) error {
	if c.json() {
		return report.WriteJSON(w, partsReport{Fusewright: report.Version, Parts: rows})
	}
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	for _, r := range rows {
		if r.Kind != "" {
			fmt.Fprintf(t, "%s\t", r.Kind)
		}
		fmt.Fprintf(t, "%s\t%s\t%s\n", r.Name, r.Figures, r.Certainty)
	}
	return t.Flush()
}

// matching keeps the rows that hold every word in some cell, ignoring case.
func matching(rows []partRow, words string) []partRow {
	kept := []partRow{}
	for _, r := range rows {
		all := strings.ToLower(strings.Join([]string{r.Name, r.Figures, r.Source, r.Certainty}, " "))
		holds := true
		for _, word := range strings.Fields(strings.ToLower(words)) {
			holds = holds && strings.Contains(all, word)
		}
		if holds {
			kept = append(kept, r)
		}
	}
	return kept
}
