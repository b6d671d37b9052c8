package motion

import (
	"fmt"
	"io"

	"wheelwork/cmd/wheelwork/internal/figure"
	"wheelwork/cmd/wheelwork/internal/table"
	"wheelwork/cmd/wheelwork/internal/terminal"
)

// Text writes the motion as tables for people.
func (m *Motion) Text(w io.Writer) error {
	fmt.Fprintf(w, "%s\n", terminal.Printable(m.Design))
	switch m.Time {
	case "":
		fmt.Fprint(w, "\nNothing settles the time: give the design a clock, or a drive with its speed, and rates and periods follow.\n")
	case WatchTime:
		fmt.Fprint(w, "\nTime is the watch's, with the drives at their speed: the design has no clock.\n")
	}
	if len(m.Hands) > 0 {
		fmt.Fprint(w, "\nHands, each against what it is read against\n")
		if err := m.hands().Write(w); err != nil {
			return err
		}
	}
	if len(m.Arbors) == 0 {
		return nil
	}
	fmt.Fprint(w, "\nArbors and studs, against the frame\n")
	return m.arbors().Write(w)
}

func (m *Motion) hands() *table.Table {
	t := table.New(
		table.Column{Head: "hand"}, table.Column{Head: "against"},
		table.Column{Head: "a turn in", Right: true}, table.Column{Head: "sense"},
		table.Column{Head: "shows"}, table.Column{Head: "wanted", Right: true},
		table.Column{Head: "error", Right: true}, table.Column{Head: "within", Right: true},
		table.Column{Head: "drift", Right: true}, table.Column{Head: "a day off in", Right: true},
		table.Column{Head: "a degree off in", Right: true},
		table.Column{Head: "ahead after " + figure.Days(m.Horizon), Right: true}, table.Column{Head: "late", Right: true},
	)
	for _, h := range m.Hands {
		t.Row(h.Name, h.Against, figure.Days(h.PeriodDays), h.Sense, h.Shows,
			figure.Days(h.WantedDays), figure.PPM(h.ErrorPPM), h.Within,
			figure.Signed(h.Drift, "deg/yr"), figure.Years(h.YearsPerDayLost), figure.Years(h.YearsPerDegreeOff),
			figure.Signed(h.Ahead, "deg"), figure.Late(h.Late))
	}
	return t
}

func (m *Motion) arbors() *table.Table {
	t := table.New(
		table.Column{Head: "arbor"}, table.Column{Head: "carried by"},
		table.Column{Head: "a turn in", Right: true}, table.Column{Head: "sense"},
		table.Column{Head: "turns a day", Right: true},
	)
	for _, a := range m.Arbors {
		t.Row(a.Name, a.CarriedBy, figure.Days(a.PeriodDays), a.Sense, figure.Rate(a.Rate))
	}
	return t
}
