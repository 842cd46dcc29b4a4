package conductor

import "math"

// KFactor is the adiabatic constant of copper in A·√s/mm²:
// k = √(Qc·(β + 20)/ρ20 · ln((θf + β)/(θi + β))), with Qc = 3.45e-3 J/(mm³·K),
// β = 234.5 °C, ρ20 = 17.241e-6 Ω·mm; zero when the end is not above the start.
// Range: up to 5 s. Source: IEC 60364-5-54 annex A, IEC 60949.
func KFactor(startC, endC float64) float64 {
	if !(endC > startC) || !(startC > -copperBetaC) {
		return 0
	}
	return math.Sqrt(CopperHeatJPerMm3K * (copperBetaC + 20) / (CopperOhmMm2PerM * 1e-3) *
		math.Log((endC+copperBetaC)/(startC+copperBetaC)))
}

// WithstandI2t is k²S², the I²t in A²s that heats an area from start to end.
func WithstandI2t(areaMm2, startC, endC float64) float64 {
	k := KFactor(startC, endC)
	return k * k * areaMm2 * areaMm2
}

// AreaForI2t is the smallest area in mm² that stands a current for a time:
// S = I·√t / k. +Inf when the end is not above the start.
// Source: IEC 60364-4-43.
func AreaForI2t(currentA, seconds, startC, endC float64) float64 {
	k := KFactor(startC, endC)
	if !(k > 0) {
		return math.Inf(1)
	}
	return math.Abs(currentA) * math.Sqrt(math.Max(0, seconds)) / k
}

// AdiabaticS is the time in which a current heats an area from start to end
// when no heat leaves the copper: t = k²S²/I²; +Inf for no current.
func AdiabaticS(currentA, areaMm2, startC, endC float64) float64 {
	if currentA == 0 {
		return math.Inf(1)
	}
	return WithstandI2t(areaMm2, startC, endC) / (currentA * currentA)
}

// AdiabaticEndC is the temperature an area reaches by an I²t when no heat
// leaves the copper: θf = (θi + β)·exp(I²t·ρ20/(S²·Qc·(β+20))) − β.
// +Inf for an area of zero or less.
func AdiabaticEndC(i2t, areaMm2, startC float64) float64 {
	if !(areaMm2 > 0) {
		return math.Inf(1)
	}
	q := CopperHeatJPerMm3K * (copperBetaC + 20) / (CopperOhmMm2PerM * 1e-3)
	return (startC+copperBetaC)*math.Exp(i2t/(areaMm2*areaMm2*q)) - copperBetaC
}

// OnderdonkA is the current that melts a bare copper conductor in a time,
// starting at an ambient: 33·(I/A)²·t = log10((1083 − Ta)/(234 + Ta) + 1), A in
// circular mils. Range: a few seconds. Source: Stauffacher, General Electric
// Review 1928 (the sign of 234 + Ta from memory).
func OnderdonkA(areaMm2, seconds, ambientC float64) float64 {
	if !(seconds > 0) || !(areaMm2 > 0) {
		return 0
	}
	lg := math.Log10((CopperMeltsC-ambientC)/(234+ambientC) + 1)
	return areaMm2 / Mm2PerCmil * math.Sqrt(math.Max(0, lg)/(33*seconds))
}

// ICEAI2t is the I²t in A²s of ICEA P-32-382 for copper:
// (I/A)²·t = 0.0297·log10((T2 + 234)/(T1 + 234)), A in circular mils.
func ICEAI2t(areaMm2, startC, endC float64) float64 {
	cmil := areaMm2 / Mm2PerCmil
	return cmil * cmil * 0.0297 * math.Log10((endC+234)/(startC+234))
}

// PreeceA is the steady current that melts a bare copper wire in free air:
// I = 10244·d^1.5, d in inches. Source: Preece 1884 to 1888.
func PreeceA(diameterMm float64) float64 {
	return 10244 * math.Pow(math.Max(0, diameterMm)/25.4, 1.5)
}
