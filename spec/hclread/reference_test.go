package hclread

import (
	"errors"
	"fmt"
	"math/big"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"testing"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/zclconf/go-cty/cty"

	"wheelwork/spec/exact"
	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// errBeyond is told of HCL that is no part of the language.
var errBeyond = errors.New("not part of the language")

// errGivenUp is told where comparing would cost too much.
var errGivenUp = errors.New("more than is worth comparing")

// reference reads text through HCL's reference parser, in the plainest way,
// for comparison. The error is errBeyond if it is sound HCL that is not part
// of the language.
type reference struct {
	file  *text.File
	given map[string]hclsyntax.Expression
	depth int
	steps int
}

func readReference(f *text.File) (*syntax.Tree, error) {
	parsed, diags := hclsyntax.ParseConfig(f.Bytes, f.Name, hcl.InitialPos)
	if diags.HasErrors() {
		return nil, diags
	}
	body := parsed.Body.(*hclsyntax.Body)
	r := reference{file: f, given: map[string]hclsyntax.Expression{}}
	if len(body.Attributes) > 0 || strings.ContainsRune(string(f.Bytes), 0) || strings.Contains(strings.ReplaceAll(string(f.Bytes), "\r\n", ""), "\r") {
		return nil, errBeyond
	}
	for _, b := range body.Blocks {
		if b.Type != "given" {
			continue
		}
		if len(b.Labels) > 0 || len(b.Body.Blocks) > 0 {
			return nil, errBeyond
		}
		for name, a := range b.Body.Attributes {
			if r.given[name] != nil {
				return nil, errBeyond
			}
			r.given[name] = a.Expr
		}
	}
	for _, e := range r.given {
		r.steps = 0
		if _, err := r.value(e); err != nil {
			return nil, err
		}
	}
	tree := &syntax.Tree{File: f}
	var err error
	tree.Blocks, err = r.blocks(body.Blocks, true)
	return tree, err
}

func at(r hcl.Range) text.Span { return text.Span{Start: int32(r.Start.Byte), End: int32(r.End.Byte)} }

func (r *reference) blocks(list hclsyntax.Blocks, top bool) ([]*syntax.Block, error) {
	var out []*syntax.Block
	for _, b := range list {
		if top && b.Type == "given" {
			continue
		}
		if len(b.Labels) > 1 {
			return nil, errBeyond
		}
		one := &syntax.Block{Kind: b.Type, KindAt: at(b.TypeRange), At: at(b.TypeRange).Join(at(b.CloseBraceRange))}
		if len(b.Labels) == 1 {
			one.Label, one.LabelAt = b.Labels[0], at(b.LabelRanges[0])
		}
		for name, a := range b.Body.Attributes {
			r.steps = 0
			v, err := r.value(a.Expr)
			if err != nil {
				return nil, err
			}
			if top && b.Type == "design" && name == "uses" && v.Derived {
				return nil, errBeyond
			}
			one.Attrs = append(one.Attrs, syntax.Attr{Name: name, Key: at(a.NameRange), Value: v})
		}
		sort.Slice(one.Attrs, func(i, j int) bool { return one.Attrs[i].Key.Start < one.Attrs[j].Key.Start })
		var err error
		if one.Blocks, err = r.blocks(b.Body.Blocks, false); err != nil {
			return nil, err
		}
		out = append(out, one)
	}
	return out, nil
}

// value evaluates an expression with math/big, numbers from their text.
func (r *reference) value(e hclsyntax.Expression) (v syntax.Value, err error) {
	if r.steps++; r.steps > 10_000 {
		return v, errGivenUp
	}
	if r.depth++; r.depth > 300 {
		return v, errBeyond // a circle
	}
	defer func() { r.depth-- }()
	v = syntax.Value{At: at(e.Range()), Derived: true}
	switch e := e.(type) {
	case *hclsyntax.LiteralValueExpr:
		v.Derived = false
		switch {
		case e.Val.Type() == cty.Bool:
			v.Kind, v.Bool = syntax.Bool, e.Val.True()
		case e.Val.Type() == cty.Number:
			n, ok := r.decimal(v.At)
			if !ok {
				return v, errBeyond
			}
			v.Kind, v.Number = syntax.Number, exact.FromBig(n)
		default:
			return v, errBeyond
		}
		return v, nil
	case *hclsyntax.TemplateExpr:
		v.Derived = false
		for _, p := range e.Parts {
			l, ok := p.(*hclsyntax.LiteralValueExpr)
			if !ok || l.Val.Type() != cty.String {
				return v, errBeyond
			}
			v.Text += l.Val.AsString()
		}
		if r.file.Bytes[v.At.Start] != '"' {
			return v, errBeyond
		}
		v.Kind = syntax.String
		return v, nil
	case *hclsyntax.TupleConsExpr:
		v.Kind, v.Derived = syntax.List, false
		for _, x := range e.Exprs {
			one, err := r.value(x)
			if err != nil {
				return v, err
			}
			v.Derived = v.Derived || one.Derived
			v.List = append(v.List, one)
		}
		return v, nil
	case *hclsyntax.ScopeTraversalExpr:
		if len(e.Traversal) != 2 || e.Traversal.RootName() != "given" {
			return v, errBeyond
		}
		step, ok := e.Traversal[1].(hcl.TraverseAttr)
		if !ok || r.given[step.Name] == nil {
			return v, errBeyond
		}
		named, err := r.value(r.given[step.Name])
		return moved(named, v.At), err
	case *hclsyntax.ParenthesesExpr:
		x, err := r.value(e.Expression)
		x.At, x.Derived = v.At, true
		return x, err
	case *hclsyntax.UnaryOpExpr:
		x, err := r.value(e.Val)
		if err != nil || x.Kind != syntax.Number || e.Op != hclsyntax.OpNegate {
			return v, errors.Join(err, errBeyond)
		}
		_, plain := e.Val.(*hclsyntax.LiteralValueExpr)
		v.Kind, v.Number, v.Derived = syntax.Number, exact.FromBig(new(big.Rat).Neg(x.Number.Big())), !plain
		return v, nil
	case *hclsyntax.BinaryOpExpr:
		x, err := r.value(e.LHS)
		if err != nil {
			return v, err
		}
		y, err := r.value(e.RHS)
		if err != nil || x.Kind != syntax.Number || y.Kind != syntax.Number {
			return v, errors.Join(err, errBeyond)
		}
		n, ok := arithmetic(e.Op, x.Number.Big(), y.Number.Big())
		if !ok {
			return v, errBeyond
		}
		v.Kind, v.Number = syntax.Number, exact.FromBig(n)
		return v, nil
	}
	return v, errBeyond
}

func arithmetic(op *hclsyntax.Operation, x, y *big.Rat) (n *big.Rat, ok bool) {
	n = new(big.Rat)
	switch {
	case op == hclsyntax.OpAdd:
		n.Add(x, y)
	case op == hclsyntax.OpSubtract:
		n.Sub(x, y)
	case op == hclsyntax.OpMultiply:
		n.Mul(x, y)
	case op == hclsyntax.OpDivide && y.Sign() != 0:
		n.Quo(x, y)
	case op == hclsyntax.OpModulo && y.Sign() != 0:
		// x - y·trunc(x/y), as cty has it.
		q := new(big.Rat).Quo(x, y)
		n.SetInt(new(big.Int).Quo(q.Num(), q.Denom()))
		n.Sub(x, n.Mul(n, y))
	default:
		return n, false
	}
	return n, n.Num().BitLen() <= MaxBits && n.Denom().BitLen() <= MaxBits
}

func (r *reference) decimal(s text.Span) (*big.Rat, bool) {
	written := string(r.file.Bytes[s.Start:s.End])
	mantissa, exponent, _ := strings.Cut(strings.ToLower(written), "e")
	if len(mantissa) > exact.MaxDigits || len(exponent) > 3 || strings.HasPrefix(written, ".") {
		return nil, false
	}
	n, ok := new(big.Rat).SetString(written)
	return n, ok
}

// same compares trees but for how their numbers are held. The reference
// parser brings strings into Unicode's normal form C; specs keep theirs, as
// TOML does.
func same(t assert.TestingT, want, got []*syntax.Block) bool {
	return assert.Equal(t, plain(want), plain(got))
}

func plain(blocks []*syntax.Block) string {
	var b strings.Builder
	var value func(v syntax.Value)
	value = func(v syntax.Value) {
		fmt.Fprintf(&b, " %v@%v", v.Kind, v.At)
		if v.Derived {
			b.WriteString(" derived")
		}
		fmt.Fprintf(&b, " %q %s %v (", cty.NormalizeString(v.Text), v.Number, v.Bool)
		for _, x := range v.List {
			value(x)
		}
		b.WriteString(")")
	}
	var walk func(blocks []*syntax.Block)
	walk = func(blocks []*syntax.Block) {
		for _, x := range blocks {
			fmt.Fprintf(&b, "%s@%v %q@%v %v {\n", x.Kind, x.KindAt, x.Label, x.LabelAt, x.At)
			for _, a := range x.Attrs {
				fmt.Fprintf(&b, "%s@%v =", a.Name, a.Key)
				value(a.Value)
				b.WriteString("\n")
			}
			walk(x.Blocks)
			b.WriteString("}\n")
		}
	}
	walk(blocks)
	return b.String()
}

// broken is the text of a file without problems, each item and each closing
// brace put on a line of its own: what sound HCL is but for line ends.
func broken(s *Source) *text.File {
	var breaks []int
	var walk func(blocks []*block)
	walk = func(blocks []*block) {
		for _, b := range blocks {
			breaks = append(breaks, int(b.At.Start), int(b.At.End)-1)
			for _, a := range b.Attrs {
				breaks = append(breaks, int(a.Key.Start))
			}
			walk(b.within)
		}
	}
	walk(s.blocks)
	walk(s.given)
	sort.Ints(breaks)
	var out []byte
	from := 0
	for _, at := range breaks {
		out = append(append(out, s.file.Bytes[from:at]...), '\n')
		from = at
	}
	return text.NewFile(s.file.Name, append(out, s.file.Bytes[from:]...))
}

// agree holds what is read against the reference parser.
func agree(t *testing.T, f *text.File) {
	t.Helper()
	s, problems := Parse(f)
	trees, more := Evaluate([]*Source{s})
	problems = append(problems, more...)
	tree, err := readReference(f)
	switch {
	case err == nil && len(f.Bytes) > 0:
		if len(problems) > 0 && ours(problems) {
			return
		}
		require.Empty(t, problems, "the reference parser reads it")
		same(t, tree.Blocks, trees[0].Blocks)
	case errors.Is(err, errBeyond):
		require.NotEmpty(t, problems, "part of HCL but not of the language")
	}
	if len(problems) == 0 {
		lines := broken(s)
		tree, err := readReference(lines)
		require.NoError(t, err, "the reference parser does not read it even in lines of its own:\n%s", lines.Bytes)
		again, problems := Parse(lines)
		require.Empty(t, problems)
		trees, problems := Evaluate([]*Source{again})
		require.Empty(t, problems)
		same(t, tree.Blocks, trees[0].Blocks)
	}
}

// ours reports whether all problems are of bounds that only this reader has.
func ours(problems []text.Problem) bool {
	for _, p := range problems {
		known := false
		for _, bound := range []string{"nested deeper", "more than", "the file is empty", "no UTF-8"} {
			known = known || strings.Contains(p.Message, bound)
		}
		if !known {
			return false
		}
	}
	return true
}

func TestReferenceOnFixtures(t *testing.T) {
	names, err := filepath.Glob("../../fixtures/*/*.hcl")
	require.NoError(t, err)
	deeper, err := filepath.Glob("../../fixtures/*/*/*.hcl")
	require.NoError(t, err)
	names = append(names, deeper...)
	require.NotEmpty(t, names)
	for _, name := range names {
		content, err := os.ReadFile(name)
		require.NoError(t, err)
		agree(t, text.NewFile(name, content))
	}
	agree(t, text.NewFile("generated.hcl", generated(200)))
}

// The remainder of negative numbers is as the reference library computes it.
func TestRemainderAsReference(t *testing.T) {
	for x := int64(-7); x <= 7; x++ {
		for _, y := range []int64{-3, -2, -1, 1, 2, 3} {
			want, _ := cty.NumberIntVal(x).Modulo(cty.NumberIntVal(y)).AsBigFloat().Int64()
			got := read(t, fmt.Sprintf("a {\n  v = %d %% %d\n}\n", x, y))[0].Blocks[0].Attrs[0].Value.Number
			assert.True(t, got.Equal(exact.Int(want)), "%d %% %d is %s, not %d", x, y, got, want)
		}
	}
}
