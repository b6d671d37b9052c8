package tomlread

// certain reports whether a text is one statement, with blanks and comments
// round it, of the plainest kind: bare names, strings without escapes, short
// numbers, booleans and lists of these on one line. Such a statement is valid
// beyond doubt and need not be decoded, which costs more than all the rest of
// a check; what is not so plain may be valid too. The text must be UTF-8.
func certain(s string) bool {
	p := surely{s: s}
	return p.gap(true) && p.statement() && p.gap(false)
}

type surely struct {
	s string
	i int
}

// next is the byte at hand, 0 at the end.
func (p *surely) next() byte {
	if p.i < len(p.s) {
		return p.s[p.i]
	}
	return 0
}

func (p *surely) take(c byte) bool {
	if p.next() != c {
		return false
	}
	p.i++
	return true
}

func (p *surely) blanks() {
	for p.next() == ' ' || p.next() == '\t' {
		p.i++
	}
}

func (p *surely) statement() bool {
	if p.take('[') {
		twice := p.take('[')
		if !p.name() {
			return false
		}
		for p.take('.') {
			if !p.name() {
				return false
			}
		}
		return p.take(']') && (!twice || p.take(']'))
	}
	if !p.name() {
		return false
	}
	p.blanks()
	if !p.take('=') {
		return false
	}
	p.blanks()
	return p.value(true)
}

func (p *surely) name() bool {
	start := p.i
	for c := p.next(); c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-'; c = p.next() {
		p.i++
	}
	return p.i > start && p.i-start < 64
}

func (p *surely) value(lists bool) bool {
	switch c := p.next(); {
	case c == '"' || c == '\'':
		return p.str(c)
	case c == '[':
		return lists && p.list()
	case c == 't':
		return p.word("true")
	case c == 'f':
		return p.word("false")
	}
	return p.number()
}

func (p *surely) word(w string) bool {
	if len(p.s)-p.i < len(w) || p.s[p.i:p.i+len(w)] != w {
		return false
	}
	p.i += len(w)
	return p.parted()
}

// parted reports whether a value may end here.
func (p *surely) parted() bool {
	switch p.next() {
	case 0, ' ', '\t', '\r', '\n', '#', ',', ']':
		return true
	}
	return false
}

func (p *surely) str(quote byte) bool {
	p.i++
	start := p.i
	for p.i < len(p.s) {
		c := p.s[p.i]
		switch {
		case c == quote:
			p.i++
			return p.i-start > 1 && p.parted() // an empty one may begin one of many lines
		case c == '\\' && quote == '"' || c < ' ' || c == 0x7f:
			return false
		}
		p.i++
	}
	return false
}

func (p *surely) number() bool {
	if p.next() == '-' || p.next() == '+' {
		p.i++
	}
	start := p.i
	if !p.digits() || p.s[start] == '0' && p.i-start > 1 {
		return false
	}
	if p.take('.') && !p.digits() {
		return false
	}
	return p.i-start <= 18 && p.parted()
}

func (p *surely) digits() bool {
	start := p.i
	for c := p.next(); c >= '0' && c <= '9'; c = p.next() {
		p.i++
	}
	return p.i > start
}

func (p *surely) list() bool {
	p.i++
	for {
		p.blanks()
		if p.take(']') {
			return true
		}
		if !p.value(false) {
			return false
		}
		p.blanks()
		if p.take(']') {
			return true
		}
		if !p.take(',') {
			return false
		}
	}
}

// gap is blanks and comments, up to the next statement or to the end, which
// must come on a new line.
func (p *surely) gap(before bool) bool {
	comment, fresh := false, before
	for ; p.i < len(p.s); p.i++ {
		switch c := p.s[p.i]; {
		case c == '\n':
			comment, fresh = false, true
		case c == '\r':
			if p.i+1 >= len(p.s) || p.s[p.i+1] != '\n' {
				return false
			}
		case comment:
			if c < ' ' && c != '\t' || c == 0x7f {
				return false
			}
		case c == '#':
			comment = true
		case c != ' ' && c != '\t':
			return before && fresh
		}
	}
	return !before && fresh
}
