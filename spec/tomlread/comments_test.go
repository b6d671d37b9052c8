package tomlread

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"wheelwork/spec/text"
)

func TestComments(t *testing.T) {
	f := text.NewFile("t.toml", []byte(byteOrderMark+"# top\r\n[a] # header ☾\nx = [ # open\n  1, # one\n# two\n# three\n  [2 # deep\n], \"# no\" ]# end\n"+
		"y = {a = 1, # in\n}\nz = \"\"\"\n# no\"\"\"\n  # last"))
	var got []string
	for _, at := range Comments(f) {
		got = append(got, string(f.Bytes[at.Start:at.End]))
	}
	assert.Equal(t, []string{"# top", "# header ☾", "# open", "# one", "# two", "# three", "# deep", "# end", "# in", "# last"}, got)
}
