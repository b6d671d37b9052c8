package editor

import (
	"sync"

	"wheelwork/cmd/wheelwork/internal/editor/lsp"
)

// outbox holds what is to be published until the client takes it: of each
// document the last word only, in the order in which documents came up.
type outbox struct {
	mu      sync.Mutex
	order   []lsp.URI
	waiting map[lsp.URI]*lsp.PublishDiagnosticsParams
	more    chan struct{} // holds one signal at most
}

func newOutbox() *outbox {
	return &outbox{waiting: map[lsp.URI]*lsp.PublishDiagnosticsParams{}, more: make(chan struct{}, 1)}
}

func (o *outbox) put(p *lsp.PublishDiagnosticsParams) {
	o.mu.Lock()
	if o.waiting[p.URI] == nil {
		o.order = append(o.order, p.URI)
	}
	o.waiting[p.URI] = p
	o.mu.Unlock()
	select {
	case o.more <- struct{}{}:
	default:
	}
}

// take is the next to be sent, nil if there is none.
func (o *outbox) take() *lsp.PublishDiagnosticsParams {
	o.mu.Lock()
	defer o.mu.Unlock()
	if len(o.order) == 0 {
		return nil
	}
	uri := o.order[0]
	o.order = o.order[1:]
	p := o.waiting[uri]
	delete(o.waiting, uri)
	return p
}

// send hands everything over until the connection ends.
func (o *outbox) send(done <-chan struct{}, notify func(*lsp.PublishDiagnosticsParams)) {
	for {
		select {
		case <-done:
			return
		case <-o.more:
			for p := o.take(); p != nil; p = o.take() {
				notify(p)
			}
		}
	}
}
