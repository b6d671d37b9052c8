// The plain program that a check of a TOML design is measured against: it
// decodes the file into maps and does nothing with them.
package main

import (
	"os"

	"github.com/BurntSushi/toml"
)

func main() {
	var decoded map[string]any
	if _, err := toml.DecodeFile(os.Args[1], &decoded); err != nil {
		os.Exit(2)
	}
}
