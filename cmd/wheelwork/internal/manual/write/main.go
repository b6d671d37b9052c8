// Command write writes the pages of the docs that are made from the program,
// and takes away those of rules that are gone. It runs in the folder of
// package manual.
package main

import (
	"fmt"
	"os"
	"path/filepath"

	"wheelwork/cmd/wheelwork/internal/manual"
)

const docs = "../../../../docs"

func main() {
	if err := write(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func write() error {
	if err := os.RemoveAll(filepath.Join(docs, manual.RulesFolder)); err != nil {
		return err
	}
	for _, p := range manual.Pages() {
		to := filepath.Join(docs, filepath.FromSlash(p.Path))
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(to, []byte(p.Content), 0o644); err != nil {
			return err
		}
	}
	return nil
}
