package almanac

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"wheelwork/cmd/wheelwork/internal/figure"
	"wheelwork/cmd/wheelwork/internal/table"
	"wheelwork/cmd/wheelwork/internal/terminal"
	"wheelwork/rules/foretell"
	"wheelwork/rules/sky"
)

// caution stands below every almanac for people.
const caution = `Caution: never look at the Sun without a filter made for it (ISO 12312-2), nor
through binoculars, a telescope or a camera without a solar filter in front of
it, also while the Sun is partly or annularly eclipsed. Show it to visitors by
projection, and follow the rules of the place and of those in charge. The
Moon's eclipses need no protection.
`

// Text writes the almanac for people.
func (a *Almanac) Text(w io.Writer) error {
	fmt.Fprintf(w, "%s\nSet right on %s, followed from %s to %s, %s years\n", terminal.Printable(a.Design), a.Set, a.From, a.To, figure.Significant(a.Years, 6))
	if a.Phase != "" {
		fmt.Fprintf(w, "\nNew and full moon by %s", terminal.Printable(a.Phase))
		if a.Anomaly != "" {
			fmt.Fprintf(w, ", total or annular by %s", terminal.Printable(a.Anomaly))
		}
		fmt.Fprintln(w)
	}
	if len(a.Cannot) > 0 {
		fmt.Fprint(w, "\nWhat it cannot foretell\n")
		for _, why := range a.Cannot {
			fmt.Fprintf(w, "  %s\n", terminal.Printable(why))
		}
	}
	if len(a.Markers) > 0 {
		fmt.Fprint(w, "\nMarkers\n")
		if err := a.markers().Write(w); err != nil {
			return err
		}
	}
	if len(a.rows) > 0 {
		fmt.Fprint(w, "\nEclipses, times in UT\n")
		if err := a.eclipses().Write(w); err != nil {
			return err
		}
	}
	if len(a.Decades) > 0 {
		fmt.Fprint(w, "\nBy decade\n")
		if err := a.tenYears().Write(w); err != nil {
			return err
		}
	}
	a.sum(w)
	fmt.Fprintf(w, "\nA call counts within %s of the greatest eclipse. The sky is known for the years\n%d to %d.\n\n%s", figure.Days(&a.Days), sky.FirstYear, sky.LastYear, caution)
	return nil
}

func (a *Almanac) markers() *table.Table {
	t := table.New(
		table.Column{Head: "marker"}, table.Column{Head: "foretells"}, table.Column{Head: "Sun from node by"},
		table.Column{Head: "arc", Right: true}, table.Column{Head: "sure within", Right: true}, table.Column{Head: "none beyond", Right: true},
		table.Column{Head: "drift", Right: true}, table.Column{Head: "foretold", Right: true}, table.Column{Head: "missed", Right: true}, table.Column{Head: "in vain", Right: true},
	)
	for _, m := range a.Markers {
		t.Row(m.Name, m.Event, m.By, degrees(m.Arc), degrees(m.Certain), degrees(m.Impossible),
			figure.Signed(m.Drift, "deg/yr"), strconv.Itoa(m.Foretold), strconv.Itoa(m.Missed), strconv.Itoa(m.False))
	}
	return t
}

func degrees(x float64) string { return figure.Significant(x, 6) + " deg" }

func (a *Almanac) eclipses() *table.Table {
	t := table.New(
		table.Column{Head: "year", Right: true}, table.Column{Head: "date"}, table.Column{Head: "time"},
		table.Column{Head: "sky"}, table.Column{Head: "model"}, table.Column{Head: "remark"},
		table.Column{Head: "from node", Right: true}, table.Column{Head: "after the sky", Right: true},
	)
	last := ""
	for i := range a.rows {
		e := &a.rows[i]
		year, day := cutYear(e.Date)
		shown := year
		if year == last {
			shown = ""
		}
		last = year
		node, off := "", ""
		if e.Node != nil {
			node = fmt.Sprintf("%+.2f deg", rounded(*e.Node, 2))
		}
		if e.DaysOff != nil {
			off = fmt.Sprintf("%+.2f d", rounded(*e.DaysOff, 2))
		}
		t.Row(shown, day, e.Time, e.inSky(), e.inModel(), e.said(), node, off)
	}
	return t
}

