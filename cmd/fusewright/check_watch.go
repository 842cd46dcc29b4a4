package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/signal"
	"syscall"
	"time"

	"fusewright/cmd/fusewright/live"
	"fusewright/harness"
	"fusewright/harness/review/compare"
	"fusewright/render/report"
)

// clearScreen puts the cursor at the head of an empty screen.
const clearScreen = "\x1b[H\x1b[2J"

// watch checks now and after every save until it is interrupted. While the text is no design
// its problems are shown, and what a save did is held against the last good one.
func (c *checkCmd) watch(io *streams, cli *program) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	follow := &followed{arg: c.designArg, io: io, cli: cli}
	changes, err := live.Watch(ctx, follow.files())
	if err != nil {
		return outside{err}
	}
	contents := live.Contents(follow.files())
	text, err := follow.text()
	if err != nil {
		return err
	}
	var good *harness.Review
	for {
		good = c.look(io, follow, text, good)
		var gone <-chan time.Time
		for same := true; same; {
			select {
			case <-ctx.Done():
				return nil
			case <-gone:
				gone = nil
				if _, err := follow.text(); err != nil {
					contents = "" // as it was is news then
					fmt.Fprintf(io.out, "%s\nnothing is checked until it can be read again; watching, Ctrl-C ends\n", harmless(err.Error()))
				}
				continue
			case <-changes:
			}
			next := live.Contents(follow.files())
			if next == contents {
				gone = nil
				continue
			}
			now, err := follow.text()
			if err != nil {
				gone = time.After(away)
				continue
			}
			text, contents, same = now, next, false
		}
	}
}

// away is how long a file may be gone without a word: as long as an editor takes to put a new one in its place.
const away = 300 * time.Millisecond

// look prints what a text comes to, and gives the review; the earlier one when it is no design.
func (c *checkCmd) look(io *streams, follow *followed, text []byte, before *harness.Review) *harness.Review {
	var b bytes.Buffer
	if isTerminal(io.out) {
		b.WriteString(clearScreen)
	}
	review, err := follow.assess(text)
	if err != nil {
		fmt.Fprintln(&b, harmless(err.Error()))
		review = before
	} else {
		if _, err := c.compareBaseline(io, review.Findings); err != nil {
			fmt.Fprintln(&b, err)
		}
		rep := report.New(review)
		rep.Compared = c.Baseline != ""
		if err := c.print(&b, io, rep, review); err != nil {
			fmt.Fprintln(&b, err)
		}
		if before != nil {
			writeDone(&b, compare.Findings(before.Findings, review.Findings))
		}
	}
	fmt.Fprintf(&b, "saved %s; watching, Ctrl-C ends\n", follow.saved())
	io.out.Write(b.Bytes())
	return review
}

// writeDone says what a save mended and broke, a line each.
func writeDone(b *bytes.Buffer, list []compare.Finding) {
	for _, f := range list {
		word, of := "broken", f.New
		if f.Rank() <= 0 {
			word = "mended"
		}
		if of == nil {
			of = f.Old
		}
		number := ""
		if f.New != nil {
			number = fmt.Sprintf("%d ", f.New.Number)
		}
		b.WriteString(harmless(fmt.Sprintf("%s  %s%s: %s, %s [%s]\n", word, number, report.About(of), report.Says(of), f.Standing(), of.Rule)))
	}
	if len(list) == 0 {
		b.WriteString("no finding came or went\n")
	}
}
