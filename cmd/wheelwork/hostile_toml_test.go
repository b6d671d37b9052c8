package main

import "strings"

var hostileTOML = map[string]hostile{
	"nested lists":          {"x.toml", tomlHead + "a = " + strings.Repeat("[", 200_000) + "\n", "x.toml:3:", "deep"},
	"nested lists, closed":  {"x.toml", tomlHead + "a = " + strings.Repeat("[", 200_000) + strings.Repeat("]", 200_000) + "\n", "x.toml:3:", "deep"},
	"nested tables":         {"x.toml", tomlHead + "a = " + strings.Repeat("{a = ", 200_000) + "1" + strings.Repeat("}", 200_000) + "\n", "x.toml:3:", "deep"},
	"minus signs":           {"x.toml", tomlHead + "a = " + strings.Repeat("-", 1_000_000) + "1\n", "x.toml:3:", ""},
	"a vast exponent":       {"x.toml", tomlHead + "[arbor.a]\nfrom = 1e999999999\n", "x.toml:4:8", "120 digits"},
	"two million digits":    {"x.toml", tomlHead + "[arbor.a]\nfrom = " + strings.Repeat("7", 2_000_000) + "\n", "x.toml:4:8", ""},
	"a key of dots":         {"x.toml", tomlHead + "a" + strings.Repeat(".a", 20_000) + " = 1\n", "x.toml:3:", "deep"},
	"a header of dots":      {"x.toml", tomlHead + "[a" + strings.Repeat(".a", 20_000) + "]\n", "x.toml:3:", "deep"},
	"infinity":              {"x.toml", tomlHead + "[arbor.a]\nfrom = inf\n", "x.toml:4:8", "inf is not a number"},
	"minus infinity":        {"x.toml", tomlHead + "[arbor.a]\nfrom = -inf\n", "x.toml:4:8", "-inf is not a number"},
	"not a number":          {"x.toml", tomlHead + "[arbor.a]\nfrom = nan\n", "x.toml:4:8", "nan is not a number"},
	"null":                  {"x.toml", tomlHead + "[arbor.a]\nfrom = null\n", "x.toml:4:8", ""},
	"no teeth":              {"x.toml", tomlHead + "[arbor.b]\n[wheel.a]\non = \"b\"\nteeth = 0\n", "x.toml:6:9", "teeth must be 1 or more, not 0"},
	"teeth below zero":      {"x.toml", tomlHead + "[arbor.b]\n[wheel.a]\non = \"b\"\nteeth = -30\n", "x.toml:6:9", "teeth must be 1 or more, not -30"},
	"broken teeth":          {"x.toml", tomlHead + "[arbor.b]\n[wheel.a]\non = \"b\"\nteeth = 30.5\n", "x.toml:6:9", "teeth is a whole number, not 30.5"},
	"NUL bytes":             {"x.toml", tomlHead + "a = \"\x00\"\n", "x.toml:3:6", "NUL"},
	"bad UTF-8":             {"x.toml", tomlHead + "a = \"\xff\xfe\"\n", "x.toml:3:6", "UTF-8"},
	"empty":                 {"x.toml", "", "x.toml", "the file is empty"},
	"an unclosed header":    {"x.toml", tomlHead + "[wheel.a\nteeth = 30\n", "x.toml:3:", ""},
	"an unclosed string":    {"x.toml", tomlHead + "[wheel.a]\non = \"b\nteeth = 30\n", "x.toml:4:", ""},
	"an unclosed text":      {"x.toml", tomlHead + "[wheel.a]\non = \"\"\"b\nteeth = 30\n", "x.toml:", ""},
	"a fault behind BOM":    {"x.toml", "\ufeff[desing]\ntitle = \"x\"\n", "x.toml:1:2", "design"},
	"a fault behind CRLF":   {"x.toml", "[design]\r\ntitle = \"x\"\r\n[weel.a]\r\n", "x.toml:3:2", "wheel"},
	"it uses itself":        {"x.toml", tomlHead + "uses = [\"x.toml\"]\n", "x.toml:3:9", "is this file itself"},
	"it uses what is above": {"x.toml", tomlHead + "uses = [\"../../x.hcl\"]\n", "x.toml:3:9", "leads out of the repository"},
	"it uses a device":      {"x.toml", tomlHead + "uses = [\"/dev/zero\"]\n", "x.toml:3:9", "absolute path"},
}
