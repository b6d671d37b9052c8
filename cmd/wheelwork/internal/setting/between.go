package setting

import (
	"fmt"
	"io"
	"strings"

	"wheelwork/cmd/wheelwork/internal/figure"
	"wheelwork/cmd/wheelwork/internal/table"
	"wheelwork/cmd/wheelwork/internal/terminal"
	"wheelwork/rules/setting"
	"wheelwork/rules/sky"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// Between is what the drives do between two dates.
type Between struct {
	Design string  `json:"design"` // its title
	From   string  `json:"from"`
	To     string  `json:"to"`
	Days   string  `json:"days"` // "p/q", less than 0 where time is run back
	Drives []Drive `json:"drives"`

	days  float64
	watch bool // model time is the watch's
}

// Drive is what one drive does. Turns are counter-clockwise positive.
type Drive struct {
	Name  string `json:"name"`
	By    string `json:"by,omitempty"`
	Exact string `json:"turns,omitempty"` // "p/q"
	// Turns and Minutes, at the drive's speed, are the nearest decimals.
	Turns        *float64 `json:"turns_decimal,omitempty"`
	Sense        string   `json:"sense,omitempty"`
	ExactMinutes string   `json:"minutes,omitempty"` // "p/q"
	Minutes      *float64 `json:"minutes_decimal,omitempty"`
	Why          string   `json:"unknown,omitempty"`
}

// BetweenDays is what the drives of a design do between two days, exact Julian
// days of Universal Time.
func BetweenDays(t *train.Train, from, to exact.Rat) *Between {
	days := to.Sub(from)
	b := &Between{Design: t.Design.Head.Title.Text, Days: days.Fraction(), Drives: []Drive{}, days: days.Float(), watch: t.RealTime()}
	b.From, _ = sky.FormatTime(from.Float())
	b.To, _ = sky.FormatTime(to.Float())
	for _, r := range setting.Between(t, days) {
		one := Drive{Name: r.Drive.Name.Text, By: r.Drive.By.Text, Why: r.Why}
		if r.Why == "" {
			one.Exact, one.Turns, one.Sense = r.Turns.Fraction(), known(r.Turns.Float()), train.Sense(r.Turns)
			if r.Timed {
				one.ExactMinutes, one.Minutes = r.Minutes.Fraction(), known(r.Minutes.Float())
			}
		}
		b.Drives = append(b.Drives, one)
	}
	return b
}

// JSON writes the runs as one document.
func (b *Between) JSON(w io.Writer) error { return document(w, b) }

// Text writes the runs for people.
func (b *Between) Text(w io.Writer) error {
	way := "on"
	if b.days < 0 {
		way = "back"
	}
	moment := func(s string) string { return strings.Replace(s, "T", ", ", 1) }
	fmt.Fprintf(w, "%s\nFrom %s to %s UT, %s d %s\n", terminal.Printable(b.Design), moment(b.From), moment(b.To), strings.TrimPrefix(figure.Rate(b.Days), "-"), way)
	if b.watch {
		fmt.Fprint(w, "\nTime is the watch's, with the drives at their speed: the design has no clock.\n")
	}
	if len(b.Drives) == 0 {
		fmt.Fprint(w, "\nThe design has no drive.\n")
		return nil
	}
	fmt.Fprint(w, "\nWhat the drives do, seen from above\n")
	t := table.New(
		table.Column{Head: "drive"}, table.Column{Head: "by"}, table.Column{Head: "turns", Right: true},
		table.Column{Head: "sense"}, table.Column{Head: "at its speed", Right: true}, table.Column{Head: "exactly"}, table.Column{},
	)
	for _, d := range b.Drives {
		turns, takes, exactly := "", "", ""
		if d.Turns != nil {
			turns = strings.TrimPrefix(figure.Significant(*d.Turns, 12), "-")
			exactly = strings.TrimPrefix(strings.TrimSuffix(d.Exact, "/1"), "-") + " turns"
		}
		if d.Minutes != nil {
			takes = figure.Significant(*d.Minutes, 9) + " min"
		}
		t.Row(d.Name, d.By, turns, d.Sense, takes, exactly, d.Why)
	}
	return t.Write(w)
}
