package cutting

import (
	"cmp"
	"slices"
)

// CutterTotal is what one cutter cuts, or what is made without one.
type CutterTotal struct {
	Cutter string // as the stock names it, or how else: shaped, turned
	AtHand bool
	Wheels int
	Teeth  int64
}

// StockTotal is the blanks of one material and thickness.
type StockTotal struct {
	Material      string  // "" where the spec does not say
	Face          float64 // 0 where the spec does not say
	Blanks        int
	Least, Most   float64 // diameters to turn, of rings at least those outside
	Plate         float64 // cm2 of the squares they come out of, without saw cuts
	Undimensioned int     // blanks whose diameter is not known
}

// ChainTotal is the chain of one size.
type ChainTotal struct {
	Size    string
	Strands int
	Links   int64
	Length  float64
}

// total sums up by cutter and by stock.
func (l *List) total() {
	for i := range l.Wheels {
		w := &l.Wheels[i]
		l.toCutter(w)
		l.toStock(w)
	}
	for i := range l.Chains {
		c := &l.Chains[i]
		size := c.Size
		if size == "" {
			size = "pitch " + millimetres(c.Pitch)
		}
		t := entry(&l.Strands, func(t *ChainTotal) bool { return t.Size == size }, ChainTotal{Size: size})
		t.Strands++
		t.Links += c.Links
		t.Length += c.Length
	}
	slices.SortStableFunc(l.Cutters, func(a, b CutterTotal) int {
		return cmp.Or(compareBool(b.AtHand, a.AtHand), cmp.Compare(a.Cutter, b.Cutter))
	})
	slices.SortStableFunc(l.Stock, func(a, b StockTotal) int {
		return cmp.Or(cmp.Compare(a.Material, b.Material), cmp.Compare(a.Face, b.Face))
	})
}

func (l *List) toCutter(w *Wheel) {
	name := w.Cutter
	switch {
	case !w.ByCutter && w.Kind == "ring":
		name = "shaped: rings"
	case !w.ByCutter && w.Kind == "worm":
		name = "turned or milled: worms"
	case !w.ByCutter:
		name = "cut otherwise: crown wheels"
	case name == "":
		name = "not known"
	}
	t := entry(&l.Cutters, func(t *CutterTotal) bool { return t.Cutter == name }, CutterTotal{Cutter: name, AtHand: w.AtHand})
	t.Wheels++
	if w.Kind != "worm" {
		t.Teeth += w.Teeth
	}
}

func (l *List) toStock(w *Wheel) {
	t := entry(&l.Stock, func(t *StockTotal) bool { return t.Material == w.Material && t.Face == w.Face }, StockTotal{Material: w.Material, Face: w.Face})
	t.Blanks++
	across := w.Blank
	if w.Outside > 0 {
		across = w.Outside
	}
	if across == 0 {
		t.Undimensioned++
		return
	}
	if t.Most == 0 || across < t.Least {
		t.Least = across
	}
	t.Most = max(t.Most, across)
	t.Plate += across * across / 100
}

// entry is the entry of a list that is the one looked for, added if it is not
// there.
func entry[T any](list *[]T, is func(*T) bool, fresh T) *T {
	for i := range *list {
		if is(&(*list)[i]) {
			return &(*list)[i]
		}
	}
	*list = append(*list, fresh)
	return &(*list)[len(*list)-1]
}

func compareBool(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return 1
	}
	return -1
}
