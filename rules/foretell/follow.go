package foretell

import (
	"math"
	"slices"
	"sort"

	"wheelwork/rules/sky"
)

// Days is how far from the greatest eclipse a model's new or full moon may fall
// for the eclipse to count as foretold, unless said otherwise: the true new
// moon lies up to 0.6 d from the mean one, and people look a day sooner and a
// day later.
const Days = 1.5

// Verdict is what becomes of an eclipse, or of a call.
type Verdict string

// The verdicts. A model whose Moon has drifted shows an eclipse on a wrong day:
// the eclipse is missed and the call false.
const (
	Foretold Verdict = "foretold"
	Missed   Verdict = "missed"
	False    Verdict = "false"
	Unmarked Verdict = "unmarked" // the design has no marker for such an eclipse
)

// Row is one line of an almanac.
type Row struct {
	Verdict  Verdict
	Solar    bool
	Eclipse  *sky.Eclipse // nil where the sky shows none near the call
	Call     *Call        // nil where the model shows none near the eclipse
	WrongDay bool         // there are both, but too far apart
}

// UT is the Julian day of the row: the eclipse's, or the call's where the sky
// shows none or on another day.
func (r *Row) UT() float64 {
	if r.Eclipse == nil || r.Verdict == False && r.WrongDay {
		return r.Call.UT
	}
	return r.Eclipse.UT
}

// Off is by how many days the call comes after the greatest eclipse; ok is
// false where one of them is not there.
func (r *Row) Off() (days float64, ok bool) {
	if r.Call == nil || r.Eclipse == nil {
		return 0, false
	}
	return r.Call.TT - r.Eclipse.TT, true
}

// KindRight tells whether the model has the kind of a total or annular eclipse
// right; ok is false where there is nothing to be right about. Hybrid eclipses
// are both and count for neither.
func (r *Row) KindRight() (right, ok bool) {
	if r.Verdict != Foretold || !r.Solar || r.Call.Kind() == sky.None {
		return false, false
	}
	if k := r.Eclipse.Kind; k != sky.Total && k != sky.Annular {
		return false, false
	}
	return r.Call.Kind() == r.Eclipse.Kind, true
}

// span is what of time is looked at.
type span struct {
	from, to float64 // Julian days of Universal Time
	days     float64 // how far a call may lie from its eclipse
}

// spanOf is a span with so many days, which past half a month would reach the
// next new or full moon.
func spanOf(from, to, days float64) span {
	return span{from, to, math.Min(math.Max(days, 0), 14)}
}

// margin is how far beyond a span eclipses and calls are looked for.
func (s span) margin() float64 { return 16 }

// follow holds the calls of markers for one body against its eclipses, which
// reach over the span by its margin where the sky's formulas do. What lies
// within the span by its row's day is told, so that spans that join make the
// whole.
func (r *Run) follow(markers []*Marker, ev sky.Event, eclipses []sky.Eclipse, made Made, s span) []Row {
	first, last := ttOf(s.from)-s.margin(), ttOf(s.to)+s.margin()
	calls := r.calls(markers, ev.Lunar(), made, first, last)
	callOf := make([]*Call, len(eclipses))
	rows := make([]Row, 0, len(eclipses))
	for i := range calls {
		c := &calls[i]
		row := Row{Verdict: False, Solar: !ev.Lunar(), Call: c}
		if n := nearest(eclipses, c.TT); n >= 0 {
			e := &eclipses[n]
			switch close := within(e, c.TT, s.days); {
			case close && e.Is(ev):
				callOf[n] = c
				continue
			case close:
				row.Eclipse = e // one, but not of the marked sort
			case e.Is(ev) && math.Abs(c.TT-e.TT) < sky.SynodicMonthDays/2:
				row.Eclipse, row.WrongDay = e, true
				if callOf[n] == nil {
					callOf[n] = c
				}
			}
		}
		if row.Eclipse != nil && !row.WrongDay && inside(row.Eclipse, s) || (row.Eclipse == nil || row.WrongDay) && c.UT >= s.from && c.UT < s.to {
			rows = append(rows, row)
		}
	}
	for i := range eclipses {
		e := &eclipses[i]
		if !e.Is(ev) || !inside(e, s) {
			continue
		}
		row := Row{Verdict: Missed, Solar: e.Solar, Eclipse: e, Call: callOf[i]}
		if c := callOf[i]; c != nil {
			if within(e, c.TT, s.days) {
				row.Verdict = Foretold
			} else {
				row.WrongDay = true
			}
		}
		rows = append(rows, row)
	}
	sortRows(rows)
	return rows
}

func sortRows(rows []Row) {
	slices.SortStableFunc(rows, func(a, b Row) int {
		switch x, y := a.UT(), b.UT(); {
		case x < y:
			return -1
		case x > y:
			return 1
		}
		return 0
	})
}

// nearest is the eclipse nearest to a day of Terrestrial Time, -1 if there is
// none.
func nearest(list []sky.Eclipse, tt float64) int {
	i := sort.Search(len(list), func(i int) bool { return list[i].TT >= tt })
	if i > 0 && (i == len(list) || tt-list[i-1].TT < list[i].TT-tt) {
		i--
	}
	if i == len(list) {
		return -1
	}
	return i
}

// within tells whether a day lies so near the eclipse. An eclipse worked out
// quickly is worked out in full where that matters.
func within(e *sky.Eclipse, tt, days float64) bool {
	off := math.Abs(tt - e.TT)
	if math.Abs(off-days) < sky.QuickDays {
		if full, ok, err := sky.EclipseAt(e.K); err == nil && ok {
			off = math.Abs(tt - full.TT)
		}
	}
	return off <= days
}

// inside tells whether the eclipse lies within the span, as exactly.
func inside(e *sky.Eclipse, s span) bool {
	ut := e.UT
	if math.Min(math.Abs(ut-s.from), math.Abs(ut-s.to)) < sky.QuickDays {
		if full, ok, err := sky.EclipseAt(e.K); err == nil && ok {
			ut = full.UT
		}
	}
	return ut >= s.from && ut < s.to
}

// ttOf is Terrestrial Time of a Julian day inside the span of the formulas.
func ttOf(ut float64) float64 {
	tt, err := sky.ToTT(ut)
	if err != nil {
		return ut
	}
	return tt
}
