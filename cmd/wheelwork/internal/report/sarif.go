package report

import (
	"encoding/json"
	"io"
	"net/url"
	"strings"

	"github.com/owenrumney/go-sarif/v2/sarif"

	"wheelwork/cmd/wheelwork/internal/manual"
	"wheelwork/rules"
	"wheelwork/spec/text"
)

// unreadable is the rule under which SARIF tells text that is no design.
const unreadable = "unreadable-spec"

// SARIF writes the report in SARIF 2.1.0. Columns are in Unicode code points.
func (r *Report) SARIF(w io.Writer, version string) error {
	run := sarif.NewRunWithInformationURI("wheelwork", "")
	run.Tool.Driver.InformationURI = nil
	run.Tool.Driver.Version = &version
	run.ColumnKind = "unicodeCodePoints"
	success := len(r.Problems) == 0
	run.Invocations = []*sarif.Invocation{{ExecutionSuccessful: &success}}

	index := map[string]int{}
	for i, rule := range rules.All() {
		index[rule.Name] = i
		run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, descriptor(rule))
	}
	for _, p := range r.Problems {
		result := sarif.NewRuleResult(unreadable).WithLevel("error").WithMessage(sarif.NewTextMessage(withHint(p)))
		locate(result, p.Place, p.Related)
		run.AddResult(result)
	}
	keys := r.Keys()
	for i, f := range r.Findings {
		result := sarif.NewRuleResult(f.Rule.Name).WithRuleIndex(index[f.Rule.Name]).
			WithLevel(f.Severity.String()).WithMessage(sarif.NewTextMessage(f.Message))
		locate(result, f.Place, f.Related)
		result.PartialFingerprints = map[string]any{"ruleAndPart/v1": keys[i].fingerprint(slash(f.Design))}
		for _, m := range f.Remedies {
			result.Fixes = append(result.Fixes, fix(m))
		}
		run.AddResult(result)
	}
	if !success {
		run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, &sarif.ReportingDescriptor{
			ID:                   unreadable,
			ShortDescription:     sarif.NewMultiformatMessageString("The text can be read as a design."),
			DefaultConfiguration: &sarif.ReportingConfiguration{Level: "error"},
		})
	}
	report, err := sarif.New(sarif.Version210)
	if err != nil {
		return err
	}
	report.AddRun(run)
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(report)
}

// descriptor is a rule's page.
func descriptor(rule *rules.Rule) *sarif.ReportingDescriptor {
	var plain strings.Builder
	manual.RuleText(&plain, rule)
	help := sarif.NewMultiformatMessageString(plain.String())
	page := manual.RulePage(rule)
	help.Markdown = &page
	d := sarif.NewRule(rule.Name).WithFullDescription(sarif.NewMultiformatMessageString(rule.Why))
	d.ShortDescription = sarif.NewMultiformatMessageString(rule.Checks)
	d.Help = help
	d.DefaultConfiguration = &sarif.ReportingConfiguration{Level: rule.Severity.String()}
	d.Properties = sarif.Properties{"tags": []string{string(rule.Group)}}
	return d
}

func locate(result *sarif.Result, at text.Place, related []text.Related) {
	if at.Known() {
		result.AddLocation(location(at))
	}
	for _, r := range related {
		l := location(r.Place)
		l.Message = sarif.NewTextMessage(r.Message)
		result.RelatedLocations = append(result.RelatedLocations, l)
	}
}

func location(at text.Place) *sarif.Location {
	where := sarif.NewPhysicalLocation().WithArtifactLocation(sarif.NewArtifactLocation().WithUri(uri(at.File)))
	if len(at.File.Bytes) > 0 {
		where = where.WithRegion(region(at))
	}
	return sarif.NewLocationWithPhysicalLocation(where)
}

func region(at text.Place) *sarif.Region {
	start, end := at.File.Position(at.Start), at.File.Position(at.End)
	return sarif.NewRegion().
		WithStartLine(start.Line).WithStartColumn(start.Column).
		WithEndLine(end.Line).WithEndColumn(end.Column).
		WithByteOffset(int(at.Start)).WithByteLength(int(at.End - at.Start))
}

// fix is a remedy; its edits come sorted by file.
func fix(m rules.Remedy) *sarif.Fix {
	f := sarif.NewFix().WithDescriptionText(m.Title)
	var change *sarif.ArtifactChange
	var in *text.File
	for _, e := range m.Edits {
		if e.File != in {
			in = e.File
			change = sarif.NewArtifactChange(sarif.NewArtifactLocation().WithUri(uri(in)))
			f.AddArtifactChanges(change)
		}
		inserted := e.Text
		change.Replacements = append(change.Replacements, &sarif.Replacement{
			DeletedRegion:   *region(e.Place),
			InsertedContent: sarif.NewArtifactContent().WithText(inserted),
		})
	}
	return f
}

func uri(f *text.File) string { return (&url.URL{Path: slash(f.Name)}).String() }

func slash(path string) string { return strings.ReplaceAll(path, "\\", "/") }

func withHint(p text.Problem) string {
	if p.Hint == "" {
		return p.Message
	}
	return p.Message + "; " + p.Hint
}
