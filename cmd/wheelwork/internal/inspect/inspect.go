// Package inspect reads and checks the designs that a command line names, each
// on its own and all side by side.
package inspect

import (
	"runtime"
	"sync"
	"sync/atomic"

	"wheelwork/rules"
	"wheelwork/spec"
	"wheelwork/spec/folder"
	"wheelwork/spec/text"
)

// Design is what came of one design.
type Design struct {
	// Name is the design's file, or the path that could not be read.
	Name string
	// Facts is nil where the text could not be read.
	Facts    *rules.Facts
	Result   rules.Result
	Problems []text.Problem
}

// Find lists the designs at the paths, each once, in the order of the paths.
// A path that cannot be read or holds no design becomes a Design with that
// problem.
func Find(paths []string) []Design {
	var list []Design
	seen := map[string]bool{}
	for _, path := range paths {
		names, err := folder.Designs(path)
		switch {
		case err != nil:
			list = append(list, failed(path, err.Error()))
		case len(names) == 0:
			list = append(list, failed(path, "no spec file in this folder or below it holds a design block"))
		}
		for _, name := range names {
			if !seen[name] {
				seen[name] = true
				list = append(list, Design{Name: name})
			}
		}
	}
	return list
}

func failed(path, why string) Design {
	at := text.Place{File: text.NewFile(path, nil)}
	return Design{Name: path, Problems: []text.Problem{{Place: at, Message: why}}}
}

// Check reads and checks the designs that have no problem yet.
func Check(list []Design) {
	each(list, func(d *Design) {
		if d.Read(); d.Facts != nil {
			d.Result, d.Problems = rules.CheckFacts(d.Facts)
		}
	})
}

// Read reads one design and works out its motion.
func (d *Design) Read() {
	if len(d.Problems) > 0 || d.Facts != nil {
		return
	}
	var design *spec.Design
	if design, d.Problems = spec.Load(d.Name); len(d.Problems) == 0 {
		d.Facts = rules.NewFacts(design)
	}
}

// each does the same for all designs, as many at once as there are processors.
func each(list []Design, do func(*Design)) {
	workers := min(len(list), runtime.GOMAXPROCS(0))
	if workers <= 1 {
		for i := range list {
			do(&list[i])
		}
		return
	}
	var next atomic.Int64
	var wait sync.WaitGroup
	for range workers {
		wait.Go(func() {
			for i := next.Add(1) - 1; int(i) < len(list); i = next.Add(1) - 1 {
				do(&list[i])
			}
		})
	}
	wait.Wait()
}
