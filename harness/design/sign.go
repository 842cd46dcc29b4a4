package design

// Sign is which symbol stands for a load on the drawing.
type Sign string

// The signs of loads.
const (
	SignLamp        Sign = "lamp"
	SignLED         Sign = "LED"
	SignHeater      Sign = "heater"
	SignMotor       Sign = "motor"
	SignPump        Sign = "pump"
	SignHorn        Sign = "horn"
	SignSocket      Sign = "socket"
	SignElectronics Sign = "electronics"
	SignSensor      Sign = "sensor"
	SignVoltmeter   Sign = "voltmeter"
	SignConverter   Sign = "converter" // to other volts, or to alternating current
)

// Signs are all of them, as the design may name them.
var Signs = []Sign{SignLamp, SignLED, SignHeater, SignMotor, SignPump, SignHorn, SignSocket, SignElectronics,
	SignSensor, SignVoltmeter, SignConverter}

// Electronic tells whether it stands for electronics inside.
func (s Sign) Electronic() bool {
	return s == SignElectronics || s == SignVoltmeter || s == SignConverter
}