// cutYear parts a date into its year and the rest.
func cutYear(date string) (year, day string) {
	i := strings.LastIndexByte(date, '-')
	i = strings.LastIndexByte(date[:max(i, 0)], '-')
	if i < 0 {
		return "", date
	}
	return date[:i], date[i+1:]
}

func (e *Event) luminary() string {
	if e.solar {
		return "Sun"
	}
	return "Moon"
}

// inSky is what the sky shows on the day of the line.
func (e *Event) inSky() string {
	if e.kind == sky.None || !e.Sky && e.WrongDay {
		return ""
	}
	return e.luminary() + ", " + string(e.kind)
}

// inModel is what the model shows then.
func (e *Event) inModel() string {
	if e.Model == nil || !*e.Model {
		return ""
	}
	if e.ModelKind != "" {
		return e.luminary() + ", " + e.ModelKind
	}
	return e.luminary()
}

// said is what is to be said of the line.
func (e *Event) said() string {
	switch foretell.Verdict(e.Verdict) {
	case foretell.Missed:
		if e.WrongDay {
			return "missed: shown on " + e.ModelDate
		}
		return "missed"
	case foretell.False:
		if e.WrongDay {
			return "wrong day"
		}
		return "in vain"
	case foretell.Unmarked:
		return "no marker"
	}
	if e.KindRight != nil && !*e.KindRight {
		return "wrong kind"
	}
	return ""
}

func (a *Almanac) tenYears() *table.Table {
	t := table.New(
		table.Column{Head: "from", Right: true}, table.Column{Head: "eclipses", Right: true},
		table.Column{Head: "foretold", Right: true}, table.Column{Head: "missed", Right: true}, table.Column{Head: "in vain", Right: true},
		table.Column{Head: "wrong day", Right: true}, table.Column{Head: "kind right", Right: true}, table.Column{Head: "kind wrong", Right: true},
	)
	for _, d := range a.Decades {
		wrongDay := ""
		if a.WrongDay > 0 {
			wrongDay = strconv.Itoa(d.WrongDay)
		}
		t.Row(strconv.Itoa(d.From), strconv.Itoa(d.Sky), strconv.Itoa(d.Foretold), strconv.Itoa(d.Missed), strconv.Itoa(d.False), wrongDay, whole(d.Right), whole(d.Wrong))
	}
	return t
}

// sum writes what it comes to.
func (a *Almanac) sum(w io.Writer) {
	if len(a.Markers) == 0 || a.Phase == "" {
		return
	}
	fmt.Fprintf(w, "\nEclipses foretold: %d of %d. Calls in vain: %d of %d.\n", a.Foretold, a.Foretold+a.Missed, a.False, a.calls)
	if a.WrongDay > 0 {
		fmt.Fprintf(w, "Missed, but shown on a wrong day: %d.\n", a.WrongDay)
	}
	if a.Right != nil && *a.Right+*a.Wrong > 0 {
		fmt.Fprintf(w, "Total or annular right: %d of %d.\n", *a.Right, *a.Right+*a.Wrong)
	}
	if a.First == nil {
		fmt.Fprint(w, "It is never wrong.\n")
		return
	}
	fmt.Fprintf(w, "First wrong on %s", a.First.Date)
	switch {
	case a.FirstOfHands == nil:
		fmt.Fprint(w, "; exact hands would do no better.\n")
	case a.FirstOfHands.Date == a.First.Date:
		fmt.Fprint(w, ", where exact hands would be right.\n")
	default:
		fmt.Fprintf(w, "; first where exact hands would be right on %s.\n", a.FirstOfHands.Date)
	}
}
