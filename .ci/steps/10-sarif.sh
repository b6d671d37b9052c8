#!/usr/bin/env bash
# SARIF against the schema of OASIS, which lies beside the project and is not
# part of it.
. "$(dirname "$0")/lib.sh"
schema=$(pwd)/../shared/standards/sarif-2.1.0.schema.json
if [ ! -f "$schema" ]; then
	echo "left out: the OASIS schema does not lie beside the project"
	exit 0
fi
SARIF_SCHEMA=$schema go test -count=1 -run SARIF -v ./cmd/wheelwork/internal/report | grep -v '^=== '
