package conductor

import "math"

// Annealed copper, IEC 60028 (IACS); AC 43.13-1B p. 11-22 prints 234.5 and
// 254.5 too. Heat capacity as IEC 60949 takes it.
const (
	// CopperOhmMm2PerM is the resistivity at 20 °C in Ω·mm²/m.
	CopperOhmMm2PerM = 0.017241
	// CopperAlphaPerK is the temperature coefficient of resistance at 20 °C.
	CopperAlphaPerK = 0.00393
	// copperBetaC is the temperature below 0 °C at which the straight line of
	// resistance would reach zero: 1/alpha − 20.
	copperBetaC = 234.5
	// CopperHeatJPerMm3K is the heat capacity by volume.
	CopperHeatJPerMm3K = 3.45e-3
	// CopperMeltsC is the melting point as Onderdonk takes it.
	CopperMeltsC = 1083.0
)

// Mm2PerCmil is the area of a circular mil: π/4 · (0.0254 mm)².
const Mm2PerCmil = math.Pi / 4 * 0.0254 * 0.0254

// AtTemperature is a copper resistance known at 20 °C, at conductorC:
// R(T) = R20 · (1 + 0.00393 · (T − 20)). Unit as given. It holds within 0.5 %
// from −50 to 250 °C; below −234 °C it gives zero. Source: IEC 60028.
func AtTemperature(r20, conductorC float64) float64 {
	return r20 * math.Max(0, 1+CopperAlphaPerK*(conductorC-20))
}

// OhmPerM is the resistance of one metre of an area of annealed copper at a
// temperature: R = 0.017241 / A · (1 + 0.00393 · (T − 20)) Ω/m, A in mm².
// +Inf for an area of zero or less. Stranded wire has a little more: where a
// wire type is known, use its published maximum. Source: IEC 60028.
func OhmPerM(areaMm2, conductorC float64) float64 {
	if !(areaMm2 > 0) {
		return math.Inf(1)
	}
	return AtTemperature(CopperOhmMm2PerM/areaMm2, conductorC)
}

// AWGDiameterMm is the diameter of a solid conductor of gauge n:
// d = 0.127 mm · 92^((36 − n)/39); 1/0 is n = 0, 2/0 is −1, 4/0 is −3.
// Source: ASTM B258.
func AWGDiameterMm(n int) float64 { return 0.127 * math.Pow(92, float64(36-n)/39) }

// AWGAreaMm2 is the area of a solid conductor of gauge n: π/4 · d².
// Source: ASTM B258.
func AWGAreaMm2(n int) float64 {
	d := AWGDiameterMm(n)
	return math.Pi / 4 * d * d
}

// AWGOfArea is the gauge number, with its fraction, that has an area in mm²:
// the inverse of AWGAreaMm2. +Inf for an area of zero or less.
func AWGOfArea(areaMm2 float64) float64 {
	if !(areaMm2 > 0) {
		return math.Inf(1)
	}
	d := math.Sqrt(areaMm2 * 4 / math.Pi)
	return 36 - 39*math.Log(d/0.127)/math.Log(92)
}
