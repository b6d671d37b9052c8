package drift

import (
	"fmt"
	"math"

	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"wheelwork/cmd/wheelwork/internal/figure"
	"wheelwork/spec/quantity"
)

// The parts of a panel, in points.
const (
	panelWidth  vg.Length = 208
	panelHeight vg.Length = 138
	head        vg.Length = 26 // two lines of text
	foot        vg.Length = 12 // the years
	side        vg.Length = 40 // the degrees
)

// panel draws one hand's error into a canvas of its size.
func (p *Picture) panel(c draw.Canvas, l *Line) {
	area := vg.Rectangle{
		Min: vg.Point{X: c.Min.X + side, Y: c.Min.Y + foot},
		Max: vg.Point{X: c.Max.X - 6, Y: c.Max.Y - head - 4},
	}
	high := l.scale()
	at := func(years, degrees float64) vg.Point {
		return vg.Point{
			X: area.Min.X + vg.Length(years/p.Years)*(area.Max.X-area.Min.X),
			Y: (area.Min.Y+area.Max.Y)/2 + vg.Length(degrees/high)*(area.Max.Y-area.Min.Y)/2,
		}
	}
	p.tolerance(c, l, high, at)
	p.axes(c, area, high, at)
	colour := right
	if l.Beyond {
		colour = beyond
	}
	c.StrokeLines(thin(colour, 1.6), []vg.Point{at(0, 0), at(p.Years, l.End)})
	l.words(c, area)
}

// tolerance shades what the hand may be off by, as far as it is on the panel.
func (p *Picture) tolerance(c draw.Canvas, l *Line, high float64, at func(years, degrees float64) vg.Point) {
	if l.Band == 0 {
		return
	}
	full := p.Years // when the band reaches the panel's edge
	if l.Band > high {
		full = p.Years * high / l.Band
	}
	top := math.Min(l.Band, high)
	c.FillPolygon(band, []vg.Point{at(0, 0), at(full, top), at(p.Years, top), at(p.Years, -top), at(full, -top)})
	for _, end := range []float64{top, -top} {
		c.StrokeLines(thin(rim, 0.6), []vg.Point{at(0, 0), at(full, end)})
	}
}

func (p *Picture) axes(c draw.Canvas, area vg.Rectangle, high float64, at func(years, degrees float64) vg.Point) {
	small := letters(7, xfont.WeightNormal, faint, text.XCenter)
	for i, list := 0, ticks(0, p.Years, 5); i < len(list); i++ {
		x := at(list[i], 0).X
		c.StrokeLines(thin(grid, 0.5), []vg.Point{{X: x, Y: area.Min.Y}, {X: x, Y: area.Max.Y}})
		words := label(list[i])
		if i == len(list)-1 {
			words += " yr"
		}
		c.FillText(small, vg.Point{X: x, Y: c.Min.Y + 1}, words)
	}
	small.XAlign, small.YAlign = text.XRight, text.YCenter
	name, degrees := unit(high)
	list := ticks(-high/degrees, high/degrees, 5)
	for i, y := range list {
		middle := at(0, y*degrees).Y
		c.StrokeLines(thin(grid, 0.5), []vg.Point{{X: area.Min.X, Y: middle}, {X: area.Max.X, Y: middle}})
		words := label(y)
		if i == len(list)-1 {
			words += " " + name
		}
		c.FillText(small, vg.Point{X: area.Min.X - 3, Y: middle}, words)
	}
	c.StrokeLines(thin(edge, 0.8), []vg.Point{at(0, 0), at(p.Years, 0)})
	c.StrokeLines(thin(edge, 0.6), []vg.Point{area.Min, {X: area.Min.X, Y: area.Max.Y}, area.Max, {X: area.Max.X, Y: area.Min.Y}, area.Min})
}

// words says whose error it is, and what it comes to.
func (l *Line) words(c draw.Canvas, area vg.Rectangle) {
	name, more := letters(9, xfont.WeightBold, ink, text.XLeft), letters(7.5, xfont.WeightNormal, faint, text.XLeft)
	room := c.Max.X - c.Min.X - 4
	title := fitted(name, printable(l.Name), room)
	c.FillText(name, vg.Point{X: c.Min.X + 2, Y: c.Max.Y - 11}, title)
	if l.Shows != "" {
		from := c.Min.X + 2 + name.Width(title) + 5
		c.FillText(more, vg.Point{X: from, Y: c.Max.Y - 11}, fitted(more, printable(l.Shows), c.Max.X-2-from))
	}
	figures := figure.PPM(&l.PPM)
	if l.Within != "" {
		figures += ", within " + printable(l.Within)
	}
	if l.Band > l.scale() {
		figures += fmt.Sprintf(" (%s deg, off the panel)", figure.Significant(l.Band, 3))
	}
	c.FillText(more, vg.Point{X: c.Min.X + 2, Y: c.Max.Y - 22}, fitted(more, figures, room))

	// In the corner by the beginning that the line leaves free.
	y := area.Min.Y + 3
	if l.End < 0 {
		y = area.Max.Y - 10
	}
	c.FillText(letters(7.5, xfont.WeightNormal, ink, text.XLeft), vg.Point{X: area.Min.X + 4, Y: y}, l.total())
}

// total is what the error comes to in the end.
func (l *Line) total() string {
	late := math.Abs(l.Late) / quantity.TropicalYear.Float()
	word := "late"
	if l.Late < 0 {
		word = "early"
	}
	name, degrees := unit(l.End)
	end := l.End / degrees
	return fmt.Sprintf("%s, %s %s", figure.Signed(&end, name), figure.Years(&late), word)
}
