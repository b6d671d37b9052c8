package report

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/inspect"
	"wheelwork/rules"
)

var update = flag.Bool("update", false, "write what the formats give")

const faulty = `design { title = "Tide | hand" }
arbor "day" {}
arbor "spare_größe" {}
wheel "first" {
  on     = "day"
  teeth  = 30
  module = 0.5
}
arbor "tide" {}
wheel "second" {
  on     = "tide"
  teeth  = 32
  module = 0.6
}
mesh { wheels = ["first", "second"] }
clock {
  on     = "day"
  period = "solar day"
}
hand "tide" {
  on     = "tide"
  shows  = "lunar day"
  within = "100 ppm"
  sense  = "ccw"
}
`

const broken = "design { titel = \"x\" }\n"

// both is a report of a design with findings and one that cannot be read.
func both(t *testing.T) *Report {
	t.Helper()
	t.Chdir(t.TempDir())
	require.NoError(t, os.WriteFile("faulty design.hcl", []byte(faulty), 0o644))
	require.NoError(t, os.WriteFile("broken.hcl", []byte(broken), 0o644))
	list := inspect.Find([]string{"faulty design.hcl", "broken.hcl"})
	inspect.Check(list)
	r := New(list)
	// The formats are tried here, not the rules: three suffice.
	r.Only([]string{"undriven", "unequal-module", "period-error", "sense-of-turning", "hunting-tooth"})
	return r
}

func TestFormats(t *testing.T) {
	testdata, err := filepath.Abs("testdata")
	require.NoError(t, err)
	r := both(t)
	for _, format := range Formats {
		t.Run(format, func(t *testing.T) {
			if format == "junit" || format == "sarif" {
				return // they list every rule; their tests look at what is said
			}
			var out bytes.Buffer
			require.NoError(t, r.Write(&out, format, Style{Threshold: rules.Warning, Version: "test", Aside: "off"}))
			name := filepath.Join(testdata, "formats", format)
			if *update {
				require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o755))
				require.NoError(t, os.WriteFile(name, out.Bytes(), 0o644))
			}
			want, err := os.ReadFile(name)
			require.NoError(t, err, "run go test -update")
			assert.Equal(t, string(want), out.String())
		})
	}
}

func sarifOf(t *testing.T, r *Report) map[string]any {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, r.SARIF(&out, "test"))
	var doc map[string]any
	require.NoError(t, json.Unmarshal(out.Bytes(), &doc))
	return doc
}

// The schema is OASIS's, sarif-2.1.0; it is read where SARIF_SCHEMA says.
func TestSARIFKeepsItsSchema(t *testing.T) {
	schema := os.Getenv("SARIF_SCHEMA")
	if schema == "" {
		t.Skip("SARIF_SCHEMA does not say where the OASIS schema lies; .ci/run does")
	}
	compiler := jsonschema.NewCompiler()
	compiled, err := compiler.Compile(schema)
	require.NoError(t, err)
	r := both(t)
	assert.NoError(t, compiled.Validate(any(sarifOf(t, r))))
	r.Problems = nil
	assert.NoError(t, compiled.Validate(any(sarifOf(t, r))))
	assert.NoError(t, compiled.Validate(any(sarifOf(t, &Report{}))))
}

func TestSARIFSaysWhatThereIs(t *testing.T) {
	doc := sarifOf(t, both(t))
	run := doc["runs"].([]any)[0].(map[string]any)
	driver := run["tool"].(map[string]any)["driver"].(map[string]any)
	list := driver["rules"].([]any)
	assert.Len(t, list, len(rules.All())+1, "every rule, and text that cannot be read")
	assert.Equal(t, "unicodeCodePoints", run["columnKind"])
	fingerprints := map[string]bool{}
	fixes, related := 0, 0
	for _, one := range run["results"].([]any) {
		result := one.(map[string]any)
		where := result["locations"].([]any)[0].(map[string]any)["physicalLocation"].(map[string]any)
		uri := where["artifactLocation"].(map[string]any)["uri"]
		region := where["region"].(map[string]any)
		if result["ruleId"] == unreadable {
			assert.Equal(t, "broken.hcl", uri)
			continue
		}
		assert.Equal(t, "faulty%20design.hcl", uri, "a URI, not a path")
		assert.Equal(t, list[int(result["ruleIndex"].(float64))].(map[string]any)["id"], result["ruleId"])
		assert.Contains(t, region, "endColumn")
		start := int(region["byteOffset"].(float64))
		assert.Less(t, start+int(region["byteLength"].(float64)), len(faulty))
		print := result["partialFingerprints"].(map[string]any)["ruleAndPart/v1"].(string)
		assert.False(t, fingerprints[print], "fingerprints are apart")
		fingerprints[print] = true
		if f, ok := result["fixes"]; ok {
			fixes += len(f.([]any))
		}
		if l, ok := result["relatedLocations"]; ok {
			related += len(l.([]any))
		}
	}
	assert.NotEmpty(t, fingerprints)
	assert.Positive(t, fixes)
	assert.Positive(t, related)
}

// A line more above, or another figure in the message, leaves the fingerprints.
func TestFingerprintsOutliveChanges(t *testing.T) {
	prints := func(text string) []string {
		t.Chdir(t.TempDir())
		require.NoError(t, os.WriteFile("design.hcl", []byte(text), 0o644))
		list := inspect.Find([]string{"design.hcl"})
		inspect.Check(list)
		r := New(list)
		var all []string
		for i, k := range r.Keys() {
			all = append(all, k.fingerprint(r.Findings[i].Design))
		}
		return all
	}
	before := prints(faulty)
	after := prints("# one line more\n" + strings.Replace(faulty, "teeth  = 32", "teeth  = 34", 1))
	assert.NotEmpty(t, before)
	assert.ElementsMatch(t, before, after)
}

func TestJUnitSaysWhatFails(t *testing.T) {
	type result struct {
		Message string `xml:"message,attr"`
	}
	type suite struct {
		Name     string `xml:"name,attr"`
		Tests    int    `xml:"tests,attr"`
		Failures int    `xml:"failures,attr"`
		Errors   int    `xml:"errors,attr"`
		Cases    []struct {
			Name    string  `xml:"name,attr"`
			Failure *result `xml:"failure"`
			Error   *result `xml:"error"`
			Skipped *result `xml:"skipped"`
		} `xml:"testcase"`
	}
	read := func(threshold rules.Severity) []suite {
		var out bytes.Buffer
		require.NoError(t, both(t).JUnit(&out, threshold))
		var all struct {
			Suites []suite `xml:"testsuite"`
		}
		require.NoError(t, xml.Unmarshal(out.Bytes(), &all))
		return all.Suites
	}
	suites := read(rules.Warning)
	require.Len(t, suites, 2)
	assert.Equal(t, 1, suites[0].Errors, "the text that cannot be read")
	assert.Equal(t, len(rules.All()), suites[1].Tests)
	failed := map[string]bool{}
	for _, c := range suites[1].Cases {
		failed[c.Name] = c.Failure != nil
	}
	assert.True(t, failed["undriven"])
	assert.True(t, failed["period-error"])
	assert.False(t, failed["hunting-tooth"], "a note does not fail")
	assert.Greater(t, read(rules.Note)[1].Failures, suites[1].Failures)
}
