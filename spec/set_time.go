package spec

import (
	"strconv"
	"strings"
	"sync"

	"wheelwork/rules/sky"
	"wheelwork/spec/exact"
	"wheelwork/spec/near"
	"wheelwork/spec/quantity"
	"wheelwork/spec/syntax"
)

func (d *Date) set(r *reading, a *Attribute, at At, v *syntax.Value) {
	if v.Kind != syntax.String {
		r.wants(a, v, "a date such as \"2027-01-01\"")
		return
	}
	got, err := ParseDate(v.Text)
	if err != nil {
		r.problem(v.At, "", "%v", err)
		return
	}
	got.At = at
	*d = got
}

func (t *Tolerance) set(r *reading, a *Attribute, at At, v *syntax.Value) {
	if v.Kind != syntax.String {
		r.wants(a, v, "a string such as \"30 ppm\" or \"1 deg in 10 yr\"")
		return
	}
	got, err := quantity.ParseTolerance(v.Text)
	if err != nil {
		r.unread(v, err)
		return
	}
	*t = Tolerance{At: at, Tolerance: got}
}

func (p *Period) set(r *reading, a *Attribute, at At, v *syntax.Value) {
	got := Period{At: at}
	switch v.Kind {
	case syntax.Number:
		got.Days, got.Quoted = v.Number, at.Place().Text()
	case syntax.String:
		if entry, ok := known(v.Text); ok {
			*p = Period{At: at, Days: exact.FromBig(entry.Days), Entry: entry.Name, Named: v.Text}
			return
		}
		if v.Text == "" || !strings.ContainsAny(v.Text[:1], " 0123456789+-.") {
			r.problem(v.At, r.nearPeriod(v.Text), "the catalogue has no period %q", clip(v.Text))
			return
		}
		days, err := quantity.Parse(v.Text, quantity.Time)
		if err != nil {
			r.unread(v, err)
			return
		}
		got.Days, got.Quoted = days, v.Text
	default:
		r.wants(a, v, "the name of a period or a time")
		return
	}
	if got.Days.Sign() <= 0 {
		r.problem(v.At, "", "%s must be more than zero", a.Name)
		return
	}
	*p = got
}

// known is the catalogue's entry, which no endless text is compared with.
func known(name string) (sky.Period, bool) {
	if len(name) > near.MaxWord {
		return sky.Period{}, false
	}
	return sky.Lookup(name)
}

// nearPeriod offers the catalogue's entry that was meant, or those that hold
// the word.
func (r *reading) nearPeriod(word string) string {
	if offered := r.nearOf(word, periodNames()); offered != "" || word == "" || len(word) > near.MaxWord || r.full() {
		return offered
	}
	var with []string
	for _, name := range periodNames() {
		if strings.Contains(strings.ToLower(name), strings.ToLower(word)) {
			with = append(with, strconv.Quote(name))
		}
	}
	if len(with) == 0 || len(with) > 6 {
		return ""
	}
	return "there is " + strings.Join(with, ", ")
}

var periodNames = sync.OnceValue(func() []string {
	var names []string
	for _, p := range sky.Periods() {
		names = append(append(names, p.Name), p.Also...)
	}
	return names
})
