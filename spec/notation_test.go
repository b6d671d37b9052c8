package spec

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"wheelwork/rules/sky"
	"wheelwork/spec/exact"
	"wheelwork/spec/quantity"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

// written is one value in both notations.
type written struct{ hcl, toml string }

func same(s string) written { return written{s, s} }

// inventor makes random blocks from the language table itself, so that every
// attribute of every block is met in both notations.
type inventor struct{ rng *rand.Rand }

func (g *inventor) pick(of []string) string { return of[g.rng.IntN(len(of))] }

func (g *inventor) name(prefix string) string {
	return fmt.Sprintf("%s_%d", prefix, g.rng.IntN(4))
}

func (g *inventor) figure(a *Attribute) written {
	whole := 1 + g.rng.IntN(400)
	switch g.rng.IntN(5) {
	case 0:
		return same(fmt.Sprint(whole))
	case 1:
		return same(fmt.Sprintf("%d.%02d", whole, g.rng.IntN(100)))
	case 2:
		return same(fmt.Sprintf("\"%d/%d\"", whole, 1+g.rng.IntN(30)))
	case 3: // arithmetic over a named value stands for a plain figure
		return written{fmt.Sprintf("given.unit * %d + 0.5", whole), fmt.Sprintf("%d.5", whole)}
	}
	units := quantity.Units(a.Dimension)
	if len(units) == 0 {
		return same(fmt.Sprint(whole))
	}
	return same(fmt.Sprintf("\"%d %s\"", whole, units[g.rng.IntN(len(units))].Name))
}

func (g *inventor) reference(r Reference) string {
	switch r {
	case ToArbor:
		return g.name(g.pick([]string{"arbor", "stud"}))
	case ToCarrier:
		return g.pick([]string{Frame, g.name("arm")})
	case ToBody:
		return g.pick([]string{Frame, g.name("arm"), g.name("arbor")})
	case ToWheel:
		return g.name("wheel")
	case ToSprocket:
		return g.name("sprocket")
	case ToHand:
		return g.name("hand")
	case ToPart:
		kind := g.pick([]string{"wheel", "arbor", "arm"})
		return kind + "." + g.name(kind)
	}
	return g.pick([]string{"moon", "tide and date", "größer", "a \\\"quoted\\\" word", "# no comment"})
}

func (g *inventor) list(n int, one func() string) written {
	var items []string
	for range n {
		items = append(items, one())
	}
	return same("[" + strings.Join(items, ", ") + "]")
}

func (g *inventor) value(a *Attribute) written {
	switch a.Holds {
	case AChoice:
		return same(`"` + g.pick(a.Choices) + `"`)
	case AText, AName:
		return same(`"` + g.reference(a.Refers) + `"`)
	case ANames:
		return g.list(2, func() string { return `"` + g.reference(a.Refers) + `"` })
	case ANumbers:
		return g.list(3, func() string { return fmt.Sprintf("0.%d", 1+g.rng.IntN(9)) })
	case ARanges:
		return g.list(2, func() string { return g.pick([]string{`"12-40"`, "17", `"8 - 9"`}) })
	case ACount:
		return same(fmt.Sprint(3 + g.rng.IntN(120)))
	case AFlag:
		return same(g.pick([]string{"true", "false"}))
	case APoint:
		x, y := g.figure(a), g.figure(a)
		return written{"[" + x.hcl + ", " + y.hcl + "]", "[" + x.toml + ", " + y.toml + "]"}
	case ADate:
		return same(g.pick([]string{`"2027-01-01"`, `"2031-05-21T18:30"`}))
	case APeriod:
		periods := sky.Periods()
		return same(`"` + g.pick([]string{periods[g.rng.IntN(len(periods))].Name, "730.5 s", "1d 0h 50m", "18.61 yr"}) + `"`)
	case ATolerance:
		return same(`"` + g.pick([]string{"30 ppm", "1 deg in 10 yr", "1 d in 100 yr"}) + `"`)
	}
	return g.figure(a)
}

