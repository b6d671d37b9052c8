package report

import (
	"strings"

	"github.com/fatih/color"

	"wheelwork/rules"
)

// paint colours the parts of the report, or leaves them as they are.
type paint struct {
	bold   *color.Color
	weight [4]*color.Color // by severity
}

func newPaint(colour bool) *paint {
	p := &paint{bold: color.New(color.Bold)}
	p.weight = [4]*color.Color{
		rules.Off:     color.New(color.FgWhite),
		rules.Note:    color.New(color.FgCyan, color.Bold),
		rules.Warning: color.New(color.FgYellow, color.Bold),
		rules.Error:   color.New(color.FgRed, color.Bold),
	}
	for _, c := range append(p.weight[:], p.bold) {
		if colour {
			c.EnableColor()
		} else {
			c.DisableColor()
		}
	}
	return p
}

func (p *paint) place(s string) string { return p.bold.Sprint(s) }

func (p *paint) severity(s rules.Severity) string { return p.weight[s].Sprint(s.String()) }

// mark colours the marks and leaves the blanks before them.
func (p *paint) mark(s rules.Severity, mark string) string {
	blanks := len(mark) - len(strings.TrimLeft(mark, " "))
	return mark[:blanks] + p.weight[s].Sprint(mark[blanks:])
}
