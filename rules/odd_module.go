package rules

import (
	"fmt"
	"math"

	"wheelwork/rules/tooth"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/text"
)

func init() {
	register(&Rule{
		Name:     "odd-module",
		Group:    Teeth,
		Severity: Warning,
		Checks:   "every module or diametral pitch is one that cutters are made for",
		Why:      "for a module of no series there is no cutter to buy; often it is a diametral pitch in disguise, or its number written in place of a module",
		Formula:  "m = 25.4 mm / P",
		Source:   "ISO 54:1996, DIN 780-1 and JIS B 1701-2, any of them; diametral pitches of Shigley Table 13-2, and 72 (all from memory)",
		Breaks: func() string {
			return pairExample{pinion: "teeth = 20; module = 0.52", wheel: "teeth = 60; module = 0.52"}.text()
		},
		Keeps: func() string {
			return pairExample{pinion: "teeth = 20; module = 0.5", wheel: "teeth = 60; module = 0.5"}.text()
		},
		Run: oddModule,
	})
}

// oddSize is the wheels of one module or pitch that is in no series.
type oddSize struct {
	figure exact.Rat
	pitch  bool
	sound  bool
	wheels []*spec.Wheel
}

// oddModule reports a module once, at the first wheel that has it: a design has
// few modules and many wheels.
func oddModule(p *Pass) {
	var sizes []oddSize
	last := -1
	for _, w := range p.Design.Wheels {
		figure, pitch := w.Module, false
		if !figure.Set() {
			figure, pitch = w.Pitch, true
		}
		if !figure.Set() {
			continue
		}
		if last < 0 || sizes[last].pitch != pitch || !sizes[last].figure.Equal(figure.Exact) {
			last = sizeIn(&sizes, figure.Exact, pitch)
		}
		if s := &sizes[last]; !s.sound {
			s.wheels = append(s.wheels, w)
		}
	}
	for i := range sizes {
		if s := &sizes[i]; !s.sound {
			p.oddFinding(s)
		}
	}
}

// sizeIn finds a size in the list, or adds it.
func sizeIn(sizes *[]oddSize, figure exact.Rat, pitch bool) int {
	for i := range *sizes {
		if s := &(*sizes)[i]; s.pitch == pitch && s.figure.Equal(figure) {
			return i
		}
	}
	s := oddSize{figure: figure, pitch: pitch}
	if pitch {
		// A pitch such as 25.4 is a module of a series.
		module := exact.Frac(127, 5).Quo(figure).Float()
		near, _, err := tooth.NearestPitch(module)
		choice, _, err2 := tooth.ModuleChoice(module)
		s.sound = err != nil || err2 != nil || math.Abs(near-figure.Float()) <= 1e-9*near || choice <= tooth.SecondChoice
	} else {
		choice, _, err := tooth.ModuleChoice(figure.Float())
		s.sound = err != nil || choice <= tooth.SecondChoice
	}
	*sizes = append(*sizes, s)
	return len(*sizes) - 1
}

func (p *Pass) oddFinding(s *oddSize) {
	first := s.wheels[0]
	x := s.figure.Float()
	var message, title string
	var edits func(*spec.Wheel) ([]Edit, bool)
	at, weight := first.Module.Place(), Off
	if s.pitch {
		at = first.Pitch.Place()
		near, _, _ := tooth.NearestPitch(25.4 / x)
		message = fmt.Sprintf("diametral pitch %s is in no series, the nearest is %s", fig(x), fig(near))
		title, edits = "cut to a pitch of "+fig(near), func(w *spec.Wheel) ([]Edit, bool) {
			edit, ok := Replace(w.Pitch.At, fig(near))
			return []Edit{edit}, ok
		}
	} else if pitch, disguised, _ := tooth.DisguisedPitch(x); disguised {
		message = fmt.Sprintf("module %s mm is the diametral pitch %s, %s mm", fig(x), fig(pitch), fig(25.4/pitch))
		if math.Abs(x-pitch) < 1e-6*x {
			message = fmt.Sprintf("module %s mm is no module but the number of a diametral pitch, which is module %s mm", fig(x), fig(25.4/pitch))
		}
		title, edits = "write it as pitch = "+fig(pitch), asPitch(pitch)
	} else {
		near, _ := tooth.NearestModule(x)
		message = fmt.Sprintf("module %s is in no series of ISO 54, DIN 780 or JIS B 1701, the nearest is %s", mm(x), mm(near))
		if choice, _, _ := tooth.ModuleChoice(x); choice == tooth.Avoid {
			message, weight = fmt.Sprintf("module %s is in ISO 54 to be avoided, the nearest is %s", mm(x), mm(near)), Note
		}
		title, edits = "cut to module "+mm(near), asModule(near)
	}
	f := p.Found(&first.Part, at, "%s", message).Weigh(weight)
	if n := len(s.wheels); n > 1 {
		f.Message += fmt.Sprintf("; %d wheels have it", n)
	}
	const few = 5
	for i, w := range s.wheels[1:] {
		if i == few {
			break
		}
		f.See(sizePlace(w), "%s", w.Title())
	}
	var all []Edit
	for _, w := range s.wheels {
		e, ok := edits(w)
		if !ok {
			p.Report(f)
			return
		}
		all = append(all, e...)
	}
	p.Report(f.Mend(title, all...))
}

func sizePlace(w *spec.Wheel) text.Place {
	if w.Module.Set() {
		return w.Module.Place()
	}
	return w.Pitch.Place()
}

// asModule gives a wheel another module.
func asModule(module float64) func(*spec.Wheel) ([]Edit, bool) {
	return func(w *spec.Wheel) ([]Edit, bool) {
		value, err := exact.Parse(fig(module))
		if err != nil {
			return nil, false
		}
		edit, ok := Figure(w.Module.At, value, "mm")
		return []Edit{edit}, ok
	}
}

// asPitch writes a wheel's module as a diametral pitch.
func asPitch(pitch float64) func(*spec.Wheel) ([]Edit, bool) {
	return func(w *spec.Wheel) ([]Edit, bool) {
		value, ok := Replace(w.Module.At, fig(pitch))
		key := Edit{Place: w.Module.KeyPlace(), Text: "pitch"}
		if ok && key.File.Bytes[key.End] == ' ' {
			key.Text = "pitch " // keeps the column of the equal signs
		}
		return []Edit{key, value}, ok
	}
}
