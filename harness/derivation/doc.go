// Package derivation explains a figure of a review: the formula with the values put
// in, each value with where it comes from, down to the design's lines, the library's
// rows and the constants. Values are those of the computation; each step is a formula
// over them that a pocket calculator gives to the last digit printed, and a step whose
// formula does not give its value is a mistake of this package (Step.Off).
package derivation
