package rules

// ComputeGearings is Gearings without the memory, to be timed.
var ComputeGearings = gearings
