package main

import (
	"bytes"
	"errors"
	"fmt"
	"os/exec"
	"path/filepath"
	"strings"

	"fusewright/harness"
	"fusewright/harness/review/compare"
	"fusewright/library"
	"fusewright/render/report"
	"fusewright/render/schematic"
)

// diffCmd compares two designs, or two revisions of one.
type diffCmd struct {
	Old    string   `arg:"" help:"The design as it was; with --git, the one file to compare."`
	New    string   `arg:"" optional:"" help:"The design as it is; - for standard input."`
	Git    []string `help:"Take the file as it was in this git revision and compare it with the file as it is; given twice, compare the two revisions." placeholder:"REVISION"`
	Format string   `help:"text, json or markdown." enum:"text,json,markdown" default:"text"`
	Draw   string   `help:"Also draw the new schematic, every part at its usual place, with the changes marked; .svg, .pdf, .png or .dxf chooses the kind." placeholder:"FILE" type:"path"`
	DPI    int      `name:"dpi" help:"Dots per inch of a PNG." default:"150" placeholder:"N"`
	failOn
}

// Validate refuses pictures that cannot be made.
func (c *diffCmd) Validate() error {
	if c.Draw == "" {
		return nil
	}
	return checkPicture("--draw", c.Draw, c.DPI)
}

// Run prints the comparison. Only findings that are new, or graver than they
// were, decide the exit code.
func (c *diffCmd) Run(io *streams, cli *program) error {
	libraries, err := library.ReadTexts(cli.Library...)
	if err != nil {
		return err
	}
	old, changed, err := c.texts(io)
	if err != nil {
		return err
	}
	before, err := assessText(old, libraries)
	if err != nil {
		return err
	}
	after, err := assessText(changed, libraries)
	if err != nil {
		return err
	}
	comparison := compare.Reviews(before, after)
	d := report.NewDiff(comparison)
	err = printed(io, func(b *bytes.Buffer) error {
		switch c.Format {
		case "json":
			return report.WriteJSON(b, d)
		case "markdown":
			return report.WriteDiffMarkdown(b, d)
		}
		return report.WriteDiff(b, d)
	})
	if err != nil {
		return err
	}
	if c.Draw != "" {
		if err := c.draw(io, comparison); err != nil {
			return err
		}
	}
	return c.verdict(comparison.NewFindings())
}

// draw writes the drawing of the changes. Its files are named on the screen only
// where they cannot be taken for a part of a result that a program reads.
func (c *diffCmd) draw(io *streams, comparison *compare.Comparison) error {
	old, changed := comparison.Old, comparison.New
	sheets, err := schematic.DrawChanges(comparison, c.nameOf(old, changed), schematic.Options{})
	if err != nil {
		return err
	}
	out, err := putDrawing(io, c.Draw, c.DPI, changed, "Changes", sheets)
	if err == nil && c.Format == "text" {
		io.sayFiles(out)
	}
	return err
}

// nameOf is how a drawing calls a design beside another: by its revision where
// that tells them apart, else by its file.
func (c *diffCmd) nameOf(r, other *harness.Review) string {
	if rev := r.Design.Revision.Value; rev != "" && rev != other.Design.Revision.Value {
		return "revision " + rev
	}
	return filepath.Base(r.Design.File)
}

func assessText(t library.Text, libraries []library.Text) (*harness.Review, error) {
	in := &inputs{design: t, libraries: libraries}
	return in.assess()
}

// texts finds the two designs.
func (c *diffCmd) texts(io *streams) (old, changed library.Text, err error) {
	switch {
	case len(c.Git) == 0 && c.New == "":
		return old, changed, errors.New("only one design to compare (expected OLD NEW, or --git REVISION FILE)")
	case len(c.Git) > 2:
		return old, changed, fmt.Errorf("%d revisions given (expected one or two)", len(c.Git))
	case len(c.Git) > 0 && c.New != "":
		return old, changed, errors.New("two files given with --git (expected one file, whose revisions are compared)")
	case len(c.Git) == 0:
		if old, err = fileText(io, c.Old); err != nil {
			return old, changed, err
		}
		changed, err = fileText(io, c.New)
		return old, changed, err
	}
	if old, err = revisionText(c.Git[0], c.Old); err != nil {
		return old, changed, err
	}
	if len(c.Git) == 2 {
		changed, err = revisionText(c.Git[1], c.Old)
	} else {
		changed, err = fileText(io, c.Old)
	}
	return old, changed, err
}

func fileText(io *streams, path string) (library.Text, error) {
	name, src, err := readInput(io, path, maxDesignBytes)
	return library.Text{File: name, Data: src}, err
}

// revisionText is a file as it was in a git revision.
func revisionText(revision, path string) (library.Text, error) {
	name := revision + ":" + path
	if strings.ContainsAny(revision, ":\x00") || revision == "" || strings.HasPrefix(revision, "-") {
		return library.Text{}, fmt.Errorf("%q is not a git revision (expected such as HEAD~1 or a tag)", revision)
	}
	git := quietGit(filepath.Dir(path), "cat-file", "blob", revision+":./"+filepath.ToSlash(filepath.Base(path)))
	var out, complaint bytes.Buffer
	git.Stdout, git.Stderr = &limited{buf: &out, left: maxDesignBytes}, &limited{buf: &complaint, left: 1 << 12}
	if err := git.Run(); err != nil {
		var ended *exec.ExitError
		if errors.As(err, &ended) {
			first, _, _ := strings.Cut(strings.TrimSpace(complaint.String()), "\n")
			return library.Text{}, fmt.Errorf("%s: git has no such file there: %s", name, first)
		}
		return library.Text{}, outside{fmt.Errorf("git did not run: %w", err)}
	}
	return library.Text{File: name, Data: out.Bytes()}, nil
}

// limited keeps so many bytes and drops the rest, which a reader of designs
// then sees as a file that is too large.
type limited struct {
	buf  *bytes.Buffer
	left int
}

// Write keeps what fits and never fails, so that git ends by itself.
func (l *limited) Write(p []byte) (int, error) {
	n := min(len(p), l.left)
	l.buf.Write(p[:n])
	l.left -= n
	return len(p), nil
}
