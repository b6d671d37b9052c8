package table

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWrite(t *testing.T) {
	table := New(Column{Head: "hand"}, Column{Head: "empty"}, Column{Head: "period", Right: true}, Column{Head: "sense"})
	table.Row("moon_age", "", "29.53 d", "ccw")
	table.Row("月", "", "365.2 d")
	table.Row("a\tb", "", "1 d", "cw")
	var b strings.Builder
	require.NoError(t, table.Write(&b))
	assert.Equal(t, ""+
		"  hand       period  sense\n"+
		"  moon_age  29.53 d  ccw\n"+
		"  月        365.2 d\n"+
		"  a    b        1 d  cw\n", b.String())
}
