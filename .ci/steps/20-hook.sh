#!/usr/bin/env bash
# The hook in a scratch repository, by the real pre-commit, as the page says.
. "$(dirname "$0")/lib.sh"
need pre-commit pre-commit
project=$(pwd)
work=$TOOLS/hook
export PRE_COMMIT_HOME=$TOOLS/pre-commit
scratch "$work"
cd "$work"
git config user.name Museum
git config user.email museum@example.org
block yaml "$project/docs/hook.md" |
	sed -e "s#repo: .*#repo: $project#" -e "s#rev: .*#rev: $(git -C "$project" rev-parse HEAD)#" >.pre-commit-config.yaml
grep -q 'id: wheelwork' .pre-commit-config.yaml
sed -i 's/module = 0.6/module = 0.5/' shared/tide.toml
git add .
pre-commit install >/dev/null

echo "a good commit passes"
git commit -q -m "a sound design" 2>"$TOOLS/hook.out" || { cat "$TOOLS/hook.out"; exit 1; }

echo "a bad one is stopped, by a file that the design only uses, checked once"
sed -i 's/module = 0.5/module = 0.6/' shared/tide.toml
sed -i 's/Tide hand/Tide and hand/' table.hcl
git add .
if git commit -q -m "a faulty design" >"$TOOLS/hook.out" 2>&1; then
	echo "the faulty design was let pass"
	exit 1
fi
grep 'unequal-module' "$TOOLS/hook.out"
test "$(grep -c 'unequal-module' "$TOOLS/hook.out")" = 1
git checkout -q HEAD table.hcl
git add .
if git commit -q -m "a faulty part" >"$TOOLS/hook.out" 2>&1; then
	echo "the faulty part was let pass"
	exit 1
fi
grep -q 'unequal-module' "$TOOLS/hook.out"
test "$(git rev-list --count HEAD)" = 1

echo "other files do not matter"
git checkout -q HEAD .
echo "a note" >notes.txt
git add notes.txt
git commit -q -m "a note" 2>/dev/null

echo "the plain git hook of the page"
go build -C "$project" -o "$TOOLS/bin/wheelwork" ./cmd/wheelwork
pre-commit uninstall >/dev/null
block sh <(sed -n '/Without pre-commit/,$p' "$project/docs/hook.md") >.git/hooks/pre-commit
chmod +x .git/hooks/pre-commit
export PATH=$TOOLS/bin:$PATH
sed -i 's/module = 0.5/module = 0.6/' shared/tide.toml
if git commit -q -a -m "a faulty part" >/dev/null 2>&1; then
	echo "the faulty part was let pass"
	exit 1
fi
git checkout -q HEAD .
echo "# a remark" >>table.hcl
git commit -q -a -m "a remark"
