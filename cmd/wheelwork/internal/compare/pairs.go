// Package compare sets two versions of designs side by side: what they do and
// measure, and what a check finds in them.
package compare

import (
	"fmt"
	"path/filepath"
	"strings"

	"wheelwork/cmd/wheelwork/internal/inspect"
	"wheelwork/cmd/wheelwork/internal/report"
	"wheelwork/rules/change"
	"wheelwork/spec/folder"
)

// Pair is one design in both versions. Old is nil for a design that is new,
// New for one that is gone.
type Pair struct {
	Name     string // as seen from the folders compared, or the file's name
	Old, New *inspect.Design

	Changes []change.Change
	Gone    []report.Finding
	Fresh   []report.Finding
	Kept    int
	// Unread says that the old version could not be read, so that all is new.
	Unread bool
}

// Find pairs the designs of two files, or of two folders by their paths within.
func Find(old, new string) ([]Pair, error) {
	before, err := designs(old)
	if err != nil {
		return nil, fmt.Errorf("%s %w", old, err)
	}
	after, err := designs(new)
	if err != nil {
		return nil, fmt.Errorf("%s %w", new, err)
	}
	if len(before) == 1 && len(after) == 1 && before[0].within == "" && after[0].within == "" {
		return []Pair{{Name: new, Old: &inspect.Design{Name: before[0].path}, New: &inspect.Design{Name: after[0].path}}}, nil
	}
	was := map[string]string{}
	for _, d := range before {
		was[d.within] = d.path
	}
	var pairs []Pair
	for _, d := range after {
		p := Pair{Name: d.within, New: &inspect.Design{Name: d.path}}
		if path, ok := was[d.within]; ok {
			p.Old = &inspect.Design{Name: path}
			delete(was, d.within)
		}
		pairs = append(pairs, p)
	}
	for _, d := range before {
		if path, ok := was[d.within]; ok {
			pairs = append(pairs, Pair{Name: d.within, Old: &inspect.Design{Name: path}})
		}
	}
	return pairs, nil
}

type located struct{ path, within string }

func designs(path string) ([]located, error) {
	names, err := folder.Designs(path)
	if err != nil {
		return nil, err
	}
	var list []located
	for _, name := range names {
		within := ""
		if filepath.Clean(name) != filepath.Clean(path) {
			if within, err = filepath.Rel(path, name); err != nil {
				within = name
			}
		}
		list = append(list, located{name, filepath.ToSlash(within)})
	}
	return list, nil
}

// Check reads and checks both versions and sets them side by side.
func (p *Pair) Check() {
	both := make([]inspect.Design, 0, 2)
	for _, d := range []*inspect.Design{p.Old, p.New} {
		if d != nil {
			both = append(both, *d)
		}
	}
	inspect.Check(both)
	for i := range both {
		if p.Old != nil && i == 0 {
			p.Old = &both[i]
		} else {
			p.New = &both[i]
		}
	}
	p.Unread = p.Old != nil && len(p.Old.Problems) > 0
	p.Changes = change.Between(subjects(p.Old), subjects(p.New))
	p.findings()
}

func subjects(d *inspect.Design) []change.Subject {
	if d == nil || d.Facts == nil {
		return nil
	}
	return change.Of(d.Facts)
}

// findings matches what was found by rule and part.
func (p *Pair) findings() {
	type known struct {
		report.Key
		finding report.Finding
		used    bool
	}
	var was []known
	if p.Old != nil {
		r := report.New([]inspect.Design{*p.Old})
		for i, k := range r.Keys() {
			was = append(was, known{Key: k, finding: r.Findings[i]})
		}
	}
	if p.New != nil {
		r := report.New([]inspect.Design{*p.New})
	each:
		for i, k := range r.Keys() {
			for j := range was {
				if was[j].Key == k && !was[j].used {
					was[j].used = true
					p.Kept++
					continue each
				}
			}
			p.Fresh = append(p.Fresh, r.Findings[i])
		}
	}
	for _, k := range was {
		if !k.used {
			p.Gone = append(p.Gone, k.finding)
		}
	}
}

// Problems are those of the new version, which must be readable.
func (p *Pair) Problems() int {
	if p.New == nil {
		return 0
	}
	return len(p.New.Problems)
}

// short takes the folder of a revision out of a name.
func short(name string, laid []string) string {
	for _, dir := range laid {
		if rel, ok := strings.CutPrefix(name, dir+string(filepath.Separator)); ok {
			return filepath.ToSlash(rel)
		}
	}
	return filepath.ToSlash(name)
}
