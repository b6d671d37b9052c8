package main

import (
	"encoding/csv"
	"encoding/json"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// contract is what other programs read of the almanac.
type contract struct {
	Events []struct {
		Date, Kind, Body string
		Sky, Model       bool
	}
	Years                   float64
	Foretold, Missed, False int
}

func almanacOf(t *testing.T, args ...string) contract {
	t.Helper()
	said := said(append([]string{"almanac", "--json"}, args...))
	var got contract
	require.NoError(t, json.Unmarshal([]byte(said), &got), said)
	return got
}

// The counts are those of the events.
func TestAlmanacAddsUp(t *testing.T) {
	table, err := filepath.Abs("../../fixtures/designs/harbour-table")
	require.NoError(t, err)
	for _, args := range [][]string{{table}, {"--set", "1950-01-01", "--to", "2050-12-31", table}, {"--node-off", "7", table}} {
		got := almanacOf(t, args...)
		foretold, missed, vain := 0, 0, 0
		last := ""
		for _, e := range got.Events {
			switch {
			case e.Sky && e.Model:
				foretold++
			case e.Sky:
				missed++
			case e.Model:
				vain++
			default:
				t.Errorf("%s %s is neither in the sky nor in the model", e.Date, e.Kind)
			}
			assert.GreaterOrEqual(t, e.Date, last)
			last = e.Date
			assert.Contains(t, e.Kind, e.Body+" eclipse")
		}
		assert.Equal(t, []int{foretold, missed, vain}, []int{got.Foretold, got.Missed, got.False})
		assert.InDelta(t, 100, got.Years, 1.01)
	}
}

// The table of the demo, set in 1950, beside the eclipses of 1950-2050: 223 of
// the Sun and 230 of the Moon (Espenak and Meeus, NASA/TP-2006-214141 and
// NASA/TP-2009-214172). Its arc of 16.2 degrees, with which its file says that
// exact hands call five of the Sun's wrongly, costs its own hands hardly more.
func TestAlmanacOfTheHarbourTable(t *testing.T) {
	table, err := filepath.Abs("../../fixtures/designs/harbour-table")
	require.NoError(t, err)
	got := almanacOf(t, "--set", "1950-01-01", "--to", "2050-12-31", table)
	sky, wrong := map[string]int{}, map[string]int{}
	for _, e := range got.Events {
		if e.Sky {
			sky[e.Body]++
		}
		if e.Sky != e.Model {
			wrong[e.Body]++
		}
	}
	assert.Equal(t, 223, sky["solar"])
	assert.Equal(t, 230, sky["lunar"])
	assert.InDelta(t, 5, wrong["solar"], 2)
	assert.LessOrEqual(t, wrong["lunar"], 9)
	// the same in comma-separated values
	rows, err := csv.NewReader(strings.NewReader(said([]string{"almanac", "--csv", "--set", "1950-01-01", "--to", "2050-12-31", table}))).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, len(got.Events)+1)
	for i, e := range got.Events {
		assert.Equal(t, []string{e.Date, e.Kind, e.Body, strconv.FormatBool(e.Sky), strconv.FormatBool(e.Model)},
			[]string{rows[i+1][0], rows[i+1][2], rows[i+1][3], rows[i+1][4], rows[i+1][5]})
	}
}

// Both notations foretell the same.
func TestAlmanacInBothNotations(t *testing.T) {
	for _, options := range [][]string{{}, {"--json"}, {"--csv"}} {
		var one string
		for i, folder := range []string{"harbour-table", "harbour-table-toml"} {
			text := said(append(append([]string{"almanac"}, options...), filepath.Join("../../fixtures/designs", folder)))
			if i == 0 {
				one = text
				continue
			}
			assert.Equal(t, one, text)
		}
	}
}
