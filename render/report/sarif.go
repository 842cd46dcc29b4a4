package report

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"net/url"
	"path/filepath"
	"strings"

	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
)

// The shape is SARIF 2.1.0, an OASIS standard: Static Analysis Results
// Interchange Format, 27 March 2020, sections 3.13 and following. Only what is
// used here is declared.
const (
	sarifVersion = "2.1.0"
	sarifSchema  = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
)

type sarifLog struct {
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct {
	Tool       sarifTool     `json:"tool"`
	ColumnKind string        `json:"columnKind"`
	Results    []sarifResult `json:"results"`
	Properties sarifCaution  `json:"properties"`
}

type sarifCaution struct {
	Caution string `json:"caution"`
}

type sarifTool struct {
	Driver sarifDriver `json:"driver"`
}

type sarifDriver struct {
	Name  string      `json:"name"`
	Rules []sarifRule `json:"rules"`
}

type sarifRule struct {
	ID               string       `json:"id"`
	ShortDescription sarifMessage `json:"shortDescription"`
	FullDescription  sarifMessage `json:"fullDescription"`
	Help             sarifMessage `json:"help"`
}

type sarifMessage struct {
	Text string `json:"text"`
}

type sarifResult struct {
	RuleID        string             `json:"ruleId"`
	RuleIndex     int                `json:"ruleIndex"`
	Level         string             `json:"level"`
	Message       sarifMessage       `json:"message"`
	Locations     []sarifLocation    `json:"locations"`
	Fingerprints  map[string]string  `json:"partialFingerprints"`
	BaselineState string             `json:"baselineState,omitempty"`
	Suppressions  []sarifSuppression `json:"suppressions,omitempty"`
}

type sarifLocation struct {
	Physical sarifPhysical  `json:"physicalLocation"`
	Logical  []sarifLogical `json:"logicalLocations"`
}

type sarifPhysical struct {
	Artifact sarifArtifact `json:"artifactLocation"`
	Region   *sarifRegion  `json:"region,omitempty"`
}

type sarifArtifact struct {
	URI string `json:"uri"`
}

type sarifRegion struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn,omitempty"`
}

type sarifLogical struct {
	Name string `json:"name"`
	Kind string `json:"kind"`
}

type sarifSuppression struct {
	Kind          string `json:"kind"`
	Justification string `json:"justification"`
}

// WriteSARIF writes the findings for code-review sites: danger is an error,
// fault a warning, advice a note; what the design accepts is suppressed with its
// reason. Against a baseline, results say whether they are new.
func WriteSARIF(w io.Writer, rep *Report) error {
	run := sarifRun{Tool: sarifTool{sarifDriver{Name: "fusewright", Rules: []sarifRule{}}},
		ColumnKind: "unicodeCodePoints", Results: []sarifResult{}, Properties: sarifCaution{rep.Caution}}
	index := map[string]int{}
	for i, r := range rules.All() {
		index[r.Name] = i
		run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, sarifRule{ID: r.Name,
			ShortDescription: sarifMessage{r.Title}, FullDescription: sarifMessage{r.Doc},
			Help: sarifMessage{fmt.Sprintf("Why it matters: %s. What to change: %s. Source: %s.", r.Why, r.Change, r.Source)}})
	}
	seen := map[string]int{}
	for _, f := range rep.Findings {
		id := f.Rule + "\x00" + f.Part + "\x00" + f.Wire
		seen[id]++
		run.Results = append(run.Results, sarifRow(rep, f, index[f.Rule], seen[id]))
	}
	return WriteJSON(w, sarifLog{sarifSchema, sarifVersion, []sarifRun{run}})
}

var sarifLevels = map[string]string{finding.Danger.String(): "error", finding.Fault.String(): "warning",
	finding.Advice.String(): "note"}

func sarifRow(rep *Report, f Finding, rule, n int) sarifResult {
	row := sarifResult{RuleID: f.Rule, RuleIndex: rule, Level: sarifLevels[f.Severity],
		Message:      sarifMessage{sarifText(f)},
		Fingerprints: map[string]string{"ruleAndWire/v2": fingerprint(f, n)}}
	place := sarifPhysical{Artifact: sarifArtifact{fileURI(f.File)}}
	if f.Line > 0 {
		place.Region = &sarifRegion{f.Line, f.Col}
	}
	row.Locations = []sarifLocation{{place, []sarifLogical{{f.Part, "resource"}}}}
	if f.Accepted != "" {
		row.Suppressions = []sarifSuppression{{"inSource", f.Accepted}}
	}
	if rep.Compared && f.Accepted == "" {
		row.BaselineState = "new"
		if f.Known {
			row.BaselineState = "unchanged"
		}
	}
	return row
}

func sarifText(f Finding) string {
	text := f.What + "."
	if f.Situation != "" {
		text += " Worst in " + f.Situation + "."
	}
	return text + " What to change: " + f.Change + "."
}

// fingerprint is the same for the same finding in another version of the file:
// lines and figures do not count.
func fingerprint(f Finding, n int) string {
	sum := sha256.Sum256([]byte(fmt.Sprintf("%s\x00%s\x00%s\x00%d", f.Rule, f.Part, f.Wire, n)))
	return hex.EncodeToString(sum[:16])
}

// fileURI is a relative or absolute path as a URI reference.
func fileURI(path string) string {
	slashed := filepath.ToSlash(path)
	u := url.URL{Path: slashed}
	if strings.HasPrefix(slashed, "/") {
		u.Scheme = "file"
	}
	return u.String()
}
