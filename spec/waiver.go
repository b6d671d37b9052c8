package spec

import (
	"bytes"
	"strings"

	"wheelwork/spec/syntax"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

// Waiver is a comment that lets a finding stand: `# waive rule-name: reason`.
type Waiver struct {
	Rule   string
	Reason string
	// At is the comment from the word waive on, RuleAt the rule's name in it.
	At, RuleAt text.Place
	// Scope is what it covers: the line it stands on or above, and if a block
	// begins there, the whole block.
	Scope text.Span
}

// Covers reports whether the place lies in the waiver's scope.
func (w *Waiver) Covers(p text.Place) bool {
	return p.File == w.At.File && w.Scope.Start <= p.Start && p.Start < w.Scope.End
}

var waive = []byte("waive")

// waivers finds the waivers in one file. Comments are looked for only where
// the word occurs at all.
func waivers(f *gathered) []Waiver {
	if !bytes.Contains(f.file.Bytes, waive) {
		return nil
	}
	var comments []text.Span
	if f.hcl != nil {
		comments = f.hcl.Comments()
	} else {
		comments = tomlread.Comments(f.file)
	}
	var list []Waiver
	for _, c := range comments {
		if w, ok := waiver(f.file, c); ok {
			w.Scope = scope(f, comments, c)
			list = append(list, w)
		}
	}
	return list
}

func waiver(file *text.File, comment text.Span) (Waiver, bool) {
	s := string(file.Bytes[comment.Start:comment.End])
	body := strings.TrimLeft(s, "#/* \t")
	start := comment.Start + int32(len(s)-len(body))
	body = strings.TrimRight(strings.TrimSuffix(strings.TrimRight(body, " \t\r\n"), "*/"), " \t\r\n")
	rest, ok := strings.CutPrefix(body, "waive")
	if !ok || rest == "" || rest[0] != ' ' && rest[0] != '\t' {
		return Waiver{}, false
	}
	name := strings.TrimLeft(rest, " \t")
	at := start + int32(len(body)-len(name))
	rule, reason, _ := strings.Cut(name, ":")
	rule = strings.TrimRight(rule, " \t")
	if rule == "" || strings.ContainsAny(rule, " \t") {
		return Waiver{}, false // prose that happens to begin so
	}
	return Waiver{
		Rule:   rule,
		Reason: strings.TrimSpace(reason),
		At:     text.Place{File: file, Span: text.Span{Start: start, End: start + int32(len(body))}},
		RuleAt: text.Place{File: file, Span: text.Span{Start: at, End: at + int32(len(rule))}},
	}, true
}

// scope is the line of the comment, or the next line that is more than
// comments where nothing stands before it; and the block that begins there.
func scope(f *gathered, comments []text.Span, c text.Span) text.Span {
	file := f.file
	n := file.Position(c.Start).Line
	if blank(file.Bytes[file.LineStart(n):c.Start]) {
		n = file.Position(c.End).Line + 1
		for n <= lines(file) && (blank([]byte(file.Line(n))) || onlyComment(file, comments, n)) {
			n++
		}
	}
	line := text.Span{Start: file.LineStart(n), End: file.LineStart(n + 1)}
	if f.tree != nil {
		line = widen(line, f.tree.Blocks)
	}
	return line
}

// widen makes a line that a block begins on into the whole block.
func widen(line text.Span, blocks []*syntax.Block) text.Span {
	for _, b := range blocks {
		if line.Start <= b.At.Start && b.At.Start < line.End {
			return line.Join(b.At)
		}
		if b.At.Covers(line) {
			return widen(line, b.Blocks)
		}
	}
	return line
}

func lines(f *text.File) int { return f.Position(int32(len(f.Bytes))).Line }

func onlyComment(f *text.File, comments []text.Span, n int) bool {
	start := f.LineStart(n)
	for _, c := range comments {
		if c.Start >= start && c.Start < f.LineStart(n+1) {
			return blank(f.Bytes[start:c.Start])
		}
	}
	return false
}

func blank(b []byte) bool { return len(bytes.TrimSpace(b)) == 0 }
