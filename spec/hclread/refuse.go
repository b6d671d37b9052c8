package hclread

import (
	"fmt"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"wheelwork/spec/text"
)

// refusal says why sound HCL is not part of the language.
type refusal struct {
	at            text.Span
	message, hint string
}

const (
	object     = "an object ({ })"
	objectHint = "a block is written without ="
	loop       = "a for expression"
	loopHint   = "write the values out"
)

// tell keeps a refusal: of several, the first in the text.
func (w *walker) tell(at text.Span, message, hint string) {
	if w.refused == nil || at.Start < w.refused.at.Start {
		w.refused = &refusal{at, message, hint}
	}
}

func (w *walker) refuse(at text.Span, what, hint string) {
	w.tell(at, foreign(what), hint)
}

// foreign says that something of HCL is no part of the language.
func foreign(what string) string { return what + " is not part of the language" }

// operator is the sign of arithmetic; other operators are refused.
func (w *walker) operator(e *hclsyntax.BinaryOpExpr) op {
	switch e.Op {
	case hclsyntax.OpAdd:
		return '+'
	case hclsyntax.OpSubtract:
		return '-'
	case hclsyntax.OpMultiply:
		return '*'
	case hclsyntax.OpDivide:
		return '/'
	case hclsyntax.OpModulo:
		return '%'
	}
	start := gapEnd(w.src, e.LHS.Range().End.Byte)
	end := start
	for end < len(w.src) && strings.IndexByte("=!<>&|", w.src[end]) >= 0 && end < start+2 {
		end++
	}
	what := "a comparison"
	if e.Op == hclsyntax.OpLogicalAnd || e.Op == hclsyntax.OpLogicalOr {
		what = "logic"
	}
	w.refuse(span(start, end), fmt.Sprintf("%s (%s)", what, w.src[start:end]), "")
	return 0
}

// part refuses a part of a value: an index or an attribute.
func (w *walker) part(t hcl.Traverser) {
	start := t.SourceRange().Start.Byte
	if w.src[start] == '[' {
		w.refuse(span(start, start+1), "an index", "")
		return
	}
	w.tell(span(start, start+1), "a value has no parts", "a named value is written given.NAME")
}

// other refuses a kind of expression that the language has not, or something
// that stands before it in it.
func (w *walker) other(e hclsyntax.Expression) {
	switch e := e.(type) {
	case *hclsyntax.ConditionalExpr:
		w.operand(e.Condition)
		start := gapEnd(w.src, e.Condition.Range().End.Byte)
		w.refuse(span(start, start+1), "a conditional (? :)", "")
	case *hclsyntax.FunctionCallExpr:
		start := e.NameRange.Start.Byte
		w.refuse(span(start, wordEnd(w.src, start)), "a function call", "")
	case *hclsyntax.ForExpr:
		w.forExpression(spanOf(e.OpenRange))
	case *hclsyntax.ObjectConsExpr:
		w.refuse(spanOf(e.OpenRange), object, objectHint)
	case *hclsyntax.IndexExpr:
		w.operand(e.Collection)
		w.refuse(spanOf(e.OpenRange), "an index", "")
	case *hclsyntax.RelativeTraversalExpr:
		w.operand(e.Source)
		w.part(e.Traversal[0])
	case *hclsyntax.SplatExpr:
		w.operand(e.Source)
		w.refuse(spanOf(e.MarkerRange), "a splat", "")
	case *hclsyntax.ExprSyntaxError: // hclsyntax tells why
	default:
		w.refuse(spanOf(e.Range()), "this", "")
	}
}

// forExpression refuses a for expression: at its {, or at the word behind its [.
func (w *walker) forExpression(open text.Span) {
	if start := gapEnd(w.src, int(open.End)); w.src[open.Start] == '[' {
		open = span(start, wordEnd(w.src, start))
	}
	w.refuse(open, loop, loopHint)
}

func stringHint(word string) string {
	return fmt.Sprintf("a string is written %q, a named value given.%s", short(word), short(word))
}
