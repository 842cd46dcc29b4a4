package referencetest

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// Simulate runs a netlist and reads its operating point: names in lower case, such as "v(n3)" and "i(v7)".
func Simulate(program, dir, name, netlist string) (map[string]float64, error) {
	raw := filepath.Join(dir, name+".raw")
	deck := strings.Replace(netlist, ".op\n.end\n", ".options savecurrents\n.control\nset filetype=ascii\nop\nwrite "+raw+
		"\nquit\n.endc\n.end\n", 1)
	file := filepath.Join(dir, name+".cir")
	if err := os.WriteFile(file, []byte(deck), 0o600); err != nil {
		return nil, err
	}
	// A simulator that finds no way forward may turn for ever: it is stopped and
	// the case fails.
	ctx, stop := context.WithTimeout(context.Background(), 2*time.Minute)
	defer stop()
	said, err := exec.CommandContext(ctx, program, "-b", "-n", file).CombinedOutput()
	text, readErr := os.ReadFile(raw)
	if readErr != nil {
		return nil, fmt.Errorf("ngspice wrote nothing (%v): %s", err, said)
	}
	return readRaw(string(text))
}

// readRaw reads an ASCII raw file of one point.
func readRaw(text string) (map[string]float64, error) {
	head, values, ok := strings.Cut(text, "Values:\n")
	_, variables, ok2 := strings.Cut(head, "Variables:\n")
	if !ok || !ok2 {
		return nil, fmt.Errorf("not a raw file")
	}
	var names []string
	for line := range strings.Lines(variables) {
		if f := strings.Fields(line); len(f) >= 3 {
			names = append(names, f[1])
		}
	}
	fields := strings.Fields(values)
	out := map[string]float64{}
	for i, name := range names {
		v, err := strconv.ParseFloat(fields[i+1], 64) // the point's number stands first
		if err != nil {
			return nil, err
		}
		out[name] = v
	}
	return out, nil
}
