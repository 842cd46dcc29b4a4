// Package caution holds the short cautions that every printed or shown result
// carries, so that they say the same everywhere. It depends on nothing.
package caution

import "strings"

// Defer is what goes before anything that the program says.
const Defer = "Local codes, the makers' instructions and licensed practice come first."

// work begins what stands on sheets and pages that are used at the bench.
const work = "Isolate the battery before work. " + Defer

// Paper stands on sheets and pages that are used at the bench.
const Paper = work + " Not for brake, steering or airbag circuits."

// PaperAfloat is Paper for boats.
const PaperAfloat = work + " Not for helm, throttle or engine controls."

// Petrol stands beside the others on what begins the papers of a boat, and of a design
// with a place where petrol vapour can gather.
const Petrol = "Petrol vapour explodes: ventilate tank and engine spaces before work, and keep anything that may spark out of them."

// vapour stands on each page of such a design.
const vapour = "Petrol vapour: no sparks."

// OnPages is Paper, or PaperAfloat, with a word about petrol vapour where it can gather.
func OnPages(afloat, petrolVapour bool) string {
	text := Paper
	if afloat {
		text = PaperAfloat
	}
	if petrolVapour {
		text += " " + vapour
	}
	return text
}

// Every is a caution for a design with more than one battery: one that is left on feeds what
// was thought dead.
func Every(text string) string {
	return strings.Replace(text, "Isolate the battery", "Isolate every battery", 1)
}

// Report stands under findings and other results on a terminal or in JSON.
const Report = "Aid to judgement only. " + Paper

// ReportAfloat is Report for boats.
const ReportAfloat = "Aid to judgement only. " + PaperAfloat

// Estimate stands under quick answers.
const Estimate = "An estimate for planning. " + Defer
