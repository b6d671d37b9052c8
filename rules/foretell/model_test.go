package foretell

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/train"
)

// gears writes a design in which each hand is geared to the clock by one pair:
// "moon 235/19 synodic month" is a hand moon that makes 235 turns for 19 of the
// clock and shows the synodic month. A ratio with a minus turns it backwards.
func gears(period string, hands ...string) string {
	var s strings.Builder
	fmt.Fprintf(&s, "design { title = \"Hands\" }\narbor \"clock\" {}\nclock {\n on = \"clock\"\n period = %q\n}\n", period)
	for _, h := range hands {
		w := strings.SplitN(h, " ", 3)
		top, bottom, _ := strings.Cut(w[1], "/")
		name := w[0]
		kind := ""
		if rest, ok := strings.CutPrefix(top, "-"); ok {
			top = rest
		} else {
			kind = " kind = \"ring\"\n"
		}
		shows := "shows"
		if w[2][0] >= '0' && w[2][0] <= '9' {
			shows = "period"
		}
		fmt.Fprintf(&s, "arbor %q {}\nwheel \"%s_a\" {\n on = \"clock\"\n teeth = %s0\n}\nwheel \"%s_b\" {\n on = %q\n teeth = %s0\n%s}\nmesh { wheels = [\"%s_a\", \"%s_b\"] }\nhand %q {\n on = %q\n %s = %q\n}\n",
			name, name, top, name, name, bottom, kind, name, name, name, name, shows, w[2])
	}
	return s.String()
}

func marker(hand, event string, arc float64) string {
	return fmt.Sprintf("marker \"%s_%s\" {\n hand = %q\n event = %q\n half_angle = %v\n}\n", hand, strings.ReplaceAll(event, " ", "_"), hand, event, arc)
}

func design(t *testing.T, text string) *Model {
	t.Helper()
	name := filepath.Join(t.TempDir(), "design.hcl")
	require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
	d, problems := spec.Load(name)
	require.Empty(t, problems, text)
	return Of(train.Solve(d))
}

