package report

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Record is the findings a design repository knows and lives with, by rule and
// part, so that only new ones stop a change.
type Record struct {
	Findings []Known `json:"findings"`
}

// Known is one finding of a record.
type Known struct {
	Design string `json:"design"`
	Rule   string `json:"rule"`
	Part   string `json:"part"`
	// Nth tells findings of one rule on one part from each other, from 1.
	Nth int `json:"nth,omitempty"`
	// Message is how it read when it was recorded, for people only.
	Message string `json:"message,omitempty"`
}

func (k Known) same(o Known) bool {
	return k.Design == o.Design && k.Rule == o.Rule && k.Part == o.Part && max(k.Nth, 1) == max(o.Nth, 1)
}

// Record lists the report's findings. Designs are named from the folder of the
// record's file, so that it holds from wherever it is used.
func (r *Report) Record(file string) Record {
	record := Record{Findings: []Known{}}
	for i, k := range r.Keys() {
		record.Findings = append(record.Findings, Known{
			Design: from(file, r.Findings[i].Design), Rule: k.Rule, Part: k.Part, Nth: k.Nth, Message: r.Findings[i].Message,
		})
	}
	return record
}

// from is a path as seen from the folder of a file.
func from(file, path string) string {
	base, err1 := filepath.Abs(filepath.Dir(file))
	abs, err2 := filepath.Abs(path)
	if err1 == nil && err2 == nil {
		if rel, err := filepath.Rel(base, abs); err == nil {
			return filepath.ToSlash(rel)
		}
	}
	return filepath.ToSlash(path)
}

// ReadRecord reads a record's file.
func ReadRecord(file string) (Record, error) {
	var record Record
	f, err := os.Open(file)
	if err != nil {
		return record, reason(err)
	}
	defer f.Close()
	d := json.NewDecoder(io.LimitReader(f, 64<<20))
	d.DisallowUnknownFields()
	if err := d.Decode(&record); err != nil {
		return record, fmt.Errorf("no record of findings: %w", err)
	}
	for i, k := range record.Findings {
		if k.Rule == "" || k.Design == "" {
			return record, fmt.Errorf("no record of findings: entry %d names no rule or no design", i+1)
		}
	}
	return record, nil
}

// WriteRecord writes a record's file, whole or not at all.
func WriteRecord(file string, record Record) error {
	content, err := json.MarshalIndent(record, "", "  ")
	if err != nil {
		return err
	}
	temp, err := os.CreateTemp(filepath.Dir(file), "."+filepath.Base(file)+".*")
	if err != nil {
		return reason(err)
	}
	_, err = temp.Write(append(content, '\n'))
	if err == nil {
		err = temp.Chmod(0o644)
	}
	if closed := temp.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Rename(temp.Name(), file)
	}
	if err != nil {
		os.Remove(temp.Name())
		return reason(err)
	}
	return nil
}

// reason is why a file could not be used, without its path.
func reason(err error) error {
	var path *os.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err
	}
	return err
}

// Less takes the findings that the record knows out of the report, and notes
// the entries of designs that were checked and no longer match.
func (r *Report) Less(file string, record Record) {
	used := make([]bool, len(record.Findings))
	keys := r.Keys()
	kept := r.Findings[:0]
	for i, f := range r.Findings {
		k := Known{Design: from(file, f.Design), Rule: keys[i].Rule, Part: keys[i].Part, Nth: keys[i].Nth}
		at := slices.IndexFunc(record.Findings, k.same)
		if at < 0 {
			kept = append(kept, f)
			continue
		}
		used[at] = true
		r.Known++
	}
	r.Findings = kept
	checked := map[string]bool{}
	for _, d := range r.Designs {
		checked[from(file, d)] = true
	}
	for i, k := range record.Findings {
		if !used[i] && checked[k.Design] && (len(r.only) == 0 || slices.Contains(r.only, k.Rule)) {
			r.Gone = append(r.Gone, k)
		}
	}
}

// gone writes the record's entries that no longer match.
func (r *Report) gone(w io.Writer) {
	if len(r.Gone) == 0 {
		return
	}
	fmt.Fprintln(w, "known, but no longer found; record anew:")
	for _, k := range r.Gone {
		fmt.Fprintf(w, "  %s: %s [%s]\n", k.Design, strings.TrimSpace(k.Part+" "+nth(k.Nth)), k.Rule)
	}
}

func nth(n int) string {
	if n < 2 {
		return ""
	}
	return fmt.Sprintf("(number %d)", n)
}
