package rules

import (
	"wheelwork/spec/quantity"
)

func init() {
	register(&Rule{
		Name:     "step-ratio",
		Group:    Teeth,
		Severity: Note,
		Checks:   "one mesh does not step up or down by too much",
		Why:      "a great step takes a great wheel and a pinion of few teeth: the wheel is costly and in the way, the pinion weak and soon worn; two meshes take less room and run easier",
		Formula:  "more teeth / fewer teeth; a worm is exempt",
		Source:   "common practice: up to 10 for spur wheels and clock trains, 6 for bevels and crown wheels",
		Thresholds: []Threshold{
			{Name: "spur", Dimension: quantity.Plain, Default: "10", Doc: "greatest step of spur wheels and rings"},
			{Name: "crossed", Dimension: quantity.Plain, Default: "6", Doc: "greatest step of bevels and crown wheels"},
		},
		Breaks: func() string { return pairExample{pinion: "teeth = 12", wheel: "teeth = 121"}.text() },
		Keeps:  func() string { return pairExample{pinion: "teeth = 12", wheel: "teeth = 120"}.text() },
		Run:    stepRatio,
	})
}

func stepRatio(p *Pass) {
	spur, crossed := p.Bound("spur"), p.Bound("crossed")
	for _, m := range p.Design.Meshes {
		if m.A == nil || m.B == nil || m.A.Is("worm") || m.B.Is("worm") {
			continue
		}
		bound := spur
		if m.A.Is("bevel") || m.B.Is("bevel") || m.A.Is("crown") || m.B.Is("crown") {
			bound = crossed
		}
		small, great := m.A, m.B
		if small.Teeth.N > great.Teeth.N {
			small, great = great, small
		}
		if exactRatio(great, small).Cmp(bound) <= 0 {
			continue
		}
		f := p.foundMesh(m, great.Teeth.Place(), "mesh %s steps %d to %d, 1 to %s: more than 1 to %s in one mesh", m.Label(),
			small.Teeth.N, great.Teeth.N, figures(exactRatio(great, small).Float(), 4), fig(bound.Float()))
		f.See(small.Teeth.Place(), "the fewer teeth")
		p.Report(f)
	}
}
