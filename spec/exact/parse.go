package exact

import (
	"errors"
	"math/big"
	"strings"
)

// MaxDigits bounds a number in a spec: more digits, or a larger exponent,
// than any measurement has.
const MaxDigits = 120

// ErrSyntax is returned for text that is no number.
var ErrSyntax = errors.New("not a number")

// ErrTooLong is returned for a number of more than MaxDigits digits or with an exponent beyond that.
var ErrTooLong = errors.New("a number of more than 120 digits")

// Parse reads a whole number, a decimal (with exponent or not) or a fraction
// "p/q" of two such, exactly. Underscores between digits are allowed.
func Parse(s string) (Rat, error) {
	if top, bottom, ok := strings.Cut(s, "/"); ok {
		p, err := decimal(strings.TrimRight(top, " "))
		if err != nil {
			return Rat{}, err
		}
		q, err := decimal(strings.TrimLeft(bottom, " "))
		if err != nil {
			return Rat{}, err
		}
		if q.IsZero() {
			return Rat{}, errors.New("division by zero")
		}
		return p.Quo(q), nil
	}
	return decimal(s)
}

func decimal(s string) (Rat, error) {
	if len(s) > 4*MaxDigits {
		return Rat{}, ErrTooLong
	}
	var (
		i        int
		negative bool
		mantissa int64
		digits   int // all digits of the mantissa
		after    int // digits after the point
		point    bool
		long     []byte // the digits, once they do not fit
	)
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		negative = s[i] == '-'
		i++
	}
	start := i
	for ; i < len(s); i++ {
		c := s[i]
		switch {
		case c >= '0' && c <= '9':
			digits++
			if point {
				after++
			}
			if digits <= 18 {
				mantissa = mantissa*10 + int64(c-'0')
			}
			continue
		case c == '.' && !point && digits > 0:
			point = true
			continue
		case c == '_' && i > start && digit(s[i-1]) && i+1 < len(s) && digit(s[i+1]):
			continue
		}
		break
	}
	if digits == 0 || point && after == 0 {
		return Rat{}, ErrSyntax
	}
	if digits > MaxDigits {
		return Rat{}, ErrTooLong
	}
	mantissaEnd := i
	exponent := 0
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		i++
		down := false
		if i < len(s) && (s[i] == '+' || s[i] == '-') {
			down = s[i] == '-'
			i++
		}
		if i == len(s) {
			return Rat{}, ErrSyntax
		}
		for ; i < len(s) && digit(s[i]); i++ {
			exponent = min(exponent*10+int(s[i]-'0'), 1_000_000)
		}
		if down {
			exponent = -exponent
		}
	}
	if i != len(s) {
		return Rat{}, ErrSyntax
	}
	if exponent > MaxDigits || exponent < -MaxDigits {
		return Rat{}, ErrTooLong
	}
	exponent -= after
	if digits <= 18 && exponent <= 0 && exponent >= -18 {
		if negative {
			mantissa = -mantissa
		}
		return Frac(mantissa, pow10(-exponent)), nil
	}
	for _, c := range []byte(s[start:mantissaEnd]) {
		if digit(c) {
			long = append(long, c)
		}
	}
	n, _ := new(big.Int).SetString(string(long), 10)
	if negative {
		n.Neg(n)
	}
	scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(max(exponent, -exponent))), nil)
	r := new(big.Rat).SetInt(n)
	if exponent < 0 {
		r.Quo(r, new(big.Rat).SetInt(scale))
	} else {
		r.Mul(r, new(big.Rat).SetInt(scale))
	}
	return FromBig(r), nil
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

func pow10(n int) int64 {
	p := int64(1)
	for range n {
		p *= 10
	}
	return p
}
