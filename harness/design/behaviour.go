package design

// Behaviour is how a load's current follows its voltage.
type Behaviour string

// The load behaviours. Filament current goes with V^0.55.
const (
	Resistor      Behaviour = "resistor"
	FilamentLamp  Behaviour = "filament lamp"
	ConstantPower Behaviour = "constant power"
	Motor         Behaviour = "motor"
)

// Behaviours are all of them, as the design may name them.
var Behaviours = []Behaviour{Resistor, FilamentLamp, ConstantPower, Motor}
