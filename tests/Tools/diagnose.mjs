// Drives the YAML language server over files as an editor would, and prints what it would underline:
// one JSON object per file, { file, diagnostics: [{ line, message }], completions: [...], hover }.
// Usage: node diagnose.mjs FILE...   or   node diagnose.mjs --complete FILE LINE COLUMN (both from 1), or --hover likewise
import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-jsonrpc/node";

const here = dirname(fileURLToPath(import.meta.url));
const server = spawn(process.execPath, [join(here, "node_modules/yaml-language-server/bin/yaml-language-server"), "--stdio"], { stdio: ["pipe", "pipe", "inherit"] });
const connection = createMessageConnection(new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin));
// No catalogue from the network: only the schema that a file's first line names.
const settings = { validate: true, hover: true, completion: true, schemaStore: { enable: false }, schemas: {}, customTags: [], format: { enable: false } };
const waiting = new Map();

connection.onRequest("workspace/configuration", ({ items }) => items.map((item) => (item.section === "yaml" ? settings : {})));
connection.onRequest("client/registerCapability", () => null);
connection.onNotification("textDocument/publishDiagnostics", ({ uri, diagnostics }) => waiting.get(uri)?.(diagnostics));
connection.listen();

async function open(file) {
  const uri = pathToFileURL(file).href;
  const published = new Promise((resolve) => waiting.set(uri, resolve));
  await connection.sendNotification("textDocument/didOpen", { textDocument: { uri, languageId: "yaml", version: 1, text: readFileSync(file, "utf8") } });
  const diagnostics = await published;
  return { uri, diagnostics: diagnostics.map(({ range, message }) => ({ line: range.start.line + 1, message })) };
}

try {
  await connection.sendRequest("initialize", { processId: process.pid, rootUri: null, capabilities: { workspace: { configuration: true }, textDocument: { publishDiagnostics: {} } }, initializationOptions: {} });
  await connection.sendNotification("initialized", {});
  await connection.sendNotification("workspace/didChangeConfiguration", { settings: { yaml: settings } });
  const [first, ...rest] = process.argv.slice(2);
  const [files, position] = first === "--complete" || first === "--hover" ? [[rest[0]], { line: Number(rest[1]) - 1, character: Number(rest[2]) - 1 }] : [[first, ...rest], null];
  for (const file of files) {
    const { uri, diagnostics } = await open(file);
    const completions = first !== "--complete" ? [] : ((await connection.sendRequest("textDocument/completion", { textDocument: { uri }, position })).items ?? []).map((item) => item.label);
    const shown = first !== "--hover" ? null : (await connection.sendRequest("textDocument/hover", { textDocument: { uri }, position }))?.contents;
    console.log(JSON.stringify({ file, diagnostics, completions, hover: shown?.value ?? shown ?? null }));
  }
  await connection.sendRequest("shutdown");
  await connection.sendNotification("exit");
} finally {
  connection.dispose();
  server.kill();
}
