package rules

// Mend is what has to be chosen larger, or of another kind, to mend a rule's
// findings; sizing goes by it.
type Mend int

const (
	// MendNot: the rule is not about sizes, ratings or types.
	MendNot Mend = iota
	// MendWire: the wire that the finding names.
	MendWire
	// MendDrop: what loses volts on the way to the load.
	MendDrop
	// MendLowest: the same, against a voltage that the load needs, of which the
	// battery may have taken too much before.
	MendLowest
	// MendShort: what keeps the current of a short low.
	MendShort
	// MendFuse: the fuse that the finding names.
	MendFuse
	// MendStart: the nearest fuse before the load that the finding names.
	MendStart
	// MendFuseAbove: the fuse before the one that the finding names.
	MendFuseAbove
	// MendBreaking: the type of the fuse, for one that breaks more.
	MendBreaking
	// MendPlug: the plug, or else the wire that the finding names.
	MendPlug
	// MendPart: the plug or the block.
	MendPart
	// MendSeal: the same, where it is a choice of sizing; what the design gives
	// is the design's own affair.
	MendSeal
	// MendSpark: the plug, the fuse or the relay, likewise, for one that makes no spark.
	MendSpark
	// MendRelay: the relay.
	MendRelay
	// MendLink: the fuse, the relay or the wire that the finding names.
	MendLink
	// MendBlock: the block.
	MendBlock
)
