package report

import (
	"crypto/sha256"
	"encoding/hex"
	"path/filepath"

	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// ModelVersion is the version of the model's JSON shape. It rises when a field
// changes its meaning or goes; new fields do not raise it.
const ModelVersion = 1

// Model is the whole solved design: what was read, what was built from it and
// what came out. It holds the texts it was made from, so that the same results
// can be made again. docs/model.md describes it. Numbers are in SI units but
// for °C, mm² and revolutions per minute, which their names say; null stands
// for a value that is not finite, such as the voltage of a floating node.
type Model struct {
	Fusewright int              `json:"fusewright_model"`
	Design     Heading          `json:"design"`
	Source     SourceText       `json:"source"`
	Libraries  []SourceText     `json:"libraries"`
	Parts      []ModelPart      `json:"parts"`
	Nodes      []ModelNode      `json:"nodes"`
	Branches   []ModelBranch    `json:"branches"`
	Wires      []ModelWire      `json:"wires"`
	Situations []ModelSituation `json:"situations"`
	Library    []ModelRow       `json:"library"`
	Budget     *Budget          `json:"budget,omitempty"`
	Counts     Counts           `json:"counts"`
	Findings   []Finding        `json:"findings"`
	Caution    string           `json:"caution"`
}

// SourceText is a text that went in, whole, with its hash.
type SourceText struct {
	File   string `json:"file"`
	SHA256 string `json:"sha256"` // of the text, hexadecimal
	Text   string `json:"text"`
}

// ModelPart is a component.
type ModelPart struct {
	Ref       string          `json:"ref"`
	Kind      string          `json:"kind"`
	Name      string          `json:"name"`
	Label     string          `json:"label,omitempty"`
	Place     string          `json:"place,omitempty"`
	Line      int             `json:"line,omitempty"` // in the design
	Col       int             `json:"col,omitempty"`
	Fitted    bool            `json:"fitted,omitempty"`
	Plug      *ModelPlug      `json:"plug,omitempty"`
	Terminals []ModelTerminal `json:"terminals"`
}

// ModelPlug is the connector at which a part comes off the harness.
type ModelPlug struct {
	Family string `json:"family"`
	Needed int    `json:"needed"` // ways in use
	Ways   int    `json:"ways"`   // of the housing; 0 = none has enough
}

// ModelTerminal is a connection point of a part.
type ModelTerminal struct {
	Name        string   `json:"name"`
	Node        int      `json:"node"`
	Kind        string   `json:"kind,omitempty"`
	KindAssumed bool     `json:"kind_assumed,omitempty"`
	FuseRef     string   `json:"fuse,omitempty"`
	Wires       []string `json:"wires,omitempty"`
}

// ModelNode is a point of one potential; node 0 is battery negative.
type ModelNode struct {
	Index int    `json:"index"`
	Name  string `json:"name"`
}

// ModelBranch is a two-terminal element; positive current flows from node A to
// node B.
type ModelBranch struct {
	Index   int         `json:"index"`
	Name    string      `json:"name"`
	Kind    string      `json:"kind"`
	A       int         `json:"a"`
	B       int         `json:"b"`
	Part    string      `json:"part,omitempty"`
	Wire    string      `json:"wire,omitempty"`
	Ohm     *float64    `json:"ohm"` // wires: at 20 °C with both terminations
	Assumed string      `json:"assumed,omitempty"`
	Closer  string      `json:"closed_by,omitempty"`
	Fuse    *ModelFuse  `json:"fuse,omitempty"`
	Load    *ModelDrain `json:"load,omitempty"`
}

// ModelFuse is the protection in a branch.
type ModelFuse struct {
	Ref     string   `json:"ref,omitempty"`
	Type    string   `json:"type,omitempty"`
	RatingA *float64 `json:"rating_a"`
	Factory bool     `json:"factory,omitempty"`
}

// ModelDrain is the law of a load branch.
type ModelDrain struct {
	Behaves string   `json:"behaves"`
	PowerW  *float64 `json:"power_w"`
	RatedV  *float64 `json:"rated_v"`
	Duty    *float64 `json:"duty"`
	Standby bool     `json:"standby,omitempty"`
	Stall   float64  `json:"fan_stall,omitempty"` // stalled over running current
}

// ModelWire is a cut piece of wire.
type ModelWire struct {
	Number       string   `json:"number"`
	Role         string   `json:"role"`
	From         string   `json:"from"` // "F1:2"
	To           string   `json:"to"`
	Type         string   `json:"type"`
	Size         string   `json:"size"`
	AreaMm2      *float64 `json:"area_mm2"`
	Colour       string   `json:"colour"`
	LengthM      *float64 `json:"length_m"`   // to cut
	FinishedM    *float64 `json:"finished_m"` // along the runs, with slack: what the resistance is of
	LengthGiven  bool     `json:"length_given,omitempty"`
	Fitted       bool     `json:"fitted,omitempty"`
	Runs         []string `json:"runs,omitempty"`
	AmbientC     *float64 `json:"ambient_c"`
	AmbientAt    string   `json:"ambient_at,omitempty"`
	AmbientKnown bool     `json:"ambient_known"`
	ConductorOhm *float64 `json:"conductor_ohm_20c"`
	EndsOhm      *float64 `json:"ends_ohm"`
	FromEnd      string   `json:"from_end,omitempty"`
	ToEnd        string   `json:"to_end,omitempty"`
	Through      []string `json:"through,omitempty"` // cavities of connectors that part it: "X3:2"
	Branch       int      `json:"branch"`
	Line         int      `json:"line,omitempty"`
	Col          int      `json:"col,omitempty"`
}

// ModelSituation is a situation with its operating point. The lists go by the
// index of node and branch.
type ModelSituation struct {
	Name           string     `json:"name"`
	Key            string     `json:"key"`
	EngineRPM      *float64   `json:"engine_rpm"`
	On             []string   `json:"on"`
	Closed         []string   `json:"closed"`
	With           []string   `json:"with,omitempty"`
	Status         string     `json:"status"`
	Why            string     `json:"why,omitempty"`
	NodeV          []*float64 `json:"node_v"`
	BranchA        []*float64 `json:"branch_a"`
	BranchOhm      []*float64 `json:"branch_ohm"` // used in this situation: wires warm
	ClosedContacts []string   `json:"closed_contacts"`
	Drawing        []string   `json:"drawing"` // load branches that draw
	BatteryA       *float64   `json:"battery_a"`
	ChargingA      *float64   `json:"charging_a"`
	ChargingLimitA *float64   `json:"charging_limit_a"`
	Limited        bool       `json:"charging_limited"`
	PowerErrorW    *float64   `json:"power_error_w"`
	// States are the situation at nominal and with its tolerances at their bounds.
	States []ModelState `json:"states,omitempty"`
}

// ModelRow is a row of the parts library that the design uses.
type ModelRow struct {
	Kind      string `json:"kind"`
	Name      string `json:"name"`
	Source    string `json:"source"`
	Certainty string `json:"certainty"`
}

// NewModel makes the model of a review from the texts it came from.
func NewModel(r *harness.Review, design library.Text, libraries []library.Text) *Model {
	rep := New(r).ToKeep()
	m := &Model{
		Fusewright: ModelVersion, Design: rep.Design, Source: sourceText(design), Libraries: []SourceText{},
		Parts: []ModelPart{}, Nodes: []ModelNode{}, Branches: []ModelBranch{}, Wires: []ModelWire{},
		Library: libraryRows(r), Budget: rep.Budget, Counts: rep.Counts, Findings: rep.Findings, Caution: rep.Caution,
	}
	for _, l := range libraries {
		m.Libraries = append(m.Libraries, sourceText(l))
	}
	for _, p := range r.Circuit.Parts {
		m.Parts = append(m.Parts, modelPart(p))
	}
	for _, n := range r.Circuit.Nodes {
		m.Nodes = append(m.Nodes, ModelNode{n.Index, n.Name})
	}
	for _, b := range r.Circuit.Branches {
		m.Branches = append(m.Branches, modelBranch(b))
	}
	for _, w := range r.Circuit.Wires {
		m.Wires = append(m.Wires, modelWire(w))
	}
	for i, s := range r.Solutions {
		row := modelSituation(s)
		row.States = modelStates(r, i)
		m.Situations = append(m.Situations, row)
	}
	return m
}

func sourceText(t library.Text) SourceText {
	return SourceText{File: filepath.Base(t.File), SHA256: hashOf(t.Data), Text: string(t.Data)}
}

func hashOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

func modelPart(p *circuit.Part) ModelPart {
	row := ModelPart{Ref: p.Ref, Fitted: p.Fitted, Kind: string(p.Kind), Name: p.Name, Label: p.Label,
		Line: p.Pos.Line, Col: p.Pos.Col, Terminals: []ModelTerminal{}}
	if p.Place != nil {
		row.Place = p.Place.Name
	}
	if p.Plug != nil {
		row.Plug = &ModelPlug{p.Plug.Family.Name, p.Plug.Needed, p.Plug.Ways}
	}
	for _, t := range p.Terminals {
		terminal := ModelTerminal{Name: t.Name, Node: t.Node.Index, Kind: t.Kind,
			KindAssumed: t.KindAssumed, FuseRef: t.FuseRef}
		for _, w := range t.Wires {
			terminal.Wires = append(terminal.Wires, w.Number)
		}
		row.Terminals = append(row.Terminals, terminal)
	}
	return row
}
