package train_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"wheelwork/spec"
	"wheelwork/spec/train"
)

// long is a design of trains of twenty wheels each, all from one arbor.
func long(wheels int) string {
	var s strings.Builder
	s.WriteString("design { title = \"many\" }\narbor \"root\" {}\nwheel \"root\" {\n  on = \"root\"\n  teeth = 12\n}\nclock {\n  on = \"root\"\n  period = \"1 d\"\n}\n")
	last := "root"
	for i := range wheels / 2 {
		if i%10 == 0 {
			last = "root"
		}
		fmt.Fprintf(&s, "arbor \"a%d\" {}\nwheel \"w%d\" {\n  on = \"a%d\"\n  teeth = %d\n}\nwheel \"p%d\" {\n  on = \"a%d\"\n  teeth = %d\n}\nmesh { wheels = [%q, \"w%d\"] }\n",
			i, i, i, 20+i%60, i, i, 8+i%7, last, i)
		last = fmt.Sprintf("p%d", i)
	}
	return s.String()
}

func BenchmarkSolve(b *testing.B) {
	for _, n := range []int{60, 2000, 20000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			name := filepath.Join(b.TempDir(), "many.hcl")
			require.NoError(b, os.WriteFile(name, []byte(long(n)), 0o644))
			d, problems := spec.Load(name)
			require.Empty(b, problems)
			b.ReportAllocs()
			for b.Loop() {
				train.Solve(d)
			}
		})
	}
}

func BenchmarkLoad(b *testing.B) {
	name := filepath.Join(b.TempDir(), "many.hcl")
	require.NoError(b, os.WriteFile(name, []byte(long(2000)), 0o644))
	b.ReportAllocs()
	for b.Loop() {
		_, problems := spec.Load(name)
		require.Empty(b, problems)
	}
}
