package tomlread

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/spec/text"
)

// within is how long a hostile file may take; the bound is loose, for slow and
// busy machines: what goes wrong here takes minutes or the whole stack.
const within = 2 * time.Second

// Files that ask for more time or stack than they are worth: each is refused
// at its place, or read, in time. The first problem
// starts where the marker ¤ is, which is left out, and says want.
func TestHostile(t *testing.T) {
	many := strings.Repeat
	wheel := "[wheel.a]\nx = "
	lines := func(n int, line func(i int) string) string {
		var b strings.Builder
		for i := range n {
			b.WriteString(line(i) + "\n")
		}
		return b.String()
	}
	for name, c := range map[string]struct{ src, want string }{
		"brackets":           {wheel + many("[", 16) + "¤" + many("[", 200_000), "nested deeper than 16"},
		"closed brackets":    {wheel + many("[", 14) + "¤" + many("[", 4000) + many("]", 4014), "nested deeper than 16"},
		"braces":             {wheel + many("{a=", 16) + "¤" + many("{a=", 200_000), "nested deeper than 16"},
		"closed braces":      {wheel + many("{a=", 13) + "{¤" + many("a={", 4000) + many("}", 4014), "nested deeper than 16"},
		"header of brackets": {"[[¤" + many("[", 200_000), "a key is needed here"},
		"key of dots":        {"[wheel.a]\n" + many("k.", 14) + "¤" + many("k.", 20_000) + "k = 1", "nested deeper than 16"},
		"header of dots":     {"[" + many("k.", 16) + "¤" + many("k.", 20_000) + "k]", "nested deeper than 16"},
		"long name":          {"[wheel.¤" + many("k", 100_000) + "]\n" + many("x = 1\n", 10), "a name of 100005 bytes, where 256 are allowed"},
		"digits":             {wheel + "¤" + many("1", 2_000_000), "a number of more than 120 digits"},
		"hex digits":         {wheel + "¤0x" + many("1", 2_000_000), "0x" + many("1", 38) + "… is out of range: a whole number has at most 64 bits"},
		"decimals":           {wheel + "¤0." + many("1", 2_000_000), "a number of more than 120 digits"},
		"underscores":        {wheel + "¤1" + many("_1", 1_000_000), "a number of more than 120 digits"},
		"minus signs":        {wheel + "¤" + many("-", 1_000_000), many("-", 40) + "… is no value"},
		"exclamation marks":  {wheel + "¤" + many("!", 1_000_000), many("!", 40) + "… is no value"},
		"exponent":           {wheel + "¤1e999999999", "a number of more than 120 digits"},
		"small exponent":     {wheel + "¤1e-999999999", "a number of more than 120 digits"},
		"inf":                {wheel + "[1, ¤-inf]", "-inf is not a number a design can hold"},
		"nan":                {wheel + "¤nan", "nan is not a number a design can hold"},
		"empty":              {"", "the file is empty"},
		"blank":              {byteOrderMark + " \r\n\t", "the file is empty"},
		"NULs":               {many("\x00", 1_000_000), "a NUL byte"},
		"bad lines":          {"¤\xff\n" + many("\xff = 1\n", 500_000), "the byte 0xFF is no UTF-8"},
		"long datetime":      {wheel + "¤2027-" + many("-", 1_000_000), "\"2027-" + many("-", 34) + "… is no date or time"},
		"null":               {wheel + "¤null", "null is no value"},
		"large integer":      {wheel + "¤9223372036854775808", "9223372036854775808 is out of range: a whole number has at most 64 bits"},
		"NUL":                {"[design]\ntitle = \"a¤\x00\"", "a NUL byte"},
		"bad UTF-8":          {"[design]\ntitle = \"☾¤\xff\"", "the byte 0xFF is no UTF-8"},
		"UTF-16":             {"¤\xff\xfe[\x00", "the file is UTF-16, not UTF-8"},
		"control character":  {"[design]\ntitle = \"a¤\x01\"", "a string has no control characters"},
		"bare return":        {"[design]¤\rtitle = 1", "the line must end here"},
		"not a date":         {wheel + "¤2027-02-30", `"2027-02-30" is no date or time`},
		"unclosed string":    {wheel + "¤\"abc\n[wheel.b]\n", "the string is not closed on its line"},
		"unclosed list":      {wheel + "[1, 2\n¤[wheel.b]\n", "a comma or ] is needed here"},
		"open at the end":    {wheel + "¤[1, 2,\n", "the list is not closed"},
		"unclosed header":    {"[wheel.a¤\nx = 1\n", "] is needed at the end of a header"},
		"blocks":             {lines(25_000, func(i int) string { return fmt.Sprintf("[wheel.w%d]", i) }), ""},
		"same block":         {"[wheel.a]\n[wheel.¤a]\n" + many("[wheel.a]\n", 25_000), "wheel a is given twice"},
		"keys":               {"[wheel.a]\n" + lines(60_000, func(i int) string { return fmt.Sprintf("k%d = 1", i) }), ""},
		"same key":           {"[wheel.a]\nk = 1\n¤k = 1\n" + many("k = 1\n", 25_000), "k is given twice"},
		"dotted keys":        {"[wheel.a]\n" + lines(12_000, func(i int) string { return fmt.Sprintf("k%d.k = 1", i) }), ""},
		"kinds":              {lines(12_000, func(i int) string { return fmt.Sprintf("[k%d]", i) }), ""},
		"labels as values":   {"[wheel]\n¤" + lines(12_000, func(i int) string { return fmt.Sprintf("k%d = 1", i) }), "k0 stands in no wheel that has a name"},
		"long list":          {wheel + "[" + many("1, ", 80_000) + "]", ""},
		"list of tables":     {"mesh = [" + many("{a = 1}, ", 25_000) + "]", ""},
		"tables in a list":   {wheel + "[1, ¤{a = 1}, " + many("{a = 1}, ", 25_000) + "]", "a table within a list of values"},
		"deep keys": {"[wheel." + many(many("k", 17)+".", 13) + "k]\n" +
			lines(12_000, func(i int) string { return fmt.Sprintf("k%d = 1", i) }), ""},
		"deep lists":          {wheel + "[" + many(many("[", 13)+many("]", 13)+",", 8_000) + "]", ""},
		"errors":              {"[wheel.a]\n" + many("x = = 1\n", 200_000), ""},
		"unclosed, on and on": {"[wheel.a]\n" + many("x = \"\"\"\\n\n", 100_000), ""},
		"escapes":             {"[wheel.a]\n" + many("x = \"\\n\n", 200_000), ""},
		"dates":               {"[wheel.a]\n" + lines(25_000, func(i int) string { return fmt.Sprintf("k%d = 2027-13-01", i) }), `"2027-13-01" is no date or time`},
		"dates apart":         {lines(12_000, func(i int) string { return fmt.Sprintf("[wheel.w%d]\nk = 2027-13-01", i) }), `"2027-13-01" is no date or time`},
		"quotes":              {"[wheel.a]\nx = " + many(`"""`, 200_000), ""},
		"newlines":            {many("\n", 5_000_000), ""},
		"comment":             {"#" + many("[{#\"", 1_000_000), ""},
		"one long string":     {wheel + `"` + many(`\n`, 1_000_000) + `"`, ""},
	} {
		t.Run(name, func(t *testing.T) {
			before, after, marked := strings.Cut(c.src, "¤")
			f := text.NewFile("t.toml", []byte(before+after))
			start := time.Now()
			tree, problems := Parse(f, forms)
			spent := time.Since(start)
			checkSpans(t, f, tree)
			if marked {
				require.NotEmpty(t, problems)
				assert.Equal(t, len(before), int(problems[0].Start), problems[0].Message)
			}
			if c.want != "" {
				require.NotEmpty(t, problems)
				assert.Equal(t, c.want, problems[0].Message)
			}
			assert.LessOrEqual(t, len(problems), MaxProblems)
			for _, p := range problems {
				assert.LessOrEqual(t, len(p.Message)+p.Len(), 500, "what people can read")
			}
			if !testing.Short() { // short runs go with the race detector, which is slow
				assert.Less(t, spent, within)
			}
		})
	}
}
