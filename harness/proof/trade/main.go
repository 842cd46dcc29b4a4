// Command trade holds what the program chooses and objects to against the trade:
// jobs with the conductors and fuses that an experienced fitter accepts, answers
// printed in makers' documents and handbooks, and designs that experienced hands
// wrote before the checker saw them. It prints what lies outside; run it from the
// project's top folder.
package main

import (
	"bufio"
	"flag"
	"fmt"
	"io"
	"os"
)

func main() {
	folder := flag.String("testdata", "testdata/trade", "folder with answers.csv, published.csv and designs")
	verbose := flag.Bool("v", false, "print what lies inside too, and all findings")
	page := flag.Bool("page", false, "write the page docs/trade.md")
	only := flag.String("only", "", "answers, published or designs")
	flag.Parse()
	out := bufio.NewWriter(os.Stdout)
	var err error
	if *page {
		err = writePage(out, *folder)
	} else {
		err = run(out, *folder, *only, *verbose)
	}
	out.Flush()
	if err != nil {
		fmt.Fprintln(os.Stderr, "trade:", err)
		os.Exit(2)
	}
}

func run(w io.Writer, folder, only string, verbose bool) error {
	if only == "" || only == "answers" {
		jobs, err := usual(folder + "/answers.csv")
		if err != nil {
			return err
		}
		if err := printJobs(w, "Usual jobs", jobs, verbose); err != nil {
			return err
		}
	}
	if only == "" || only == "published" {
		jobs, err := published(folder)
		if err != nil {
			return err
		}
		if err := printJobs(w, "Published answers", jobs, verbose); err != nil {
			return err
		}
	}
	if only == "" || only == "designs" {
		return printDesigns(w, handDesigns, verbose)
	}
	return nil
}

// printJobs sizes jobs and prints those outside their ranges.
func printJobs(w io.Writer, title string, jobs []job, verbose bool) error {
	met := 0
	fmt.Fprintf(w, "%s\n", title)
	for _, j := range jobs {
		a, err := j.answer()
		if err != nil {
			return err
		}
		if a.met() {
			met++
		}
		if verbose || !a.met() {
			fmt.Fprintf(w, "%-18s %-34.34s %8s %5.3g m  %s\n", j.ID, j.What, j.Draw, j.LengthM, a)
		}
	}
	fmt.Fprintf(w, "%d of %d in range\n\n", met, len(jobs))
	return nil
}