// block writes one block in both notations.
func (g *inventor) block(k *BlockKind, label string) (hcl, toml string) {
	var h, t strings.Builder
	switch k.Form {
	case tomlread.Labelled:
		fmt.Fprintf(&h, "%s %q {\n", k.Kind, label)
		fmt.Fprintf(&t, "[%s.%s]\n", k.Kind, label)
	case tomlread.Repeated:
		fmt.Fprintf(&h, "%s {\n", k.Kind)
		fmt.Fprintf(&t, "[[%s]]\n", k.Kind)
	default:
		fmt.Fprintf(&h, "%s {\n", k.Kind)
		fmt.Fprintf(&t, "[%s]\n", k.Kind)
	}
	for i := range k.Attributes {
		a := &k.Attributes[i]
		if a.Name == "uses" || !a.Required && g.rng.IntN(2) == 0 {
			continue
		}
		v := g.value(a)
		fmt.Fprintf(&h, "  %s = %s\n", a.Name, v.hcl)
		fmt.Fprintf(&t, "%s = %s\n", a.Name, v.toml)
	}
	h.WriteString("}\n")
	return h.String(), t.String()
}

func TestBothNotationsGiveTheSameModel(t *testing.T) {
	dir := t.TempDir()
	for seed := range uint64(120) {
		g := inventor{rand.New(rand.NewPCG(seed, 3))}
		hcl, toml := "given { unit = 1 }\n", ""
		for _, k := range Language() {
			n := 1
			switch k.Form {
			case tomlread.Labelled:
				n = 4
			case tomlread.Repeated:
				n = g.rng.IntN(4)
			}
			if k.Kind == "given" || k.Form == tomlread.Grouped {
				continue
			}
			for i := range n {
				h, t := g.block(k, fmt.Sprintf("%s_%d", k.Kind, i))
				hcl, toml = hcl+h, toml+t
			}
		}
		hcl += "bounds {\n  drift {\n    severity = \"note\"\n    most = 3.5\n  }\n}\n"
		toml += "[bounds.drift]\nseverity = \"note\"\nmost = 3.5\n"

		a, problemsA := loadText(t, dir, "design.hcl", hcl)
		b, problemsB := loadText(t, dir, "design.toml", toml)
		require.Equal(t, messages(problemsB), messages(problemsA), "seed %d\n%s", seed, hcl)
		require.True(t, model(b) == model(a), "seed %d: %s", seed, firstDifference(model(a), model(b)))
	}
}

func firstDifference(a, b string) string {
	la, lb := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(la), len(lb)) {
		if la[i] != lb[i] {
			return fmt.Sprintf("line %d: %q in HCL, %q in TOML", i, la[i], lb[i])
		}
	}
	return "one is longer"
}

func loadText(t *testing.T, dir, name, content string) (*Design, []text.Problem) {
	t.Helper()
	path := filepath.Join(dir, name)
	require.NoError(t, os.WriteFile(path, []byte(content), 0o644))
	d, problems := Load(path)
	require.NotNil(t, d, "%v", problems)
	return d, problems
}

func messages(problems []text.Problem) []string {
	var list []string
	for _, p := range problems {
		list = append(list, p.Message)
	}
	sort.Strings(list)
	return list
}

// model writes a design without its places.
func model(d *Design) string {
	var out strings.Builder
	describe(&out, reflect.ValueOf(*d), 0)
	return out.String()
}

func describe(out *strings.Builder, v reflect.Value, depth int) {
	indent := strings.Repeat(" ", depth)
	switch x := v.Interface().(type) {
	case At:
		fmt.Fprintf(out, "%v", x.Set())
		return
	case text.Place, []*text.File, []*syntax.Tree, names, []Waiver, *Arbor, *Arm, *Wheel, *Sprocket, *Hand, *Part:
		if depth > 2 || v.Kind() != reflect.Pointer { // links are told by the names
			return
		}
	case exact.Rat:
		out.WriteString(x.String())
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			out.WriteString("none")
			return
		}
		describe(out, v.Elem(), depth)
	case reflect.Interface:
		describe(out, v.Elem(), depth)
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if !f.IsExported() || f.Name == "Quoted" || f.Name == "Index" {
				continue
			}
			fmt.Fprintf(out, "\n%s%s: ", indent, f.Name)
			describe(out, v.Field(i), depth+1)
		}
	case reflect.Slice:
		for i := range v.Len() {
			fmt.Fprintf(out, "\n%s- ", indent)
			describe(out, v.Index(i), depth+1)
		}
	default:
		fmt.Fprintf(out, "%v", v.Interface())
	}
}
