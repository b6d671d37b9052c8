package exact

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// math/big is the reference for every operation.
func TestAgreesWithMathBig(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	pick := func() int64 {
		switch rng.IntN(4) {
		case 0:
			return rng.Int64N(200) - 100
		case 1:
			return 1<<62 - rng.Int64N(100)
		case 2:
			return -1<<63 + rng.Int64N(3)
		}
		return rng.Int64() >> rng.IntN(60)
	}
	rational := func() Rat {
		n, d := pick(), pick()
		for d == 0 {
			d = pick()
		}
		return FromBig(big.NewRat(n, d))
	}
	for range 20_000 {
		x, y := rational(), rational()
		bx, by := x.Big(), y.Big()
		require.Equal(t, new(big.Rat).Add(bx, by).String(), x.Add(y).Fraction())
		require.Equal(t, new(big.Rat).Sub(bx, by).String(), x.Sub(y).Fraction())
		require.Equal(t, new(big.Rat).Mul(bx, by).String(), x.Mul(y).Fraction())
		if !y.IsZero() {
			require.Equal(t, new(big.Rat).Quo(bx, by).String(), x.Quo(y).Fraction())
		}
		require.Equal(t, bx.Cmp(by), x.Cmp(y))
		require.Equal(t, bx.Cmp(by) == 0, x.Equal(y))
		require.Equal(t, bx.Sign(), x.Sign())
		f, _ := bx.Float64()
		require.Equal(t, f, x.Float())
	}
}

func TestParse(t *testing.T) {
	for text, want := range map[string]string{
		"0": "0", "84": "84", "-3": "-3", "+7": "7", "0.5": "1/2", "1/12": "1/12", "1 / 12": "1/12",
		"365.242190424": "45655273803/125000000", "1e3": "1000", "2.5e-2": "1/40", "1_000": "1000",
		"0.1/0.3": "1/3", "123456789012345678901234567890": "123456789012345678901234567890",
	} {
		got, err := Parse(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, got.String(), text)
	}
	for _, text := range []string{"", "-", ".", ".5", "5.", "1e", "1e+", "0x10", "nan", "inf", "1__0", "_1", "1/0", "1/", "/2", "1.2.3", "1e999999999", "1 2"} {
		_, err := Parse(text)
		assert.Error(t, err, text)
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"1", "0.5", "1/12", "1e5", "-2.50e-3", "1_0"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got, err := Parse(s)
		if err != nil {
			return
		}
		again, err := Parse(got.String())
		require.NoError(t, err)
		require.True(t, got.Equal(again))
	})
}
