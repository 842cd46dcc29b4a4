package parts

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
	"fusewright/render/symbol"
)

// SymbolOf chooses the symbol of a part that has one.
func SymbolOf(set *symbol.Set, p *circuit.Part) *symbol.Symbol {
	switch p.Kind {
	case circuit.Fuse:
		if f, ok := p.Source.(*design.Fuse); ok {
			return set.Symbol(fuseKind(f.Type))
		}
		return set.Symbol(symbol.Fuse)
	case circuit.Tap:
		return set.Symbol(symbol.Tap)
	case circuit.Battery:
		if len(p.LinkWires()) > 0 {
			return set.Symbol(symbol.String)
		}
		return set.Symbol(symbol.Battery)
	case circuit.Bank:
		if len(p.LinkWires()) > 0 {
			return set.Symbol(symbol.BankString)
		}
		return set.Symbol(symbol.Bank)
	case circuit.Generator:
		if p.Studded() {
			return set.Symbol(symbol.Alternator)
		}
		return set.Symbol(symbol.Generator)
	case circuit.Splice:
		return set.Symbol(symbol.Splice)
	case circuit.Switch:
		if s, ok := p.Source.(*design.Switch); ok {
			return set.Symbol(switchKind(s))
		}
		return set.Symbol(symbol.Switch)
	case circuit.Diode:
		if d, ok := p.Source.(*design.Diode); ok && !d.Reversed {
			return set.Symbol(symbol.FeedDiode)
		}
		return set.Symbol(symbol.Diode) // its bar is towards the feed
	case circuit.Resistor:
		return set.Symbol(symbol.Resistor)
	case circuit.Charger:
		if x, ok := p.Source.(*design.Charger); ok {
			return set.Symbol(chargerKinds[x.Type.From])
		}
	case circuit.Load:
		if l, ok := p.Source.(*design.Load); ok {
			return set.Symbol(loadKind(l))
		}
	}
	return set.Symbol(symbol.Electronics)
}

// fuseKind is the symbol of an overcurrent device: the fuse unless its type says
// otherwise.
func fuseKind(t *library.FuseType) symbol.Kind {
	if t != nil && t.Kind == "breaker" {
		return symbol.Breaker
	} else if t != nil && t.Kind == "ptc" {
		return symbol.PTC
	}
	return symbol.Fuse
}

// switchKind is the symbol of a switch, by what closes it.
func switchKind(s *design.Switch) symbol.Kind {
	switch {
	case s.Type != nil && s.Type.Float:
		return symbol.FloatSwitch
	case s.Type != nil && s.Type.Pressure:
		return symbol.PressureSwitch
	case s.Type != nil && s.Type.Isolates:
		return symbol.BatterySwitch
	case s.Momentary:
		return symbol.PushSwitch
	}
	return symbol.Switch
}

// chargerKinds are the symbols of chargers, by what they take their power from.
var chargerKinds = map[string]symbol.Kind{"battery": symbol.Converter, "panel": symbol.Solar, "mains": symbol.Rectifier, "engine": symbol.Alternator}

// loadKinds are the symbols of the signs of loads.
var loadKinds = map[design.Sign]symbol.Kind{
	design.SignLamp: symbol.Lamp, design.SignLED: symbol.LED, design.SignHeater: symbol.Heater,
	design.SignMotor: symbol.Motor, design.SignPump: symbol.Pump, design.SignHorn: symbol.Horn,
	design.SignSocket: symbol.Socket, design.SignElectronics: symbol.Electronics,
	design.SignSensor: symbol.Sensor, design.SignVoltmeter: symbol.Voltmeter, design.SignConverter: symbol.Converter,
}

// loadKind is the symbol of a load, by its sign.
func loadKind(l *design.Load) symbol.Kind {
	if k, ok := loadKinds[l.Sign]; ok {
		return k
	}
	return symbol.Electronics
}

// GroundKind is the sign of where a return ends: a ground point, a battery, or another part that it goes on to.
func GroundKind(p *circuit.Part) symbol.Kind {
	switch {
	case p.Kind == circuit.Battery, p.Kind == circuit.Bank:
		return symbol.Negative
	case p.Kind != circuit.Ground:
		return symbol.Outgoing
	case IsGroundBlock(p):
		return symbol.GroundBar
	}
	return symbol.Frame
}

// IsGroundBlock tells a wired bar from a stud on the frame.
func IsGroundBlock(p *circuit.Part) bool {
	g, ok := p.Source.(*design.Ground)
	return ok && g.Kind == design.GroundBlock
}

// ShortSign is what stands in the box of an electronic unit: the short of its kind in the
// library; "" where the design names no kind that has one.
func ShortSign(p *circuit.Part) string {
	if l, ok := p.Source.(*design.Load); ok && l.Type != nil {
		return l.Type.Short
	}
	return ""
}
