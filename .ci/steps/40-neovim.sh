#!/usr/bin/env bash
# Neovim, headless, with the configuration of its page.
. "$(dirname "$0")/lib.sh"
need nvim neovim
go build -o "$TOOLS/bin/wheelwork" ./cmd/wheelwork
export PATH=$TOOLS/bin:$PATH
work=$TOOLS/neovim
scratch "$work"
export HOME=$work/home XDG_CONFIG_HOME=$work/home/config XDG_DATA_HOME=$work/home/data XDG_STATE_HOME=$work/home/state
mkdir -p "$XDG_CONFIG_HOME/nvim" "$XDG_DATA_HOME" "$XDG_STATE_HOME"
block lua docs/editors/neovim.md >"$XDG_CONFIG_HOME/nvim/init.lua"
test -s "$XDG_CONFIG_HOME/nvim/init.lua"
cp .ci/steps/neovim.lua "$work/run.lua"
cd "$work"
timeout 120 nvim --headless shared/tide.toml -c 'luafile run.lua'
