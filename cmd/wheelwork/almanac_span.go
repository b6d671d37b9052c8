package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"

	"github.com/mattn/go-isatty"

	"wheelwork/cmd/wheelwork/internal/almanac"
	"wheelwork/cmd/wheelwork/internal/progress"
	"wheelwork/rules/foretell"
	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/quantity"
)

// almanacOptions say what an almanac is of.
type almanacOptions struct {
	from, to, set dateOption
	days, node    numberOption
}

// almanac makes the almanac, or says why there can be none.
func (o *almanacOptions) almanac(d *spec.Design, m *foretell.Model, stderr io.Writer) (*almanac.Almanac, string) {
	if o.days <= 0 || o.days > 10 {
		return nil, "option --days: more than 0 and at most 10, for half a month is as near to the next full or new moon"
	}
	day, why := o.setting(d)
	if why != "" {
		return nil, why
	}
	span, why := o.span(d, day)
	if why != "" {
		return nil, why
	}
	run, err := m.SetOn(day)
	if err != nil {
		return nil, outside("the setting", day)
	}
	run.NodeOff = float64(o.node)
	var tell func(float64)
	if f, ok := stderr.(*os.File); ok && os.Getenv("TERM") != "dumb" && isatty.IsTerminal(f.Fd()) {
		bar := progress.New(f, "eclipses")
		defer bar.End()
		tell = bar.Tell
	}
	a, err := almanac.Of(d.Head.Title.Text, run, span, tell)
	switch {
	case errors.Is(err, foretell.ErrSpan):
		return nil, "the last date lies before the first"
	case err != nil:
		return nil, err.Error()
	}
	return a, ""
}

// setting is the day on which the model is set right.
func (o *almanacOptions) setting(d *spec.Design) (float64, string) {
	switch {
	case o.set.given:
		return o.set.jd, ""
	case d.Head.Epoch.Set():
		day := foretell.DayOf(d.Head.Epoch)
		if day < sky.FirstDay || day >= sky.EndDay {
			return 0, outside("the epoch", day)
		}
		return day, ""
	case o.from.given:
		return o.from.jd, ""
	}
	return 0, "the design states no epoch: say --set DATE, the day on which it is set right"
}

// span is what is followed.
func (o *almanacOptions) span(d *spec.Design, set float64) (almanac.Span, string) {
	s := almanac.Span{From: set, Days: float64(o.days)}
	if o.from.given {
		s.From = o.from.jd
	}
	if o.to.given {
		s.To = o.to.jd + 1
		return s, ""
	}
	horizon := 100 * quantity.TropicalYear.Float()
	if h := d.Head.Horizon; h.Set() {
		horizon = h.Exact.Float()
	}
	if s.To = set + horizon; s.To <= s.From {
		s.To = s.From + horizon
	}
	if s.To > sky.EndDay {
		return s, outside("the horizon", s.To) + ": say --to DATE"
	}
	return s, ""
}

// outside says that a day lies outside the years of the sky.
func outside(what string, jd float64) string {
	when := "lies"
	if d, _, err := sky.DateOf(jd); err == nil {
		when = fmt.Sprintf("reaches %s,", d)
	}
	return fmt.Sprintf("%s %s outside the years %d to %d for which the sky is known", what, when, sky.FirstYear, sky.LastYear)
}

// dateOption is an option that takes a date within the years of the sky.
type dateOption struct {
	given bool
	jd    float64 // at 0 h
	text  string
}

func (o *dateOption) String() string { return o.text }

// Set reads a date.
func (o *dateOption) Set(text string) error {
	d, err := sky.ParseDate(text)
	if err != nil {
		return fmt.Errorf("no date such as 2027-01-01: %w", err)
	}
	if d.Year < sky.FirstYear || d.Year > sky.LastYear {
		return fmt.Errorf("outside the years %d to %d for which the sky is known", sky.FirstYear, sky.LastYear)
	}
	*o = dateOption{true, d.JulianDay(), text}
	return nil
}

// numberOption is an option that takes a number.
type numberOption float64

func (o *numberOption) String() string { return strconv.FormatFloat(float64(*o), 'g', -1, 64) }

// Set reads a number.
func (o *numberOption) Set(text string) error {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || x-x != 0 {
		return errors.New("not a number")
	}
	*o = numberOption(x)
	return nil
}
