#!/usr/bin/env bash
# The commands of the page on pipelines, as they stand there, in a scratch
# repository with a clean design, then with a fault.
. "$(dirname "$0")/lib.sh"
project=$(pwd)
go build -o "$TOOLS/bin/wheelwork" ./cmd/wheelwork
export PATH=$TOOLS/bin:$PATH
work=$TOOLS/pages
scratch "$work/origin/designs"
rm -rf "$work/origin/designs/.git"
cd "$work/origin"
sed -i 's/module = 0.6/module = 0.5/' designs/shared/tide.toml
git init -q -b main .
git config user.name Museum
git config user.email museum@example.org
git add .
git commit -q -m "a sound design"
git clone -q "$work/origin" "$work/clone"
cd "$work/clone"

# All commands of the page but the one that goes on until interrupted.
awk '/^```sh$/ { on = 1; next } /^```$/ { on = 0 } on' "$project/docs/ci.md" | grep -v -- --watch >"$work/commands"
test "$(wc -l <"$work/commands")" -ge 4
run() {
	while read -r command; do
		echo "\$ $command"
		bash -c "$command" </dev/null || echo "exit $?"
	done <"$work/commands"
}
run >"$work/clean"
if grep -q '^exit' "$work/clean"; then
	cat "$work/clean"
	exit 1
fi
sed -i 's/module = 0.5/module = 0.6/' designs/shared/tide.toml
run >"$work/faulty"
cat "$work/faulty"
# The check and the comparison stop at the new fault; the record lets it pass.
test "$(grep -c '^exit 1' "$work/faulty")" = 2
grep -q '1 finding known' "$work/faulty"
