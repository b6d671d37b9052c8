package editor

import (
	"fmt"
	"strings"

	"wheelwork/rules"
	"wheelwork/spec/exact"
)

// page is a text to be shown: as Markdown, or plain for clients that show none.
type page struct {
	markdown bool
	sections []string
}

// name is a name within a text.
func (p *page) name(s string) string {
	if !p.markdown {
		return `"` + s + `"`
	}
	fence := "`"
	for strings.Contains(s, fence) {
		fence += "`"
	}
	if len(fence) > 1 {
		return fence + " " + s + " " + fence
	}
	return fence + s + fence
}

// head begins with a title.
func (p *page) head(format string, args ...any) {
	s := fmt.Sprintf(format, args...)
	if p.markdown {
		s = "**" + s + "**"
	}
	p.sections = append(p.sections, s)
}

// say adds a paragraph.
func (p *page) say(format string, args ...any) {
	p.sections = append(p.sections, fmt.Sprintf(format, args...))
}

// list adds a list of what is not empty.
func (p *page) list(items ...string) {
	var b strings.Builder
	for _, s := range items {
		if s != "" {
			b.WriteString("- " + s + "\n")
		}
	}
	if b.Len() > 0 {
		p.sections = append(p.sections, strings.TrimSuffix(b.String(), "\n"))
	}
}

// code adds text of a spec.
func (p *page) code(s string) {
	if p.markdown {
		s = "```\n" + s + "\n```"
	}
	p.sections = append(p.sections, s)
}

func (p *page) String() string { return strings.Join(p.sections, "\n\n") }

// titled is a part's kind and name.
func (p *page) titled(kind, name string) string {
	if p.markdown {
		return kind + " " + strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "[", `\[`, "<", `\<`).Replace(name)
	}
	return kind + ` "` + name + `"`
}

// rule adds what a rule is about.
func (p *page) rule(r *rules.Rule, pages string) {
	p.head("%s: %s", r.Name, r.Severity)
	p.say("Checks that %s.", strings.TrimSuffix(r.Checks, "."))
	p.say("%s.", strings.TrimSuffix(strings.ToUpper(r.Why[:1])+r.Why[1:], "."))
	if r.Formula != "" {
		p.say("Formula: %s", r.Formula)
	}
	p.say("Source: %s", r.Source)
	var bounds []string
	for _, t := range r.Thresholds {
		bounds = append(bounds, fmt.Sprintf("%s = %s: %s", p.name(t.Name), t.Default, t.Doc))
	}
	p.list(bounds...)
	switch {
	case pages == "":
		p.say("More: %s", p.name("wheelwork rules "+r.Name))
	case p.markdown:
		p.say("[The page of the rule](%s)", pageOf(pages, r.Name))
	default:
		p.say("%s", pageOf(pages, r.Name))
	}
}

// decimal is an exact figure for people.
func decimal(x exact.Rat) string {
	if s, ok := rules.Decimal(x); ok {
		return s
	}
	return x.String()
}
