package spec

import (
	"fmt"
	"strings"

	"wheelwork/rules/sky"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// A setter is a field of a part that takes a value of the text.
type setter interface {
	holds() Holds
	set(r *reading, a *Attribute, at At, v syntax.Value)
}

func (*Name) holds() Holds      { return AText }
func (*Names) holds() Holds     { return ANames }
func (*Number) holds() Holds    { return ANumber }
func (*Numbers) holds() Holds   { return ANumbers }
func (*Count) holds() Holds     { return ACount }
func (*Flag) holds() Holds      { return AFlag }
func (*Point) holds() Holds     { return APoint }
func (*Date) holds() Holds      { return ADate }
func (*Tolerance) holds() Holds { return ATolerance }
func (*Period) holds() Holds    { return APeriod }
func (*Ranges) holds() Holds    { return ARanges }

// wants tells that a value is not of the kind the attribute holds.
func (r *reading) wants(a *Attribute, v syntax.Value, what string) {
	if v.Kind == syntax.Invalid {
		return // already told
	}
	r.problem(v.At, fmt.Sprintf("%s is %s, not %s", a.Name, what, v.Kind.Noun()), "")
}

func (n *Name) set(r *reading, a *Attribute, at At, v syntax.Value) {
	if v.Kind != syntax.String {
		r.wants(a, v, "a string")
		return
	}
	if a.Choices != nil && !contains(a.Choices, v.Text) {
		r.problem(v.At, fmt.Sprintf("%s is one of %s, not %q", a.Name, strings.Join(a.Choices, ", "), v.Text), near(v.Text, a.Choices))
		return
	}
	*n = Name{At: at, Text: v.Text}
}

func (n *Names) set(r *reading, a *Attribute, at At, v syntax.Value) {
	if v.Kind != syntax.List {
		r.wants(a, v, "a list of names")
		return
	}
	list := make([]Name, 0, len(v.List))
	for _, e := range v.List {
		if e.Kind != syntax.String {
			r.wants(a, e, "a list of names")
			continue
		}
		list = append(list, Name{At: element(at, e), Text: e.Text})
	}
	*n = Names{At: at, List: list}
}

func (n *Number) set(r *reading, a *Attribute, at At, v syntax.Value) {
	if x, ok := r.figure(a, v); ok {
		*n = Number{At: at, Exact: x}
	}
}

func (n *Numbers) set(r *reading, a *Attribute, at At, v syntax.Value) {
	if v.Kind != syntax.List {
		r.wants(a, v, "a list of figures")
		return
	}
	list := make([]Number, 0, len(v.List))
	for _, e := range v.List {
		if x, ok := r.figure(a, e); ok {
			list = append(list, Number{At: element(at, e), Exact: x})
		}
	}
	*n = Numbers{At: at, List: list}
}

// figure reads a number, or a string with a unit, and holds it to its sign.
func (r *reading) figure(a *Attribute, v syntax.Value) (exact.Rat, bool) {
	var x exact.Rat
	switch v.Kind {
	case syntax.Number:
		x = v.Number
	case syntax.String:
		var err error
		if x, err = quantity.Parse(v.Text, a.Dimension); err != nil {
			r.quantityProblem(v, a.Dimension, err)
			return x, false
		}
	default:
		r.wants(a, v, a.Dimension.Noun())
		return x, false
	}
	switch {
	case a.Sign == Positive && x.Sign() <= 0:
		r.problem(v.At, a.Name+" must be more than zero", "")
		return x, false
	case a.Sign == NotNegative && x.Sign() < 0:
		r.problem(v.At, a.Name+" must not be negative", "")
		return x, false
	}
	return x, true
}

// quantityProblem points at the part of the string that is wrong where the
// string is written plainly, else at the whole.
func (r *reading) quantityProblem(v syntax.Value, d quantity.Dimension, err error) {
	e, ok := err.(*quantity.Error)
	if !ok {
		r.problem(v.At, err.Error(), "")
		return
	}
	span := v.At
	if !v.Derived && v.At.Len() == len(v.Text)+2 && e.End > e.Start {
		span = text.Span{Start: v.At.Start + 1 + int32(e.Start), End: v.At.Start + 1 + int32(e.End)}
	}
	h := ""
	if e.Unit != "" {
		var names []string
		for _, u := range quantity.Units(d) {
			names = append(names, u.Name)
		}
		h = hint(e.Unit, names)
		if h == "" && len(names) > 0 {
			h = "units are " + strings.Join(names, ", ")
		}
	}
	r.problem(span, e.Message, h)
}

// MostTeeth bounds a whole number: no wheel, chain or star has more.
const MostTeeth = 1_000_000

func (c *Count) set(r *reading, a *Attribute, at At, v syntax.Value) {
	x := v.Number
	switch v.Kind {
	case syntax.Number:
	case syntax.String:
		var err error
		if x, err = quantity.Parse(v.Text, quantity.Plain); err != nil {
			r.wants(a, v, "a whole number")
			return
		}
	default:
		r.wants(a, v, "a whole number")
		return
	}
	n, whole := x.Int64()
	switch {
	case x.IsInt() && (!whole || n > MostTeeth):
		r.problem(v.At, fmt.Sprintf("%s is at most %d", a.Name, MostTeeth), "")
	case !whole:
		r.problem(v.At, fmt.Sprintf("%s is a whole number, not %s", a.Name, decimal(x)), "")
	case n < 1:
		r.problem(v.At, fmt.Sprintf("%s must be 1 or more, not %d", a.Name, n), "")
	default:
		*c = Count{At: at, N: n}
	}
}

func decimal(x exact.Rat) string { return fmt.Sprintf("%.6g", x.Float()) }

func (f *Flag) set(r *reading, a *Attribute, at At, v syntax.Value) {
	if v.Kind != syntax.Bool {
		r.wants(a, v, "true or false")
		return
	}
	*f = Flag{At: at, On: v.Bool}
}

func (p *Point) set(r *reading, a *Attribute, at At, v syntax.Value) {
	if v.Kind != syntax.List || len(v.List) != 2 {
		if v.Kind == syntax.List {
			r.problem(v.At, fmt.Sprintf("%s is [x, y], not a list of %d", a.Name, len(v.List)), "")
		} else {
			r.wants(a, v, "[x, y]")
		}
		return
	}
	x, ok1 := r.figure(a, v.List[0])
	y, ok2 := r.figure(a, v.List[1])
	if ok1 && ok2 {
		*p = Point{At: at, X: Number{At: element(at, v.List[0]), Exact: x}, Y: Number{At: element(at, v.List[1]), Exact: y}}
	}
}

func (t *Tolerance) set(r *reading, a *Attribute, at At, v syntax.Value) {
	if v.Kind != syntax.String {
		r.wants(a, v, "a string such as \"30 ppm\" or \"1 deg in 10 yr\"")
		return
	}
	got, err := quantity.ParseTolerance(v.Text)
	if err != nil {
		d := quantity.Time
		r.quantityProblem(v, d, err)
		return
	}
	*t = Tolerance{At: at, Tolerance: got}
}

func (p *Period) set(r *reading, a *Attribute, at At, v syntax.Value) {
	switch v.Kind {
	case syntax.Number:
		if v.Number.Sign() <= 0 {
			r.problem(v.At, a.Name+" must be more than zero", "")
			return
		}
		*p = Period{At: at, Days: v.Number, Quoted: at.Place().Text()}
	case syntax.String:
		if entry, ok := sky.Lookup(v.Text); ok {
			*p = Period{At: at, Days: exact.FromBig(entry.Days), Entry: entry.Name}
			return
		}
		if v.Text == "" || !strings.ContainsAny(v.Text[:1], "0123456789+-.") {
			r.problem(v.At, fmt.Sprintf("the catalogue has no period %q", v.Text), hint(v.Text, periodNames()))
			return
		}
		days, err := quantity.Parse(v.Text, quantity.Time)
		if err != nil {
			r.quantityProblem(v, quantity.Time, err)
			return
		}
		if days.Sign() <= 0 {
			r.problem(v.At, a.Name+" must be more than zero", "")
			return
		}
		*p = Period{At: at, Days: days, Quoted: v.Text}
	default:
		r.wants(a, v, "the name of a period or a time")
	}
}

func periodNames() []string {
	var names []string
	for _, p := range sky.Periods() {
		names = append(append(names, p.Name), p.Also...)
	}
	return names
}

func (l *Ranges) set(r *reading, a *Attribute, at At, v syntax.Value) {
	if v.Kind != syntax.List {
		r.wants(a, v, "a list of whole numbers and ranges")
		return
	}
	list := make([]Range, 0, len(v.List))
	for _, e := range v.List {
		one := Range{At: element(at, e)}
		ok := false
		switch e.Kind {
		case syntax.Number:
			one.From, ok = e.Number.Int64()
			one.To = one.From
		case syntax.String:
			from, to, _ := strings.Cut(e.Text, "-")
			a, err1 := exact.Parse(strings.TrimSpace(from))
			b, err2 := exact.Parse(strings.TrimSpace(to))
			if err1 == nil && err2 == nil {
				var ok1, ok2 bool
				one.From, ok1 = a.Int64()
				one.To, ok2 = b.Int64()
				ok = ok1 && ok2
			}
		case syntax.Invalid:
			continue
		}
		if !ok || one.From < 1 || one.To < one.From || one.To > MostTeeth {
			r.problem(e.At, fmt.Sprintf("%s holds whole numbers of 1 or more and ranges such as \"12-40\"", a.Name), "")
			continue
		}
		list = append(list, one)
	}
	*l = Ranges{At: at, List: list}
}

func element(at At, v syntax.Value) At {
	return At{File: at.File, Key: at.Key, Val: v.At, Derived: v.Derived || at.Derived}
}

func contains(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}

func near(word string, candidates []string) string {
	if n := Nearest(word, candidates); n != "" {
		return "did you mean \"" + n + "\"?"
	}
	return ""
}
