package compare

import (
	"encoding/json"
	"fmt"
	"io"
	"path/filepath"

	"wheelwork/cmd/wheelwork/internal/report"
	"wheelwork/cmd/wheelwork/internal/terminal"
	"wheelwork/rules/change"
)

// Text writes the pairs for people. The folders of revisions are left out of
// names.
func Text(w io.Writer, pairs []Pair, laid []string) {
	for i := range pairs {
		p := &pairs[i]
		fmt.Fprintf(w, "%s\n", terminal.Printable(short(p.Name, laid)))
		switch {
		case p.Old == nil:
			fmt.Fprintln(w, "  a new design")
		case p.New == nil:
			fmt.Fprintln(w, "  the design is gone")
			continue
		case p.Unread:
			fmt.Fprintln(w, "  the old version could not be read, so that all is new")
		case len(p.Changes) == 0:
			fmt.Fprintln(w, "  it does and measures the same")
		}
		if p.New != nil && len(p.New.Problems) > 0 {
			for _, problem := range p.New.Problems {
				fmt.Fprintf(w, "  problem: %v\n", problem)
			}
			continue
		}
		if p.Old != nil && !p.Unread {
			changes(w, p.Changes)
		}
		for _, f := range p.Gone {
			fmt.Fprintf(w, "  gone  %s: %s [%s]\n", f.Severity, terminal.Printable(f.Message), f.Rule.Name)
		}
		for _, f := range p.Fresh {
			at := f.File.Position(f.Start)
			fmt.Fprintf(w, "  new   %s:%d:%d: %s: %s [%s]\n", terminal.Printable(short(f.File.Name, laid)), at.Line, at.Column, f.Severity, terminal.Printable(f.Message), f.Rule.Name)
		}
		if p.Kept > 0 {
			fmt.Fprintf(w, "  kept  %d found in both\n", p.Kept)
		}
	}
}

func changes(w io.Writer, list []change.Change) {
	group, name := "", ""
	for _, c := range list {
		if c.Group != group {
			group, name = c.Group, ""
			fmt.Fprintf(w, "  %s\n", group)
		}
		if c.Name != name {
			name = c.Name
			fmt.Fprintf(w, "    %s", terminal.Printable(c.Name))
			if c.Train != "" {
				fmt.Fprintf(w, ", train %s", terminal.Printable(c.Train))
			}
			if c.What == "" {
				fmt.Fprintf(w, ": %s\n", c.Old+c.New)
				continue
			}
			fmt.Fprintln(w)
		}
		fmt.Fprintf(w, "      %s: %s -> %s", c.What, orNothing(c.Old), orNothing(c.New))
		if c.Unit != "" {
			fmt.Fprintf(w, " %s", c.Unit)
		}
		fmt.Fprintln(w)
	}
}

func orNothing(s string) string {
	if s == "" {
		return "not known"
	}
	return s
}

type (
	document struct {
		Designs []designJSON `json:"designs"`
	}
	designJSON struct {
		Design   string        `json:"design"`
		Old      bool          `json:"old"`
		New      bool          `json:"new"`
		Unread   bool          `json:"old_unread,omitempty"`
		Problems []string      `json:"problems,omitempty"`
		Changes  []changeJSON  `json:"changes"`
		Findings *findingsJSON `json:"findings"`
	}
	changeJSON struct {
		Group string `json:"group"`
		Name  string `json:"name"`
		Train string `json:"train,omitempty"`
		What  string `json:"what,omitempty"`
		Unit  string `json:"unit,omitempty"`
		Old   string `json:"old"`
		New   string `json:"new"`
		// Exact figures as fractions.
		OldExact string `json:"old_exact,omitempty"`
		NewExact string `json:"new_exact,omitempty"`
	}
	findingsJSON struct {
		Gone  []findingJSON `json:"gone"`
		Fresh []findingJSON `json:"new"`
		Kept  int           `json:"kept"`
	}
	findingJSON struct {
		Rule     string `json:"rule"`
		Severity string `json:"severity"`
		Part     string `json:"part"`
		File     string `json:"file"`
		Line     int    `json:"line"`
		Column   int    `json:"column"`
		Message  string `json:"message"`
	}
)

// JSON writes the pairs as one document.
func JSON(w io.Writer, pairs []Pair, laid []string) error {
	doc := document{Designs: []designJSON{}}
	for i := range pairs {
		p := &pairs[i]
		d := designJSON{Design: filepath.ToSlash(short(p.Name, laid)), Old: p.Old != nil, New: p.New != nil, Unread: p.Unread, Changes: []changeJSON{}}
		for _, c := range p.Changes {
			d.Changes = append(d.Changes, changeJSON(c))
		}
		if p.New != nil {
			for _, problem := range p.New.Problems {
				d.Problems = append(d.Problems, problem.Error())
			}
		}
		d.Findings = &findingsJSON{Gone: listed(p.Gone, laid), Fresh: listed(p.Fresh, laid), Kept: p.Kept}
		doc.Designs = append(doc.Designs, d)
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(doc)
}

func listed(list []report.Finding, laid []string) []findingJSON {
	out := []findingJSON{}
	for _, f := range list {
		at := f.File.Position(f.Start)
		out = append(out, findingJSON{f.Rule.Name, f.Severity.String(), f.Part, short(f.File.Name, laid), at.Line, at.Column, f.Message})
	}
	return out
}
