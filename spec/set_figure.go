package spec

import (
	"fmt"
	"strings"

	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// MostTeeth bounds a whole number: no wheel, chain or star has more.
const MostTeeth = 1_000_000

func (n *Number) set(r *reading, a *Attribute, at At, v *syntax.Value) {
	if x, ok := r.figure(a, v); ok {
		*n = Number{At: at, Exact: x}
	}
}

func (n *Numbers) set(r *reading, a *Attribute, at At, v *syntax.Value) {
	if !r.listing(a, v, "figures") {
		return
	}
	list := make([]Number, 0, len(v.List))
	for i := range v.List {
		e := &v.List[i]
		if x, ok := r.figure(a, e); ok {
			list = append(list, Number{At: element(at, e), Exact: x})
		}
	}
	*n = Numbers{At: at, List: list}
}

// figure reads a number, or a string with a unit, and holds it to its sign.
func (r *reading) figure(a *Attribute, v *syntax.Value) (exact.Rat, bool) {
	x := v.Number
	switch v.Kind {
	case syntax.Number:
	case syntax.String:
		var err error
		if x, err = quantity.Parse(v.Text, a.Dimension); err != nil {
			r.unread(v, err)
			return x, false
		}
	default:
		if a.Holds == ANumber {
			r.wants(a, v, a.Dimension.Noun())
		} else {
			r.holdsNo(a, v, "figures")
		}
		return x, false
	}
	switch {
	case a.Sign == Positive && x.Sign() <= 0:
		r.problem(v.At, "", "%s must be more than zero", a.Name)
		return x, false
	case a.Sign == NotNegative && x.Sign() < 0:
		r.problem(v.At, "", "%s must not be negative", a.Name)
		return x, false
	}
	return x, true
}

// unread tells that a string is not the quantity it should be. It points at
// the part that is wrong where the string is written plainly, else at the whole.
func (r *reading) unread(v *syntax.Value, err error) {
	e, ok := err.(*quantity.Error)
	if !ok {
		r.problem(v.At, "", "%v", err)
		return
	}
	span := v.At
	if !v.Derived && v.At.Len() == len(v.Text)+2 && e.End > e.Start {
		span = text.Span{Start: v.At.Start + 1 + int32(e.Start), End: v.At.Start + 1 + int32(e.End)}
	}
	hint := offer(e.Meant)
	if hint == "" && e.Unit != "" {
		hint = r.nearOf(e.Unit, e.Units)
	}
	if hint == "" && len(e.Units) > 2 { // else the message says it all
		hint = "units are " + strings.Join(e.Units, ", ")
	}
	r.problem(span, hint, "%s", e.Message)
}

func (c *Count) set(r *reading, a *Attribute, at At, v *syntax.Value) {
	x := v.Number
	switch v.Kind {
	case syntax.Number:
	case syntax.String:
		var err error
		if x, err = quantity.Parse(v.Text, quantity.Plain); err != nil {
			r.unread(v, err)
			return
		}
	default:
		r.wants(a, v, "a whole number")
		return
	}
	n, fits := x.Int64()
	switch {
	case !x.IsInt():
		r.problem(v.At, "", "%s is a whole number, not %s", a.Name, decimal(x))
	case x.Sign() <= 0:
		r.problem(v.At, "", "%s must be 1 or more, not %s", a.Name, clip(x.String()))
	case !fits || n > MostTeeth:
		r.problem(v.At, "", "%s is at most %d", a.Name, MostTeeth)
	default:
		*c = Count{At: at, N: n}
	}
}

// decimal shows a figure that is not whole so that this can be seen.
func decimal(x exact.Rat) string {
	if s := fmt.Sprint(x.Float()); strings.Contains(s, ".") && len(s) < 12 {
		return s
	}
	return clip(x.String())
}

func (l *Ranges) set(r *reading, a *Attribute, at At, v *syntax.Value) {
	const what = "whole numbers and ranges"
	if !r.listing(a, v, what) {
		return
	}
	list := make([]Range, 0, len(v.List))
	for i := range v.List {
		e := &v.List[i]
		one := Range{At: element(at, e)}
		ok := false
		switch e.Kind {
		case syntax.Number:
			one.From, ok = e.Number.Int64()
			one.To = one.From
		case syntax.String:
			one.From, one.To, ok = between(e.Text)
		default:
			r.holdsNo(a, e, what)
			continue
		}
		switch {
		case !ok:
			r.problem(e.At, "", "%s holds whole numbers and ranges such as \"12-40\"", a.Name)
		case one.From < 1:
			r.problem(e.At, "", "%s holds whole numbers of 1 or more", a.Name)
		case one.To < one.From:
			r.problem(e.At, fmt.Sprintf("write \"%d-%d\"", one.To, one.From), "a range goes from the lower number to the higher")
		case one.To > MostTeeth:
			r.problem(e.At, "", "%s holds whole numbers of %d at most", a.Name, MostTeeth)
		default:
			list = append(list, one)
		}
	}
	*l = Ranges{At: at, List: list}
}

// between reads "12-40" or "12".
func between(s string) (from, to int64, ok bool) {
	if len(s) > quantity.MostBytes {
		return 0, 0, false
	}
	first, second, ranged := strings.Cut(s, "-")
	if !ranged {
		second = first
	}
	a, err1 := exact.Parse(strings.TrimSpace(first))
	b, err2 := exact.Parse(strings.TrimSpace(second))
	if err1 != nil || err2 != nil {
		return 0, 0, false
	}
	from, ok1 := a.Int64()
	to, ok2 := b.Int64()
	return from, to, ok1 && ok2
}
