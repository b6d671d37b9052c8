package report

import (
	"encoding/json"
	"io"

	"wheelwork/spec/text"
)

// The JSON of a check. Lines and columns count from 1, columns in Unicode code
// points; start and end are byte offsets; an end is the place just behind.
type (
	document struct {
		Designs  []string      `json:"designs"`
		Findings []findingJSON `json:"findings"`
		Aside    []asideJSON   `json:"stood_aside"`
		Problems []problemJSON `json:"problems"`
		Waived   int           `json:"waived"`
		Known    int           `json:"known,omitempty"`
		Gone     []Known       `json:"known_gone,omitempty"`
	}
	placeJSON struct {
		File      string `json:"file"`
		Line      int    `json:"line"`
		Column    int    `json:"column"`
		EndLine   int    `json:"end_line"`
		EndColumn int    `json:"end_column"`
		Start     int32  `json:"start"`
		End       int32  `json:"end"`
	}
	findingJSON struct {
		Rule     string `json:"rule"`
		Severity string `json:"severity"`
		placeJSON
		Message  string        `json:"message"`
		Design   string        `json:"design"`
		Part     string        `json:"part,omitempty"`
		Related  []relatedJSON `json:"related"`
		Remedies []remedyJSON  `json:"remedies"`
	}
	relatedJSON struct {
		placeJSON
		Message string `json:"message"`
	}
	remedyJSON struct {
		Title string     `json:"title"`
		Edits []editJSON `json:"edits"`
	}
	editJSON struct {
		File  string `json:"file"`
		Start int32  `json:"start"`
		End   int32  `json:"end"`
		Text  string `json:"text"`
	}
	asideJSON struct {
		Rule   string `json:"rule"`
		Why    string `json:"why"`
		Design string `json:"design"`
	}
	problemJSON struct {
		placeJSON
		Message string        `json:"message"`
		Hint    string        `json:"hint,omitempty"`
		Related []relatedJSON `json:"related"`
	}
)

// JSON writes the report as one document.
func (r *Report) JSON(w io.Writer) error {
	d := document{
		Designs:  append([]string{}, r.Designs...),
		Findings: []findingJSON{},
		Aside:    []asideJSON{},
		Problems: []problemJSON{},
		Waived:   r.Waived,
		Known:    r.Known,
		Gone:     r.Gone,
	}
	for _, f := range r.Findings {
		j := findingJSON{
			Rule: f.Rule.Name, Severity: f.Severity.String(), placeJSON: place(f.Place),
			Message: f.Message, Design: f.Design, Part: f.Part,
			Related: related(f.Related), Remedies: []remedyJSON{},
		}
		for _, m := range f.Remedies {
			one := remedyJSON{Title: m.Title, Edits: []editJSON{}}
			for _, e := range m.Edits {
				one.Edits = append(one.Edits, editJSON{e.File.Name, e.Start, e.End, e.Text})
			}
			j.Remedies = append(j.Remedies, one)
		}
		d.Findings = append(d.Findings, j)
	}
	for _, a := range r.Aside {
		d.Aside = append(d.Aside, asideJSON{a.Rule.Name, a.Why, a.Design})
	}
	for _, p := range r.Problems {
		d.Problems = append(d.Problems, problemJSON{place(p.Place), p.Message, p.Hint, related(p.Related)})
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(d)
}

func place(p text.Place) placeJSON {
	if !p.Known() {
		return placeJSON{}
	}
	start, end := p.File.Position(p.Start), p.File.Position(p.End)
	return placeJSON{
		File: p.File.Name, Line: start.Line, Column: start.Column,
		EndLine: end.Line, EndColumn: end.Column, Start: p.Start, End: p.End,
	}
}

func related(list []text.Related) []relatedJSON {
	out := []relatedJSON{}
	for _, r := range list {
		out = append(out, relatedJSON{place(r.Place), r.Message})
	}
	return out
}
