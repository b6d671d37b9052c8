package rules

// ComputeGearings works out every mesh anew, to be timed.
func ComputeGearings(f *Facts) int { return len(gearings(f).list) }

// RunOn runs one rule, to be timed, and returns how much it finds.
func RunOn(r *Rule, f *Facts) int {
	var found []Finding
	r.Run(&Pass{Facts: f, rule: r, severity: r.Severity, findings: &found})
	return len(found)
}
