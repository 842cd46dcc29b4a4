package rules

import "sort"

// registry is every rule, sorted by name.
var registry = sorted(
	alwaysHotConductor,
	backFeed,
	blockOverload,
	blockWayOverload,
	chafingRun,
	chargingDeficit,
	coilOnSupervised,
	coilUnsuppressed,
	dataMissing,
	fedByNothing,
	feedFuseUnderBranches,
	flexingRun,
	fuseBreakingCapacity,
	fuseGrading,
	fuseInrush,
	fuseOverWire,
	fuseTooFar,
	fuseTypeInBlock,
	fuseUnderLoad,
	fuseVoltage,
	groundOverload,
	insulationClass,
	liveWithKeyOff,
	loadOvervoltage,
	loadUndervoltage,
	marineWireColour,
	noTerminalFits,
	noWayBack,
	relayCoilVoltage,
	relayContactOverload,
	relayNeverEnergised,
	relayNeverReleased,
	relayTooHot,
	returnBelowFuse,
	situationUnsolved,
	standbyDrain,
	switchOverload,
	tapOverSpare,
	terminalOverload,
	unfusedConductor,
	unusedAcceptance,
	voltageDrop,
	wireBelowMinimum,
	wireOverCurrent,
)

func sorted(rules ...*Rule) []*Rule {
	sort.Slice(rules, func(i, j int) bool { return rules[i].Name < rules[j].Name })
	return rules
}