// Which hands a model is read by.
func TestWays(t *testing.T) {
	for _, c := range []struct {
		name, text           string
		phase, node, anomaly string
		arc                  float64
	}{
		{"each its own", gears("synodic month", "age 1/1 synodic month", "season 61/716 eclipse year", "far 269/251 anomalistic month") + marker("season", "solar eclipse", 16),
			`hand "age"`, `hand "season"`, `hand "far"`, 16},
		{"half as long: arcs are twice as wide on it", gears("synodic month", "age 2/1 spring-neap cycle", "season 122/716 half eclipse year") + marker("season", "solar eclipse", 32),
			`hand "age"`, `hand "season"`, "", 16},
		{"longitudes", gears("tropical year", "sun 1/1 tropical year", "moon 254/19 tropical month", "node -13/242 lunar node", "apse 13/115 lunar apse") + marker("node", "solar eclipse", 16),
			`hand "moon" less hand "sun"`, `hand "sun" less hand "node"`, `hand "moon" less hand "apse"`, 16},
		{"arcs on the Sun's disc", gears("tropical year", "sun 1/1 tropical year", "moon 235/19 synodic month", "node -13/242 lunar node") + marker("sun", "solar eclipse", 16),
			`hand "moon"`, `hand "sun" less hand "node"`, "", 16},
		{"the Moon over her node", gears("tropical year", "age 235/19 synodic month", "climb 255/19 draconic month") + marker("climb", "solar eclipse", 16),
			`hand "age"`, `hand "climb" less hand "age"`, "", 16},
		{"three hands", gears("tropical year", "sun 1/1 tropical year", "moon 254/19 tropical month", "climb 255/19 draconic month") + marker("climb", "solar eclipse", 16),
			`hand "moon" less hand "sun"`, `hand "climb" and hand "sun" less hand "moon"`, "", 16},
		{"apse against the Sun", gears("tropical year", "age 235/19 synodic month", "apse 8/9 full-moon cycle", "node 20/19 eclipse year") + marker("node", "lunar eclipse", 16),
			`hand "age"`, `hand "node"`, `hand "age" and hand "apse"`, 16},
		{"quoted periods", gears("tropical year", "sun 1/1 365.25 d", "age 235/19 29.53 d", "node -2/37 18.5 yr") + marker("node", "solar eclipse", 16),
			`hand "age"`, `hand "sun" less hand "node"`, "", 16},
		{"nineteen years under a marker", gears("tropical year", "sun 1/1 365.25 d", "age 235/19 29.53 d", "dragon -1/19 19 yr") + marker("dragon", "solar eclipse", 16),
			`hand "age"`, `hand "sun" less hand "dragon"`, "", 16},
		{"the marked one of two", gears("tropical year", "age 235/19 synodic month", "rough 20/19 eclipse year", "fine 1000/949 eclipse year") + marker("fine", "solar eclipse", 16),
			`hand "age"`, `hand "fine"`, "", 16},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := design(t, c.text)
			require.Len(t, m.Markers, 1, "%v", m.Lacks)
			require.NotNil(t, m.Phase, "%v", m.Lacks)
			assert.Equal(t, c.phase, m.Phase.String())
			assert.Equal(t, c.node, m.Markers[0].Node.String())
			assert.InDelta(t, c.arc, m.Markers[0].Arc, 1e-9)
			if c.anomaly == "" {
				assert.Nil(t, m.Anomaly)
			} else {
				assert.Equal(t, c.anomaly, m.Anomaly.String())
			}
			// exact hands show the sky's own angles, whichever they are:
			// 223 synodic months are 19 eclipse years and 10 h, 239
			// anomalistic ones 5 h longer (computed from the formula)
			assert.InDelta(t, 1/29.530588858, m.Phase.Rate(Exact).Float(), 1e-10)
			assert.InDelta(t, 1/346.620075881, m.Markers[0].Node.Rate(Exact).Float(), 1e-11)
			if m.Anomaly != nil {
				assert.InDelta(t, 1/27.554549882, m.Anomaly.Rate(Exact).Float(), 1e-10)
			}
		})
	}
}

// Hands against the stars go with hands against the stars.
func TestWaysAgainstTheStars(t *testing.T) {
	m := design(t, gears("sidereal year", "sun 1/1 sidereal year", "node -50/931 lunar node sidereal")+marker("node", "solar eclipse", 16))
	require.Len(t, m.Markers, 1)
	assert.True(t, m.Markers[0].Node.stars)
	assert.InDelta(t, 1/346.620075881, m.Markers[0].Node.Rate(Exact).Float(), 1e-11)
}

// A node that turns the wrong way, by its own word, is read the wrong way.
func TestWrongSense(t *testing.T) {
	text := gears("tropical year", "sun 1/1 tropical year", "node 13/242 lunar node") + marker("node", "solar eclipse", 16)
	m := design(t, text)
	right := m.Markers[0].Node.Rate(nil).Float()
	assert.InDelta(t, (1+13.0/242)/365.242190424, right, 1e-12)
	m = design(t, strings.Replace(text, `shows = "lunar node"`, "shows = \"lunar node\"\n sense = \"cw\"", 1))
	assert.InDelta(t, (1-13.0/242)/365.242190424, m.Markers[0].Node.Rate(nil).Float(), 1e-12)
}

