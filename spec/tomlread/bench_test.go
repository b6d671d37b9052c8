package tomlread

import (
	"fmt"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
)

// manyWheels is a design of n wheels in one train.
func manyWheels(n int) string {
	var b strings.Builder
	b.WriteString("[design]\ntitle = \"Tide table for a harbour museum\"\nepoch = 2027-01-01\n\n")
	for i := range n {
		fmt.Fprintf(&b, "[arbor.a%d]\ncarried_by = \"frame\"\nat = [%d.25, 0]\ndiameter = 3\n\n", i, 30*i)
		fmt.Fprintf(&b, "[wheel.w%d]\non = \"a%d\"\nteeth = %d\nmodule = 0.5\n\n", i, i, 20+i%80)
		if i%2 == 1 {
			fmt.Fprintf(&b, "[[mesh]]\nwheels = [\"w%d\", \"w%d\"]\ntrain = \"moon\"\n\n", i-1, i)
		}
	}
	return b.String()
}

// The cost of Parse is to be held against that of a plain decode of the same bytes.
func BenchmarkDesign(b *testing.B) {
	for _, n := range []int{60, 2000, 20000} {
		src := manyWheels(n)
		b.Run(fmt.Sprintf("wheels=%d/Parse", n), func(b *testing.B) {
			b.SetBytes(int64(len(src)))
			b.ReportAllocs()
			for b.Loop() {
				if _, problems := parse(src); len(problems) > 0 {
					b.Fatal(problems[0])
				}
			}
		})
		b.Run(fmt.Sprintf("wheels=%d/decode", n), func(b *testing.B) {
			b.SetBytes(int64(len(src)))
			b.ReportAllocs()
			for b.Loop() {
				var m map[string]any
				if _, err := toml.Decode(src, &m); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// An editor reads the file again after each keystroke.
func BenchmarkKeystroke(b *testing.B) {
	src := manyWheels(2000)
	at := strings.Index(src, "[wheel.w1000]") + len("[wheel.w1000")
	var reader Reader
	for i := 0; b.Loop(); i++ {
		f := text.NewFile("t.toml", fmt.Appendf(nil, "%s%d%s", src[:at], i%10, src[at:]))
		if _, problems := reader.Parse(f, forms); len(problems) > 0 {
			b.Fatal(problems[0])
		}
	}
}

// BenchmarkTree is Parse without the decoder.
func BenchmarkTree(b *testing.B) {
	f := text.NewFile("t.toml", []byte(manyWheels(2000)))
	b.ReportAllocs()
	for b.Loop() {
		r := reader{file: f, form: forms, tree: &syntax.Tree{File: f}}
		r.encoding()
		r.checker = checker{file: f, src: r.src, known: func(_, _ int32) bool { return true }}
		r.read()
	}
}
