package page

import "fusewright/harness"

// What the other views show of a review; nil = nothing yet.
func plannerOf(*harness.Review) any { return nil }
func whatIfOf(*harness.Review) any  { return nil }
