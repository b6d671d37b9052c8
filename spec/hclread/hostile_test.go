package hclread

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
const within = 5 * time.Second

// Text that kills or stalls parsers is told at its place, quickly.
func TestHostile(t *testing.T) {
	attr := func(value string) string { return "wheel \"a\" {\n  on = " + value + "\n}\n" }
	many := func(s string, n int) string {
		if testing.Short() && n >= 100_000 {
			n /= 10
		}
		return strings.Repeat(s, n)
	}
	for _, c := range []struct{ name, src, want string }{
		{"brackets", attr(many("[", 200_000) + many("]", 200_000)), "2:71 [[] nested deeper than 64"},
		{"brackets unclosed", attr(many("[", 200_000)), "2:71 [[] nested deeper than 64"},
		{"parentheses", attr(many("(", 200_000) + "1" + many(")", 200_000)), "2:71 [(] nested deeper than 64"},
		{"closers", attr(many("]", 200_000)), "2:8 []] a value is needed before ]"},
		{"objects", attr(many("{a=", 200_000) + many("}", 200_000)), "2:8 [{] an object"},
		{"blocks", many("a {", 200_000) + many("}", 200_000), "1:195 [{] nested deeper than 64"},
		{"blocks unclosed", many("a {\n", 200_000), "1:1 [a] a is not closed"},
		{"minus signs", attr(many("-", 1_000_000) + "1"), "2:208 [-] more than 200 arithmetic signs"},
		{"minus signs apart", attr(many("- ", 1_000_000) + "1"), "2:408 [-] more than 200 arithmetic signs"},
		{"exclamation marks", attr(many("!", 1_000_000) + "true"), "2:8 [!] logic (!)"},
		{"sums", attr(many("1+", 1_000_000) + "1"), "2:409 [+] more than 200 arithmetic signs"},
		{"conditionals", attr(many("true ? 1 : ", 100_000) + "1"), "2:13 [?] a conditional"},
		{"calls", attr(many("f(", 200_000) + many(")", 200_000)), "2:8 [f] a function call"},
		{"parts", attr("given" + many(".a", 200_000)), "2:15 [.] a value has no parts"},
		{"indexes", attr("given.a" + many("[0]", 200_000)), "2:15 [[] an index"},
		{"splats", attr("given.a" + many("[*]", 200_000)), "2:15 [[*]] a splat"},
		{"templates", attr(many("\"${", 100_000) + "1" + many("}\"", 100_000)), "2:9 [${] a template"},
		{"templates in brackets", attr(many("[\"${", 100_000)), "2:10 [${] a template"},
		{"brackets wrongly closed", attr(many(many("[", 60)+"a"+many(")", 60)+",]", 5000)), "2:68 [a] a is no value"},
		{"scopes that are none", attr(many(many("[", 60)+"a::1"+many("]", 60)+",()", 5000)), "2:68 [a] a function call"},
		{"commas", attr("[" + many("1,", 1_000_000) + "]"), "2:100009 [1] more than 100000 words or 10000 signs"},
		{"lists", attr("[" + many("[],", 100_000) + "]"), "more than 100000 words or 10000 signs"},
		{"six nested for", attr(many("[for x in ", 6) + "[1]" + many(" : x]", 6)), "2:9 [for] a for expression"},
		{"for nested deep", attr(many("[for x in ", 100_000)), "2:9 [for] a for expression"},
		{"heredocs", attr("1") + many("a = <<E\n", 100_000), "4:1 [a] a stands outside"},
		{"heredocs in a block", "wheel \"a\" {\n" + many("a = <<E\n", 100_000) + "}\n", "2:5 [<<E] a heredoc"},
		{"exponent", attr("1e999999999"), "2:8 [1e999999999] a number of more than 120 digits"},
		{"exponent of many digits", attr("1e" + many("9", 1_000_000)), "a number of more than 120 digits"},
		{"digits", attr(many("7", 2_000_000)), "a number of more than 120 digits"},
		{"digits after the point", attr("0." + many("7", 2_000_000)), "a number of more than 120 digits"},
		{"points", attr(many("7.", 1_000_000)), "a number of more than 120 digits"},
		{"null", attr("null"), "2:8 [null] null is not part of the language"},
		{"string", attr("\"" + many("x", 2_000_000)), "a string is not closed on its line"},
		{"escapes", attr("\"" + many("\\q", 500_000) + "\""), "2:9 [\\q] \\q is no escape"},
		{"escapes in a label", "wheel \"" + many("\\q", 500_000) + "\" {\n}\n", "1:8 [\\q] \\q is no escape"},
		{"word", attr(many("x", 500_000)), "is no value"},
		{"labels", "a" + many(" \"b\"", 500_000) + " {\n}\n", "1:7 [\"b\"] a second name"},
		{"attributes without end", "wheel \"a\" {\n" + many("a = \n", 200_000) + "}\n", "2:3 [=] a value is needed"},
		{"comments unclosed", many("/* ", 500_000), "1:1 [/*] the comment is not closed"},
		{"NUL", "wheel \"a\" {\n  te\x00eth = 3\n}\n", "2:5 [\x00] a NUL byte"},
		{"NUL in a string", attr("\"a\x00\""), "2:10 [\x00] a NUL byte"},
		{"NULs", many("\x00", 1_000_000), "1:1 [\x00] a NUL byte"},
		{"bad UTF-8", attr("\"caf\xe9\""), "2:12 [\xe9] the byte 0xE9 is no UTF-8"},
		{"bad UTF-8 everywhere", many("\xff\n", 500_000), "1:1 [\xff] the byte 0xFF"},
		{"UTF-16", "\xff\xfew\x00h\x00", "the file is UTF-16"},
		{"lone carriage returns", "wheel \"a\" {\r  teeth = 3\r}\r", "1:12 [\r] a carriage return"},
		{"byte order mark within", "wheel \"a\" {\n\ufeff}\n", "2:1 [\ufeff] an attribute (name = value) or a block (name { ... }) is needed here, not the character U+FEFF"},
		{"empty", "", "1:1 [] the file is empty"},
		{"blank", "\ufeff \r\n\t\n", "1:1 [] the file is empty"},
		{"unclosed block", "wheel \"a\" {\n  teeth = 3\n", "1:1 [wheel \"a\"] wheel \"a\" is not closed"},
		{"unclosed blocks", many("wheel \"a\" {\n  teeth = 3\n", 100_000), "1:1 [wheel \"a\"] wheel \"a\" is not closed"},
		{"unclosed blocks and closed ones", many("a {\n"+many("b {\n}\n", 50), 2000), "1:1 [a] a is not closed"},
		{"large", strings.Repeat("#", MaxBytes+1), "the file is larger than 32 MB"},
		{"chain", "given {\n" + chain(5000) + "}\n", "more than 100 named values in a chain"},
		{"chain of sums", "given {\n" + strings.ReplaceAll(chain(200), "\n", many("+1", 199)+"\n") + "}\n", "more than 100 named values in a chain"},
		{"circle", "given {\n" + chain(90) + "  a90 = given.a0\n}\n", "named values in a circle: a0 → a1 → a2 → a3 → a4 → a5 → a6 → a7 → ... → a0"},
		{"unknown names", "given {\n" + numbered("  a%d = %d\n", 5000) + "}\nwheel \"a\" {\n" + numbered("  b%d = given.c%d\n", 5000) + "}\n", "there is no given.c0"},
		{"copies of a list", "given {\n  l = [" + many("1,", 1000) + "]\n}\nwheel \"a\" {\n" + numbered("  b%d = given.l #%d\n", 2000) + "}\n", "named lists grow to more than 100000 values"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := text.NewFile("a.hcl", []byte(c.src))
			start := time.Now()
			s, problems := Parse(f)
			trees, more := Evaluate([]*Source{s})
			took := time.Since(start)
			problems = append(problems, more...)
			require.NotEmpty(t, problems)
			require.Len(t, trees, 1)
			var lines []string
			for _, p := range problems {
				at := f.Position(p.Start)
				lines = append(lines, fmt.Sprintf("%d:%d [%s] %s", at.Line, at.Column, p.Text(), p.Message))
				assert.LessOrEqual(t, len(p.Message)+len(p.Hint), 500, "a message people can read")
			}
			told := strings.Join(lines, "\n")
			assert.True(t, strings.Contains("\n"+told, c.want), "%.300q\nis not in\n%.20000q", c.want, told)
			assert.LessOrEqual(t, len(problems), 2*MaxProblems)
			assert.Less(t, took, within)
		})
	}
}

