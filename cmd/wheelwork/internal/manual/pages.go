package manual

import (
	"fmt"
	"path"
	"strings"

	"wheelwork/rules"
)

//go:generate go run ./write

// Page is a file of the docs folder that is made from the program.
type Page struct {
	Path    string // within docs, with slashes
	Content string
}

const generated = "<!-- Written by go generate ./cmd/wheelwork/internal/manual; change the program instead. -->\n\n"

// RulesFolder is the folder within docs that holds nothing but rule pages.
const RulesFolder = "rules"

// Pages makes all pages.
func Pages() []Page {
	pages := []Page{
		{"language-table.md", languagePage()},
		{"periods.md", periodsPage()},
		{SchemaPath, schemaPage()},
		{path.Join(RulesFolder, "README.md"), ruleIndex(rules.All())},
	}
	for _, r := range rules.All() {
		pages = append(pages, Page{path.Join(RulesFolder, r.Name+".md"), RulePage(r)})
	}
	return pages
}

// ruleIndex lists the rules in their groups in Markdown.
func ruleIndex(all []*rules.Rule) string {
	var b strings.Builder
	b.WriteString("# Rules\n\n" + generated +
		"What `wheelwork check` checks. `wheelwork rules NAME` shows the same pages.\n")
	eachGroup(all, func(g rules.Group, list []*rules.Rule) {
		fmt.Fprintf(&b, "\n## %s\n\n| rule | severity | checks that |\n|---|---|---|\n", capital(string(g)))
		for _, r := range list {
			fmt.Fprintf(&b, "| [%s](%s.md) | %s | %s |\n", r.Name, r.Name, r.Severity, cell(r.Checks))
		}
	})
	return b.String()
}

// RulePage is the page of a rule in Markdown.
func RulePage(r *rules.Rule) string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n\n%sChecks that %s\n\n", r.Name, generated, sentence(r.Checks))
	fmt.Fprintf(&b, "%s\n\n", capital(sentence(r.Why)))
	if r.Formula != "" {
		fmt.Fprintf(&b, "**Formula:** %s\n\n", r.Formula)
	}
	fmt.Fprintf(&b, "**Source:** %s\n\n**Severity:** %s\n\n", sentence(r.Source), r.Severity)
	if len(r.Thresholds) > 0 {
		b.WriteString("| threshold | default | meaning |\n|---|---|---|\n")
		for _, t := range r.Thresholds {
			fmt.Fprintf(&b, "| `%s` | %s | %s |\n", t.Name, cell(t.Default), cell(t.Doc))
		}
		b.WriteString("\n")
	}
	fmt.Fprintf(&b, "A design may set these for itself:\n\n```hcl\n%s\n```\n\n", boundsExample(r))
	fmt.Fprintf(&b, "A comment lets one finding stand, on its line or above its block, with the reason:\n\n```hcl\n# waive %s: why it may stand here\n```\n\n", r.Name)
	fmt.Fprintf(&b, "## Breaks it\n\n```hcl\n%s\n```\n\n", strings.TrimSpace(r.Breaks()))
	fmt.Fprintf(&b, "## Keeps it\n\n```hcl\n%s\n```\n", strings.TrimSpace(r.Keeps()))
	return b.String()
}
