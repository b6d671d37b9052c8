package main

import (
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"
	"time"

	"github.com/fsnotify/fsnotify"

	"wheelwork/spec/folder"
)

// settle is how long files must lie still before they are read again: editors
// save in several steps.
const settle = 80 * time.Millisecond

// watch checks again whenever a spec file is saved in a folder that holds one
// of the designs' files, or in a folder that was named, until interrupted.
func (c *Command) watch(o *checkOptions, args []string) int {
	watcher, err := fsnotify.NewWatcher()
	if err != nil {
		fmt.Fprintf(c.Stderr, "wheelwork check: files cannot be watched: %v\n", err)
		return unusable
	}
	defer watcher.Close()
	stop := c.stop
	if stop == nil {
		interrupted := make(chan os.Signal, 1)
		signal.Notify(interrupted, os.Interrupt, syscall.SIGTERM)
		defer signal.Stop(interrupted)
		stop = interrupted
	}
	watched := map[string]bool{}
	for {
		if onTerminal(c.Stdout) {
			fmt.Fprint(c.out, "\x1b[2J\x1b[3J\x1b[H") // clear screen and scroll back, home
		}
		var files []string
		c.check(o, args, &files)
		fmt.Fprintf(c.out, "%s, watching; interrupt to end\n", time.Now().Format(time.TimeOnly))
		if err := c.out.Flush(); err != nil {
			return unusable
		}
		for _, f := range append(files, args...) {
			dir := f
			if info, err := os.Stat(f); err != nil || !info.IsDir() {
				dir = filepath.Dir(f)
			}
			if !watched[dir] && watcher.Add(dir) == nil {
				watched[dir] = true
			}
		}
		if !saved(watcher, stop) {
			return clean
		}
	}
}

// saved waits until a spec file changed and all lie still; it is false when
// interrupted.
func saved(watcher *fsnotify.Watcher, stop <-chan os.Signal) bool {
	var still <-chan time.Time
	for {
		select {
		case <-stop:
			return false
		case e, ok := <-watcher.Events:
			if !ok {
				return false
			}
			if folder.IsSpec(e.Name) && !e.Has(fsnotify.Chmod) {
				still = time.After(settle)
			}
		case _, ok := <-watcher.Errors:
			if !ok {
				return false
			}
			still = time.After(settle) // events may be lost: look again
		case <-still:
			return true
		}
	}
}
