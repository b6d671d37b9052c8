package train

import "wheelwork/spec"

// Name is how messages call the joint.
func (j *Joint) Name() string {
	switch {
	case j.Mesh != nil:
		return "mesh " + j.Mesh.Label()
	case j.Chain != nil:
		return "chain " + j.Chain.Label()
	}
	return j.Part.Title()
}

// Path lists the joints that a hand's rate follows from, nearest the hand
// first: of the arbor against the base, what both have in common left out.
func (t *Train) Path(a *spec.Arbor, base spec.Body) []*Joint {
	own := t.trail(t.bodyOf[a.Index])
	against := t.trail(t.body(base))
	in := make(map[int]bool, len(against))
	for _, j := range against {
		in[j] = true
	}
	shared := make(map[int]bool)
	var path []*Joint
	for _, j := range own {
		if in[j] {
			shared[j] = true
			continue
		}
		path = append(path, &t.Joints[j])
	}
	for _, j := range against {
		if !shared[j] {
			path = append(path, &t.Joints[j])
		}
	}
	return path
}

// trail lists the joints from which a body's rate follows, nearest first.
func (t *Train) trail(body int) []int {
	var list []int
	seen := make(map[int]bool)
	used := make(map[int]bool)
	queue := []int{body}
	for len(queue) > 0 {
		b := queue[0]
		queue = queue[1:]
		e := t.sys.from[b]
		if b == frame || seen[b] || e < 0 {
			continue
		}
		seen[b] = true
		if j := t.sys.equations[e].joint; !used[j] {
			used[j] = true
			list = append(list, j)
		}
		for _, term := range t.sys.equations[e].terms {
			if term.body != b {
				queue = append(queue, term.body)
			}
		}
	}
	return list
}
