package scan

import "bytes"

// Same reports whether two texts in HCL differ in nothing but blanks between
// their pieces.
func Same(a, b []byte) bool {
	x, y := tokens(a, false), tokens(b, false)
	if len(x.list) != len(y.list) {
		return false
	}
	for i, t := range x.list {
		u := y.list[i]
		one, two := a[t.Start:t.End], b[u.Start:u.End]
		if t.Kind == Comment {
			one, two = bytes.TrimRight(one, " \t\r"), bytes.TrimRight(two, " \t\r")
		}
		if t.Kind != u.Kind || !bytes.Equal(one, two) {
			return false
		}
	}
	return true
}
