package main

import (
	"fmt"
	"strings"
)

var hostileHCL = map[string]hostile{
	"nested lists":               {"x.hcl", hclHead + "given { a = " + strings.Repeat("[", 200_000) + " }\n", "x.hcl:4:", "deeper than 64"},
	"nested lists, closed":       {"x.hcl", hclHead + "given { a = " + strings.Repeat("[", 200_000) + strings.Repeat("]", 200_000) + " }\n", "x.hcl:4:", "deeper than 64"},
	"nested parentheses":         {"x.hcl", hclHead + "given { a = " + strings.Repeat("(", 200_000) + "1" + strings.Repeat(")", 200_000) + " }\n", "x.hcl:4:", "deeper than 64"},
	"nested braces":              {"x.hcl", hclHead + strings.Repeat("a {", 200_000), "x.hcl:4:", ""},
	"nested objects":             {"x.hcl", hclHead + "given { a = " + strings.Repeat("{ a = ", 200_000) + " }\n", "x.hcl:4:13", "an object"},
	"minus signs":                {"x.hcl", hclHead + "given { a = " + strings.Repeat("-", 1_000_000) + "1 }\n", "x.hcl:4:", "200"},
	"exclamation marks":          {"x.hcl", hclHead + "given { a = " + strings.Repeat("!", 1_000_000) + "true }\n", "x.hcl:4:13", "logic (!)"},
	"plus signs":                 {"x.hcl", hclHead + "given { a = 1" + strings.Repeat(" + 1", 300_000) + " }\n", "x.hcl:4:", "200"},
	"deep templates":             {"x.hcl", hclHead + "given { a = " + strings.Repeat(`"${`, 100_000) + "1" + strings.Repeat(`}"`, 100_000) + " }\n", "x.hcl:4:", "not part of the language"},
	"nested for":                 {"x.hcl", hclHead + "given { a = " + strings.Repeat("[for x in [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] : ", 6) + "x" + strings.Repeat("]", 6) + " }\n", "x.hcl:4:", "a for expression"},
	"conditionals":               {"x.hcl", hclHead + "given { a = true" + strings.Repeat(" ? 1 : true", 100_000) + " }\n", "x.hcl:4:", "a conditional"},
	"functions":                  {"x.hcl", hclHead + "given { a = " + strings.Repeat("f(", 100_000) + "1" + strings.Repeat(")", 100_000) + " }\n", "x.hcl:4:", "function"},
	"a heredoc":                  {"x.hcl", hclHead + "given { a = <<" + strings.Repeat("E", 100_000) + "\n}\n", "x.hcl:4:", "a heredoc"},
	"a vast exponent":            {"x.hcl", hclHead + "given { a = 1e999999999 }\n", "x.hcl:4:13", "120 digits"},
	"a vast exponent below":      {"x.hcl", hclHead + "given { a = 1e-999999999 }\n", "x.hcl:4:13", "120 digits"},
	"two million digits":         {"x.hcl", hclHead + "given { a = " + strings.Repeat("7", 2_000_000) + " }\n", "x.hcl:4:13", "120 digits"},
	"growing values":             {"x.hcl", hclHead + "given {\n  a0 = 1e100\n" + growing("*") + "}\n", "x.hcl:", ""},
	"growing lists":              {"x.hcl", hclHead + "given {\n  a0 = [1]\n" + growing(",") + "}\n", "x.hcl:", "100000 values"},
	"values in a circle":         {"x.hcl", hclHead + "given {\n  a = given.b\n  b = given.a\n}\n", "x.hcl:", "in a circle"},
	"a key of dots":              {"x.hcl", hclHead + "a" + strings.Repeat(".a", 20_000) + " = 1\n", "x.hcl:4:", ""},
	"null":                       {"x.hcl", hclHead + "arbor \"a\" { diameter = null }\n", "x.hcl:4:24", "null"},
	"infinity":                   {"x.hcl", hclHead + "arbor \"a\" { diameter = inf }\n", "x.hcl:4:24", ""},
	"no teeth":                   {"x.hcl", hclHead + "wheel \"a\" {\n  on = \"b\"\n  teeth = 0\n}\narbor \"b\" {}\n", "x.hcl:6:11", "teeth must be 1 or more, not 0"},
	"teeth below zero":           {"x.hcl", hclHead + "wheel \"a\" {\n  on = \"b\"\n  teeth = -30\n}\narbor \"b\" {}\n", "x.hcl:6:11", "teeth must be 1 or more, not -30"},
	"broken teeth":               {"x.hcl", hclHead + "wheel \"a\" {\n  on = \"b\"\n  teeth = 30.5\n}\narbor \"b\" {}\n", "x.hcl:6:11", "teeth is a whole number, not 30.5"},
	"NUL bytes":                  {"x.hcl", hclHead + "arbor \"a\x00\" {}\n", "x.hcl:4:9", "NUL"},
	"only NUL bytes":             {"x.hcl", strings.Repeat("\x00", 100_000), "x.hcl:1:1", "NUL"},
	"bad UTF-8":                  {"x.hcl", hclHead + "arbor \"\xff\xfe\" {}\n", "x.hcl:4:8", "UTF-8"},
	"UTF-16":                     {"x.hcl", "\xff\xfed\x00e\x00s\x00i\x00g\x00n\x00", "x.hcl:1:1", "UTF-8"},
	"empty":                      {"x.hcl", "", "x.hcl", "the file is empty"},
	"only blanks":                {"x.hcl", strings.Repeat(" \n", 100_000), "x.hcl", "the file is empty"},
	"an unclosed block":          {"x.hcl", hclHead + "wheel \"a\" {\n  on = \"b\"\n  teeth = 30\n", "x.hcl:4:1", "is not closed"},
	"an unclosed string":         {"x.hcl", hclHead + "wheel \"a {\n  teeth = 30\n}\n", "x.hcl:4:7", ""},
	"an unclosed comment":        {"x.hcl", hclHead + "/* and so on\n", "x.hcl:4:1", "not closed"},
	"a fault behind BOM":         {"x.hcl", "\ufeffdesign { titel = \"x\" }\n", "x.hcl:1:10", "title"},
	"a fault behind CRLF":        {"x.hcl", "design {\r\n  title = \"x\"\r\n}\r\nweel \"a\" {}\r\n", "x.hcl:4:1", "wheel"},
	"it uses itself":             {"x.hcl", "design {\n  title = \"x\"\n  uses = [\"x.hcl\"]\n}\n", "x.hcl:3:11", "is this file itself"},
	"it uses what is outside":    {"x.hcl", "design {\n  title = \"x\"\n  uses = [\"../../x.hcl\"]\n}\n", "x.hcl:3:11", "leads out of the repository"},
	"it uses an absolute path":   {"x.hcl", "design {\n  title = \"x\"\n  uses = [\"/etc/x.hcl\"]\n}\n", "x.hcl:3:11", "absolute path"},
	"it uses a link to a device": {"x.hcl", "design {\n  title = \"x\"\n  uses = [\"zero.hcl\"]\n}\n", "x.hcl:3:11", "leads out of the repository"},
}

// growing values each stand on the one before several times.
func growing(sign string) string {
	var s strings.Builder
	for i := range 90 {
		before := fmt.Sprintf("given.a%d", i)
		if sign == "," {
			fmt.Fprintf(&s, "  a%d = [%s, %s, %s]\n", i+1, before, before, before)
		} else {
			fmt.Fprintf(&s, "  a%d = %s %s %s\n", i+1, before, sign, before)
		}
	}
	return s.String()
}
