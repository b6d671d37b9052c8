package tooth

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestInvolute(t *testing.T) {
	// Computed from tan a - a.
	for _, c := range []struct{ angle, value float64 }{
		{14.5, 0.00554484}, {20, 0.01490438}, {25, 0.02997535}, {26.0886, 0.0343161},
	} {
		computed(t, c.value, must(Involute(c.angle)), c.angle)
	}
	same(t, 0, must(Involute(0)))
	same(t, 0, must(InvoluteAngle(0)))
}

func TestInvoluteRoundTrip(t *testing.T) {
	for angle := 0.25; angle <= 89; angle += 0.25 {
		assert.InDelta(t, angle, must(InvoluteAngle(must(Involute(angle)))), 1e-9, angle)
	}
}
