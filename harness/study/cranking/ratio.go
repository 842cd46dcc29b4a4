package cranking

// Mild and cold air of a start, in °C (our choice).
const (
	MildC = 20.0
	ColdC = 0.0
)

// least12V is what the posts of a 12 V battery have at least while a sound starter turns a
// sound engine in mild air: below it a workshop tests the battery.
// Source: car service manual of 1998, 1.9 l engine, starter current draw (one source).
const least12V = 9.5

// turns12V is what a starter of 12 V needs to turn an engine, from memory: as the library's do.
const turns12V = 7

// drawn is what a starter draws over what it draws in mild air, by temperature in °C.
// Source: the same manual: 80 to 120 A at 5 to 27 °C, 90 to 130 A at 5 °C, 230 to 280 A
// at −20 °C (one source).
var drawn = [][2]float64{{-20, 2.55}, {5, 1.1}, {MildC, 1}}

// Ratio is what a starter draws at a temperature over what it draws in mild air, by
// straight lines; at the ends as there.
func Ratio(celsius float64) float64 {
	if celsius <= drawn[0][0] {
		return drawn[0][1]
	}
	for i := 1; i < len(drawn); i++ {
		if a, b := drawn[i-1], drawn[i]; celsius <= b[0] {
			return a[1] + (celsius-a[0])/(b[0]-a[0])*(b[1]-a[1])
		}
	}
	return 1
}
