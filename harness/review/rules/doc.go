// Package rules judges a solved design: one file per rule, each a literal that
// holds the rule's text, formula, limits, source, examples and the function
// that runs it. The explanation a user reads, the page docs/rules.md and the
// tests all come from that one literal.
//
// Rules read; they change nothing, solve nothing and print nothing. What they
// share (paths from the source, worst currents, protecting fuses) is worked
// out once per design in facts, so that a rule stays short and the whole check
// grows near linearly with the number of wires.
//
//	found := rules.Check(&rules.Input{Circuit: c, Solutions: sols, Budget: b})
//
// The number of a situation that did not converge is never used: such a
// situation is a finding of its own.
//
// To add a rule: write NAME.go with its literal, add the variable to the list
// in registry.go, and add testdata/rules/NAME.yaml. The tests refuse a rule
// without a source, an example or a test file.
package rules
