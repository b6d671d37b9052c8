# What the steps share. Sourced, not run.
set -euo pipefail

# need COMMAND PACKAGE...: installs Debian's packages unless the command is there.
need() {
	local command=$1
	shift
	if command -v "$command" >/dev/null; then
		return
	fi
	apt-get update -qq
	DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$@" >/dev/null
}

# block LANGUAGE FILE: the first fenced block of the language in a page.
block() {
	awk -v fence="\`\`\`$1" '$0 == fence { on = 1; next } /^```/ && on { exit } on' "$2"
}

# scratch DIR: a repository with a design that has one fault with a remedy.
scratch() {
	mkdir -p "$1/shared"
	git init -q "$1"
	cat >"$1/table.hcl" <<'HCL'
design {
  title = "Tide hand"
  uses  = ["shared/tide.toml"]
}
arbor "day" {}
wheel "first" {
  on     = "day"
  teeth  = 30
  module = 0.5
}
mesh {
  wheels = ["first", "second"]
}
clock {
  on     = "day"
  period = "solar day"
}
HCL
	cat >"$1/shared/tide.toml" <<'TOML'
[arbor.tide]
[wheel.second]
on = "tide"
teeth = 31
module = 0.6
TOML
}
