package progress

import (
	"bytes"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/vbauerster/mpb/v8"
)

// Work that is soon done shows nothing.
func TestShortWorkShowsNoBar(t *testing.T) {
	var out bytes.Buffer
	b := New(&out, "eclipses")
	for x := 0.0; x <= 1; x += 0.25 {
		b.Tell(x)
	}
	b.End()
	assert.Empty(t, out.String())
}

// Nor does work that ends just when its patience does.
func TestNoBarForTheEnd(t *testing.T) {
	var out bytes.Buffer
	b := New(&out, "eclipses")
	b.start = time.Now().Add(-time.Minute)
	b.Tell(1)
	b.End()
	assert.Empty(t, out.String())
}

// Long work shows what is done of it, and ends.
func TestLongWorkShowsABar(t *testing.T) {
	var out bytes.Buffer
	b := New(&out, "eclipses")
	b.start = time.Now().Add(-time.Minute)
	b.show(mpb.WithAutoRefresh(), mpb.WithRefreshRate(time.Millisecond))
	b.Tell(0.42)
	time.Sleep(50 * time.Millisecond)
	b.End()
	assert.Contains(t, out.String(), "eclipses [")
	assert.Contains(t, out.String(), "42 %")
}

// What is told too late makes the bar come of itself; on what is no terminal
// nothing is written.
func TestBarComesWhenPatienceEnds(t *testing.T) {
	var out bytes.Buffer
	b := New(&out, "eclipses")
	b.start = time.Now().Add(-time.Minute)
	b.Tell(0.1)
	assert.NotNil(t, b.bar)
	b.End()
}
