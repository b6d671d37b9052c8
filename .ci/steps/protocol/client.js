// Drives `wheelwork editor` through the protocol library that VS Code's clients
// stand on: open, type, findings, a remedy, a renaming over two files.
"use strict";
const assert = require("node:assert");
const { spawn } = require("node:child_process");
const fs = require("node:fs");
const path = require("node:path");
const { pathToFileURL } = require("node:url");
const rpc = require("vscode-jsonrpc/node");
const lsp = require("vscode-languageserver-protocol");

const folder = fs.realpathSync(process.argv[2]);
const uri = (name) => pathToFileURL(path.join(folder, name)).toString();
const read = (name) => fs.readFileSync(path.join(folder, name), "utf8");

// documents are what the client holds, by URI.
const documents = new Map();
const findings = new Map();
const waiting = [];

function published() {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error("no findings came")), 30000);
    waiting.push(() => { clearTimeout(late); resolve(); });
  });
}

async function until(what, holds) {
  while (!holds()) await published();
  console.log("  " + what);
}

function offset(text, position) {
  const lines = text.split("\n");
  return lines.slice(0, position.line).reduce((n, l) => n + l.length + 1, 0) + position.character;
}

function apply(edits) {
  for (const change of edits.documentChanges || Object.entries(edits.changes).map(([u, e]) => ({ textDocument: { uri: u }, edits: e }))) {
    const u = change.textDocument.uri;
    let text = documents.get(u).text;
    for (const e of [...change.edits].sort((a, b) => offset(text, b.range.start) - offset(text, a.range.start))) {
      text = text.slice(0, offset(text, e.range.start)) + e.newText + text.slice(offset(text, e.range.end));
    }
    write(u, text);
  }
}

let connection;

function open(name, languageId) {
  const u = uri(name);
  documents.set(u, { version: 1, text: read(name) });
  connection.sendNotification(lsp.DidOpenTextDocumentNotification.type, {
    textDocument: { uri: u, languageId, version: 1, text: documents.get(u).text },
  });
}

function write(u, text) {
  const d = documents.get(u);
  d.version++;
  d.text = text;
  connection.sendNotification(lsp.DidChangeTextDocumentNotification.type, {
    textDocument: { uri: u, version: d.version },
    contentChanges: [{ text }],
  });
}

// type puts text at a place, one keystroke at a time.
function type(u, position, keys) {
  const d = documents.get(u);
  for (const key of keys) {
    d.version++;
    const at = offset(d.text, position);
    d.text = d.text.slice(0, at) + key + d.text.slice(at);
    connection.sendNotification(lsp.DidChangeTextDocumentNotification.type, {
      textDocument: { uri: u, version: d.version },
      contentChanges: [{ range: { start: position, end: position }, text: key }],
    });
    position = { line: position.line, character: position.character + key.length };
  }
}

async function main() {
  const server = spawn("wheelwork", ["editor"], { stdio: ["pipe", "pipe", "inherit"] });
  connection = rpc.createMessageConnection(new rpc.StreamMessageReader(server.stdout), new rpc.StreamMessageWriter(server.stdin));
  connection.onNotification(lsp.PublishDiagnosticsNotification.type, (p) => {
    const d = documents.get(p.uri);
    if (d && p.version !== undefined) assert.ok(p.version <= d.version);
    findings.set(p.uri, p.diagnostics);
    waiting.splice(0).forEach((go) => go());
  });
  connection.onRequest("client/registerCapability", () => null);
  connection.onRequest("workspace/configuration", (p) => p.items.map(() => null));
  connection.listen();

  const init = await connection.sendRequest(lsp.InitializeRequest.type, {
    processId: process.pid,
    rootUri: pathToFileURL(folder).toString(),
    workspaceFolders: [{ uri: pathToFileURL(folder).toString(), name: "table" }],
    capabilities: {
      textDocument: {
        publishDiagnostics: { relatedInformation: true, versionSupport: true, codeDescriptionSupport: true },
        codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ["quickfix"] } } },
        rename: { prepareSupport: true },
      },
      workspace: { workspaceEdit: { documentChanges: true } },
    },
  });
  assert.strictEqual(init.capabilities.positionEncoding || "utf-16", "utf-16");
  connection.sendNotification(lsp.InitializedNotification.type, {});

  const table = uri("table.hcl");
  const tide = uri("shared/tide.toml");
  open("table.hcl", "hcl");
  open("shared/tide.toml", "toml");
  const has = (u, code) => (findings.get(u) || []).some((d) => d.code === code);
  await until("a finding in the file that the design uses", () => has(tide, "unequal-module"));

  type(table, { line: 5, character: 0 }, "# größer 𝄞\n");
  await until("still there after typing", () => has(tide, "unequal-module"));
  type(table, { line: 1, character: 2 }, "x");
  await until("a problem while the text is broken", () => (findings.get(table) || []).length > 0);
  write(table, documents.get(table).text.replace("xtitle", "title"));
  await until("gone when it is whole again", () => has(tide, "unequal-module") && !(findings.get(table) || []).some((d) => d.severity === 1 && /attribute/.test(d.message)));

  const finding = findings.get(tide).find((d) => d.code === "unequal-module");
  const actions = await connection.sendRequest(lsp.CodeActionRequest.type, {
    textDocument: { uri: tide }, range: finding.range, context: { diagnostics: [finding] },
  });
  const remedy = actions.find((a) => a.edit && !/waive/i.test(a.title));
  assert.ok(remedy, "a remedy is offered");
  apply(remedy.edit);
  await until("the remedy takes the finding away: " + remedy.title, () => !has(tide, "unequal-module"));

  const line = documents.get(table).text.split("\n").findIndex((l) => l.includes('wheels = ["first", "second"]'));
  const at = { line, character: documents.get(table).text.split("\n")[line].indexOf("second") + 1 };
  const renaming = await connection.sendRequest(lsp.RenameRequest.type, { textDocument: { uri: table }, position: at, newName: "tide_wheel" });
  apply(renaming);
  assert.ok(documents.get(table).text.includes('["first", "tide_wheel"]'));
  assert.ok(documents.get(tide).text.includes("[wheel.tide_wheel]"));
  await until("renamed in both files, and no problem after", () => ![table, tide].some((u) => (findings.get(u) || []).some((d) => d.severity === 1)));

  const hover = await connection.sendRequest(lsp.HoverRequest.type, { textDocument: { uri: table }, position: { ...at, line } });
  assert.ok(hover, "hover says something");

  await connection.sendRequest(lsp.ShutdownRequest.type);
  const ended = new Promise((resolve) => server.on("exit", resolve));
  connection.sendNotification(lsp.ExitNotification.type);
  assert.strictEqual(await ended, 0);
  assert.strictEqual(read("table.hcl").includes("tide_wheel"), false, "the server writes no file");
}

main().then(() => process.exit(0), (error) => { console.error(error); process.exit(1); });
