package drift

import (
	"image/color"
	"sync"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// Colours that can be told apart in print and by eyes that see no red or green.
var (
	paper  = color.NRGBA{255, 255, 255, 255}
	ink    = color.NRGBA{32, 32, 32, 255}
	faint  = color.NRGBA{110, 110, 110, 255}
	grid   = color.NRGBA{228, 228, 228, 255}
	edge   = color.NRGBA{150, 150, 150, 255}
	band   = color.NRGBA{214, 230, 242, 255}
	rim    = color.NRGBA{140, 180, 210, 255}
	right  = color.NRGBA{17, 73, 130, 255}
	beyond = color.NRGBA{196, 78, 0, 255}
)

// faces is the two fonts that are used, read when first asked for.
var faces = sync.OnceValue(func() text.Handler {
	var all font.Collection
	for _, f := range []struct {
		weight xfont.Weight
		data   []byte
	}{
		{xfont.WeightNormal, liberationsansregular.TTF},
		{xfont.WeightBold, liberationsansbold.TTF},
	} {
		face, err := opentype.Parse(f.data)
		if err != nil {
			panic(err) // the fonts are part of the program
		}
		all = append(all, font.Face{Font: font.Font{Typeface: typeface, Variant: "Sans", Weight: f.weight}, Face: face})
	}
	return text.Plain{Fonts: font.NewCache(all)}
})

const typeface = "Liberation"

// letters is a style of text that stands with its baseline at the point given.
func letters(size vg.Length, weight xfont.Weight, c color.Color, align text.XAlignment) draw.TextStyle {
	return draw.TextStyle{
		Color: c, XAlign: align, YAlign: text.YBottom, Handler: faces(),
		Font: font.Font{Typeface: typeface, Variant: "Sans", Weight: weight, Size: size},
	}
}

func thin(c color.Color, width vg.Length) draw.LineStyle {
	return draw.LineStyle{Color: c, Width: width}
}

// fitted is as much of a text as has room, with three dots where some is left out.
func fitted(s draw.TextStyle, words string, room vg.Length) string {
	if s.Width(words) <= room {
		return words
	}
	runes := []rune(words)
	for n := len(runes) - 1; n > 0; n-- {
		if short := string(runes[:n]) + "..."; s.Width(short) <= room {
			return short
		}
	}
	return ""
}
