package main

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"fusewright/render/report"
)

// partsCmd lists the library.
type partsCmd struct {
	Kind   string `arg:"" optional:"" help:"Kind of part; left out: the kinds and how many of each."`
	Search string `arg:"" optional:"" help:"Show only rows with this text."`
	format
}

// partsReport is the JSON shape of a listing.
type partsReport struct {
	Fusewright int       `json:"fusewright_parts"`
	Parts      []partRow `json:"parts"`
}

// Run prints the kinds, or the rows of one.
func (c *partsCmd) Run(s *streams, cli *program) error {
	lib, err := cli.library()
	if err != nil {
		return err
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

func (c *partsCmd) print(w io.Writer, rows []partRow) error {
	if c.json() {
		return report.WriteJSON(w, partsReport{Fusewright: report.Version, Parts: rows})
	}
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	for _, r := range rows {
		fmt.Fprintf(t, "%s\t%s\t%s\n", r.Name, r.Figures, r.Certainty)
	}
	return t.Flush()
}

// matching keeps the rows that hold the text in any cell, ignoring case.
func matching(rows []partRow, text string) []partRow {
	kept := []partRow{}
	for _, r := range rows {
		all := strings.ToLower(strings.Join([]string{r.Name, r.Figures, r.Source, r.Certainty}, " "))
		if strings.Contains(all, strings.ToLower(text)) {
			kept = append(kept, r)
		}
	}
	return kept
}
