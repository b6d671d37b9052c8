package hclread

import (
	"sync"

	"wheelwork/spec/text"
)

// maxCached bounds the bytes of the files whose blocks a cache keeps.
const maxCached = 64 << 20

// Cache parses files that are read again and again with small changes, as an
// editor has them: blocks whose text is as it was the last time are not parsed
// again. What it gives is what Parse gives. It keeps the blocks of each file as
// it was read last. The zero Cache is empty; it may be used from several
// goroutines at once.
type Cache struct {
	mu    sync.Mutex
	files map[string]cached
	bytes int
}

// cached is a file's blocks by their text.
type cached struct {
	blocks map[string]*block
	bytes  int
}

// Parse is as the function of that name.
func (c *Cache) Parse(f *text.File) (*Source, []text.Problem) {
	c.mu.Lock()
	before := c.files[f.Name].blocks
	c.mu.Unlock()
	if before == nil {
		before = map[string]*block{}
	}
	s, problems, sound := parse(f, before)
	c.mu.Lock()
	defer c.mu.Unlock()
	c.keep(f.Name, cached{blocks: sound, bytes: len(f.Bytes)})
	return s, problems
}

// keep holds the file in place of what it was. Where there is no room it
// forgets all others.
func (c *Cache) keep(name string, file cached) {
	c.bytes += file.bytes - c.files[name].bytes
	if c.files == nil || c.bytes > maxCached {
		c.files = map[string]cached{}
		c.bytes = file.bytes
	}
	c.files[name] = file
}
