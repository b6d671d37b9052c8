package editor

import (
	"strings"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/cmd/wheelwork/internal/editor/scan"
	"wheelwork/cmd/wheelwork/internal/manual"
	"wheelwork/rules"
	"wheelwork/spec"
)

// rules offers the rules that bounds may speak of.
func (c *completing) rules() {
	for _, r := range rules.All() {
		i := item{label: r.Name, detail: r.Checks, kind: lsp.CompleteConstant}
		if !c.toml && c.q.view.snippets && c.at.Where == scan.AtKey {
			i.inserted, i.snippet = r.Name+" {\n  $0\n}", true
		}
		c.add(i)
	}
}

// keys offers the attributes that a block does not have yet, those that it
// needs first.
func (c *completing) keys() {
	b := c.at.Block
	have := map[string]bool{}
	for _, e := range b.Entries {
		if e.Key.Start != c.at.Start {
			have[e.Key.Text] = true
		}
	}
	if b.Within != nil && b.Within.Kind.Text == "bounds" {
		c.thresholds(rules.Named(b.Kind.Text), have)
		return
	}
	if b.Kind.Text == "bounds" {
		if r := rules.Named(b.Label.Text); r != nil { // bounds "rule" { ... }
			c.thresholds(r, have)
		} else {
			c.rules()
		}
		return
	}
	k := spec.KindOf(b.Kind.Text)
	if k == nil {
		return
	}
	for i := range k.Attributes {
		a := &k.Attributes[i]
		if have[a.Name] {
			continue
		}
		p := &page{markdown: c.q.view.markdown}
		p.attributePage(k, a)
		one := item{label: a.Name, detail: manual.Holds(a), doc: p.String(), kind: lsp.CompleteField, first: a.Required}
		one.inserted, one.snippet = c.assigned(a.Name, shape(a))
		c.add(one)
	}
}

// assigned is a key with its value to be filled in, if it has none yet.
func (c *completing) assigned(key, shape string) (text string, snippet bool) {
	rest := c.q.doc.text.Bytes[c.at.End:]
	switch {
	case strings.HasPrefix(strings.TrimLeft(string(rest[:min(len(rest), 80)]), " \t"), "="):
		return key, false
	case c.q.view.snippets:
		return key + " = " + strings.Replace(shape, "$", "$1", 1), true
	}
	return key + " = ", false
}

// thresholds offers what the bounds of a rule may set.
func (c *completing) thresholds(r *rules.Rule, have map[string]bool) {
	if r == nil {
		return
	}
	if !have["severity"] {
		i := item{label: "severity", detail: "how much a finding weighs, " + r.Severity.String() + " unless given", kind: lsp.CompleteField}
		i.inserted, i.snippet = c.assigned("severity", `"$"`)
		c.add(i)
	}
	for _, t := range r.Thresholds {
		if !have[t.Name] {
			i := item{label: t.Name, detail: t.Default + " unless given", doc: capital(t.Doc), kind: lsp.CompleteField}
			i.inserted, i.snippet = c.assigned(t.Name, `"$"`)
			c.add(i)
		}
	}
}
