// Package completion holds what teaches a shell to complete wheelwork's
// command lines. Each script asks the program itself: `wheelwork complete`
// with the words up to the cursor prints what the last may be, a word a line
// with a tab and its meaning behind it, or Files.
package completion

import _ "embed"

// Files is the answer that any path may stand here.
const Files = ":files"

//go:embed wheelwork.bash
var bash string

//go:embed wheelwork.zsh
var zsh string

//go:embed wheelwork.fish
var fish string

// Shells are the shells that are known.
var Shells = []string{"bash", "zsh", "fish"}

// Script is what a shell reads, "" for a shell that is not known.
func Script(shell string) string {
	switch shell {
	case "bash":
		return bash
	case "zsh":
		return zsh
	case "fish":
		return fish
	}
	return ""
}
