#!/usr/bin/env bash
# Emacs with eglot, in batch, with the configuration of its page.
. "$(dirname "$0")/lib.sh"
need emacs emacs-nox
[ -d /usr/share/emacs/site-lisp/elpa-src ] && ls /usr/share/emacs/site-lisp/elpa-src | grep -q eglot || need no-such-command-eglot elpa-eglot
go build -o "$TOOLS/bin/wheelwork" ./cmd/wheelwork
export PATH=$TOOLS/bin:$PATH
work=$TOOLS/emacs
scratch "$work"
export HOME=$work/home
mkdir -p "$HOME"
block elisp docs/editors/emacs.md >"$work/init.el"
test -s "$work/init.el"
cp .ci/steps/emacs.el "$work/run.el"
cd "$work"
timeout 240 emacs --batch --eval "(progn (require 'package) (package-initialize))" -l init.el -l run.el
