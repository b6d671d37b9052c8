package tomlread

import (
	"errors"
	"fmt"
	"sort"
	"strings"
	"sync"

	"github.com/BurntSushi/toml"

	"wheelwork/spec/text"
)

// checker has BurntSushi/toml decode the statements of a file, some at a time
// and on all processors. What a statement may say given the others, such as
// no name twice, is judged where the tree is built; apart from that each
// stands for itself, which is why they need not be decoded together.
type checker struct {
	file *text.File
	src  string
	// known reports that a statement was found valid before; it may be nil.
	known func(start, end int32) bool

	starts  []int32 // where statements start
	from    int32   // where the next job starts
	first   int     // the first statement of the next job
	open    bool    // there is a statement at hand
	bad     bool    // and it has a problem
	faults  int
	jobs    []*job
	running sync.WaitGroup
}

// job is a run of statements to decode.
type job struct {
	from, to  int32
	starts    []int32
	problems  []text.Problem
	unsettled bool // not all of it was decoded
}

const (
	jobBytes = 4 << 10
	// maxFaults is how many faulty statements a file may have before no more
	// are decoded, maxRetries how many are looked for in one job.
	maxFaults, maxRetries = 64, 8
)

// begin says that a statement starts, and so that the last one ends.
func (c *checker) begin(start int32) {
	c.finish(start)
	c.starts = append(c.starts, start)
	c.open, c.bad = true, false
}

// fault says that the statement at hand has a problem: it need not be decoded
// and, as it may be out of bounds, must not be.
func (c *checker) fault() { c.bad = true }

func (c *checker) finish(end int32) {
	if !c.open {
		return
	}
	c.open = false
	last := len(c.starts) - 1
	start := c.starts[last]
	switch {
	case c.bad:
		c.faults++
		c.flush(start, last)
		c.from, c.first = end, last+1
	case c.first == last && certain(c.src[c.from:end]):
		c.from, c.first = end, last+1
	case c.first < last && certain(c.src[start:end]):
		c.flush(start, last)
		c.from, c.first = end, last+1
	case c.known != nil && c.known(start, end):
		c.flush(start, last)
		c.from, c.first = end, last+1
	case c.src[start] == '[' && start-c.from >= jobBytes:
		c.flush(start, last)
	}
}

// flush starts a job for the statements before the one numbered end, which
// starts at an offset.
func (c *checker) flush(at int32, end int) {
	if j := c.job(at, end); j != nil {
		c.running.Go(func() { j.run(c) })
	}
}

func (c *checker) job(to int32, end int) *job {
	if c.first == end || c.faults > maxFaults {
		return nil
	}
	j := &job{from: c.from, to: to, starts: c.starts[c.first:end:end]}
	c.jobs = append(c.jobs, j)
	c.from, c.first = to, end
	return j
}

// end says that the last statement ends. It returns the problems of all
// statements; settled is false if there may be more.
func (c *checker) end(at int32) (problems []text.Problem, settled bool) {
	c.finish(at)
	if j := c.job(at, len(c.starts)); j != nil {
		j.run(c)
	}
	c.running.Wait()
	settled = c.faults <= maxFaults
	for _, j := range c.jobs {
		problems = append(problems, j.problems...)
		settled = settled && !j.unsettled
	}
	return problems, settled
}

// run decodes the statements of a job, and after each fault those that follow.
func (j *job) run(c *checker) {
	at := j.from
	for tries := 0; at < j.to; tries++ {
		fault := decode(c.src[at:j.to])
		if fault == nil {
			return
		}
		if tries == maxRetries {
			j.unsettled = true
			return
		}
		where := min(at+int32(fault.start), j.to-1)
		k := max(sort.Search(len(j.starts), func(i int) bool { return j.starts[i] > where })-1, 0)
		start, end := j.starts[k], j.to
		if k+1 < len(j.starts) {
			end = j.starts[k+1]
		}
		start = max(start, at)
		base := at
		if start > at || end < j.to {
			// Others of the job may be at odds with it, as a key of one table
			// is with the name of another where their headers are apart.
			base = start
			if fault = decode(c.src[start:end]); fault == nil {
				base, fault = at, decode(c.src[at:start])
			}
		}
		if fault != nil {
			j.problems = append(j.problems, fault.problem(c.file, base, end))
		}
		at = end
	}
}

// fault is an error of the decoder at a byte range of what it decoded.
type fault struct {
	start, length int
	message       string
}

func (f *fault) problem(file *text.File, base, end int32) text.Problem {
	start := min(base+int32(max(f.start, 0)), end-1)
	stop := min(start+int32(max(f.length, 1)), end)
	at := text.Span{Start: start, End: stop}
	return text.Problem{Place: text.Place{File: file, Span: at}, Message: f.message}
}

// decode has BurntSushi/toml judge a text. It returns nil if that is valid.
func decode(src string) (f *fault) {
	defer func() {
		if p := recover(); p != nil {
			message, _, _ := strings.Cut(fmt.Sprint(p), "\n")
			f = &fault{length: len(src), message: "cannot be read as TOML: " + shorten(message)}
		}
	}()
	var none struct{}
	_, err := toml.Decode(src, &none)
	if err == nil {
		return nil
	}
	var p toml.ParseError
	if !errors.As(err, &p) {
		return &fault{length: len(src), message: shorten(err.Error())}
	}
	message := strings.TrimSuffix(p.Message, ".")
	if date, ok := strings.CutPrefix(message, "invalid datetime: "); ok {
		message = short(date) + " is no date or time"
	}
	if message != "" {
		message = strings.ToLower(message[:1]) + message[1:]
	}
	return &fault{start: p.Position.Start, length: p.Position.Len, message: shorten(message)}
}
