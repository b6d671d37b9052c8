package hclread

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"wheelwork/spec/exact"
	"wheelwork/spec/text"
)

// stuck is where hclsyntax could not read on in a value: the token there, the
// two before it, the innermost bracket that is open, and the word for of a for
// expression if one begins before.
type stuck struct {
	pos                 int
	token, last, before hclsyntax.Token
	within              hclsyntax.TokenType
	loop                text.Span
}

// stuckAt finds the first place that the diagnostics point at in a value, its
// end if there are none.
func (r *reader) stuckAt(value text.Span, diags hcl.Diagnostics) stuck {
	pos := int(value.End)
	for _, d := range diags {
		pos = min(pos, d.Subject.Start.Byte)
	}
	tokens, _ := hclsyntax.LexConfig(r.code[value.Start:value.End], "", hcl.Pos{Byte: int(value.Start), Line: 1, Column: 1})
	s := stuck{within: hclsyntax.TokenNil}
	var open []hclsyntax.TokenType
	for _, t := range tokens {
		if t.Type == hclsyntax.TokenNewline || t.Type == hclsyntax.TokenComment {
			continue
		}
		if t.Range.End.Byte > pos || t.Type == hclsyntax.TokenEOF {
			s.token, s.pos = t, t.Range.Start.Byte
			break
		}
		switch t.Type {
		case hclsyntax.TokenOParen, hclsyntax.TokenOBrack, hclsyntax.TokenOBrace:
			open = append(open, t.Type)
		case hclsyntax.TokenCParen, hclsyntax.TokenCBrack, hclsyntax.TokenCBrace:
			open = open[:max(0, len(open)-1)]
		case hclsyntax.TokenIdent:
			opens := s.last.Type == hclsyntax.TokenOBrack || s.last.Type == hclsyntax.TokenOBrace
			if opens && string(t.Bytes) == "for" && s.loop.End == 0 {
				s.loop = spanOf(t.Range)
			}
		}
		s.before, s.last = s.last, t
	}
	if len(open) > 0 {
		s.within = open[len(open)-1]
	}
	return s
}

// open reports whether hclsyntax may have read all and lacks what follows: it
// points at the end then, or at what has none.
func (s *stuck) open() bool {
	switch s.token.Type {
	case hclsyntax.TokenEOF, hclsyntax.TokenOParen, hclsyntax.TokenOBrack, hclsyntax.TokenOBrace, hclsyntax.TokenIdent:
		return true
	}
	return false
}

// afterOperand reports whether a value, or a part of one, ends before the place.
func (s *stuck) afterOperand() bool {
	switch s.last.Type {
	case hclsyntax.TokenIdent, hclsyntax.TokenNumberLit, hclsyntax.TokenCQuote,
		hclsyntax.TokenCBrack, hclsyntax.TokenCParen, hclsyntax.TokenCBrace:
		return true
	}
	return false
}

// explain tells why hclsyntax could not read on.
func (r *reader) explain(s *stuck) {
	sign := string(s.token.Bytes)
	switch s.token.Type {
	case hclsyntax.TokenBitwiseAnd, hclsyntax.TokenBitwiseOr, hclsyntax.TokenBitwiseXor, hclsyntax.TokenBitwiseNot:
		r.noOperator(s.token.Range, sign)
		return
	case hclsyntax.TokenStar:
		if s.last.Type == hclsyntax.TokenStar && s.last.Range.End == s.token.Range.Start {
			r.noOperator(hcl.RangeBetween(s.last.Range, s.token.Range), "**")
			return
		}
	case hclsyntax.TokenApostrophe, hclsyntax.TokenBacktick, hclsyntax.TokenInvalid:
		if strings.Contains("'`“”‘’„«»", sign) {
			r.problem(spanOf(s.token.Range), "a string does not stand in "+sign, `write it in double quotes: "`)
			return
		}
	}
	switch {
	case r.noNumber(s):
	case s.last.Type == hclsyntax.TokenDot && string(s.before.Bytes) == "given":
		r.problem(spanOf(s.before.Range).Join(spanOf(s.last.Range)), "given. lacks the name of a named value", "")
	case s.last.Type == hclsyntax.TokenDot:
		r.problem(spanOf(s.last.Range), "a value has no parts", "a named value is written given.NAME")
	case s.last.Type == hclsyntax.TokenDoubleColon:
		r.problem(spanOf(s.before.Range), foreign("a function call"), "")
	case s.token.Type == hclsyntax.TokenEllipsis:
		r.problem(spanOf(s.token.Range), foreign("an expansion (...)"), "")
	case s.afterOperand():
		r.noFurther(s)
	default:
		r.noOperand(s)
	}
}

