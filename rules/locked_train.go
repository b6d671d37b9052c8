package rules

import (
	"fmt"
	"sort"
	"strings"

	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/text"
	"wheelwork/spec/train"
)

func init() {
	register(&Rule{
		Name:     "locked-train",
		Group:    Structure,
		Severity: Error,
		Checks:   "no loop of meshes, chains and drives asks for two different rates of one arbor",
		Why:      "wheels that close a loop turn only if the loop gives back exactly the rate it was given; otherwise nothing in it can be turned, and a motor stalls or shears a tooth",
		Formula:  "round a loop on one carrier the product of all ratios is 1; in general, the joints of the loop let its arbors only stand still",
		Source:   "rank of the linear equations of the joints, solved exactly; Willis's formula for what an arm carries",
		Breaks:   func() string { return lockedExample(`mesh { wheels = ["third", "first"] }`) },
		Keeps:    func() string { return lockedExample("") },
		Run:      lockedTrain,
	})
}

func lockedExample(closing string) string {
	return `
design { title = "Three wheels" }
arbor "day" {}
arbor "idler" {}
arbor "tide" {}
wheel "first" {
  on    = "day"
  teeth = 30
}
wheel "second" {
  on    = "idler"
  teeth = 31
}
wheel "third" {
  on    = "tide"
  teeth = 32
}
mesh { wheels = ["first", "second"] }
mesh { wheels = ["second", "third"] }
` + closing + `
clock {
  on     = "day"
  period = "solar day"
}
`
}

func lockedTrain(p *Pass) {
	for i := range p.Train.Locks {
		l := &p.Train.Locks[i]
		if len(l.Loop) == 1 {
			held(p, l)
			continue
		}
		needs, ok := p.Train.Needs(l, l.Joint)
		f := p.Found(l.Joint.Part, jointAt(l.Joint), "%s locks %s: %s", l.Joint.Name(), loopWords(l), needWords(l.Joint, needs, ok))
		for _, j := range l.Loop {
			if j != l.Joint {
				f.See(jointAt(j), "%s is in the loop", j.Name())
			}
		}
		free(p, f, l)
		p.Report(f)
	}
}

// held reports a joint to what its own carrier holds fast.
func held(p *Pass, l *train.Lock) {
	j := l.Joint
	fast, other := j.A, j.B
	if j.B.Stud || p.Train.SameBody(j.B, carrierArbor(j, j.B)) {
		fast, other = j.B, j.A
	}
	f := p.Found(j.Part, jointAt(j), "%s holds %s fast: it is carried by %s, against which %s does not turn", j.Name(), other.Title(), carrierName(other), fast.Title())
	f.Part = j.Name()
	f.See(fast.Head, "does not turn against %s", carrierName(other))
	p.Report(f)
}

// carrierArbor is the arbor that is the joint's carrier, or the arbor given
// where that is the frame.
func carrierArbor(j *train.Joint, or *spec.Arbor) *spec.Arbor {
	if j.Carrier.Arbor != nil {
		return j.Carrier.Arbor
	}
	return or
}

// loopWords lists the loop's wheels with their teeth.
func loopWords(l *train.Lock) string {
	const few = 6
	words := make([]string, 0, few+1)
	for i, j := range l.Loop {
		if i == few {
			return strings.Join(words, ", ") + fmt.Sprintf(" and %d more", len(l.Loop)-few)
		}
		words = append(words, jointWords(j))
	}
	return listed(words)
}

func jointWords(j *train.Joint) string {
	switch {
	case j.Mesh != nil:
		return fmt.Sprintf("%s (%d) - %s (%d)", j.Mesh.A.Name.Text, j.Mesh.A.Teeth.N, j.Mesh.B.Name.Text, j.Mesh.B.Teeth.N)
	case j.Chain != nil:
		a, b := sprocketOn(j.Chain, j.A), sprocketOn(j.Chain, j.B)
		return fmt.Sprintf("%s (%d) - %s (%d)", a.Name.Text, a.Teeth.N, b.Name.Text, b.Teeth.N)
	case j.A == nil:
		return fmt.Sprintf("%s (%s rpm)", j.Part.Title(), fig(j.Ratio.Float()))
	}
	return fmt.Sprintf("%s - %s", j.A.Name.Text, j.B.Name.Text)
}

func sprocketOn(c *spec.Chain, a *spec.Arbor) *spec.Sprocket {
	for _, s := range c.Over {
		if s.Arbor == a {
			return s
		}
	}
	return nil
}

func needWords(j *train.Joint, needs exact.Rat, ok bool) string {
	switch {
	case j.A == nil && ok:
		return fmt.Sprintf("it turns %s at %s rpm, the loop at %s rpm", j.B.Title(), fig(j.Ratio.Float()), fig(needs.Float()))
	case !ok:
		return "whatever its ratio, they cannot turn"
	}
	s := fmt.Sprintf("it turns %s %s times for one turn of %s, the rest of the loop %s times", j.B.Title(), j.Ratio, j.A.Title(), needs)
	if needs.Equal(j.Ratio.Neg()) {
		s += ": the counts agree, the senses contradict"
	}
	return s
}

// jointAt is where a joint says what it joins.
func jointAt(j *train.Joint) text.Place {
	switch {
	case j.Mesh != nil:
		return j.Mesh.Wheels.Place()
	case j.Chain != nil:
		return j.Chain.Sprockets.Place()
	}
	return j.Part.Head
}

// free adds the remedies that change one figure: a tooth count of a wheel that
// is in no other mesh, or the speed of a drive. Those that change least come
// first.
func free(p *Pass, f *Finding, l *train.Lock) {
	const few = 3
	type change struct {
		by    int64
		title string
		edit  Edit
	}
	var changes []change
	meshes := used(p.Facts).meshes
	for _, j := range l.Loop {
		needs, ok := p.Train.Needs(l, j)
		if !ok || needs.IsZero() {
			continue
		}
		if v := driveOf(p.Design, j); v != nil {
			if edit, ok := Figure(v.Speed.At, needs, "rpm"); ok {
				f.Mend(fmt.Sprintf("run %s at %s rpm", v.Title(), fig(needs.Float())), edit)
			}
		}
		if j.Mesh == nil || needs.Sign() != j.Ratio.Sign() {
			continue
		}
		a, b := j.Mesh.A, j.Mesh.B
		for _, c := range [...]struct {
			w     *spec.Wheel
			teeth exact.Rat
		}{
			{a, needs.Abs().Mul(exact.Int(b.Teeth.N))},
			{b, exact.Int(a.Teeth.N).Quo(needs.Abs())},
		} {
			n, whole := c.teeth.Int64()
			edit, ok := Replace(c.w.Teeth.At, c.teeth.String())
			if whole && ok && n >= 3 && n <= spec.MostTeeth && meshes[c.w.Index] == 1 {
				changes = append(changes, change{max(n-c.w.Teeth.N, c.w.Teeth.N-n), fmt.Sprintf("give %s %d teeth", c.w.Title(), n), edit})
			}
		}
	}
	sort.SliceStable(changes, func(i, j int) bool { return changes[i].by < changes[j].by })
	for _, c := range changes[:min(few, len(changes))] {
		f.Mend(c.title, c.edit)
	}
}

// driveOf is the drive that a joint comes from, nil if it comes from none.
func driveOf(d *spec.Design, j *train.Joint) *spec.Drive {
	if j.A != nil {
		return nil
	}
	for _, v := range d.Drives {
		if &v.Part == j.Part {
			return v
		}
	}
	return nil
}
