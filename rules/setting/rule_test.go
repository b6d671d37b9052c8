package setting_test

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/rules"
	"wheelwork/rules/setting"
)

// what the rule setting-step finds: the hand, its step and by which teeth
var stepFinding = regexp.MustCompile(`^hand "(\w+)" can be set in steps of ([0-9.e-]+) deg only, a tooth of ((?:mesh|chain) \S+),`)

// The rule setting-step and the order of setting lift out the same teeth: in
// trains of one to three pairs that branch off one another here and there.
func TestTheRuleSaysTheSame(t *testing.T) {
	compared := 0
	for seed := range uint64(60) {
		rng := rand.New(rand.NewPCG(seed, 7))
		var b strings.Builder
		b.WriteString("design {\n  title = \"trains\"\n  epoch = \"2027-01-01\"\n}\narbor \"day\" {}\nclock {\n  on     = \"day\"\n  period = \"1 d\"\n}\n")
		b.WriteString("bounds {\n  setting-step {\n    hand = \"0.0000001 deg\"\n    reading = \"0.0000001 deg\"\n  }\n}\nhand \"day\" {\n  on     = \"day\"\n  period = \"1 d\"\n}\n")
		arbors := []string{"day"}
		for n := range 2 + rng.IntN(6) {
			from := arbors[rng.IntN(len(arbors))]
			for pair := range 1 + rng.IntN(3) {
				to := fmt.Sprintf("a%d_%d", n, pair)
				fmt.Fprintf(&b, "arbor \"%s\" {}\nwheel \"p%s\" {\n  on    = \"%s\"\n  teeth = %d\n}\nwheel \"w%s\" {\n  on    = \"%s\"\n  teeth = %d\n}\nmesh { wheels = [\"p%s\", \"w%s\"] }\n",
					to, to, from, 10+rng.IntN(40), to, to, 30+rng.IntN(90), to, to)
				arbors = append(arbors, to)
				from = to
			}
			fmt.Fprintf(&b, "hand \"h%d\" {\n  on     = \"%s\"\n  period = \"%d.37 d\"\n}\n", n, from, 2+rng.IntN(300))
		}
		tr := solved(t, b.String())
		s := on(t, tr, day(t, "2030-04-05", 3))
		result, _ := rules.Check(tr.Design)
		for _, f := range result.Findings {
			m := stepFinding.FindStringSubmatch(f.Message)
			if f.Rule.Name != "setting-step" || m == nil {
				continue
			}
			p := step(t, s, m[1])
			if p.By != setting.ByTeeth {
				continue
			}
			pitch, err := strconv.ParseFloat(m[2], 64)
			require.NoError(t, err)
			assert.InEpsilon(t, pitch, p.Pitch, 1e-3, "seed %d hand %s\n%s", seed, m[1], b.String())
			assert.Equal(t, m[3], p.Joint.Name(), "seed %d hand %s", seed, m[1])
			compared++
		}
	}
	assert.Greater(t, compared, 100)
}
