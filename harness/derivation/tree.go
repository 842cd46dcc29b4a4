package derivation

// Tree is a figure with its derivation.
type Tree struct {
	What   string   `json:"what"`   // as it can be asked: "drop of left lamp"
	Answer []string `json:"answer"` // the answer in sentences
	// Situation and State are where the figure holds; empty = everywhere.
	Situation string `json:"situation,omitempty"`
	State     string `json:"state,omitempty"`
	File      string `json:"file,omitempty"`
	Line      int    `json:"line,omitempty"`
	// Root is the figure, Limit what it is held against (nil = nothing).
	Root  *Step `json:"figure"`
	Limit *Step `json:"limit,omitempty"`
	// Also are further figures that the answer names.
	Also []*Step `json:"also,omitempty"`
	// Rests is what the figure rests on, by how sure that is; Unsure are the values from
	// memory, without a source or assumed, each once.
	Rests  []Rest   `json:"rests_on"`
	Unsure []string `json:"unsure,omitempty"`
	// Lost is where the volts of a drop are lost, most first.
	Lost []Rest `json:"lost_in,omitempty"`
	// Notes hold for the whole; Next is what else may be asked.
	Notes []string `json:"notes,omitempty"`
	Next  []string `json:"next,omitempty"`
}

// Step is one value of a derivation.
type Step struct {
	Label string `json:"label"`
	Value string `json:"value"` // with its unit: "46.42 mV"
	// Formula has the values put in as they are printed below; "" of a leaf.
	Formula string  `json:"formula,omitempty"`
	Number  float64 `json:"number"` // in Unit, not rounded
	Unit    string  `json:"unit,omitempty"`
	Mark    Mark    `json:"mark"`
	Source  string  `json:"source,omitempty"`
	File    string  `json:"file,omitempty"`
	Line    int     `json:"line,omitempty"`
	// Weakest is the least sure mark of all that a value with a derivation rests on, and why.
	Weakest    Mark   `json:"weakest,omitempty"`
	WeakestWhy string `json:"weakest_why,omitempty"`
	// Unsure is the share of it that rests on values from memory or without a source, 0..1.
	Unsure float64 `json:"unsure_share"`
	From   []*Step `json:"from,omitempty"`
	// Above tells that the value stands with its own derivation further up.
	Above bool `json:"above,omitempty"`
	// Off tells that the formula does not give the value to the digits printed.
	Off bool `json:"off,omitempty"`

	first *Step // the same value with its own derivation
}

// First is the step at which the value is derived: itself, or one further up.
func (s *Step) First() *Step {
	if s.first != nil {
		return s.first
	}
	return s
}

// Mark says how sure a value is.
type Mark string

// The marks, surest first.
const (
	TwoSources Mark = "two sources"
	OneSource  Mark = "one source"
	Yours      Mark = "your design"
	Computed   Mark = "computed"
	Unsure     Mark = "from memory or without a source"
)

// Sign is the mark as printed.
func (m Mark) Sign() string {
	return map[Mark]string{TwoSources: "●●", OneSource: "●", Yours: "▪", Computed: "=", Unsure: "?"}[m]
}

// Rest is how much of a figure rests on values of one certainty.
type Rest struct {
	On     string  `json:"on"` // "published", "your design", "computed", "from memory", "without a source"
	Share  float64 `json:"share"`
	Value  string  `json:"value"`
	Unsure bool    `json:"unsure,omitempty"`
}
