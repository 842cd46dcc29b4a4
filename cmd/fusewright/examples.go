package main

// The worked examples that --help and the manual page show below each command.
// A test takes every line of them through the parser.

// Help shows examples.
func (buildCmd) Help() string {
	return `Examples:

  fusewright build designs/fen-runner.yaml
      everything into out/fen-runner
  fusewright build designs/reed-skiff.yaml -o /tmp/skiff --fail-on never
      into a folder of your choice, whatever the findings
  fusewright build own.yaml --library own-parts.yaml -q
      with parts of your own, without a word

` + paperHelp()
}

// Help shows examples.
func (checkCmd) Help() string {
	return `Examples:

  fusewright check designs/reed-skiff.yaml
      findings with place, numbers, reason and remedy
  fusewright check own.yaml --fail-on danger
      exit code 1 only when something can burn
  fusewright check - --format json
      the design from standard input, JSON for a program`
}

// Help shows examples.
func (drawCmd) Help() string {
	return `Examples:

  fusewright draw designs/fen-runner.yaml
      schematic.svg here; further sheets get a number
  fusewright draw own.yaml -o own.pdf --bench
      all sheets in one file, without the findings
  fusewright draw own.yaml -o own.png --dpi 300
  fusewright draw own.yaml -o own.dxf`
}

// Help shows examples.
func (cutCmd) Help() string {
	return `Examples:

  fusewright cut designs/fen-runner.yaml
      one row a wire, for a spreadsheet
  fusewright cut designs/fen-runner.yaml -o cut.pdf`
}

// Help shows examples.
func (bomCmd) Help() string {
	return `Examples:

  fusewright bom designs/fen-runner.yaml
      one row an item, for a spreadsheet
  fusewright bom designs/fen-runner.yaml -o shopping.pdf`
}

// Help shows examples.
func (budgetCmd) Help() string {
	return `Examples:

  fusewright budget designs/fen-runner.yaml
      what charging gives and what is drawn, in each situation
  fusewright budget designs/fen-runner.yaml -o budget.pdf
  fusewright budget own.yaml --format json`
}

// Help shows examples.
func (rideCmd) Help() string {
	return `Examples:

  fusewright ride designs/fen-runner.yaml
      every ride of the design
  fusewright ride designs/fen-runner.yaml 'short hop' -o hop.svg`
}

// Help shows examples.
func (netlistCmd) Help() string {
	return `Examples:

  fusewright netlist designs/fen-runner.yaml
      the first situation
  fusewright netlist designs/fen-runner.yaml 'night cruise' -o night.cir`
}

// Help shows examples.
func (exportCmd) Help() string {
	return `Examples:

  fusewright export designs/fen-runner.yaml --to json -o fen.json
      the whole solved model, see docs/model.md
  fusewright export own.yaml --to spice --situation 'night cruise'
  fusewright export own.yaml --to csv
      wires with the current and the drop in every situation
  fusewright export own.yaml --to dot
  fusewright export own.yaml --to dxf --of board -o board.dxf
      the loom at full size, for a cutter`
}

// Help shows examples.
func (replayCmd) Help() string {
	return `Examples:

  fusewright replay fen.json
      exit code 1 when any result differs from the model's
  fusewright replay - -q`
}

// Help shows examples.
func (explainCmd) Help() string {
	return `Examples:

  fusewright explain
      the list of rules
  fusewright explain unfused-conductor`
}

// Help shows examples.
func (partsCmd) Help() string {
	return `Examples:

  fusewright parts
      the kinds and how many of each
  fusewright parts fuse 'blade C'
  fusewright parts --find 'ring M6'
      in every kind
  fusewright parts wire --format json`
}

// Help shows examples.
func (validateCmd) Help() string {
	return `Examples:

  fusewright validate
      the page kept as docs/validation.md
  fusewright validate --format json`
}

// Help shows examples.
func (completeCmd) Help() string {
	return `Examples:

  fusewright complete bash
      load it with: source <(fusewright complete bash)
  fusewright complete zsh
      keep it as _fusewright in a folder of $fpath
  fusewright complete fish`
}

// Help shows examples.
func (manCmd) Help() string {
	return `Examples:

  fusewright man
      read it with: fusewright man | man -l -`
}

// Help shows examples.
func (benchCmd) Help() string {
	return `Examples:

  fusewright bench designs/fen-runner.yaml
      what to measure, in which order, and what to expect
  fusewright bench designs/fen-runner.yaml -o bench.pdf`
}

// Help shows examples.
func (studyCmd) Help() string {
	return `Examples:

  fusewright study designs/fen-runner.yaml
      what opens, and how hot the wires get, in every short circuit
  fusewright study own.yaml --format json`
}
