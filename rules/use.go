package rules

import "wheelwork/spec"

// use counts where each toothed part is at work.
type use struct {
	meshes []int32 // by Wheel.Index: meshes it is in
	chains []int32 // by Sprocket.Index: chains that run over it
}

type useKey struct{}

// used counts the uses of the design's toothed parts.
func used(f *Facts) use {
	return Shared(f, useKey{}, func(f *Facts) use {
		u := use{make([]int32, len(f.Design.Wheels)), make([]int32, len(f.Design.Sprockets))}
		for _, m := range f.Design.Meshes {
			for _, w := range [...]*spec.Wheel{m.A, m.B} {
				if w != nil {
					u.meshes[w.Index]++
				}
			}
		}
		for _, c := range f.Design.Chains {
			for _, s := range c.Over {
				u.chains[s.Index]++
			}
		}
		return u
	})
}
