// Package setting writes how a model is set to a date.
package setting

import (
	"encoding/json"
	"io"
	"math"

	"wheelwork/rules/setting"
	"wheelwork/rules/sky"
	"wheelwork/spec"
)

// Setting is a model on a date. What cannot be known from the spec is nil or
// empty, and left out of the JSON. Angles are in degrees from the zero mark of the
// hand, in the sense in which it turns.
type Setting struct {
	Design    string  `json:"design"` // its title
	Date      string  `json:"date"`   // with the time in UT
	JulianDay float64 `json:"julian_day"`
	Hands     []Hand  `json:"hands"`
	Steps     []Step  `json:"steps"` // in the order in which to set

	motor bool
}

// Hand is where one hand ought to stand.
type Hand struct {
	Name    string `json:"name"`
	On      string `json:"on"`
	Against string `json:"against"`
	Shows   string `json:"shows,omitempty"` // the catalogue's name of what it shows
	// Zero is what the zero mark stands for.
	Zero  string   `json:"zero_mark,omitempty"`
	Sense string   `json:"sense,omitempty"`
	Angle *float64 `json:"angle_deg,omitempty"`
	Why   string   `json:"unknown,omitempty"` // why there is no angle
	Unset string   `json:"unset,omitempty"`   // why no step sets it
}

// Step is how one hand is brought to its place.
type Step struct {
	Hand string `json:"hand"`
	// By is drive, slip, coupling, teeth, counter, follows or tied.
	By string `json:"by"`
	// Part is the mesh, chain, coupling, counter or drive that it is set by.
	Part string  `json:"part,omitempty"`
	Turn float64 `json:"turn_deg"` // by which the hand is moved on; less than 0 for back
	// DriveTurns of the drive, counter-clockwise positive.
	DriveTurns   *float64 `json:"drive_turns,omitempty"`
	DriveMinutes *float64 `json:"drive_minutes,omitempty"` // at its speed
	Pitch        *float64 `json:"step_deg,omitempty"`      // of the hand for one tooth
	Places       *int     `json:"teeth,omitempty"`         // by which it is moved on
	// Error is by how much it then stands ahead of its place, Days the same in the
	// time that is read off it.
	Error float64  `json:"error_deg"`
	Days  *float64 `json:"error_days,omitempty"`
	Finer *Finer   `json:"finer,omitempty"`
	With  []string `json:"moves,omitempty"` // hands set later that move with it
	After []string `json:"after,omitempty"` // hands whose setting moves this one
}

// Finer is a way to set a hand in two meshes at once.
type Finer struct {
	Parts  []string `json:"parts"`
	Places []int    `json:"teeth"`
	Error  float64  `json:"error_deg"`
}

// Of is a setting of a design.
func Of(d *spec.Design, s *setting.Setting) *Setting {
	day := s.Day.Float()
	at, _ := sky.FormatTime(day)
	one := &Setting{Design: d.Head.Title.Text, Date: at, JulianDay: math.Round(day*1e8) / 1e8, Hands: []Hand{}, Steps: []Step{}}
	for _, v := range d.Drives {
		one.motor = one.motor || v.By.Or("motor") == "motor"
	}
	for _, h := range s.Hands {
		line := Hand{Name: h.Name.Text, On: h.On.Text, Against: h.Against.Or(spec.Frame), Shows: h.Shows, Zero: h.Zero, Sense: h.Sense, Why: h.Why, Unset: h.Unset}
		if h.Why == "" {
			line.Angle = known(round(h.Degrees))
		}
		one.Hands = append(one.Hands, line)
	}
	for i := range s.Steps {
		one.Steps = append(one.Steps, step(s, &s.Steps[i]))
	}
	return one
}

func step(s *setting.Setting, from *setting.Step) Step {
	to := Step{Hand: from.Hand.Name.Text, By: string(from.By), Turn: round(from.Turn), Error: round(from.Error), With: names(from.With), After: names(from.After)}
	if days, ok := from.Days(); ok {
		to.Days = known(round(days))
	}
	switch from.By {
	case setting.ByDrive:
		to.Part, to.DriveTurns = s.Master.Title(), known(round(from.Drive))
		if rpm := s.RPM(); rpm > 0 {
			to.DriveMinutes = known(round(math.Abs(from.Drive) / rpm))
		}
	}
	if from.Pitch > 0 {
		to.Pitch, to.Places = known(round(from.Pitch)), &from.Places
	}
	if from.Joint != nil {
		to.Part = from.Joint.Name()
	}
	if f := from.Finer; f != nil {
		to.Finer = &Finer{[]string{f.Joints[0].Name(), f.Joints[1].Name()}, f.Places[:], round(f.Error)}
	}
	return to
}

func names(list []*setting.Hand) []string {
	var names []string
	for _, h := range list {
		names = append(names, h.Name.Text)
	}
	return names
}

// round leaves what angles in floating point can say: a millionth of a degree.
func round(x float64) float64 {
	if x = math.Round(x*1e6) / 1e6; x == 0 {
		return 0 // and not -0
	}
	return x
}

func known(x float64) *float64 { return &x }

// JSON writes the setting as one document.
func (s *Setting) JSON(w io.Writer) error { return document(w, s) }

func document(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}
