package foretell

import (
	"math"
	"sync"

	"wheelwork/rules/sky"
)

// seen lists the sky's eclipses over a span and its margin, with all that can
// be told of them.
func seen(s span, tell func(float64)) ([]sky.Eclipse, error) {
	from, to, err := s.reach()
	if err != nil {
		return nil, err
	}
	const step = 20 * 365.25
	var list []sky.Eclipse
	for at := from; at < to; at += step {
		part, err := sky.Eclipses(at, math.Min(at+step, to))
		if err != nil {
			return nil, err
		}
		list = append(list, part...)
		if tell != nil {
			tell(math.Min(1, (at+step-from)/(to-from)))
		}
	}
	return list, nil
}

// reach is a span with its margin, as far as the sky's formulas hold.
func (s span) reach() (from, to float64, err error) {
	for _, ut := range [...]float64{s.from, s.to} {
		if !(ut >= sky.FirstDay && ut <= sky.EndDay) {
			return 0, 0, &sky.SpanError{JD: ut}
		}
	}
	return math.Max(s.from-s.margin(), sky.FirstDay), math.Min(s.to+s.margin(), sky.EndDay), nil
}

// quickly keeps the eclipses of the spans asked for last: an editor checks the
// same design again and again.
var quickly struct {
	sync.Mutex
	kept [4]struct {
		span     span
		eclipses []sky.Eclipse
	}
	next int
}

// seenQuickly is seen without what the events do not hang on. The list is
// shared and must not be changed.
func seenQuickly(s span) ([]sky.Eclipse, error) {
	q := &quickly
	q.Lock()
	defer q.Unlock()
	for i := range q.kept {
		if q.kept[i].span == s {
			return q.kept[i].eclipses, nil
		}
	}
	from, to, err := s.reach()
	if err != nil {
		return nil, err
	}
	list, err := sky.QuickEclipses(from, to)
	if err != nil {
		return nil, err
	}
	q.kept[q.next].span, q.kept[q.next].eclipses = s, list
	q.next = (q.next + 1) % len(q.kept)
	return list, nil
}
