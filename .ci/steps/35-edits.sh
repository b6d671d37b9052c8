#!/usr/bin/env bash
# Ten thousand random edits in the language server: no wrong position, no stale
# finding, no growth of memory.
. "$(dirname "$0")/lib.sh"
go test ./cmd/wheelwork/internal/editor -run '^TestRandomEdits$' -edits 10000 -timeout 10m
