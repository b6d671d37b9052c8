package hclread

import (
	"fmt"
	"strings"
)

// refuse tells that a construct of HCL is no part of the language.
func (r *reader) refuse(start, end int, what, hint string) bool {
	r.problem(r.span(start, end), what+" is not part of the language", hint)
	return false
}

// noFurtherOperator refuses the operators of HCL that are not arithmetic.
func (r *reader) noFurtherOperator() bool {
	c := r.peek(0)
	if strings.IndexByte("?=!<>&|^*", c) < 0 || c == 0 {
		return true
	}
	end := r.pos + 1
	for _, two := range []string{"==", "!=", "<=", ">=", "&&", "||", "**"} {
		if r.has(two) {
			end = r.pos + 2
		}
	}
	sign := r.src[r.pos:end]
	switch sign {
	case "=":
		return true
	case "?":
		return r.refuse(r.pos, end, "a conditional (? :)", "")
	case "==", "!=", "<", ">", "<=", ">=":
		return r.refuse(r.pos, end, "a comparison ("+sign+")", "")
	case "&&", "||", "!":
		return r.refuse(r.pos, end, "logic ("+sign+")", "")
	}
	return r.refuse(r.pos, end, "the operator "+sign, "arithmetic is + - * / %")
}

// noPart refuses parts of a value: an index, an attribute, a splat.
func (r *reader) noPart() bool {
	switch {
	case r.has("[*]"):
		return r.refuse(r.pos, r.pos+3, "a splat", "")
	case r.peek(0) == '[':
		return r.refuse(r.pos, r.pos+1, "an index", "")
	case r.has(".*"):
		return r.refuse(r.pos, r.pos+2, "a splat", "")
	case r.has("..."):
		return r.refuse(r.pos, r.pos+3, "an expansion (...)", "")
	case r.peek(0) == '.':
		r.problem(r.span(r.pos, r.pos+1), "a value has no parts", "a named value is written given.NAME")
		return false
	}
	return true
}

// noTerm tells what stands where a value should.
func (r *reader) noTerm() bool {
	at, sign := r.sign()
	switch {
	case r.brackets == 0 && r.itemEnd() && r.valueBelow():
		at, _ = r.sign()
		r.problem(at, "a value begins on the line of its name", "")
		return false
	case r.itemEnd() || sign == "}" || sign == "]" || sign == ")":
		if r.peek(0) == '#' || r.peek(0) == '/' {
			sign = "the end of the line"
		}
		if sign == "the end of the line" && r.brackets == 0 {
			// Point at what lacks its value.
			end := len(strings.TrimRight(r.src[:r.pos], " \t"))
			at = r.span(end-1, end)
		}
		r.problem(at, "a value is needed before "+sign, "")
		return false
	case sign == "!":
		return r.refuse(r.pos, r.pos+1, "logic (!)", "")
	case sign == "{":
		if r.isFor() {
			return r.refuse(r.pos, r.pos+1, "a for expression", "write the values out")
		}
		return r.refuse(r.pos, r.pos+1, "an object ({ })", "a block is written without =")
	case r.has("<<"):
		return r.refuse(r.pos, r.lineEndFrom(r.pos), "a heredoc", "a string stands in quotes on one line")
	case sign == "+":
		r.problem(at, "a number stands without +", "")
		return false
	case strings.Contains("'`“”‘’„«»", sign):
		r.problem(at, fmt.Sprintf("a string does not stand in %s", sign), `write it in double quotes: "`)
		r.closeQuote(sign)
		return false
	}
	hint := ""
	if sign == "." && digit(r.peek(1)) {
		hint = "a number begins with a digit, as 0.5"
	}
	r.problem(at, "a value is needed, not "+sign, hint)
	return false
}

// valueBelow goes to the value that begins on a line below, if one does.
func (r *reader) valueBelow() bool {
	at, comments := r.pos, len(r.comments)
	r.gap()
	c := r.peek(0)
	if c == '"' || c == '[' || c == '(' || c == '-' || digit(c) {
		return true
	}
	r.pos, r.comments = at, r.comments[:comments]
	return false
}

// isFor reports whether the bracket here opens a for expression.
func (r *reader) isFor() bool {
	i := r.pos + 1
	for i < len(r.src) && strings.IndexByte(" \t\r\n", r.src[i]) >= 0 {
		i++
	}
	return r.src[i:wordEnd(r.src, i)] == "for"
}

// closeQuote goes past text in quotes of the wrong kind, to be read no further.
func (r *reader) closeQuote(open string) {
	closer := map[string]string{"“": "”", "„": "“", "‘": "’", "«": "»"}[open]
	if closer == "" {
		closer = open
	}
	r.pos += len(open)
	if n := strings.Index(r.src[r.pos:r.lineEndFrom(r.pos)], closer); n >= 0 {
		r.pos += n + len(closer)
	}
}
