package main

// Help shows examples.
func (calcDropCmd) Help() string {
	return `Examples:

  fusewright calc drop 4mm² 12A 3m --system 12V
  fusewright calc drop '12 AWG' '8 A' '10 ft' --one-way`
}

// Help shows examples.
func (calcWireCmd) Help() string {
	return `Examples:

  fusewright calc wire 12A 6m
  fusewright calc wire 12A 6m --drop 5% --practice marine`
}

// Help shows examples.
func (calcPowerCmd) Help() string {
	return `Examples:

  fusewright calc power 55W
  fusewright calc power 4.6A --system 13.8V`
}

// Help shows examples.
func (calcBatteryCmd) Help() string {
	return `Examples:

  fusewright calc battery 12Ah 1.2A
  fusewright calc battery 12Ah 1.2A --peukert 1.2 --keep 50%`
}

// Help shows examples.
func (calcHeatCmd) Help() string {
	return `Examples:

  fusewright calc heat 1.5mm²
  fusewright calc heat 1.5mm² --current 12A --ambient 60°C`
}

// Help shows examples.
func (calcFuseCmd) Help() string {
	return `Examples:

  fusewright calc fuse 15A 30A
  fusewright calc fuse 15A 30A --type 'blade C' --ambient 60°C`
}

// Help shows examples.
func (calcShortCmd) Help() string {
	return `Examples:

  fusewright calc short --current 500A --time 50ms
  fusewright calc short --current 500A --size 1.5mm²`
}

// Help shows examples.
func (calcFaultCmd) Help() string {
	return `Examples:

  fusewright calc fault 4mm²:0.5m 1.5mm²:2m --fuse 15A`
}
