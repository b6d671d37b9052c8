// Package drift draws the error of each hand over the years as a picture, with
// the band of its tolerance.
//
// It draws on the SVG canvas of gonum's plotting library, with its fonts and
// text styles. The library's top package is left out: it prepares every kind of
// canvas and a dozen fonts before a program starts, which each check would pay.
package drift

import (
	"math"

	"wheelwork/cmd/wheelwork/internal/figure"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
	"wheelwork/spec/train"
)

// Picture is what the hands of a design are off over a span.
type Picture struct {
	Title string
	Years float64 // of the span
	Said  bool    // whether the design states it, or it is what is usual
	Epoch string  // the date it begins on, "" if the design states none
	Lines []Line
	Exact []string // hands without an error that could be drawn
	Open  []string // hands that show no period, or whose rate is not known
}

// Line is one hand's error, which grows evenly from nothing. A hand that runs
// ahead has one of more than 0.
type Line struct {
	Name   string
	Shows  string
	Within string  // its tolerance, as the spec says it
	PPM    float64 // of its period, positive for a slow hand
	End    float64 // degrees ahead at the end of the span
	Late   float64 // days behind at the end of the span
	Band   float64 // degrees that its tolerance allows by then, 0 without one
	Beyond bool    // whether it breaks its tolerance
}

// usual is the span of a design that states no horizon, as for the rule drift.
const usual = 100

// nothing is an error in degrees that is none.
const nothing = 1e-9

// Of is the errors of a design's hands over its horizon.
func Of(t *train.Train) *Picture {
	d := t.Design
	span := exact.Int(usual).Mul(quantity.TropicalYear)
	p := &Picture{Title: d.Head.Title.Text, Said: d.Head.Horizon.Set()}
	if p.Said {
		span = d.Head.Horizon.Exact
	}
	p.Years = span.Quo(quantity.TropicalYear).Float()
	if d.Head.Epoch.Set() {
		p.Epoch = d.Head.Epoch.Text
	}
	for _, h := range d.Hands {
		r := t.Read(h)
		degrees, ok := r.Off(quantity.AngleOver, span)
		switch {
		case !ok || !r.HasError || math.IsInf(degrees.Float(), 0):
			p.Open = append(p.Open, h.Name.Text)
		case math.Abs(degrees.Float()) < nothing:
			p.Exact = append(p.Exact, h.Name.Text)
		default:
			p.Lines = append(p.Lines, line(h, r, span, degrees))
		}
	}
	return p
}

func line(h *spec.Hand, r train.Reading, span, degrees exact.Rat) Line {
	late, _ := r.Off(quantity.TimeOver, span)
	one := Line{Name: h.Name.Text, Shows: shows(h), PPM: r.PPM(), End: degrees.Float(), Late: late.Float()}
	if !h.Within.Set() {
		return one
	}
	one.Within = figure.Unquoted(h.Within.Place().Text())
	off, ok := r.Off(h.Within.Measure, h.Within.Span)
	one.Beyond = ok && off.Abs().Cmp(h.Within.Amount) > 0
	// What each measure allows, in degrees over the span.
	turns := span.Quo(r.Wanted)
	switch a := h.Within.Amount; h.Within.Measure {
	case quantity.AngleOver:
		one.Band = a.Mul(span).Quo(h.Within.Span).Float()
	case quantity.TimeOver:
		one.Band = a.Mul(turns).Quo(h.Within.Span).Float() * 360
	default:
		one.Band = a.Mul(turns).Float() * 360 / 1e6
	}
	return one
}

// shows says in a few words what the hand is to show.
func shows(h *spec.Hand) string {
	switch entry := h.Shows.Entry + h.Period.Entry; {
	case entry != "":
		return entry
	case h.Ratio.Set():
		return h.Ratio.Exact.String() + " of " + h.Of.Text
	}
	return h.Period.Quoted
}
