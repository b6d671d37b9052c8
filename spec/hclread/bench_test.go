package hclread

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"wheelwork/spec/text"
)

// generated is a spec of n wheels with their arbors and meshes.
func generated(n int) []byte {
	var b strings.Builder
	b.WriteString("design {\n  title = \"A long train\"\n  epoch = \"2027-01-01\"\n}\ngiven {\n  m = 0.5\n}\n")
	for i := range n {
		module := "0.5"
		if i%2 == 1 {
			module = "given.m"
		}
		fmt.Fprintf(&b, "arbor \"a%d\" {\n  at       = [%d.5, 0]\n  diameter = 3\n}\n", i, 12*i)
		fmt.Fprintf(&b, "wheel \"w%d\" {\n  on     = \"a%d\"\n  teeth  = %d\n  module = %s\n}\n", i, i, 30+i%70, module)
		if i > 0 {
			fmt.Fprintf(&b, "mesh {\n  wheels = [\"w%d\", \"w%d\"]\n  train  = \"long\"\n}\n", i-1, i)
		}
	}
	return []byte(b.String())
}

func BenchmarkRead(b *testing.B) {
	for _, n := range []int{60, 2000, 20000} {
		content := generated(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.SetBytes(int64(len(content)))
			b.ReportAllocs()
			for b.Loop() {
				s, problems := Parse(text.NewFile("a.hcl", content))
				_, more := Evaluate([]*Source{s})
				if len(problems)+len(more) > 0 {
					b.Fatal(problems, more)
				}
			}
		})
	}
}

// BenchmarkReference is the reference parser on the same bytes, which builds
// its syntax tree and evaluates nothing.
func BenchmarkReference(b *testing.B) {
	for _, n := range []int{60, 2000} {
		content := generated(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.SetBytes(int64(len(content)))
			b.ReportAllocs()
			for b.Loop() {
				if _, diags := hclsyntax.ParseConfig(content, "a.hcl", hcl.InitialPos); diags.HasErrors() {
					b.Fatal(diags)
				}
			}
		})
	}
}

// BenchmarkEdited reads a file again after one character in its middle changed.
func BenchmarkEdited(b *testing.B) {
	content := generated(2000)
	middle := len(content)/2 + bytes.Index(content[len(content)/2:], []byte("teeth  = ")) + len("teeth  = ")
	var c Cache
	c.Parse(text.NewFile("a.hcl", content))
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		edited := slices.Insert(slices.Clone(content), middle, []byte("12")[:1+i%2]...)
		s, problems := c.Parse(text.NewFile("a.hcl", edited))
		_, more := Evaluate([]*Source{s})
		if len(problems)+len(more) > 0 {
			b.Fatal(problems, more)
		}
	}
}
