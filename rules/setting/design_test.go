package setting_test

import (
	"math/big"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"wheelwork/rules/setting"
	"wheelwork/rules/sky"
	"wheelwork/spec"
	"wheelwork/spec/exact"
	"wheelwork/spec/train"
)

// solved reads a design given as text.
func solved(t *testing.T, text string) *train.Train {
	t.Helper()
	name := filepath.Join(t.TempDir(), "design.hcl")
	require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
	d, problems := spec.Load(name)
	require.Empty(t, problems)
	return train.Solve(d)
}

// demo is a design of the fixtures.
func demo(t *testing.T, path string) *train.Train {
	t.Helper()
	d, problems := spec.Load(filepath.Join("../../fixtures/designs", path))
	require.Empty(t, problems)
	return train.Solve(d)
}

// day is the Julian day of a date at 0 h and some hours.
func day(t *testing.T, date string, hours float64) exact.Rat {
	t.Helper()
	d, err := sky.ParseDate(date)
	require.NoError(t, err)
	return exact.FromBig(new(big.Rat).SetFloat64(d.JulianDay())).Add(exact.FromBig(new(big.Rat).SetFloat64(hours)).Quo(exact.Int(24)))
}

// dynamical is the day of Universal Time at which it is so much Terrestrial Time.
func dynamical(t *testing.T, jde float64) exact.Rat {
	t.Helper()
	ut, err := sky.ToUT(jde)
	require.NoError(t, err)
	return exact.FromBig(new(big.Rat).SetFloat64(ut))
}

func on(t *testing.T, tr *train.Train, day exact.Rat) *setting.Setting {
	t.Helper()
	s, err := setting.On(tr, day)
	require.NoError(t, err)
	return s
}

func hand(t *testing.T, s *setting.Setting, name string) *setting.Hand {
	t.Helper()
	for _, h := range s.Hands {
		if h.Name.Text == name {
			return h
		}
	}
	t.Fatalf("no hand %q", name)
	return nil
}

func step(t *testing.T, s *setting.Setting, name string) *setting.Step {
	t.Helper()
	for i := range s.Steps {
		if s.Steps[i].Hand.Name.Text == name {
			return &s.Steps[i]
		}
	}
	t.Fatalf("no step for hand %q", name)
	return nil
}
