//go:build unprepared

package library

// prepared has no rows while they are being prepared: the program that writes
// prepared.go must compile whatever that file holds.
func prepared() *Library { return nil }
