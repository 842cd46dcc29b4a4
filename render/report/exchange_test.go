package report_test

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"os"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/review/compare"
	"fusewright/harness/review/finding"
	"fusewright/library"
	"fusewright/render/report"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// sarifRules is what the SARIF 2.1.0 schema asks of the objects used here, from
// memory: required properties, enumerations and least values. Properties that
// are not named here are refused, so that nothing unknown slips in.
const sarifRules = `{
  "$schema": "http://json-schema.org/draft-07/schema#",
  "type": "object", "additionalProperties": false, "required": ["version", "runs"],
  "properties": {
    "$schema": {"type": "string", "format": "uri"}, "version": {"enum": ["2.1.0"]},
    "runs": {"type": "array", "items": {"type": "object", "additionalProperties": false, "required": ["tool"],
      "properties": {
        "tool": {"type": "object", "additionalProperties": false, "required": ["driver"], "properties": {
          "driver": {"type": "object", "additionalProperties": false, "required": ["name"], "properties": {
            "name": {"type": "string"},
            "rules": {"type": "array", "uniqueItems": true, "items": {"type": "object", "required": ["id"],
              "additionalProperties": false, "properties": {"id": {"type": "string"},
                "shortDescription": {"$ref": "#/definitions/text"}, "fullDescription": {"$ref": "#/definitions/text"},
                "help": {"$ref": "#/definitions/text"}}}}}}}},
        "columnKind": {"enum": ["utf16CodeUnits", "unicodeCodePoints"]},
        "properties": {"type": "object"},
        "results": {"type": "array", "items": {"type": "object", "required": ["message"], "additionalProperties": false,
          "properties": {
            "ruleId": {"type": "string"}, "ruleIndex": {"type": "integer", "minimum": 0},
            "level": {"enum": ["none", "note", "warning", "error"]}, "message": {"$ref": "#/definitions/text"},
            "partialFingerprints": {"type": "object", "additionalProperties": {"type": "string"}},
            "baselineState": {"enum": ["new", "unchanged", "updated", "absent"]},
            "suppressions": {"type": "array", "uniqueItems": true, "items": {"type": "object", "required": ["kind"],
              "additionalProperties": false,
              "properties": {"kind": {"enum": ["inSource", "external"]}, "justification": {"type": "string"}}}},
            "locations": {"type": "array", "items": {"type": "object", "additionalProperties": false, "properties": {
              "logicalLocations": {"type": "array", "uniqueItems": true, "items": {"type": "object",
                "additionalProperties": false, "properties": {"name": {"type": "string"}, "kind": {"type": "string"}}}},
              "physicalLocation": {"type": "object", "additionalProperties": false, "properties": {
                "artifactLocation": {"type": "object", "additionalProperties": false,
                  "properties": {"uri": {"type": "string", "format": "uri-reference"}}},
                "region": {"type": "object", "additionalProperties": false, "properties": {
                  "startLine": {"type": "integer", "minimum": 1},
                  "startColumn": {"type": "integer", "minimum": 1}}}}}}}}
          }}}
      }}}
  },
  "definitions": {"text": {"type": "object", "required": ["text"], "additionalProperties": false,
    "properties": {"text": {"type": "string", "minLength": 1}}}}
}`

