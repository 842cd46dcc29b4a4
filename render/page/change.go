package page

// Change is what the last save mended and broke.
type Change struct {
	Mended []string `json:"mended,omitempty"`
	Broken []string `json:"broken,omitempty"`
}
