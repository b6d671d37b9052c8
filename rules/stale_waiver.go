package rules

// staleWaiver has no Run: whether a waiver waives anything is known only when
// all rules have run, so Check itself looks.
var staleWaiver = &Rule{
	Name:     "stale-waiver",
	Group:    Waivers,
	Severity: Warning,
	Checks:   "every waiver names a rule, gives its reason and still waives something",
	Why:      "a waiver left behind when its reason is gone will hide the next fault that stands in the same place",
	Source:   "common practice",
	Breaks: func() string {
		return `
design { title = "Tide hand" }
# waive undriven: the visitor's crank comes with the next stage
arbor "day" {}
clock {
  on     = "day"
  period = "solar day"
}
`
	},
	Keeps: func() string {
		return `
design { title = "Tide hand" }
arbor "day" {}
# waive undriven: the visitor's crank comes with the next stage
arbor "crank" {}
clock {
  on     = "day"
  period = "solar day"
}
`
	},
}

func init() { register(staleWaiver) }
