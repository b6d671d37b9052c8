// Command wheelwork checks the specs of geared astronomical models.
package main

import "os"

func main() {
	tuneCollector()
	c := Command{Stdin: os.Stdin, Stdout: os.Stdout, Stderr: os.Stderr}
	os.Exit(c.Main(os.Args[1:]))
}
