package report

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"path/filepath"
)

// Key is what a finding is known by when its design changes: the rule and the
// part, and where one part has several findings of a rule, which of them. The
// line and the figures of the message may change.
type Key struct {
	Rule, Part string
	Nth        int // from 1
}

// Keys are the keys of a report's findings, in their order.
func (r *Report) Keys() []Key {
	keys := make([]Key, len(r.Findings))
	count := map[Key]int{}
	for i, f := range r.Findings {
		k := Key{Rule: f.Rule.Name, Part: f.Part}
		if k.Part == "" {
			k.Part = beside(f.Design, f.File.Name)
		}
		in := k
		in.Part = f.Design + "\x00" + in.Part
		count[in]++
		k.Nth = count[in]
		keys[i] = k
	}
	return keys
}

// fingerprint is a key as SARIF wants it: the same as long as the rule and the
// part of the design stay.
func (k Key) fingerprint(design string) string {
	sum := sha256.Sum256(fmt.Appendf(nil, "%s\x00%s\x00%s\x00%d", k.Rule, design, k.Part, k.Nth))
	return hex.EncodeToString(sum[:16])
}

// beside is a file as seen from the design that it belongs to.
func beside(design, file string) string {
	if rel, err := filepath.Rel(filepath.Dir(design), file); err == nil {
		return filepath.ToSlash(rel)
	}
	return filepath.ToSlash(file)
}
