package main

import (
	"bytes"
	"fmt"
	"strings"
	"text/tabwriter"

	"fusewright/cmd/fusewright/licences"
)

// licencesCmd prints the licences of what the program is linked with.
type licencesCmd struct {
	Name string `arg:"" optional:"" help:"Only those with this in the name; the list and every text when not given."`
}

// Run prints the list of components, and below it their texts word for word.
func (c *licencesCmd) Run(s *streams, _ *program) error {
	var chosen []licences.Component
	for _, each := range licences.All {
		if strings.Contains(strings.ToLower(each.Name), strings.ToLower(c.Name)) {
			chosen = append(chosen, each)
		}
	}
	if len(chosen) == 0 {
		return notFound("component", c.Name, licenceNames())
	}
	return printed(s, func(b *bytes.Buffer) error {
		if err := listComponents(b, chosen); err != nil {
			return err
		}
		for _, each := range chosen {
			if err := writeTexts(b, each); err != nil {
				return err
			}
		}
		return nil
	})
}

func listComponents(b *bytes.Buffer, list []licences.Component) error {
	t := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	for _, c := range list {
		fmt.Fprintf(t, "%s\t%s\t%s\n", c.Name, c.Terms, c.Purpose)
	}
	return t.Flush()
}

func writeTexts(b *bytes.Buffer, c licences.Component) error {
	texts, err := c.Texts()
	if err != nil {
		return err
	}
	for _, text := range texts {
		fmt.Fprintf(b, "\n==== %s: %s\n", c.Name, text.Name)
		if c.Note != "" {
			fmt.Fprintf(b, "(%s)\n", c.Note)
		}
		fmt.Fprintf(b, "\n%s\n", strings.TrimRight(text.Text, "\n"))
	}
	return nil
}

// licenceNames are the names of all components.
func licenceNames() []string {
	var names []string
	for _, c := range licences.All {
		names = append(names, c.Name)
	}
	return names
}
