package hclread

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec/text"
)

// Whatever is edited, a cache reads what Parse reads.
func TestCacheAsParse(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	signs := []byte("{}[]()\"=,\n #7a.$\xff\x00")
	content := []byte(sound + soundEnd + "wheel \"far\" { at = [1, [given.m, -2]]  teeth = -(given.n + 3) }\n" + sound)
	var c Cache
	for step := range 1000 {
		edited := append([]byte(nil), content...)
		at := rng.IntN(len(edited))
		switch rng.IntN(3) {
		case 0:
			edited = append(edited[:at], edited[at+1:]...)
		case 1:
			edited[at] = signs[rng.IntN(len(signs))]
		case 2:
			edited = append(edited[:at], append([]byte{signs[rng.IntN(len(signs))]}, edited[at:]...)...)
		}
		f := text.NewFile("a.hcl", edited)
		want, wantProblems := Parse(f)
		got, problems := c.Parse(f)
		require.Equal(t, wantProblems, problems, "%s", edited)
		require.Equal(t, want, got, "%s", edited)
		if step%5 == 0 && len(problems) == 0 {
			content = edited
		}
	}
}

func TestCacheIsBounded(t *testing.T) {
	var c Cache
	big := make([]byte, maxCached/4)
	for i := range big {
		big[i] = '\n'
	}
	copy(big, "wheel {\n}")
	for i := range 6 {
		_, problems := c.Parse(text.NewFile(fmt.Sprint(i, ".hcl"), big))
		require.Empty(t, problems)
		assert.LessOrEqual(t, c.bytes, maxCached)
		assert.LessOrEqual(t, len(c.files), 4)
	}
	_, problems := c.Parse(text.NewFile("5.hcl", []byte("wheel {\n}\n")))
	require.Empty(t, problems)
	total := 0
	for _, f := range c.files {
		total += f.bytes
	}
	assert.Equal(t, total, c.bytes)
}
