package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"
)

// writePage writes the page docs/trade.md: what is chosen for each job, which answers
// lie outside and why, and which designs of experienced hands raise something.
func writePage(w io.Writer, folder string) error {
	fmt.Fprint(w, `# What the trade fits, and what the program chooses

Written by `+"`go run ./harness/proof/trade -page`"+`; testdata/trade/README.md says where the rows come from and how they are held.
mm² are those of the wire to the fuse, of the feed and of the return. Aid to judgement only: local codes, the makers'
instructions and licensed practice come first.

`)
	jobs, err := usual(folder + "/answers.csv")
	if err != nil {
		return err
	}
	if err := pageJobs(w, "Usual jobs (common practice, no source)", jobs, nil); err != nil {
		return err
	}
	if jobs, err = published(folder); err != nil {
		return err
	}
	why, err := reasons(folder + "/outliers.csv")
	if err != nil {
		return err
	}
	if err := pageJobs(w, "Published answers", jobs, why); err != nil {
		return err
	}
	return pageDesigns(w)
}

// reasons are why a published answer lies outside, by its row.
func reasons(file string) (map[string]string, error) {
	rows, err := table(file)
	out := map[string]string{}
	for _, r := range rows {
		out[r["id"]] = r["reason"]
	}
	return out, err
}

func pageJobs(w io.Writer, title string, jobs []job, why map[string]string) error {
	met, rows := 0, &strings.Builder{}
	for _, j := range jobs {
		a, err := j.answer()
		if err != nil {
			return err
		}
		word := "yes"
		if a.met() {
			met++
			if len(a.bad) > 0 {
				word = "yes; " + strings.Join(a.bad, "; ")
			}
		} else if word = "no"; why[j.ID] != "" {
			word = "no: " + why[j.ID]
		}
		fmt.Fprintf(rows, "| %s | %s | %s, %g m | %s | %.3g, %.3g, %.3g | %s | %s %g A | %s |\n", j.ID, j.What, j.Draw, j.LengthM,
			j.WireMm2, a.stubMm2, a.feedMm2, a.backMm2, j.FuseA, a.fuseType, a.fuseA, word)
	}
	fmt.Fprintf(w, "## %s\n\n%d of %d in range.\n\n| row | job | draw, one way | mm² accepted | mm² chosen | A accepted | chosen | in range |\n"+
		"| --- | --- | --- | --- | --- | --- | --- | --- |\n%s\n", title, met, len(jobs), rows)
	return nil
}

// handDesigns are the designs that experienced hands wrote before the checker saw
// them.
const handDesigns = "testdata/corpus-clean-trade"

func pageDesigns(w io.Writer) error {
	files, err := filepath.Glob(handDesigns + "/*.yaml")
	if err != nil {
		return err
	}
	raised, rows := 0, &strings.Builder{}
	for _, file := range files {
		bad, err := alarms(file)
		if err != nil {
			return err
		}
		if len(bad) > 0 {
			raised++
		}
		for _, b := range bad {
			fmt.Fprintf(rows, "| %s | %s |\n", strings.TrimSuffix(filepath.Base(file), ".yaml"), b)
		}
	}
	fmt.Fprintf(w, "## Designs of experienced hands\n\nWritten before the checker saw them, and kept as written. On the first run 27 of 30 raised a danger or a fault; now %d of %d.\n\n"+
		"| design | danger or fault |\n| --- | --- |\n%s", raised, len(files), rows)
	return nil
}
