package design

// Format is the design format as its reader knows it: every section with its
// keys, in the order of the reference. It is made anew on each call.
func Format() []Section {
	return []Section{
		designSection.describe(), limitsSection.describe(), batterySection.describe(), bankSection.describe(),
		chargingSection.describe(), vehicleLoadSection.describe(), placeSection.describe(),
		runSection.describe(), nearSection.describe(), wireDefaultsSection.describe(),
		wireSection.describe(), endsSection.describe(), tapSection.describe(), fuseSection.describe(),
		relaySection.describe(), coilSection.describe(), blockSection.describe(), waySection.describe(),
		switchSection.describe(), diodeSection.describe(), resistorSection.describe(), chargerSection.describe(), loadSection.describe(), inrushSection.describe(), leadSection.describe(),
		groundSection.describe(), spliceSection.describe(), connectorSection.describe(), situationSection.describe(),
		rideSection.describe(), legSection.describe(), acceptanceSection.describe(),
		sheetSection.describe(),
	}
}
