#!/usr/bin/env bash
# The language server through the protocol library of VS Code's clients.
. "$(dirname "$0")/lib.sh"
need node nodejs
need npm npm
project=$(pwd)
go build -o "$TOOLS/bin/wheelwork" ./cmd/wheelwork
export PATH=$TOOLS/bin:$PATH
mkdir -p "$TOOLS/protocol"
cp .ci/steps/protocol/* "$TOOLS/protocol"
cd "$TOOLS/protocol"
npm install --silent --no-audit --no-fund --no-package-lock
scratch "$TOOLS/protocol-table"
timeout 300 node client.js "$TOOLS/protocol-table"
# The page's own extension is at least sound JSON and JavaScript.
block json "$project/docs/editors/vscode.md" | node -e 'JSON.parse(require("node:fs").readFileSync(0, "utf8"))'
block js "$project/docs/editors/vscode.md" >extension.js
node --check extension.js
