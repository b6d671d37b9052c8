package setting

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"wheelwork/cmd/wheelwork/internal/figure"
	"wheelwork/cmd/wheelwork/internal/table"
	"wheelwork/cmd/wheelwork/internal/terminal"
	"wheelwork/rules/setting"
)

const (
	beginning = `
In this order, from the drive outwards, beginning with every hand on its zero mark
as it is put together; + is onwards in the sense the hand turns
`
	motorCaution = `
Caution: unplug the motor before a hand or a wheel is touched, and keep fingers
and sleeves out of the wheels while the model is run. Follow the rules of the
place and of those in charge.
`
)

// Text writes the setting for people.
func (s *Setting) Text(w io.Writer) error {
	day, at, _ := strings.Cut(s.Date, "T")
	fmt.Fprintf(w, "%s\nSet to %s, %s UT, Julian day %s\n", terminal.Printable(s.Design), day, at, figure.Significant(s.JulianDay, 13))
	if t, some := s.angles(); some {
		fmt.Fprint(w, "\nWhere the hands stand, from the zero mark in the sense they turn\n")
		if err := t.Write(w); err != nil {
			return err
		}
	}
	if len(s.Steps) > 0 {
		fmt.Fprint(w, beginning)
		if err := s.steps().Write(w); err != nil {
			return err
		}
		if t, some := s.finer(); some {
			fmt.Fprint(w, "\nTwo meshes at once leave less\n")
			if err := t.Write(w); err != nil {
				return err
			}
		}
	}
	s.open(w)
	if s.motor && len(s.Steps) > 0 {
		fmt.Fprint(w, motorCaution)
	}
	return nil
}

func (s *Setting) angles() (t *table.Table, some bool) {
	t = table.New(
		table.Column{Head: "hand"}, table.Column{Head: "against"}, table.Column{Head: "shows"},
		table.Column{Head: "zero mark"}, table.Column{Head: "sense"}, table.Column{Head: "angle", Right: true},
	)
	for _, h := range s.Hands {
		if h.Angle != nil {
			some = true
			t.Row(h.Name, h.Against, h.Shows, h.Zero, h.Sense, fmt.Sprintf("%.2f deg", *h.Angle))
		}
	}
	return t, some
}

func (s *Setting) steps() *table.Table {
	t := table.New(
		table.Column{Right: true}, table.Column{Head: "hand"}, table.Column{Head: "set by"},
		table.Column{Head: "hand moves", Right: true}, table.Column{Head: "teeth", Right: true}, table.Column{Head: "a tooth", Right: true},
		table.Column{Head: "left", Right: true}, table.Column{Head: "in time", Right: true}, table.Column{Head: "moves with it"},
	)
	for i, p := range s.Steps {
		turn, teeth, pitch := "", "", ""
		switch setting.By(p.By) {
		case setting.ByTeeth, setting.ByCounter:
			teeth, pitch = fmt.Sprintf("%+d", *p.Places), figure.Significant(*p.Pitch, 4)+" deg"
			fallthrough
		case setting.ByDrive, setting.ByCoupling, setting.BySlip:
			turn = turned(p.Turn)
		}
		left, late := "", ""
		if math.Abs(p.Error) >= 0.0005 {
			left = fmt.Sprintf("%+.3f deg", p.Error)
			late = figure.Late(p.Days)
		}
		with := strings.Join(p.With, ", ")
		if n := len(s.Steps) - i - 1; n > 1 && len(p.With) == n {
			with = "all below"
		}
		t.Row(strconv.Itoa(i+1), p.Hand, p.by(), turn, teeth, pitch, left, late, with)
	}
	return t
}

// turned is how far a hand is moved, whole turns by themselves.
func turned(degrees float64) string {
	whole := math.Trunc(degrees / 360)
	part := fmt.Sprintf("%+.2f deg", degrees-360*whole)
	switch math.Abs(whole) {
	case 0:
		return part
	case 1:
		return fmt.Sprintf("%+.0f turn %s", whole, part)
	}
	return fmt.Sprintf("%+.0f turns %s", whole, part)
}

// by says by what the hand is set.
func (p *Step) by() string {
	switch setting.By(p.By) {
	case setting.ByDrive:
		way := "ccw"
		if *p.DriveTurns < 0 {
			way = "cw"
		}
		by := fmt.Sprintf("%s, %.3f turns %s", p.Part, math.Abs(*p.DriveTurns), way)
		if p.DriveMinutes != nil {
			by += fmt.Sprintf(", %.3f min", *p.DriveMinutes)
		}
		return by
	case setting.BySlip:
		return "turned on its arbor, slips"
	case setting.ByCoupling:
		return p.Part + ", slips"
	case setting.ByFollows:
		if len(p.After) == 0 {
			return "stands there"
		}
		return "follows " + strings.Join(p.After, ", ")
	case setting.ByTied:
		if len(p.After) == 0 {
			return "cannot be moved by itself"
		}
		return "held by " + strings.Join(p.After, ", ")
	}
	return p.Part
}

func (s *Setting) finer() (t *table.Table, some bool) {
	t = table.New(
		table.Column{Head: "hand"}, table.Column{Head: "first"}, table.Column{Head: "teeth", Right: true},
		table.Column{Head: "second"}, table.Column{Head: "teeth", Right: true}, table.Column{Head: "left", Right: true},
	)
	for _, p := range s.Steps {
		if f := p.Finer; f != nil {
			some = true
			t.Row(p.Hand, f.Parts[0], fmt.Sprintf("%+d", f.Places[0]), f.Parts[1], fmt.Sprintf("%+d", f.Places[1]), fmt.Sprintf("%+.3f deg", f.Error))
		}
	}
	return t, some
}

// open tells what no angle or no step is known of.
func (s *Setting) open(w io.Writer) {
	for _, part := range []struct {
		head string
		why  func(Hand) string
	}{
		{"Left as they stand", func(h Hand) string { return h.Why }},
		{"To be set by hand", func(h Hand) string { return h.Unset }},
	} {
		head := "\n" + part.head + "\n"
		for _, h := range s.Hands {
			if why := part.why(h); why != "" {
				fmt.Fprintf(w, "%s  hand \"%s\": %s\n", head, terminal.Printable(h.Name), terminal.Printable(why))
				head = ""
			}
		}
	}
}
