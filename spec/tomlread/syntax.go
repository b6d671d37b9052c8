package tomlread

import (
	"errors"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"wheelwork/spec/text"
)

// broken reports a syntax error in the statement after the one that ends at
// an offset, and says where reading can go on, which is the length of the
// text if nowhere.
func (r *reader) broken(err error, after int32) int32 {
	end := int32(len(r.src))
	at := text.Span{Start: end, End: end}
	var p *unstable.ParserError
	if errors.As(err, &p) {
		at = r.span(r.parser.Range(p.Highlight))
	}
	if at.Len() == 0 && at.End < end {
		at.End++
	}
	from := r.skip(after, false)
	if at.Start < from { // in a comment
		from = max(after, r.lineStart(at.Start))
	}
	r.checker.begin(from)
	r.checker.fault()
	header := from < end && r.src[from] == '['
	if header {
		r.here = r.lost() // which table what follows belongs to is not known
	}
	problem := r.explain(err.Error(), at, from)
	r.tell(problem)

	// What was not closed reaches to the end, or into a line that starts anew.
	next := r.lineEnd(from) + 1
	switch {
	case at.End == end:
	case r.lineStart(at.Start) > from:
		next = max(next, r.lineStart(at.Start))
	case header || len(r.nesting(from, min(next-1, end)).brackets) == 0:
		return min(next, end)
	}
	for ; next < end; next = r.lineEnd(next) + 1 {
		if startsAnew(r.src[next:r.lineEnd(next)]) {
			return next
		}
	}
	return end
}

// startsAnew reports whether a line looks like a header or a key with its
// value, not indented.
func startsAnew(line string) bool {
	rest := strings.TrimPrefix(strings.TrimPrefix(line, "["), "[")
	name := strings.TrimLeft(rest, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-.")
	if len(name) == len(rest) {
		return false
	}
	if len(rest) < len(line) {
		return strings.HasPrefix(name, "]")
	}
	return strings.HasPrefix(strings.TrimLeft(name, " \t"), "=")
}

// plain says in our words what the parser's messages begin with.
var plain = []struct{ theirs, ours string }{
	{"expected newline", "the line must end here"},
	{"expected '=' after key", "= is needed after a key"},
	{"expected ']' to close", "] is needed at the end of a header"},
	{"expected ']]' to close", "]] is needed at the end of a header"},
	{"expected ',' or ']'", "a comma or ] is needed here"},
	{"expected ',' or '}'", "a comma or } is needed here"},
	{"expected key", "a key is needed here"},
	{"invalid character at start of key", "a key is needed here"},
	{"unexpected comma", "nothing stands before this comma"},
	{"expected value but got", "nothing stands before this comma"},
	{"integers cannot have leading zeroes", "a whole number has no leading zero"},
	{"invalid escape character", "this is no escape"},
	{"basic strings cannot have control characters", "a string has no control characters"},
	{"literal strings cannot have control characters", "a string has no control characters"},
	{"multiline basic strings cannot have control characters", "a string has no control characters"},
	{"multiline literal strings cannot have control characters", "a string has no control characters"},
	{"carriage returns", "a carriage return that ends no line"},
}

// explain words an error that the parser found at a place in the statement
// that starts at from.
func (r *reader) explain(message string, at text.Span, from int32) text.Problem {
	starts := func(list ...string) bool {
		for _, s := range list {
			if strings.HasPrefix(message, s) {
				return true
			}
		}
		return false
	}
	hint := ""
	switch n := r.nesting(from, at.Start); {
	case starts("arrays and inline tables are nested"):
		message = tooDeep
		if i := min(MaxDepth, len(n.brackets)-1); i >= 0 {
			at = text.Span{Start: n.brackets[i], End: n.brackets[i] + 1}
		}
	case starts("array is incomplete", "inline table is incomplete"):
		message = "the list is not closed"
		if i := len(n.brackets) - 1; i >= 0 {
			at = text.Span{Start: n.brackets[i], End: n.brackets[i] + 1}
			if r.src[at.Start] == '{' {
				message = "the table is not closed"
			}
		}
	case n.quoted && starts("basic strings cannot have new", "literal strings cannot have new", "unterminated"):
		at = text.Span{Start: n.quote, End: r.lineEnd(n.quote)}
		message = "the string is not closed on its line"
	case n.quoted && starts("multiline basic string not", "multiline literal string not"):
		at = text.Span{Start: n.quote, End: n.quote + 3}
		message = "the string is not closed"
	case starts("unexpected character", "expected keyword", "expected value,", `expected "`, "expected digit", "expected number", "strings must be quoted"):
		message = "a value is needed here"
		if word := r.word(at.Start); word.Len() > 0 {
			at = word
			message = short(r.src[at.Start:at.End]) + " is no value"
			hint = "a string stands in quotes"
		}
	default:
		for _, p := range plain {
			if strings.HasPrefix(message, p.theirs) {
				message = p.ours
				break
			}
		}
	}
	return text.Problem{Place: r.place(at), Message: message, Hint: hint}
}

// word is what stands around an offset up to blanks and signs of TOML.
func (r *reader) word(at int32) text.Span {
	const signs = " \t\r\n,=[]{}#\"'"
	s := text.Span{Start: at, End: at}
	for s.Start > 0 && strings.IndexByte(signs, r.src[s.Start-1]) < 0 {
		s.Start--
	}
	for int(s.End) < len(r.src) && strings.IndexByte(signs, r.src[s.End]) < 0 {
		s.End++
	}
	return s
}

// nesting is what is open at a place in a statement.
type nesting struct {
	brackets []int32
	quote    int32 // where a string starts, if quoted
	quoted   bool
}

// nesting tells what of a statement that starts at an offset is open at another.
func (r *reader) nesting(from, to int32) nesting {
	var n nesting
	for at := from; at < to; {
		switch c := r.src[at]; c {
		case '[', '{':
			n.brackets = append(n.brackets, at)
		case ']', '}':
			n.brackets = n.brackets[:max(len(n.brackets)-1, 0)]
		case '#':
			at = r.lineEnd(at)
			continue
		case '"', '\'':
			end := r.quoteEnd(at)
			if end > to || end < 0 {
				n.quote, n.quoted = at, true
				return n
			}
			at = end
			continue
		}
		at++
	}
	return n
}

// quoteEnd is where the string ends that starts at an offset, -1 if nowhere.
func (r *reader) quoteEnd(at int32) int32 {
	quote := r.src[at : at+1]
	triple := strings.HasPrefix(r.src[at:], quote+quote+quote)
	if triple {
		quote += quote + quote
	}
	for i := int(at) + len(quote); i < len(r.src); i++ {
		switch {
		case strings.HasPrefix(r.src[i:], quote):
			return int32(i + len(quote))
		case r.src[i] == '\\' && quote[0] == '"':
			i++
		case r.src[i] == '\n' && !triple:
			return -1
		}
	}
	return -1
}

// lineStart is the offset at which the line of an offset starts.
func (r *reader) lineStart(at int32) int32 {
	return int32(strings.LastIndexByte(r.src[:at], '\n') + 1)
}