// faulty is the demo with deliberate faults, with one finding accepted.
func faulty(t *testing.T) *harness.Review {
	t.Helper()
	src, err := os.ReadFile("../../designs/reed-skiff.yaml")
	if err != nil {
		t.Fatal(err)
	}
	src = append(src, "\naccepted:\n  - {rule: unfused-conductor, part: float, severity: danger, figure: 1.37 m, reason: \"shown <for> the \\\"test\\\" & no more\"}\n"...)
	d, err := design.Read("designs/reed skiff.yaml", src, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestSARIF(t *testing.T) {
	r := faulty(t)
	rep := report.New(r)
	rep.Compared = true
	rep.Findings[0].Known = true
	var b bytes.Buffer
	if err := report.WriteSARIF(&b, rep); err != nil {
		t.Fatal(err)
	}
	validate(t, b.Bytes())
	var log struct {
		Runs []struct {
			Tool struct {
				Driver struct{ Rules []struct{ ID string } }
			}
			Results []struct {
				RuleID        string
				RuleIndex     int
				Level         string
				BaselineState string
				Suppressions  []struct{ Justification string }
				Locations     []struct {
					PhysicalLocation struct {
						ArtifactLocation struct{ URI string }
						Region           struct{ StartLine int }
					}
				}
				PartialFingerprints map[string]string
			}
		}
	}
	if err := json.Unmarshal(b.Bytes(), &log); err != nil {
		t.Fatal(err)
	}
	run := log.Runs[0]
	if len(run.Results) != len(r.Findings) {
		t.Fatalf("%d results of %d findings", len(run.Results), len(r.Findings))
	}
	prints := map[string]bool{}
	suppressed := 0
	for i, res := range run.Results {
		f := r.Findings[i]
		if run.Tool.Driver.Rules[res.RuleIndex].ID != res.RuleID || res.RuleID != f.Rule {
			t.Errorf("result %d: rule %s at index %d, of %s", i, res.RuleID, res.RuleIndex, f.Rule)
		}
		at := res.Locations[0].PhysicalLocation
		if at.ArtifactLocation.URI != "designs/reed%20skiff.yaml" || at.Region.StartLine != f.Pos.Line {
			t.Errorf("result %d at %s:%d", i, at.ArtifactLocation.URI, at.Region.StartLine)
		}
		if p := res.PartialFingerprints["ruleAndWire/v2"]; prints[p] {
			t.Errorf("result %d has the fingerprint of another", i)
		} else {
			prints[p] = true
		}
		suppressed += len(res.Suppressions)
		if (f.Accepted != "") != (len(res.Suppressions) == 1) || (f.Accepted != "") != (res.BaselineState == "") {
			t.Errorf("result %d: accepted %q, suppressions %v, state %q", i, f.Accepted, res.Suppressions, res.BaselineState)
		}
	}
	if suppressed != 1 || run.Results[0].BaselineState != "unchanged" || run.Results[1].BaselineState != "new" {
		t.Errorf("%d suppressed; states %q and %q", suppressed, run.Results[0].BaselineState, run.Results[1].BaselineState)
	}
}

func validate(t *testing.T, text []byte) {
	t.Helper()
	rules, err := jsonschema.UnmarshalJSON(strings.NewReader(sarifRules))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("sarif.json", rules); err != nil {
		t.Fatal(err)
	}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if err := c.MustCompile("sarif.json").Validate(value); err != nil {
		t.Error(err)
	}
}

func TestJUnit(t *testing.T) {
	r := faulty(t)
	for _, least := range []finding.Severity{0, finding.Advice, finding.Fault, finding.Danger} {
		var b bytes.Buffer
		if err := report.WriteJUnit(&b, report.New(r), least); err != nil {
			t.Fatal(err)
		}
		var all struct {
			Tests    int `xml:"tests,attr"`
			Failures int `xml:"failures,attr"`
			Suites   []struct {
				Name    string `xml:"name,attr"`
				Tests   int    `xml:"tests,attr"`
				Skipped int    `xml:"skipped,attr"`
				Cases   []struct {
					Class   string    `xml:"classname,attr"`
					Name    string    `xml:"name,attr"`
					Skipped *struct{} `xml:"skipped"`
					Failure *struct {
						Type string `xml:"type,attr"`
						Text string `xml:",chardata"`
					} `xml:"failure"`
				} `xml:"testcase"`
			} `xml:"testsuite"`
		}
		if err := xml.Unmarshal(b.Bytes(), &all); err != nil {
			t.Fatal(err)
		}
		want := 0
		for s := least; s >= finding.Advice && s <= finding.Danger; s++ {
			want += finding.Count(r.Findings, s)
		}
		suite := all.Suites[0]
		failures, seen := 0, map[string]bool{}
		for _, c := range suite.Cases {
			if c.Failure != nil {
				failures++
				if c.Skipped != nil || !strings.Contains(c.Failure.Text, "change: ") {
					t.Errorf("case %s of %s: %+v", c.Name, c.Class, c)
				}
			}
			if id := c.Class + "\x00" + c.Name; c.Class == "" || c.Name == "" || seen[id] {
				t.Errorf("case %q of %q is without a name or is given twice", c.Name, c.Class)
			} else {
				seen[id] = true
			}
		}
		if failures != want || all.Failures != want || all.Tests != len(suite.Cases) || suite.Tests != all.Tests ||
			suite.Skipped != 1 {
			t.Errorf("from %v: %d failures, %d counted, want %d; %d cases of %d; %d skipped", least, failures,
				all.Failures, want, len(suite.Cases), all.Tests, suite.Skipped)
		}
	}
}

// A name cannot break out of the Markdown of a comparison.
func TestDiffMarkdownIsPlain(t *testing.T) {
	read := func(title string) *harness.Review {
		d, err := design.Read("a.yaml", []byte("fusewright: 1\ntitle: "+title+
			"\nsystem: 12 V\npractice: motorcycle\nbattery: {chemistry: AGM, capacity: 12 Ah}\n"), library.Default())
		if err != nil {
			t.Fatal(err)
		}
		r, err := harness.Assess(d)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	var b bytes.Buffer
	hostile := `"<script>x</script> [a](http://b) @someone | **bold** # ` + "`code`" + `"`
	if err := report.WriteDiffMarkdown(&b, report.NewDiff(compare.Reviews(read("plain"), read(hostile)))); err != nil {
		t.Fatal(err)
	}
	first, _, _ := strings.Cut(b.String(), "\n")
	const want = "## &lt;script>x&lt;/script> \\[a\\]\\(http://b\\) &#64;someone \\| \\*\\*bold\\*\\* \\# \\`code\\`"
	if first != want {
		t.Errorf("heading %s\nwant    %s", first, want)
	}
}
