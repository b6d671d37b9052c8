package hclread

import (
	"bytes"
	"runtime"
	"sync"
	"sync/atomic"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"wheelwork/spec/text"
)

// chunkBytes is how much text hclsyntax is given at a time. On one core it
// takes four fifths of the time so that it takes of a long file in one piece:
// its tokens stay in the processor's cache.
const chunkBytes = 2 << 10

// outermost is a block that lies in no other.
type outermost struct {
	item  int
	at    text.Span
	block *block // nil until it is read
	alone bool   // hclsyntax was given it by itself
}

// blocks reads the outermost blocks, but for those that were read before from
// the same text. It notes those that have no problem if before is set.
func (r *reader) blocks(before map[string]*block) []*block {
	var list []outermost
	for i := 0; i < len(r.items); i = int(r.items[i].next) {
		if it := &r.items[i]; it.form == blockItem {
			list = append(list, outermost{item: i, at: it.at})
			if known := before[r.of(it.at)]; known != nil && !it.apart {
				list[len(list)-1].block = known.moved(it.at.Start - known.At.Start)
			}
		}
	}
	r.code = r.separated()
	r.parseAll(r.chunks(list))

	if before != nil {
		r.sound = make(map[string]*block, len(list))
	}
	r.quiet = 0
	blocks := make([]*block, len(list))
	for i := range list {
		b := &list[i]
		if b.block == nil && !b.alone && !r.items[b.item].apart && !r.enough() {
			r.parseChunk(list[i : i+1])
		}
		switch {
		case b.block == nil:
			b.block = r.pieces(b.item)
		case r.sound != nil:
			r.sound[r.of(b.at)] = b.block
		}
		blocks[i] = b.block
	}
	return blocks
}

// separated is the text with items on lines of their own.
func (r *reader) separated() []byte {
	if len(r.splits) == 0 {
		return r.code
	}
	code := bytes.Clone(r.code)
	for _, at := range r.splits {
		code[at] = '\n'
	}
	return code
}

// chunks are runs of blocks that are not read yet and have nothing between
// them but blanks and comments.
func (r *reader) chunks(list []outermost) (chunks [][]outermost) {
	ready := func(b outermost) bool { return b.block == nil && !r.items[b.item].apart }
	for from := 0; from < len(list); {
		if !ready(list[from]) {
			from++
			continue
		}
		to := from + 1
		for to < len(list) && ready(list[to]) && int(r.items[list[to-1].item].next) == list[to].item &&
			list[to].at.End-list[from].at.Start <= chunkBytes {
			to++
		}
		chunks = append(chunks, list[from:to])
		from = to
	}
	return chunks
}

// parseAll parses chunks on all cores.
func (r *reader) parseAll(chunks [][]outermost) {
	var next atomic.Int32
	work := func() {
		for {
			i := int(next.Add(1)) - 1
			if i >= len(chunks) {
				return
			}
			r.parseChunk(chunks[i])
		}
	}
	var others sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(chunks)) - 1 {
		others.Go(work)
	}
	work()
	others.Wait()
}

// parseChunk reads the blocks of a chunk. It leaves all nil if hclsyntax does
// not take the text, and those that hold what is no part of the language.
func (r *reader) parseChunk(chunk []outermost) {
	chunk[0].alone = len(chunk) == 1
	body, diags := r.parseSpan(text.Span{Start: chunk[0].at.Start, End: chunk[len(chunk)-1].at.End})
	if diags.HasErrors() || len(body.Blocks) != len(chunk) {
		return
	}
	w := walker{src: r.src}
	for i, b := range body.Blocks {
		w.refused = nil
		if got := w.block(b); w.refused == nil {
			chunk[i].block = got
		}
	}
}

// parseSpan gives a part of the text to hclsyntax.
func (r *reader) parseSpan(at text.Span) (*hclsyntax.Body, hcl.Diagnostics) {
	// Only byte offsets are used of places: columns count other things in HCL.
	f, diags := hclsyntax.ParseConfig(r.code[at.Start:at.End], "", hcl.Pos{Byte: int(at.Start), Line: 1, Column: 1})
	return f.Body.(*hclsyntax.Body), diags
}
