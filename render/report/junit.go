package report

import (
	"encoding/xml"
	"fmt"
	"io"

	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
)

// The shape is the JUnit XML that build servers read. There is no standard; the
// elements and attributes here are those which the common schemas share (from
// memory). Neither time nor host is written, so that the same design gives the
// same bytes.
type junitSuites struct {
	XMLName  xml.Name     `xml:"testsuites"`
	Name     string       `xml:"name,attr"`
	Tests    int          `xml:"tests,attr"`
	Failures int          `xml:"failures,attr"`
	Errors   int          `xml:"errors,attr"`
	Suites   []junitSuite `xml:"testsuite"`
}

type junitSuite struct {
	Name     string      `xml:"name,attr"`
	Tests    int         `xml:"tests,attr"`
	Failures int         `xml:"failures,attr"`
	Errors   int         `xml:"errors,attr"`
	Skipped  int         `xml:"skipped,attr"`
	Cases    []junitCase `xml:"testcase"`
	Out      string      `xml:"system-out,omitempty"`
}

type junitCase struct {
	Class   string        `xml:"classname,attr"`
	Name    string        `xml:"name,attr"`
	Skipped *junitSkipped `xml:"skipped,omitempty"`
	Failure *junitFailure `xml:"failure,omitempty"`
	Out     string        `xml:"system-out,omitempty"`
}

type junitSkipped struct {
	Message string `xml:"message,attr"`
}

type junitFailure struct {
	Type    string `xml:"type,attr"`
	Message string `xml:"message,attr"`
	Text    string `xml:",chardata"`
}

// WriteJUnit writes the findings for build servers: a case for each finding and
// one that passes for each rule without any. A finding fails from the severity
// given on; below it, it passes and is printed; accepted and known ones are
// skipped. least 0 lets nothing fail.
func WriteJUnit(w io.Writer, rep *Report, least finding.Severity) error {
	suite := junitSuite{Name: rep.Design.File, Out: rep.Caution}
	spoke := map[string]int{}
	for _, f := range rep.Findings {
		spoke[f.Rule]++
		suite.Cases = append(suite.Cases, junitRow(f, spoke[f.Rule], least))
	}
	for _, r := range rules.All() {
		if spoke[r.Name] == 0 {
			suite.Cases = append(suite.Cases, junitCase{Class: r.Name, Name: r.Title})
		}
	}
	for _, c := range suite.Cases {
		suite.Tests++
		if c.Failure != nil {
			suite.Failures++
		}
		if c.Skipped != nil {
			suite.Skipped++
		}
	}
	all := junitSuites{Name: "fusewright", Tests: suite.Tests, Failures: suite.Failures, Suites: []junitSuite{suite}}
	if _, err := io.WriteString(w, xml.Header); err != nil {
		return err
	}
	enc := xml.NewEncoder(w)
	enc.Indent("", "  ")
	if err := enc.Encode(all); err != nil {
		return err
	}
	_, err := io.WriteString(w, "\n")
	return err
}

func junitRow(f Finding, n int, least finding.Severity) junitCase {
	c := junitCase{Class: f.Rule, Name: fmt.Sprintf("%s, finding %d", f.Part, n)}
	text := fmt.Sprintf("%s:%d:%d: %s: %s\n%s\nwhy: %s\nchange: %s\nsource: %s\n", f.File, f.Line, f.Col, f.Severity,
		f.What, numbersLine(f), f.Why, f.Change, f.Source)
	switch {
	case f.Accepted != "":
		c.Skipped = &junitSkipped{"accepted: " + f.Accepted}
	case f.Known:
		c.Skipped = &junitSkipped{"known from the baseline: " + f.What}
	case least > 0 && finding.SeverityOf(f.Severity) >= least:
		c.Failure = &junitFailure{f.Severity, f.What, text}
	default:
		c.Out = text
	}
	return c
}
