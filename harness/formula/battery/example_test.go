package battery_test

import "fmt"

// What a motorcycle battery still does on a frosty morning.
func ExampleBattery() {
	b := of("AGM", 14)
	fmt.Printf("%.2f V at rest, half full\n", b.OpenCircuitV(0.5, 25))
	fmt.Printf("%.1f Ah at 5 A and 25 °C, %.1f Ah at -10 °C\n", b.AvailableAh(5, 25), b.AvailableAh(5, -10))
	fmt.Printf("starts from %.0f %% at 25 °C, from %.0f %% at -10 °C\n", 100*b.StartReserve(25), 100*b.StartReserve(-10))
	fmt.Printf("%.0f days parked with 5 mA\n", b.DaysToNoStart(0.005, 1, 25))
	// Output:
	// 12.30 V at rest, half full
	// 12.2 Ah at 5 A and 25 °C, 9.0 Ah at -10 °C
	// starts from 60 % at 25 °C, from 70 % at -10 °C
	// 38 days parked with 5 mA
}
