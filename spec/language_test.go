package spec

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

func TestTheLanguageTableIsSound(t *testing.T) {
	seen := map[string]bool{}
	for n, k := range Language() {
		assert.False(t, seen[k.Kind], k.Kind)
		seen[k.Kind] = true
		assert.Same(t, k, KindOf(k.Kind))
		assert.Equal(t, n, k.number)
		assert.NotEmpty(t, k.Doc, k.Kind)
		assert.NotEqual(t, tomlread.Unknown, k.Form, k.Kind)
		assert.LessOrEqual(t, len(k.Attributes), 64, "required attributes are bits of a word")
		names := map[string]bool{}
		for i := range k.Attributes {
			a := &k.Attributes[i]
			assert.False(t, names[a.Name], "%s.%s", k.Kind, a.Name)
			names[a.Name] = true
			assert.NotEmpty(t, a.Doc, "%s.%s", k.Kind, a.Name)
			assert.Same(t, a, k.Attribute(a.Name))
			assert.False(t, a.Required && a.Default != "", "%s.%s", k.Kind, a.Name)
			assert.Equal(t, a.Holds == AChoice, a.Choices != nil, "%s.%s", k.Kind, a.Name)
			if a.Refers != NoReference {
				assert.Contains(t, []Holds{AName, ANames}, a.Holds, "%s.%s", k.Kind, a.Name)
			}
		}
		assert.Nil(t, k.Attribute("nothing"))
	}
	assert.Nil(t, KindOf("nothing"))
	for _, kind := range StageKinds {
		require.NotNil(t, KindOf(kind), kind)
		assert.True(t, kind == "chain" || KindOf(kind).Form == tomlread.Labelled, kind)
	}
}

// What an attribute is said to be unless given can be given.
func TestDefaultsCanBeRead(t *testing.T) {
	file := text.NewFile("x", []byte("0123456789"))
	for _, k := range Language() {
		for i := range k.Attributes {
			a := &k.Attributes[i]
			if a.Default == "" {
				continue
			}
			value := syntax.Value{Kind: syntax.String, Text: a.Default}
			if a.Holds == AFlag {
				value = syntax.Value{Kind: syntax.Bool, Bool: a.Default == "true"}
			}
			r := reading{telling: new(telling), design: new(Design), file: file}
			var room any
			part := k.add(r.design, &room)
			a.field(part).set(&r, a, At{File: file}, &value)
			assert.Empty(t, r.list, "%s.%s = %q", k.Kind, a.Name, a.Default)
		}
	}
}

func TestParseDate(t *testing.T) {
	for s, want := range map[string]Date{
		"2027-01-01":                {Year: 2027, Month: 1, Day: 1},
		" 2028-02-29 ":              {Year: 2028, Month: 2, Day: 29},
		"2027-06-30T18:00":          {Year: 2027, Month: 6, Day: 30, DayFraction: 0.75},
		"2027-06-30 18:00":          {Year: 2027, Month: 6, Day: 30, DayFraction: 0.75},
		"2027-06-30T06:00:00Z":      {Year: 2027, Month: 6, Day: 30, DayFraction: 0.25},
		"2027-06-30T06:00Z":         {Year: 2027, Month: 6, Day: 30, DayFraction: 0.25},
		"2027-06-30T23:00-07:00":    {Year: 2027, Month: 7, Day: 1, DayFraction: 0.25},
		"2027-06-30 12:00:00.0":     {Year: 2027, Month: 6, Day: 30, DayFraction: 0.5},
		"0087-05-12":                {Year: 87, Month: 5, Day: 12},
		"2000-01-01T12:00:00+00:00": {Year: 2000, Month: 1, Day: 1, DayFraction: 0.5},
	} {
		got, err := ParseDate(s)
		require.NoError(t, err, s)
		got.Text = ""
		assert.Equal(t, want, got, s)
	}
	for _, s := range []string{"", "2027", "2027-1-1", "27-01-01", "2027-02-29", "1900-02-29", "2027-01-32", "2027-01-01T25:00", "today", "2027-01-01 noon", "2027-01-01T12:00+99:00"} {
		_, err := ParseDate(s)
		assert.Error(t, err, s)
	}
}
