package tomlread

import (
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

// What is certain to be valid is so to BurntSushi/toml.
func FuzzCertain(f *testing.F) {
	for _, s := range []string{
		"a = 1\n", "a = -0.50 # x\n", "[wheel.a-b_1]\n", "[[mesh]]\r\n\n# waive x: y\n", "a = [\"b\", 'c', ]\n",
		"# before\n\na = true\n", "a = \"\"\n", "a = 01\n", "a = 1\rb = 2\n", "a = 'x' b = 2\n", "a = \"\\u00e9\"\n", "a = [[1]]\n", "a = 2027-01-01\n",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if utf8.ValidString(s) && certain(s) { // the reader looks at the encoding first
			if fault := decode(s); fault != nil {
				t.Fatalf("%q: %s", s, fault.message)
			}
		}
	})
}

func TestCertain(t *testing.T) {
	for s, want := range map[string]bool{
		"a = 1\n":                               true,
		"teeth = 31 # counted\n\n# more\n":      true,
		"[wheel.first]\n":                       true,
		"[[mesh]]\r\n":                          true,
		"at = [118.5, -3]\n":                    true,
		"parts = [\"a\", 'b',]\n":               true,
		"# before\nshows = \"synodic month\"\n": true,
		"a = 1":                                 false, // may go on
		"a = 1 b = 2\n":                         false,
		"a = \"\\t\"\n":                         false,
		"a = \"\"\n":                            false, // may begin one of many lines
		"a = 007\n":                             false,
		"a = 1e3\n":                             false,
		"a = 1_000\n":                           false,
		"a = [[1]]\n":                           false,
		"a.b = 1\n":                             false,
		"\"a\" = 1\n":                           false,
		"a = 2027-01-01\n":                      false,
		"a = {}\n":                              false,
		"a = 'x\x01'\n":                         false,
		"a = 1 # \x01\n":                        false,
		"a = 1\rb\n":                            false,
	} {
		assert.Equal(t, want, certain(s), "%q", s)
	}
}
