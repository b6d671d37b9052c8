package editor

import (
	"fmt"
	"strings"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
	"wheelwork/cmd/wheelwork/internal/editor/scan"
	"wheelwork/cmd/wheelwork/internal/manual"
	"wheelwork/rules"
	"wheelwork/spec"
	"wheelwork/spec/text"
	"wheelwork/spec/tomlread"
)

// completing gathers what may be written at a place.
type completing struct {
	q       *inquiry
	toml    bool
	at      scan.Context
	outline *scan.Outline
	items   []lsp.CompletionItem
	seen    map[string]bool
}

// complete lists what may be written at a place. The place is found in the
// text as it is, however broken; the names are those of the design as it is
// or, where that is broken, as it was too.
func complete(q *inquiry, p *lsp.CompletionParams) (any, error) {
	offset := q.view.Offset(q.doc.text, p.Position)
	c := &completing{q: q, toml: strings.HasSuffix(q.doc.path, ".toml"), seen: map[string]bool{}}
	c.outline, c.at = scan.At(q.doc.text.Bytes, c.toml, formOf, offset)
	c.items = []lsp.CompletionItem{}
	if p.Context.TriggerCharacter == " " && !c.at.InString && c.at.Where != scan.AtComment {
		return lsp.CompletionList{Items: c.items}, nil // a blank asks for units alone, and for rules to waive
	}
	switch c.at.Where {
	case scan.AtTop:
		c.kinds()
	case scan.AtKind:
		c.tables()
	case scan.AtLabel:
		if b := c.at.Block; b != nil && b.Kind.Text == "bounds" {
			c.rules()
		}
	case scan.AtKey:
		c.keys()
		if c.toml && c.at.LineStart {
			c.kinds() // the next table may begin
		}
	case scan.AtValue:
		c.value()
	case scan.AtComment:
		c.comment(offset)
	}
	return lsp.CompletionList{Items: c.items}, nil
}

// item is something that may be written: inserted takes the place of what is
// written there already.
type item struct {
	label, inserted, detail, doc string
	kind                         int
	snippet                      bool // inserted has places to fill in
	first                        bool // comes before the others
}

func (c *completing) add(i item) {
	if c.seen[i.label] {
		return
	}
	c.seen[i.label] = true
	if i.inserted == "" {
		i.inserted = i.label
	}
	order := "1"
	if i.first {
		order = "0"
	}
	one := lsp.CompletionItem{
		Label: i.label, Kind: i.kind, Detail: i.detail,
		SortText: fmt.Sprintf("%s%04d", order, len(c.items)),
		Edit:     &lsp.TextEdit{Range: c.written(), NewText: i.inserted},
	}
	if i.snippet {
		one.Format = lsp.Snippet
	}
	if i.doc != "" {
		kind := lsp.Plain
		if c.q.view.markdown {
			kind = lsp.Markdown
		}
		one.Documentation = &lsp.Markup{Kind: kind, Value: i.doc}
	}
	// An editor compares what is written with the text that it would become.
	one.FilterText = strings.TrimLeft(i.label, `"'[`)
	if written := string(c.q.doc.text.Bytes[c.at.Start:c.at.End]); written != "" && !wordStart(written[0]) {
		one.FilterText = i.inserted
	}
	c.items = append(c.items, one)
}

func wordStart(b byte) bool {
	return b == '_' || b >= 0x80 || 'a' <= b|0x20 && b|0x20 <= 'z' || '0' <= b && b <= '9'
}

// written is the range of what is written already.
func (c *completing) written() lsp.Range {
	return c.q.view.Range(c.q.doc.text, c.at.Start, c.at.End)
}

// named is a name as it is written at the place: within quotes that are there,
// else with them.
func (c *completing) named(s string) string {
	var quoted string
	switch {
	case c.at.InString && c.at.Quote == '\'':
		return s
	case c.toml:
		quoted = `"` + escapes.Replace(s) + `"`
	default:
		quoted = quoteHCL(s)
	}
	if c.at.InString {
		return quoted[1 : len(quoted)-1]
	}
	return quoted
}

// design calls f with each design, as it is and if that is broken as it was.
func (c *completing) design(f func(m *model)) {
	for _, one := range c.q.of {
		for i, m := range []*model{one.now, one.good} {
			if m == nil || i > 0 && m == one.now {
				continue
			}
			m.mu.Lock()
			m.reach(read)
			broken := m.broken
			if m.at(c.q.doc.path) != nil {
				f(m)
			}
			m.mu.Unlock()
			if !broken {
				break
			}
		}
	}
}

