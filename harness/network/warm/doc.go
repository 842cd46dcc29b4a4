// Package warm finds the operating point of a circuit with its wires as warm as
// their currents make them: resistance sets current, current sets temperature,
// temperature sets resistance, until all three agree.
//
// Each wire lies as a whole at the hottest place and in the fullest run that it
// meets, among wires that all carry what they may: package conductor's steady
// heat balance with the reductions that its allowed current has. So the
// temperature is an upper one, and a wire at its allowed current by heat is at
// its class less the margin. Terminations stay at 20 °C, since their resistance
// is a limit already.
package warm
