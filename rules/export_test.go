package rules

// ComputeGearings works out every mesh anew, to be timed.
func ComputeGearings(f *Facts) int { return len(gearings(f).list) }
