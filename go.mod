module fusewright

go 1.26.0

require (
	github.com/alecthomas/kong v1.17.0
	github.com/goccy/go-graphviz v0.2.10
	github.com/google/go-cmp v0.7.0
	github.com/jung-kurt/gofpdf v1.16.2
	github.com/rogpeppe/go-internal v1.16.0
	golang.org/x/image v0.47.0
	gonum.org/v1/gonum v0.17.0
	gopkg.in/yaml.v3 v3.0.1
)

require github.com/go-fonts/liberation v0.3.3 // indirect
