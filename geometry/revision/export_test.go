package revision

// What tests of the package call by itself.
var (
	Match = match
	Lots  = lots
)