// What a model cannot foretell, and for want of what.
func TestLacks(t *testing.T) {
	sun := marker("node", "solar eclipse", 16)
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"nothing", "design { title = \"Nothing\" }\n", []string{
			"new and full moon: no hands show it; wanted is the synodic month, or a month of the Moon beside the year",
			"total or annular: no hands show it; wanted is the anomalistic month, or a month of the Moon beside the lunar apse",
			"eclipses of the Sun: no marker for them that can be read",
			"eclipses of the Moon: no marker for them that can be read",
		}},
		{"no Sun", gears("synodic month", "age 1/1 synodic month", "far 269/251 anomalistic month", "node -1/230 lunar node") + sun + marker("far", "lunar eclipse", 16), []string{
			`marker "node_solar_eclipse": hand "node" shows the lunar node, which with the other hands gives no distance of the Sun from the node; wanted is the eclipse year, or the lunar node beside the year, or the draconic month beside the synodic one`,
			`marker "far_lunar_eclipse": hand "far" shows the anomalistic month, which has nothing to do with the node`,
			"eclipses of the Sun: no marker for them that can be read",
			"eclipses of the Moon: no marker for them that can be read",
		}},
		{"a dial of the Saros", gears("synodic month", "age 1/1 synodic month", "far 269/251 anomalistic month", "saros 1/223 Saros") + marker("saros", "solar eclipse", 16), []string{
			`marker "saros_solar_eclipse": hand "saros" shows nothing of Sun, Moon or node`,
			"eclipses of the Sun: no marker for them that can be read",
			"eclipses of the Moon: no marker for them that can be read",
		}},
		{"no arc", gears("synodic month", "age 1/1 synodic month", "far 269/251 anomalistic month", "node 61/716 eclipse year") + strings.Replace(sun, "half_angle", "radius", 1), []string{
			`marker "node_solar_eclipse": it states neither half_angle nor length and radius`,
			"eclipses of the Sun: no marker for them that can be read",
			"eclipses of the Moon: no marker for them that can be read",
		}},
		{"no month", gears("synodic month", "age 1/12 synodic month", "far 269/251 anomalistic month", "node 61/716 eclipse year") + sun, []string{
			`new and full moon: hand "age" brings a new moon every 354.367 d, which is no month`,
			"eclipses of the Moon: no marker for them that can be read",
		}},
		{"a Moon that never comes round", gears("tropical year", "sun 1/1 tropical year", "moon 1/2 tropical month", "far 13/1 anomalistic month", "node 19/18 eclipse year") + sun, []string{
			`new and full moon: hand "moon" less hand "sun" never brings the Moon round to the Sun`,
			"eclipses of the Moon: no marker for them that can be read",
		}},
		{"no clock", strings.Replace(gears("synodic month", "age 1/1 synodic month", "far 269/251 anomalistic month", "node 61/716 eclipse year"), "clock {\n on = \"clock\"\n period = \"synodic month\"\n}", "drive \"crank\" {\n on = \"clock\"\n speed = 1\n}", 1) + sun, []string{
			"new and full moon: the design has no clock, so its hands run by the watch",
			"eclipses of the Moon: no marker for them that can be read",
		}},
		{"not driven", gears("synodic month", "age 1/1 synodic month", "far 269/251 anomalistic month") + "arbor \"loose\" {}\nhand \"node\" {\n on = \"loose\"\n shows = \"eclipse year\"\n}\n" + sun, []string{
			`marker "node_solar_eclipse": hand "node" shows it, but nothing turns it`,
			"eclipses of the Sun: no marker for them that can be read",
			"eclipses of the Moon: no marker for them that can be read",
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got []string
			for _, l := range design(t, c.text).Lacks {
				got = append(got, l.String())
			}
			assert.Equal(t, c.want, got)
		})
	}
}

// An arc by its length and radius: 31 mm at 55 mm is 16.15 deg to either side.
func TestArcByLength(t *testing.T) {
	text := gears("tropical year", "node 20/19 eclipse year") + marker("node", "solar eclipse", 16)
	m := design(t, strings.Replace(text, "half_angle = 16", "length = 31\n radius = 55", 1))
	assert.InDelta(t, 16.147, m.Markers[0].Arc, 0.0005)
	assert.Equal(t, sky.SolarEclipse, m.Markers[0].Event)
}
