// Package progress shows on a terminal how far long work has come.
package progress

import (
	"io"
	"time"

	"github.com/vbauerster/mpb/v8"
	"github.com/vbauerster/mpb/v8/decor"
)

// patience is how long work goes on before a bar is shown.
const patience = 300 * time.Millisecond

const whole = 1000

// Bar is a bar that comes when work has gone on for a while, and is gone when
// it ends.
type Bar struct {
	out   io.Writer
	what  string
	start time.Time
	all   *mpb.Progress
	bar   *mpb.Bar
}

// New makes the bar of some work on a terminal.
func New(terminal io.Writer, what string) *Bar {
	return &Bar{out: terminal, what: what, start: time.Now()}
}

// Tell says what share of the work is done, from 0 to 1.
func (b *Bar) Tell(done float64) {
	if b.bar == nil {
		if time.Since(b.start) < patience || done >= 1 {
			return
		}
		b.show()
	}
	b.bar.SetCurrent(int64(done * whole))
}

func (b *Bar) show(options ...mpb.ContainerOption) {
	b.all = mpb.New(append([]mpb.ContainerOption{mpb.WithOutput(b.out), mpb.WithWidth(60)}, options...)...)
	b.bar = b.all.AddBar(whole, mpb.BarRemoveOnComplete(),
		mpb.PrependDecorators(decor.Name(b.what)),
		mpb.AppendDecorators(decor.Percentage()))
}

// End takes the bar away.
func (b *Bar) End() {
	if b.bar != nil {
		b.bar.Abort(true)
		b.all.Wait()
	}
}