// kinds offers blocks.
func (c *completing) kinds() {
	for _, k := range spec.Language() {
		if k.Kind == "given" && c.toml {
			continue
		}
		i := item{label: k.Kind, detail: k.Doc, kind: lsp.CompleteClass, doc: c.kindPage(k)}
		if c.toml {
			i.label = header(k)
		}
		i.inserted, i.snippet = c.blank(k)
		c.add(i)
	}
}

// header is the beginning of a block of TOML.
func header(k *spec.BlockKind) string {
	switch k.Form {
	case tomlread.Labelled, tomlread.Grouped:
		return "[" + k.Kind + ".]"
	case tomlread.Repeated:
		return "[[" + k.Kind + "]]"
	}
	return "[" + k.Kind + "]"
}

func (c *completing) kindPage(k *spec.BlockKind) string {
	p := &page{markdown: c.q.view.markdown}
	hcl, toml := manual.Written(k)
	if c.toml {
		hcl = toml
	}
	p.say("%s.", capital(k.Doc))
	p.code(hcl)
	return p.String()
}

// blank is a block to be filled in, with the attributes that it needs.
func (c *completing) blank(k *spec.BlockKind) (text string, snippet bool) {
	if !c.q.view.snippets {
		if c.toml {
			return header(k), false
		}
		return k.Kind, false
	}
	n := 0
	hole := func(s string) string {
		n++
		return fmt.Sprintf("${%d:%s}", n, s)
	}
	var b strings.Builder
	name := ""
	if k.Form == tomlread.Labelled {
		name = hole("name")
	}
	indent := "  "
	switch {
	case !c.toml && name != "":
		fmt.Fprintf(&b, "%s \"%s\" {\n", k.Kind, name)
	case !c.toml:
		fmt.Fprintf(&b, "%s {\n", k.Kind)
	default:
		indent = ""
		head := header(k)
		if k.Form == tomlread.Grouped {
			name = hole("rule")
		}
		b.WriteString(strings.Replace(head, ".]", "."+name+"]", 1) + "\n")
	}
	width := 0
	for i := range k.Attributes {
		if a := &k.Attributes[i]; a.Required {
			width = max(width, len(a.Name))
		}
	}
	if c.toml {
		width = 0
	}
	for i := range k.Attributes {
		if a := &k.Attributes[i]; a.Required {
			fmt.Fprintf(&b, "%s%-*s = %s\n", indent, width, a.Name, strings.Replace(shape(a), "$", hole(""), 1))
		}
	}
	if n == 0 || k.Form == tomlread.Grouped {
		b.WriteString(indent + "$0\n")
	}
	if !c.toml {
		b.WriteString("}")
	}
	return strings.TrimSuffix(b.String(), "\n"), true
}

// shape is how a value is written, $ standing for what is to be filled in.
func shape(a *spec.Attribute) string {
	switch a.Holds {
	case spec.ACount, spec.ANumber, spec.AFlag:
		return "$"
	case spec.APoint:
		return "[$, ]"
	case spec.ANames:
		return `["$"]`
	case spec.ANumbers, spec.ARanges:
		return "[$]"
	}
	return `"$"`
}

// tables offers kinds within the brackets of a header.
func (c *completing) tables() {
	for _, k := range spec.Language() {
		if k.Kind == "given" || (k.Form == tomlread.Repeated) != c.at.Array {
			continue
		}
		i := item{label: k.Kind, detail: k.Doc, kind: lsp.CompleteClass, doc: c.kindPage(k)}
		if k.Form == tomlread.Labelled || k.Form == tomlread.Grouped {
			i.inserted = k.Kind + "."
		}
		c.add(i)
	}
}

// comment offers rules to waive.
func (c *completing) comment(offset int32) {
	before := string(c.q.doc.text.Bytes[c.at.Start:offset])
	body := strings.TrimLeft(before, "#/* \t")
	if rest, ok := strings.CutPrefix(body, "waive"); !ok || strings.TrimLeft(rest, " \t") == rest || strings.ContainsAny(strings.TrimSpace(rest), ": \t") {
		return
	}
	word := text.Span{Start: offset - int32(len(before)-strings.LastIndexAny(before, " \t")-1), End: offset}
	for int(word.End) < len(c.q.doc.text.Bytes) && ruleByte(c.q.doc.text.Bytes[word.End]) {
		word.End++
	}
	c.at.Start, c.at.End = word.Start, word.End
	after := ": "
	if rest := c.q.doc.text.Bytes[word.End:]; len(rest) > 0 && rest[0] == ':' {
		after = ""
	}
	for _, r := range rules.All() {
		if r.Group != rules.Waivers {
			c.add(item{label: r.Name, inserted: r.Name + after, detail: r.Checks, kind: lsp.CompleteConstant})
		}
	}
}

func ruleByte(b byte) bool { return b == '-' || 'a' <= b && b <= 'z' }