func (r *reader) noOperator(at hcl.Range, sign string) {
	r.problem(spanOf(at), foreign("the operator "+sign), "arithmetic is + - * / %")
}

// noNumber tells what begins as a number and is none.
func (r *reader) noNumber(s *stuck) bool {
	first := s.last
	switch {
	case s.token.Type == hclsyntax.TokenNumberLit && s.last.Type != hclsyntax.TokenDot:
		first = s.token
	case s.last.Type == hclsyntax.TokenDot:
		first = s.before
	case s.last.Range.End != s.token.Range.Start || len(s.token.Bytes) == 0 || strings.Contains("()[]{},;:=\"", string(s.token.Bytes[:1])):
		return false
	}
	if first.Type != hclsyntax.TokenNumberLit {
		return false
	}
	start := first.Range.Start.Byte
	end := numberEnd(r.src, start)
	written := r.src[start:end]
	if _, err := exact.Parse(written); err == nil && !strings.Contains(written, "_") {
		return false
	}
	r.problem(span(start, end), short(written)+" is not a number", unitHint(written))
	return true
}

// numberEnd is where the run of text that begins as a number ends.
func numberEnd(s string, at int) int {
	return at + strings.IndexFunc(s[at:]+" ", func(u rune) bool {
		return u < utf8.RuneSelf && (!wordByte[u] || u == '-') && u != '.' || unicode.IsSpace(u)
	})
}

func unitHint(written string) string {
	digits := strings.TrimRightFunc(written, func(u rune) bool { return u != '_' && u != '.' && (u > '9' || u < '0') })
	if _, err := exact.Parse(digits); err != nil || digits == written || strings.HasSuffix(strings.ToLower(written), "e") {
		return ""
	}
	return fmt.Sprintf("a quantity with its unit is a string: %q", short(written))
}

// noFurther tells what stands where a value, or a part of it, should end.
func (r *reader) noFurther(s *stuck) {
	place, sign := r.sign(s.pos)
	switch {
	case sign == "," && s.within == hclsyntax.TokenNil && digit(r.src[place.Start-1]) && place.End < int32(len(r.src)) && digit(r.src[place.End]):
		r.problem(place, "a decimal has a point, not a comma", "")
	case (sign == "," || sign == ";") && s.within == hclsyntax.TokenNil:
		r.problem(place, betweenAttributes(sign), onlyBlanks)
	case s.within == hclsyntax.TokenNil && s.token.Type == hclsyntax.TokenIdent && s.last.Type == hclsyntax.TokenNumberLit:
		r.problem(place, "a unit stands within a string",
			fmt.Sprintf("write %q", short(r.src[s.last.Range.Start.Byte:place.End])))
	case s.within == hclsyntax.TokenNil:
		r.problem(place, "the value ends before "+sign, "")
	case s.within == hclsyntax.TokenOParen:
		r.problem(place, ") is needed, not "+sign, "")
	case sign == ")":
		r.problem(place, "] is needed, not )", "")
	default:
		r.problem(place, "a comma is missing before "+sign, "")
	}
}

// noOperand tells what stands where a value should.
func (r *reader) noOperand(s *stuck) {
	place, sign := r.sign(s.pos)
	hint := ""
	switch {
	case s.token.Type == hclsyntax.TokenEOF:
		place, sign = r.missing(s.pos)
		r.problem(place, "a value is needed before "+sign, "")
		return
	case strings.Contains("]),;", sign):
		r.problem(place, "a value is needed before "+sign, "")
		return
	case sign == "+":
		r.problem(place, "a number stands without +", "")
		return
	case sign == "." && digit(r.src[min(int(place.End), len(r.src)-1)]):
		hint = "a number begins with a digit, as 0.5"
	}
	r.problem(place, "a value is needed, not "+sign, hint)
}
