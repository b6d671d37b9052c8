package rules

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"wheelwork/rules/chain"
	"wheelwork/spec"
	"wheelwork/spec/exact"
)

func init() {
	register(&Rule{
		Name:     "not-in-stock",
		Group:    Making,
		Severity: Warning,
		Checks:   "tooth counts, modules and chains are among those that the stock lists",
		Why:      "a wheel of a module or a count that cannot be had has to be cut specially, with a cutter bought for it, and a chain of another pitch wants new sprockets",
		Source:   "the design's own stock; what it does not list (teeth, modules, chains) is not limited. Worms have starts and no tooth count, and sprockets go by their chain",
		Breaks:   func() string { return stockExample("0.7") },
		Keeps:    func() string { return stockExample("0.8") },
		Run:      notInStock,
	})
}

func stockExample(module string) string {
	return `
design { title = "One wheel" }
stock {
  teeth   = ["12-60", 72]
  modules = [0.5, 0.8, 1]
}
arbor "hand" {}
wheel "hand" {
  on     = "hand"
  teeth  = 48
  module = ` + module + `
}
`
}

func notInStock(p *Pass) {
	s := p.Design.Stock
	switch {
	case s == nil:
		p.StandAside("the design lists no stock")
		return
	case !s.Teeth.Set() && !s.Modules.Set() && !s.Chains.Set():
		p.StandAside("the stock lists neither teeth, modules nor chains")
		return
	}
	if s.Teeth.Set() {
		for _, w := range p.Design.Wheels {
			if !w.Is("worm") && !s.Teeth.Holds(w.Teeth.N) {
				f := p.Found(&w.Part, w.Teeth.Place(), "%s has %s, a count that the stock does not hold: %s", w.Title(), teeth(w.Teeth.N), nearestCounts(s.Teeth, w.Teeth.N))
				p.Report(f.See(s.Teeth.KeyPlace(), "the tooth counts that can be had"))
			}
		}
	}
	if s.Modules.Set() {
		p.modulesInStock(s.Modules)
	}
	if s.Chains.Set() {
		p.chainsInStock(s.Chains)
	}
}

// nearestCounts says which counts of a list are nearest to one that it lacks.
func nearestCounts(list spec.Ranges, n int64) string {
	var less, more int64
	for _, r := range list.List {
		if r.From < n {
			less = max(less, min(r.To, n-1))
		}
		if r.To > n && (more == 0 || r.From < more) {
			more = max(r.From, n+1)
		}
	}
	return nearestOf(less, more)
}

// nearestOf says the nearest counts on either side, 0 where there is none.
func nearestOf(less, more int64) string {
	switch {
	case less > 0 && more > 0:
		return "the nearest are " + exact.Int(less).String() + " and " + exact.Int(more).String()
	case less+more > 0:
		return "the nearest is " + exact.Int(less+more).String()
	}
	return "there is none"
}

// modulesInStock reports a module once, at the first wheel that has it.
func (p *Pass) modulesInStock(have spec.Numbers) {
	var want lack
	type missing struct {
		module float64
		wheels []*spec.Wheel
	}
	var gone []missing
	for _, w := range p.Design.Wheels {
		module, ok := ModuleOf(w)
		if !ok {
			want.of("a wheel gives no module", w.Name.Text)
			continue
		}
		if slices.ContainsFunc(have.List, func(m spec.Number) bool { return sameFigure(m.Exact.Float(), module) }) {
			continue
		}
		i := slices.IndexFunc(gone, func(m missing) bool { return sameFigure(m.module, module) })
		if i < 0 {
			i = len(gone)
			gone = append(gone, missing{module: module})
		}
		gone[i].wheels = append(gone[i].wheels, w)
	}
	for _, m := range gone {
		first := m.wheels[0]
		f := p.Found(&first.Part, sizePlace(first), "%s is of module %s, which the stock does not hold: %s", first.Title(), mm(m.module), nearestModule(have, m.module))
		if n := len(m.wheels); n > 1 {
			f.Message += fmt.Sprintf("; %d wheels have it", n)
		}
		p.Report(f.See(have.KeyPlace(), "the modules that can be had"))
	}
	want.tell(p)
}

func nearestModule(have spec.Numbers, module float64) string {
	nearest := math.Inf(1)
	for _, m := range have.List {
		if x := m.Exact.Float(); math.Abs(x-module) < math.Abs(nearest-module) {
			nearest = x
		}
	}
	if math.IsInf(nearest, 1) {
		return "there is none"
	}
	return "the nearest is " + mm(nearest)
}

// sameFigure reports whether two figures are the same but for rounding, such as
// that of a pitch to a module.
func sameFigure(a, b float64) bool { return math.Abs(a-b) <= 1e-6*b }

func (p *Pass) chainsInStock(have spec.Names) {
	list := Chainings(p.Facts)
	for i := range list {
		c := &list[i]
		if c.Pitch == 0 && !c.Chain.Size.Set() || holdsChain(have, c) {
			continue
		}
		what := "of pitch " + mm(c.Pitch)
		if c.Chain.Size.Set() {
			what = "of size " + c.Chain.Size.Text
		}
		said := "there is none"
		if len(have.List) > 0 {
			said = "it holds " + listed(texts(have.List))
		}
		f := p.Found(&c.Chain.Part, c.pitchPlace(), "%s is %s, which the stock does not hold: %s", c.title(), what, said)
		f.Part = c.title()
		p.Report(f.See(have.KeyPlace(), "the chains that can be had"))
	}
}

// holdsChain reports whether the stock has the chain: of its size by any of its
// numbers or, where the chain gives no size, of its pitch.
func holdsChain(have spec.Names, c *Chaining) bool {
	for _, n := range have.List {
		size, known := chain.Lookup(n.Text)
		switch {
		case !c.Chain.Size.Set():
			if known && sameFigure(size.Pitch, c.Pitch) {
				return true
			}
		case known && c.Sized:
			if size.Name == c.Size.Name {
				return true
			}
		case strings.EqualFold(strings.TrimSpace(n.Text), strings.TrimSpace(c.Chain.Size.Text)):
			return true
		}
	}
	return false
}

func texts(names []spec.Name) []string {
	list := make([]string, len(names))
	for i, n := range names {
		list[i] = n.Text
	}
	return list
}
