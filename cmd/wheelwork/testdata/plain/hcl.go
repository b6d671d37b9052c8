// The plain program that a check of an HCL design is measured against: it
// parses the file and does nothing with it.
package main

import (
	"os"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

func main() {
	content, err := os.ReadFile(os.Args[1])
	if err != nil {
		os.Exit(2)
	}
	if _, problems := hclsyntax.ParseConfig(content, os.Args[1], hcl.InitialPos); problems.HasErrors() {
		os.Exit(2)
	}
}
