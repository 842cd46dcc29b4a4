package page

import "fusewright/harness"

func whatIfOf(*harness.Review) any { return nil }
