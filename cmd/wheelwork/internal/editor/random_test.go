package editor

import (
	"cmp"
	"flag"
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wheelwork/cmd/wheelwork/internal/editor/lines"
	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/rules"
	"wheelwork/spec"
	"wheelwork/spec/text"
)

var (
	edited = flag.Int("edits", 160, "how many random edits are made of each design")
	seed   = flag.Uint64("seed", 1, "where the random edits begin")
)

// random makes random edits of the files of a design, and asks random
// questions in between.
type random struct {
	*client
	*rand.Rand
	names  []string // of files that may be opened
	sound  map[string]string
	past   map[lsp.URI]map[int32]*lines.Text // texts since the last comparison
	design string
}

// TestRandomEdits holds that after any edits what was published is what a fresh
// check of the same texts finds, place for place; that nothing published lies
// outside its version's text; and that memory does not grow. The whole is run
// with -edits 10000.
func TestRandomEdits(t *testing.T) {
	for _, of := range []struct{ dir, design string }{
		{"harbour-table-faulty", "table.hcl"},
		{"harbour-table-toml", "table.toml"},
	} {
		for _, e := range []string{lsp.UTF16, lsp.UTF8} {
			t.Run(of.design+"/"+e, func(t *testing.T) {
				files := folderOf(t, filepath.Join(designs, of.dir))
				r := &random{
					Rand: rand.New(rand.NewPCG(*seed, uint64(len(e)))), sound: files, design: of.design,
					past: map[lsp.URI]map[int32]*lines.Text{},
				}
				r.client = start(t, files, func(_ *Options, params map[string]any) {
					params["capabilities"].(map[string]any)["general"] = map[string]any{"positionEncodings": []string{e}}
				})
				for name := range files {
					r.names = append(r.names, name)
				}
				slices.Sort(r.names)
				if testing.Short() {
					r.run(*edited / 16)
				} else {
					r.run(*edited / 4)
				}
			})
		}
	}
}

func (r *random) run(edits int) {
	var before uint64
	for i := range edits {
		name := r.names[r.IntN(len(r.names))]
		if r.docs[r.uri(name)] == nil {
			r.open(name)
			r.note(name)
		}
		for range 1 + r.IntN(4) {
			r.step(name)
			r.note(name)
		}
		if r.IntN(4) == 0 {
			r.question(name)
		}
		if r.IntN(40) == 0 {
			r.close(name)
		}
		if r.IntN(25) == 0 || i == edits-1 {
			r.compare()
		}
		if i == edits/5 {
			before = heap()
		}
	}
	if edits >= 1000 {
		after := heap()
		r.t.Logf("the heap was %d KB after a fifth of the edits, %d KB in the end", before>>10, after>>10)
		assert.Less(r.t, after, before+before/2+(4<<20))
	}
}

