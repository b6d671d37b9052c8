package editor

import (
	"reflect"
	"slices"
	"strings"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// sent is what the client was told last of a file.
type sent struct {
	uri     lsp.URI
	version *int32
	list    []lsp.Diagnostic
}

// publish tells the client what all designs together find in a file, unless it
// knows.
func (s *Server) publish(path string) {
	now := sent{list: s.findings(path)}
	before, told := s.sent[path]
	if doc := s.docs[path]; doc != nil {
		version := doc.version
		now.uri, now.version = doc.uri, &version
	} else {
		now.uri = s.uri(path)
		if now.uri == "" {
			now.uri = before.uri
		}
		if !told && len(now.list) == 0 || now.uri == "" {
			return
		}
	}
	if told && reflect.DeepEqual(now, before) {
		return
	}
	s.sent[path] = now
	if len(now.list) == 0 && s.docs[path] == nil {
		delete(s.sent, path)
	}
	p := &lsp.PublishDiagnosticsParams{URI: now.uri, Diagnostics: now.list}
	if s.client.TextDocument.PublishDiagnostics.VersionSupport {
		p.Version = now.version
	}
	s.out.put(p)
}

// uri is how designs name a file that is not open.
func (s *Server) uri(path string) lsp.URI {
	for _, d := range s.designs {
		if uri, ok := d.files[path]; ok {
			return uri
		}
	}
	return ""
}

// findings is what all designs find in a file, what several find alike once.
func (s *Server) findings(path string) []lsp.Diagnostic {
	all := []lsp.Diagnostic{}
	from := 0 // designs that find anything there
	for _, d := range s.designs {
		list := d.shown[path]
		if len(list) == 0 {
			continue
		}
		if from++; from == 1 {
			all = append(all, list...)
			continue
		}
		for _, one := range list {
			if !slices.ContainsFunc(all, func(other lsp.Diagnostic) bool { return alike(&one, &other) }) {
				all = append(all, one)
			}
		}
	}
	if from > 1 {
		slices.SortStableFunc(all, func(a, b lsp.Diagnostic) int {
			switch {
			case a.Range.Start.Before(b.Range.Start):
				return -1
			case b.Range.Start.Before(a.Range.Start):
				return 1
			}
			return strings.Compare(a.Code+a.Message, b.Code+b.Message)
		})
	}
	return all
}

// alike reports whether two designs find the same, whatever places of their own
// they relate it to.
func alike(a, b *lsp.Diagnostic) bool {
	return a.Range == b.Range && a.Code == b.Code && a.Message == b.Message
}
