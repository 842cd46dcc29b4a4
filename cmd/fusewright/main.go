// Command fusewright designs, checks and draws low-voltage DC accessory wiring.
// It reads one YAML description of a harness and writes findings, a schematic,
// a cut list, a bill of materials and a charging budget. See README.md.
package main

import (
	"os"

	_ "fusewright/cmd/fusewright/headroom"
)

func main() {
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
