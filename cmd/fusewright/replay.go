package main

import (
	"fmt"

	"fusewright/render/report"
)

// replayCmd makes the results of a model again and compares.
type replayCmd struct {
	Model string `arg:"" help:"The model file as written by 'export --to json', or - for standard input."`
}

// mostShown is how many differences are printed.
const mostShown = 20

// Run reads the texts in the model, takes them through every stage and compares
// each number, word and list with what the model says.
func (c *replayCmd) Run(s *streams, _ *program) error {
	name, src, err := readInput(s, c.Model, report.MaxModelBytes+1)
	if err != nil {
		return err
	}
	model, was, err := report.ReadModel(name, src)
	if err != nil {
		return err
	}
	in := &inputs{libraries: model.Texts()}
	in.design.File, in.design.Data = model.Source.File, []byte(model.Source.Text)
	review, err := in.assess()
	if err != nil {
		return err
	}
	now, err := report.NewModel(review, in.design, in.libraries).Plain()
	if err != nil {
		return err
	}
	differences, numbers := report.Differences(was, now, mostShown)
	if len(differences) == 0 {
		s.say("%s: same results, %d numbers within %g\n", model.Design.Title, numbers, report.Agreement)
		return nil
	}
	for _, d := range differences {
		fmt.Fprintln(s.out, d)
	}
	if len(differences) == mostShown {
		fmt.Fprintln(s.out, "… there may be more")
	}
	return exitCode(exitFindings)
}
