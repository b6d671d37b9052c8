package drift

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

func demo(t *testing.T, path string) *Picture {
	t.Helper()
	d, problems := spec.Load(filepath.Join("../../../../fixtures/designs", path))
	require.Empty(t, problems)
	return Of(train.Solve(d))
}

// texts reads the document, which must be well-formed, and returns its words.
func texts(t *testing.T, svg []byte) []string {
	t.Helper()
	var words []string
	for d := xml.NewDecoder(bytes.NewReader(svg)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return words
		}
		require.NoError(t, err)
		if c, ok := token.(xml.CharData); ok && strings.TrimSpace(string(c)) != "" {
			words = append(words, string(c))
		}
	}
}

// Every hand with an error has a panel with its name, and the picture is the
// same to the byte on every run and in both notations.
func TestPictureOfTheDemo(t *testing.T) {
	p := demo(t, "harbour-table/table.hcl")
	svg := p.SVG()
	for range 20 {
		require.Equal(t, svg, demo(t, "harbour-table/table.hcl").SVG())
	}
	assert.Equal(t, string(svg), string(demo(t, "harbour-table-toml/table.toml").SVG()))
	words := texts(t, svg)
	for i := range p.Lines {
		assert.Contains(t, words, p.Lines[i].Name)
		assert.Contains(t, words, p.Lines[i].total())
	}
	assert.Contains(t, words, "Without an error: years, decades")
	assert.Contains(t, words, "Not drawn, for no error is known: earth_axis")
	assert.Contains(t, words, "What each hand is off over 100 yr from 2027-01-01; each panel has a scale of its own")
}

func hex(r, g, b uint8) string {
	s := "#"
	for _, x := range []uint8{r, g, b} {
		h := strings.ToUpper(strconv.FormatUint(uint64(x), 16))
		if len(h) < 2 {
			h = "0" + h
		}
		s += h
	}
	return s
}

// stroke is a line of two points in a colour.
var stroke = regexp.MustCompile(`<path d="M([-0-9.e]+),([-0-9.e]+)L([-0-9.e]+),([-0-9.e]+)" style="fill:none;stroke:(#[0-9A-F]{6});stroke-width:1.6`)

// What is drawn is the error: a line from nothing that ends as high, between the
// middle and the edge of its panel, as its error is in its scale. The legend has
// the first line of each colour.
func TestLinesAreAsHighAsErrors(t *testing.T) {
	p := demo(t, "harbour-table-faulty/table.hcl")
	lines := stroke.FindAllStringSubmatch(string(p.SVG()), -1)
	require.Len(t, lines, len(p.Lines)+2)
	inside := float64(panelHeight - head - foot - 4)
	sawBeyond := false
	for i, m := range lines[2:] {
		var at [4]float64
		for k := range at {
			at[k], _ = strconv.ParseFloat(m[k+1], 64)
		}
		l := &p.Lines[i]
		assert.InDelta(t, float64(panelWidth-side-6), at[2]-at[0], 0.05)
		assert.InDelta(t, l.End/l.scale()*inside/2, at[3]-at[1], 0.05, l.Name)
		assert.Equal(t, l.Beyond, m[5] == hex(beyond.R, beyond.G, beyond.B), l.Name)
		sawBeyond = sawBeyond || l.Beyond
	}
	assert.True(t, sawBeyond)
}

// A hand of 2 ppm fills its panel as one of 200 does, and a tolerance that is not
// far wider is on it.
func TestScales(t *testing.T) {
	for _, end := range []float64{1e-8, -0.003, 2, -200, 1e7} {
		for _, band := range []float64{0, 0.5, 1, 3, 100} {
			l := Line{End: end, Band: band * math.Abs(end)}
			assert.GreaterOrEqual(t, l.scale(), 1.15*math.Abs(end)*(1-1e-12))
			assert.LessOrEqual(t, l.scale(), 4*math.Abs(end)*(1+1e-12))
			if band <= 3 {
				assert.Greater(t, l.scale(), l.Band)
			}
		}
	}
}

func TestTicks(t *testing.T) {
	assert.Equal(t, []float64{0, 20, 40, 60, 80, 100}, ticks(0, 100, 5))
	assert.Equal(t, []float64{0, 5, 10, 15}, ticks(0, 18.6, 5))
	assert.Equal(t, []float64{-0.1, -0.05, 0, 0.05, 0.1}, ticks(-0.12, 0.12, 5))
	for x := 1e-9; x < 1e12; x *= 1.37 {
		n := len(ticks(-x, x, 5))
		assert.True(t, n >= 3 && n <= 6, "%v: %d", x, n)
	}
	name, degrees := unit(-5000)
	assert.Equal(t, "turns", name)
	assert.Equal(t, 360.0, degrees)
	assert.Equal(t, "0", label(ticks(-1, 1, 2)[1]))
}

// Names that are long, or hold what is markup or no character of XML, are shown
// as far as there is room.
func TestOddNames(t *testing.T) {
	p := &Picture{Title: strings.Repeat("<&>\x00\ufffe ", 50), Years: 1, Epoch: "<2027>"}
	for _, name := range []string{"<hand>", "a\x1b[31mb", strings.Repeat("long ", 100), "赤道", ""} {
		p.Lines = append(p.Lines, Line{Name: name, Shows: name, Within: name, End: 1, Band: 1e9})
		p.Exact = append(p.Exact, name)
	}
	words := strings.Join(texts(t, p.SVG()), "\n")
	assert.Contains(t, words, "<hand>")
	assert.Contains(t, words, "long l...")
	assert.NotContains(t, words, "\x1b")
	for _, empty := range []*Picture{{Years: 100}, {Years: 100, Open: []string{"h"}}} {
		assert.NotEmpty(t, texts(t, empty.SVG()))
	}
}

// A file is written whole or not at all.
func TestWrite(t *testing.T) {
	dir := t.TempDir()
	p := demo(t, "planet-wall/wall.hcl")
	file := filepath.Join(dir, "drift.svg")
	require.NoError(t, os.WriteFile(file, []byte("before"), 0o600))
	require.NoError(t, p.Write(file))
	content, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, p.SVG(), content)

	require.NoError(t, os.MkdirAll(filepath.Join(dir, "taken.svg", "x"), 0o755))
	require.Error(t, p.Write(filepath.Join(dir, "taken.svg")))
	require.Error(t, p.Write(filepath.Join(dir, "nowhere", "drift.svg")))
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Len(t, entries, 2, "nothing is left behind")
}
