package unit

// Pounds in the units of physics, exact by definition: the pound of the
// international yard and pound agreement of 1959, and standard gravity,
// 9.80665 m/s².
const (
	Pound      = 0.45359237          // kg
	PoundForce = Pound * 9.80665     // N
	PSI        = PoundForce / 645.16 // N/mm², a pound-force to the square inch
)
