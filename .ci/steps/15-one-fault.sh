#!/usr/bin/env bash
# Every fault planted in the sound designs, where the tests plant a sample.
. "$(dirname "$0")/lib.sh"
ONE_FAULT=all go test -count=1 -run OneFault -v ./fixtures/faults | grep -v '^=== '