func heap() uint64 {
	runtime.GC()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// note keeps the text of a version.
func (r *random) note(name string) {
	uri := r.uri(name)
	d := r.docs[uri]
	if r.past[uri] == nil {
		r.past[uri] = map[int32]*lines.Text{}
	}
	r.past[uri][d.version] = lines.New([]byte(d.text))
}

var scraps = []string{
	"7", "0", "-", ".", " ", "\n", "\r\n", "\r", "\"", "'", "[", "]", "{", "}", "=", ",", "#", "/*", "é", "𐐀", "\ufeff", "given.m_mid",
	"teeth = 31\n", "wheel \"x\" {\n", "[wheel.x]\n", "}\n", "on = \"day_tube\"\n", "# waive hunting-tooth: 𐐀\n", "[[mesh]]\n", "\"\"\"",
}

// step makes one edit: most are small, many are of digits, and text that is
// broken is made sound again before long.
func (r *random) step(name string) {
	s := r.text(name)
	at := func() int {
		n := r.IntN(len(s) + 1)
		for n < len(s) && !utf8.RuneStart(s[n]) {
			n++
		}
		return n
	}
	switch n := r.IntN(20); {
	case n < 5: // back to the beginning
		r.edit(name, 0, len(s), r.sound[name])
	case n < 9: // another digit
		start := at()
		if i := strings.IndexAny(s[start:], "0123456789"); i >= 0 {
			start += i
			r.edit(name, start, start+1, fmt.Sprint(r.IntN(10)))
		}
	case n < 13:
		start := at()
		r.edit(name, start, start, scraps[r.IntN(len(scraps))])
	case n < 16:
		start := at()
		end := min(len(s), start+r.IntN(12))
		for end < len(s) && !utf8.RuneStart(s[end]) {
			end++
		}
		r.edit(name, start, end, "")
	case n < 18: // a line twice
		start := strings.LastIndexByte(s[:at()], '\n') + 1
		end := start + strings.IndexByte(s[start:]+"\n", '\n')
		r.edit(name, start, start, s[start:min(end+1, len(s))])
	default: // a line gone
		start := strings.LastIndexByte(s[:at()], '\n') + 1
		end := min(len(s), start+strings.IndexByte(s[start:]+"\n", '\n')+1)
		r.edit(name, start, end, "")
	}
}

func (r *random) close(name string) {
	uri := r.uri(name)
	r.notify("textDocument/didClose", map[string]any{"textDocument": map[string]any{"uri": uri}})
	r.mu.Lock()
	r.first = max(r.first, r.docs[uri].version) // so that no version has two texts
	delete(r.docs, uri)
	r.mu.Unlock()
	delete(r.past, uri)
}

// question asks something at a random place; any answer will do.
func (r *random) question(name string) {
	m := mark{file: name, offset: r.IntN(len(r.text(name)) + 1)}
	for m.offset > 0 && m.offset < len(r.text(name)) && !utf8.RuneStart(r.text(name)[m.offset]) {
		m.offset--
	}
	p := r.position(m)
	whole := lsp.Range{Start: lsp.Position{}, End: p}
	var err error
	switch methods := []string{"hover", "completion", "definition", "references", "documentHighlight", "rename", "documentSymbol", "inlayHint", "codeAction", "formatting"}; r.IntN(len(methods)) {
	case 5:
		err = r.at("rename", m, nil, "newName", "fresh")
		if err != nil {
			err = nil // nothing is named there, or the text is broken
		}
	case 7:
		err = r.at("inlayHint", m, nil, "range", whole)
	case 8:
		err = r.at("codeAction", m, nil, "range", whole, "context", map[string]any{})
	default:
		err = r.at(methods[r.IntN(5)], m, nil)
	}
	require.NoError(r.t, err)
}

// compare waits until what was published is what a fresh check finds.
func (r *random) compare() {
	want := r.fresh()
	deadline := time.Now().Add(patience)
	for {
		r.mu.Lock()
		r.within()
		got := map[lsp.URI][]lsp.Diagnostic{}
		behind := false
		for uri, p := range r.published {
			if len(p.Diagnostics) > 0 {
				got[uri] = ordered(p.Diagnostics)
			}
			if d := r.docs[uri]; d != nil && (p.Version == nil || *p.Version != d.version) {
				behind = true
			}
		}
		r.mu.Unlock()
		if !behind && reflect.DeepEqual(want, got) {
			break
		}
		if time.Now().After(deadline) {
			require.Equal(r.t, want, got, "behind: %v", behind)
			require.Fail(r.t, "a version was never told of")
		}
		select {
		case <-r.news:
		case <-time.After(50 * time.Millisecond):
		}
	}
	for uri, versions := range r.past {
		r.past[uri] = map[int32]*lines.Text{r.docs[uri].version: versions[r.docs[uri].version]}
	}
}

// within holds that everything published since lies in the text of its version.
func (r *random) within() {
	for _, p := range r.history {
		text := r.past[p.URI][value(p.Version)]
		if p.Version == nil || text == nil {
			continue
		}
		for _, d := range p.Diagnostics {
			for _, at := range []lsp.Position{d.Range.Start, d.Range.End} {
				back := r.encoding.Position(text, r.encoding.Offset(text, at))
				require.Equal(r.t, back, at, "%s %d: %s in %q", p.URI, *p.Version, d.Message, text.Bytes[text.Start(at.Line):text.End(at.Line)])
			}
		}
	}
	r.history = nil
}

func value(v *int32) int32 {
	if v == nil {
		return -1
	}
	return *v
}

// fresh checks the texts as the client has them, as a program would that has
// never seen them before.
func (r *random) fresh() map[lsp.URI][]lsp.Diagnostic {
	l := spec.Loader{Overlay: func(path string) ([]byte, bool) {
		d := r.docs[uriOf(path)]
		if d == nil {
			return nil, false
		}
		return []byte(d.text), true
	}}
	d, problems := l.Load(filepath.Join(r.dir, r.design))
	all := map[lsp.URI][]lsp.Diagnostic{}
	add := func(at text.Place, severity int, code, message string, related []text.Related) {
		one := lsp.Diagnostic{Severity: severity, Code: code, Source: "wheelwork", Message: message, Range: r.rangeOf(at)}
		for _, of := range related {
			one.Related = append(one.Related, lsp.Related{Location: lsp.Location{URI: uriOf(of.File.Name), Range: r.rangeOf(of.Place)}, Message: of.Message})
		}
		uri := uriOf(at.File.Name)
		all[uri] = append(all[uri], one)
	}
	var result rules.Result
	if len(problems) == 0 {
		result, problems = rules.Check(d)
	}
	for _, p := range problems {
		message := p.Message
		if p.Hint != "" {
			message += "; " + p.Hint
		}
		add(p.Place, 1, "", message, p.Related)
	}
	for _, f := range result.Findings {
		add(f.Place, map[rules.Severity]int{rules.Error: 1, rules.Warning: 2, rules.Note: 3}[f.Severity], f.Rule.Name, f.Message, f.Related)
	}
	for uri := range all {
		all[uri] = ordered(all[uri])
	}
	return all
}

func (r *random) rangeOf(at text.Place) lsp.Range {
	return r.encoding.Range(lines.New(at.File.Bytes), at.Start, at.End)
}

func ordered(list []lsp.Diagnostic) []lsp.Diagnostic {
	list = slices.Clone(list)
	slices.SortFunc(list, func(a, b lsp.Diagnostic) int {
		return cmp.Or(
			cmp.Compare(a.Range.Start.Line, b.Range.Start.Line), cmp.Compare(a.Range.Start.Character, b.Range.Start.Character),
			cmp.Compare(a.Code, b.Code), cmp.Compare(a.Message, b.Message), cmp.Compare(fmt.Sprint(a.Related), fmt.Sprint(b.Related)),
		)
	})
	return list
}
