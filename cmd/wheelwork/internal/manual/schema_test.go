package manual

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"wheelwork/spec"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

func compiled(t *testing.T) *jsonschema.Schema {
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(schemaPage()))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource(SchemaPath, doc))
	s, err := c.Compile(SchemaPath)
	require.NoError(t, err)
	return s
}

// asJSON is TOML as a program for schemas sees it.
func asJSON(t *testing.T, content string) any {
	var table map[string]any
	_, err := toml.Decode(content, &table)
	require.NoError(t, err)
	body, err := json.Marshal(table)
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(string(body)))
	require.NoError(t, err)
	return doc
}

// Every file in TOML among the fixtures that reads without problems keeps the
// schema: designs, published trains, and the cases of the rules.
func TestFixturesKeepTheSchema(t *testing.T) {
	schema := compiled(t)
	files := 0
	check := func(name, content string) {
		f := text.NewFile(name, []byte(content))
		if _, problems := tomlread.Parse(f, formOf); len(problems) > 0 {
			return
		}
		files++
		assert.NoError(t, schema.Validate(asJSON(t, content)), name)
	}
	err := filepath.WalkDir("../../../../fixtures", func(name string, e os.DirEntry, err error) error {
		if err != nil || e.IsDir() || strings.Contains(filepath.ToSlash(name), "fixtures/problems/") {
			return err
		}
		content, err := os.ReadFile(name)
		switch filepath.Ext(name) {
		case ".toml":
			check(name, string(content))
		case ".txtar":
			for _, f := range txtar.Parse(content).Files {
				if filepath.Ext(f.Name) == ".toml" {
					check(name+"/"+f.Name, string(f.Data))
				}
			}
		}
		return err
	})
	require.NoError(t, err)
	assert.Greater(t, files, 30)
}

func formOf(kind string) tomlread.Form {
	if k := spec.KindOf(kind); k != nil {
		return k.Form
	}
	return tomlread.Unknown
}

// What the program refuses for its form the schema refuses too, and what is
// written in an unusual way it takes.
func TestSchema(t *testing.T) {
	schema := compiled(t)
	for _, c := range []struct {
		text  string
		keeps bool
	}{
		{"[design]\ntitle = \"x\"\nepoch = 2027-01-01\nhorizon = \"100 yr\"\n", true},
		{"[design]\n", false},
		{"[desing]\ntitle = \"x\"\n", false},
		{"[wheel.a]\non = \"b\"\nteeth = 30\nmodule = \"0.02 in\"\nkind = \"ring\"\n", true},
		{"[wheel.a]\non = \"b\"\nteeth = \"30\"\nmodule = \"1/2\"\nhelix = 0\n", true},
		{"[wheel.a]\non = \"b\"\nteeth = 30\nmodule = \"0.5 kg\"\n", false},
		{"[wheel.a]\non = \"b\"\nteeth = 30.5\n", false},
		{"[wheel.a]\non = \"b\"\nteeth = 0\n", false},
		{"[wheel.a]\non = \"b\"\nteeth = 30\nmodule = 0\n", false},
		{"[wheel.a]\non = \"b\"\nteeth = 30\nkind = \"round\"\n", false},
		{"[wheel.a]\non = \"b\"\nteeth = 30\ntooth = 2\n", false},
		{"[wheel.a]\nteeth = 30\n", false},
		{"[wheel]\non = \"b\"\nteeth = 30\n", false},
		{"[[mesh]]\nwheels = [\"a\", \"b\"]\n", true},
		{"[mesh]\nwheels = [\"a\", \"b\"]\n", false},
		{"[arbor.a]\nat = [1, \"2 cm\"]\n", true},
		{"[arbor.a]\nat = [1]\n", false},
		{"[hand.a]\non = \"b\"\nshows = \"synodic month\"\nwithin = \"30 ppm\"\n", true},
		{"[hand.a]\non = \"b\"\nshows = \"1d 0h 50m\"\nwithin = \"1 deg in 10 yr\"\n", true},
		{"[hand.a]\non = \"b\"\nperiod = 3\nwithin = \"0.1 %\"\n", true},
		{"[hand.a]\non = \"b\"\nshows = \"synodical month\"\n", false},
		{"[hand.a]\non = \"b\"\nwithin = \"30\"\n", false},
		{"[stage.a]\norder = 1\nparts = [\"wheel.a\"]\n", true},
		{"[stage.a]\norder = 1\nparts = [\"wheels.a\"]\n", false},
		{"[stock]\nteeth = [20, \"30-40\"]\n", true},
		{"[stock]\nteeth = [\"thirty\"]\n", false},
		{"[coupling.a]\narbors = [\"a\", \"b\"]\nslips = \"yes\"\n", false},
		{"[bounds.drift]\nseverity = \"note\"\ndegrees = \"10 deg\"\n", true},
		{"[bounds.drift]\nseverity = \"bad\"\n", false},
		{"[bounds.drifting]\nseverity = \"note\"\n", false},
		{"[bounds.drift]\ndegree = 1\n", false},
		{"[given]\nm = 1\n", false},
	} {
		err := schema.Validate(asJSON(t, c.text))
		assert.Equal(t, c.keeps, err == nil, "%q: %v", c.text, err)
	}
}

// Every default of the language keeps the schema of its own attribute.
func TestDefaultsKeepTheSchema(t *testing.T) {
	for _, k := range spec.Language() {
		for i := range k.Attributes {
			a := &k.Attributes[i]
			body, err := plainJSON(attributeSchema(a))
			require.NoError(t, err)
			doc, err := jsonschema.UnmarshalJSON(strings.NewReader(string(body)))
			require.NoError(t, err)
			c := jsonschema.NewCompiler()
			require.NoError(t, c.AddResource(a.Name, doc))
			s, err := c.Compile(a.Name)
			require.NoError(t, err, "%s.%s", k.Kind, a.Name)
			if value, ok := doc.(map[string]any)["default"]; ok {
				assert.NoError(t, s.Validate(value), "%s.%s", k.Kind, a.Name)
			}
		}
	}
}
