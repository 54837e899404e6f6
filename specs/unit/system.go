package unit

// System is a system of units: that of a bare figure, or that of a drawing.
type System uint8

// The two systems. Imperial is the zero value.
const (
	Imperial System = iota // inches
	Metric                 // millimetres
)

// String returns the abbreviation of the system's unit: "in" or "mm".
func (s System) String() string {
	if s == Metric {
		return "mm"
	}
	return "in"
}

// Name returns the name of the system's unit: "inches" or "millimetres".
func (s System) Name() string {
	if s == Metric {
		return "millimetres"
	}
	return "inches"
}

// Unit returns one inch or one millimetre.
func (s System) Unit() Length {
	if s == Metric {
		return Millimetre
	}
	return Inch
}

// Finest returns the finest length a figure prints in this system unless a
// Format says otherwise: 1/64 in or 0.1 mm.
func (s System) Finest() Length {
	if s == Metric {
		return Millimetre / 10
	}
	return Inch / 64
}
