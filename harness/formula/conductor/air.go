package conductor

import "math"

// Air is dry air at one atmosphere at a temperature.
type Air struct {
	Kelvin                 float64
	Conductivity           float64 // W/(m·K)
	Kinematic, Diffusivity float64 // m²/s
	Prandtl                float64
}

// air is dry air at one atmosphere. Source: Incropera, Fundamentals of Heat and
// Mass Transfer, table A.4 (from memory; the rows 250 to 550 K were compared
// with the correlations of physics references).
var air = []Air{
	{200, 0.0181, 7.59e-6, 10.3e-6, 0.737},
	{250, 0.0223, 11.44e-6, 15.9e-6, 0.720},
	{300, 0.0263, 15.89e-6, 22.5e-6, 0.707},
	{350, 0.0300, 20.92e-6, 29.9e-6, 0.700},
	{400, 0.0338, 26.41e-6, 38.3e-6, 0.690},
	{450, 0.0373, 32.39e-6, 47.2e-6, 0.686},
	{500, 0.0407, 38.79e-6, 56.7e-6, 0.684},
	{550, 0.0439, 45.57e-6, 66.7e-6, 0.683},
	{600, 0.0469, 52.69e-6, 76.9e-6, 0.685},
	{700, 0.0524, 68.10e-6, 98.0e-6, 0.695},
	{800, 0.0573, 84.93e-6, 120e-6, 0.709},
	{1000, 0.0667, 121.9e-6, 168e-6, 0.726},
}

// AirSource is where the properties of air are from.
const AirSource = "Incropera, Fundamentals of Heat and Mass Transfer, table A.4 (from memory; compared with the correlations of physics references from 250 to 550 K)"

// AirRows are the rows between which a temperature lies; beyond them both are the end row.
func AirRows(kelvin float64) (a, b Air) {
	last := len(air) - 1
	switch {
	case kelvin <= air[0].Kelvin:
		return air[0], air[0]
	case kelvin >= air[last].Kelvin:
		return air[last], air[last]
	}
	i := 1
	for air[i].Kelvin < kelvin {
		i++
	}
	return air[i-1], air[i]
}

// airAt interpolates between the rows; beyond them the end rows hold.
func airAt(kelvin float64) Air {
	a, b := AirRows(kelvin)
	if a == b {
		return a
	}
	f := (kelvin - a.Kelvin) / (b.Kelvin - a.Kelvin)
	mix := func(x, y float64) float64 { return x + f*(y-x) }
	return Air{kelvin, mix(a.Conductivity, b.Conductivity), mix(a.Kinematic, b.Kinematic),
		mix(a.Diffusivity, b.Diffusivity), mix(a.Prandtl, b.Prandtl)}
}

// AirDensityRatio is the density of air at an altitude against sea level in
// the standard atmosphere: (1 − 2.25577e-5 · h)^4.2559 up to 11 km, falling
// with exp(−(h − 11000)/6342) above. Source: ICAO standard atmosphere (ISO 2533).
func AirDensityRatio(altitudeM float64) float64 {
	const tropopauseM = 11000
	if altitudeM <= 0 {
		return 1
	}
	low := math.Pow(1-2.25577e-5*math.Min(altitudeM, tropopauseM), 4.2559)
	if altitudeM <= tropopauseM {
		return low
	}
	return low * math.Exp(-(altitudeM-tropopauseM)/6342)
}

// ChurchillChu is the mean Nusselt number of natural convection on a long
// horizontal cylinder, Ra from 1e-5 to 1e12:
// Nu = {0.60 + 0.387 · Ra^(1/6) / [1 + (0.559/Pr)^(9/16)]^(8/27)}².
// Source: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1049.
//
// The powers are taken by roots, which are several times quicker than math.Pow;
// a harness of 40 wires asks some ten thousand times.
func ChurchillChu(rayleigh, prandtl float64) float64 {
	root := math.Sqrt(0.559 / prandtl)
	f := 1 + root*math.Sqrt(math.Sqrt(math.Sqrt(root))) // 9/16 = 1/2 + 1/16
	f = math.Cbrt(math.Cbrt(math.Cbrt(f)))
	f *= f
	f *= f
	f *= f // to the 8/27
	n := 0.60 + 0.387*math.Cbrt(math.Sqrt(math.Max(0, rayleigh)))/f
	return n * n
}

// Morgan is the same by pieces, Nu = C · Ra^n. On vehicle wire it reads about
// a fifth higher than ChurchillChu, which the heat balance uses as the safer.
// Source: Morgan, Advances in Heat Transfer 11 (1975) 199 (limits of the
// pieces from memory).
func Morgan(rayleigh float64) float64 {
	c, n := 0.125, 0.333
	switch {
	case !(rayleigh > 0):
		return 0
	case rayleigh < 1e-2:
		c, n = 0.675, 0.058
	case rayleigh < 1e2:
		c, n = 1.02, 0.148
	case rayleigh < 1e4:
		c, n = 0.850, 0.188
	case rayleigh < 1e7:
		c, n = 0.480, 0.250
	}
	return c * math.Pow(rayleigh, n)
}