// chain is named values each of which stands on the next.
func chain(n int) string {
	return numbered("  a%d = given.a%d\n", n)
}

// numbered is the line with 0 and 1, 1 and 2, and so on.
func numbered(line string, n int) string {
	var b strings.Builder
	second := 0
	if strings.Contains(line, "= given.a") {
		second = 1
	}
	for i := range n {
		fmt.Fprintf(&b, line, i, i+second)
	}
	return b.String()
}

// Time grows with the file and not with its square, which would take minutes:
// faults are not gone over again and again.
func TestManyFaults(t *testing.T) {
	n := 20_000
	if testing.Short() {
		n = 4000
	}
	for name, unit := range map[string]string{
		"blocks":          "wheel \"a\" {\n  teeth = 30\n  at = [1, 2]\n}\n",
		"refused":         "wheel \"a\" {\n  teeth = !\n}\n",
		"unclosed":        "wheel \"a\" {\n  teeth = [1\n",
		"closers":         "}\n",
		"heredocs":        "wheel \"a\" {\n  a = <<E\n}\n",
		"unread":          "wheel \"a\" {\n  a = \"\xff\"\n}\n",
		"open templates":  "wheel \"a\" {\n  a = \"${\n}\n",
		"unclosed string": "wheel \"a\" {\n  a = max(\"x\n}\n",
		"labels":          "wheel \"a {\n}\n",
		"no braces":       "wheel \"a\"\n  teeth = 3\n",
		"long line":       "wheel a = { teeth = ) } ",
		"attributes":      "a = 1 ",
	} {
		t.Run(name, func(t *testing.T) {
			f := text.NewFile("a.hcl", []byte("wheel \"a\" {\n}\n"+strings.Repeat(unit, n)))
			start := time.Now()
			Parse(f)
			assert.Less(t, time.Since(start), within)
		})
	}
}
