package rules_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

const designsDir = "../fixtures/designs"

func TestHarbourTableChecksClean(t *testing.T) {
	for _, name := range []string{"harbour-table/table.hcl", "harbour-table-toml/table.toml"} {
		d, problems := spec.Load(filepath.Join(designsDir, name))
		require.Empty(t, problems)
		result, problems := rules.Check(d)
		require.Empty(t, problems)
		var out strings.Builder
		for _, f := range result.Findings {
			write(&out, designsDir, f)
		}
		for _, a := range result.Aside {
			fmt.Fprintf(&out, "%s stands aside: %s\n", a.Rule.Name, a.Why)
		}
		assert.Empty(t, out.String(), name)
	}
}

// The hands' rates computed from the tooth counts by Willis's formula, with pencil
// and fractions and not by the solver.
func TestHarbourTableTurnsAsItsCountsSay(t *testing.T) {
	d, problems := spec.Load(filepath.Join(designsDir, "harbour-table/table.hcl"))
	require.Empty(t, problems)
	tr := train.Solve(d)

	f := exact.Frac
	one := exact.Int(1)
	product := func(pairs ...exact.Rat) exact.Rat {
		p := one
		for _, x := range pairs {
			p = p.Mul(x)
		}
		return p
	}
	// The day tube makes one turn a day against the year arm.
	slow := product(f(20, 86), f(29, 95), f(21, 104), f(20, 105))
	year := slow.Quo(one.Sub(slow))
	day := year.Add(one)
	moonAge := product(f(24, 105), f(20, 135))
	moon := moonAge.Add(year)
	node := year.Mul(one.Sub(product(f(68, 88), f(90, 66))))
	apse := year.Mul(one.Sub(product(f(90, 115), f(68, 60))))
	sun := product(day, f(22, 144), f(27, 105))
	for hand, want := range map[string]exact.Rat{
		"year":           year,
		"date_ring":      product(year, f(75, 34), f(68, 150)).Neg(),
		"earth":          day,
		"earth_axis":     {},
		"moon_age":       moonAge,
		"moon":           moon,
		"moon_phase":     moonAge,
		"moon_climb":     moon.Sub(node),
		"moon_distance":  moon.Sub(apse),
		"node":           node,
		"node_from_sun":  node.Sub(year),
		"apse":           apse,
		"sun":            sun,
		"sun_from_earth": sun.Sub(year),
		"tide":           product(day, f(41, 45), f(54, 25), f(47, 48)).Neg(),
		"front_date":     product(day, f(20, 86), f(29, 95), f(1, 26)).Neg(),
		"years":          year.Quo(exact.Int(10)),
		"decades":        year.Quo(exact.Int(100)).Neg(),
	} {
		h := d.HandNamed(hand)
		require.NotNil(t, h, hand)
		got, ok := tr.Against(h.Arbor, h.Base)
		assert.True(t, ok, hand)
		assert.Equal(t, want.String(), got.String(), hand)
	}
	assert.Len(t, d.Hands, 18)
}

// Each line that ends in `# fault: rule-name` must be told by a finding of that
// rule, on the line or with the line as a related place; a wrong count is told
// at what the hand should show, in the file of its train. What is found in all
// stands in findings.txt beside the design.
func TestHarbourTablesPlantedFaultsAreFound(t *testing.T) {
	dir := filepath.Join(designsDir, "harbour-table-faulty")
	d, problems := spec.Load(filepath.Join(dir, "table.hcl"))
	require.Empty(t, problems)
	result, problems := rules.Check(d)
	require.Empty(t, problems)

	told := map[string]bool{}
	var out strings.Builder
	for _, f := range result.Findings {
		write(&out, dir, f)
		tell := func(file string, line int) { told[fmt.Sprintf("%s:%d %s", file, line, f.Rule.Name)] = true }
		tell(short(dir, f.File), f.File.Position(f.Start).Line)
		told[short(dir, f.File)+" "+f.Rule.Name] = true
		for _, r := range f.Related {
			tell(short(dir, r.File), r.File.Position(r.Start).Line)
		}
	}
	planted := map[string]bool{}
	for _, file := range d.Files {
		for n, line := range strings.Split(string(file.Bytes), "\n") {
			if _, rule, ok := strings.Cut(line, "# fault: "); ok {
				planted[strings.TrimSpace(rule)] = true
				at := fmt.Sprintf("%s:%d %s", short(dir, file), n+1, strings.TrimSpace(rule))
				if strings.HasSuffix(at, " period-error") {
					at = short(dir, file) + " period-error"
				}
				assert.True(t, told[at], "%s is not found", at)
			}
		}
	}
	for _, r := range rules.All() {
		assert.True(t, planted[r.Name], "no fault is planted for %s", r.Name)
	}

	golden := filepath.Join(dir, "findings.txt")
	if *update {
		require.NoError(t, os.WriteFile(golden, []byte(out.String()), 0o644))
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err, "run go test ./rules -update")
	assert.Equal(t, string(want), out.String())
}
