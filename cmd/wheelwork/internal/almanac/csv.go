package almanac

import (
	"encoding/csv"
	"io"
	"strconv"
)

// CSV writes the lines of the almanac, those without a marker too, under a row
// of names that are those of the JSON.
func (a *Almanac) CSV(w io.Writer) error {
	out := csv.NewWriter(w)
	out.Write([]string{"date", "time", "kind", "body", "sky", "model", "verdict", "model_date", "model_kind", "kind_right", "days_off", "node_deg", "saros", "wrong_day"})
	for i := range a.rows {
		e := &a.rows[i]
		out.Write([]string{
			e.Date, e.Time, e.Kind, e.Body, strconv.FormatBool(e.Sky), flag(e.Model), e.Verdict,
			e.ModelDate, e.ModelKind, flag(e.KindRight), number(e.DaysOff), number(e.Node), whole(e.Saros), strconv.FormatBool(e.WrongDay),
		})
	}
	out.Flush()
	return out.Error()
}

func flag(b *bool) string {
	if b == nil {
		return ""
	}
	return strconv.FormatBool(*b)
}

func number(x *float64) string {
	if x == nil {
		return ""
	}
	return strconv.FormatFloat(*x, 'f', -1, 64)
}

func whole(n *int) string {
	if n == nil {
		return ""
	}
	return strconv.Itoa(*n)
}
