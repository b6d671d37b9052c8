// Package exact holds rational numbers that stay small where they can: tooth
// counts and their ratios fit two machine words, and only long trains need
// math/big. Every result is exact.
package exact

import (
	"math/big"
	"math/bits"
)

// Rat is a rational number in lowest terms. The zero Rat is 0. Values are
// immutable and may be copied.
type Rat struct {
	num int64
	den int64 // 0 stands for 1, so that the zero value is 0
	big *big.Rat
}

// Int is the whole number n.
func Int(n int64) Rat { return Rat{num: n} }

// Frac is num/den in lowest terms. It panics if den is 0.
func Frac(num, den int64) Rat {
	if den == 0 {
		panic("exact: zero denominator")
	}
	const least = -1 << 63
	if num == least || den == least {
		return FromBig(big.NewRat(num, den))
	}
	if den < 0 {
		num, den = -num, -den
	}
	if g := int64(gcd(magnitude(num), uint64(den))); g > 1 {
		num, den = num/g, den/g
	}
	return Rat{num: num, den: den}
}

// FromBig is the value of r, which is not kept.
func FromBig(r *big.Rat) Rat {
	if r.Num().IsInt64() && r.Denom().IsInt64() {
		if n := r.Num().Int64(); n != -1<<63 {
			return Rat{num: n, den: r.Denom().Int64()}
		}
	}
	return Rat{big: new(big.Rat).Set(r)}
}

// Big is the value as a new big.Rat.
func (x Rat) Big() *big.Rat {
	if x.big != nil {
		return new(big.Rat).Set(x.big)
	}
	return big.NewRat(x.num, x.d())
}

func (x Rat) d() int64 {
	if x.den == 0 {
		return 1
	}
	return x.den
}

// Add is x + y.
func (x Rat) Add(y Rat) Rat {
	if x.big == nil && y.big == nil {
		xd, yd := x.d(), y.d()
		a, ok1 := mul(x.num, yd)
		b, ok2 := mul(y.num, xd)
		d, ok3 := mul(xd, yd)
		if n := a + b; ok1 && ok2 && ok3 && !overflows(a, b, n) {
			return Frac(n, d)
		}
	}
	return FromBig(new(big.Rat).Add(x.ref(), y.ref()))
}

// Sub is x - y.
func (x Rat) Sub(y Rat) Rat { return x.Add(y.Neg()) }

// Neg is -x.
func (x Rat) Neg() Rat {
	if x.big != nil {
		return FromBig(new(big.Rat).Neg(x.big))
	}
	return Rat{num: -x.num, den: x.den}
}

// Abs is the magnitude of x.
func (x Rat) Abs() Rat {
	if x.Sign() < 0 {
		return x.Neg()
	}
	return x
}

// Mul is x·y.
func (x Rat) Mul(y Rat) Rat {
	if x.big == nil && y.big == nil {
		// Cancel across first: products of tooth counts stay small.
		xn, xd, yn, yd := x.num, x.d(), y.num, y.d()
		if g := int64(gcd(magnitude(xn), uint64(yd))); g > 1 {
			xn, yd = xn/g, yd/g
		}
		if g := int64(gcd(magnitude(yn), uint64(xd))); g > 1 {
			yn, xd = yn/g, xd/g
		}
		n, ok1 := mul(xn, yn)
		d, ok2 := mul(xd, yd)
		if ok1 && ok2 {
			return Rat{num: n, den: d}
		}
	}
	return FromBig(new(big.Rat).Mul(x.ref(), y.ref()))
}

// Quo is x/y. It panics if y is 0.
func (x Rat) Quo(y Rat) Rat { return x.Mul(y.Inv()) }

// Inv is 1/x. It panics if x is 0.
func (x Rat) Inv() Rat {
	if x.IsZero() {
		panic("exact: division by zero")
	}
	if x.big != nil {
		return FromBig(new(big.Rat).Inv(x.big))
	}
	if x.num < 0 {
		return Rat{num: -x.d(), den: -x.num}
	}
	return Rat{num: x.d(), den: x.num}
}

// Sign is -1, 0 or +1.
func (x Rat) Sign() int {
	switch {
	case x.big != nil:
		return x.big.Sign()
	case x.num < 0:
		return -1
	case x.num > 0:
		return 1
	}
	return 0
}

// IsZero reports whether x is 0.
func (x Rat) IsZero() bool { return x.Sign() == 0 }

// Equal reports whether x and y are the same number.
func (x Rat) Equal(y Rat) bool {
	if x.big == nil && y.big == nil {
		return x.num == y.num && x.d() == y.d()
	}
	return x.Cmp(y) == 0
}

// Cmp is -1, 0 or +1 as x is less than, equal to or greater than y.
func (x Rat) Cmp(y Rat) int {
	if x.big == nil && y.big == nil {
		a, ok1 := mul(x.num, y.d())
		b, ok2 := mul(y.num, x.d())
		if ok1 && ok2 {
			switch {
			case a < b:
				return -1
			case a > b:
				return 1
			}
			return 0
		}
	}
	return x.ref().Cmp(y.ref())
}

// IsInt reports whether x is a whole number.
func (x Rat) IsInt() bool {
	if x.big != nil {
		return x.big.IsInt()
	}
	return x.d() == 1
}

// Int64 is x as a whole number; ok is false if it is none or does not fit.
func (x Rat) Int64() (n int64, ok bool) {
	if x.big != nil || x.d() != 1 {
		return 0, false
	}
	return x.num, true
}

// Float is the nearest float64, for geometry and display.
func (x Rat) Float() float64 {
	if x.big != nil {
		f, _ := x.big.Float64()
		return f
	}
	if small(x.num) && small(x.d()) {
		return float64(x.num) / float64(x.d())
	}
	f, _ := big.NewRat(x.num, x.d()).Float64()
	return f
}

// String is "p/q", or "p" for a whole number.
func (x Rat) String() string { return x.ref().RatString() }

// Fraction is always "p/q", as the JSON of a rate has it.
func (x Rat) Fraction() string { return x.ref().String() }

// ref is the value as a big.Rat that must not be changed.
func (x Rat) ref() *big.Rat {
	if x.big != nil {
		return x.big
	}
	return big.NewRat(x.num, x.d())
}

// small numbers convert to float64 without rounding.
func small(n int64) bool { return -1<<53 <= n && n <= 1<<53 }

func magnitude(n int64) uint64 {
	if n < 0 {
		return uint64(-n)
	}
	return uint64(n)
}

func gcd(a, b uint64) uint64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// mul is a·b; ok is false where it does not fit with its negative.
func mul(a, b int64) (int64, bool) {
	hi, lo := bits.Mul64(magnitude(a), magnitude(b))
	if hi != 0 || lo > 1<<63-1 {
		return 0, false
	}
	if (a < 0) != (b < 0) {
		return -int64(lo), true
	}
	return int64(lo), true
}

func overflows(a, b, sum int64) bool {
	return (a >= 0) == (b >= 0) && (sum >= 0) != (a >= 0) || sum == -1<<63
}
