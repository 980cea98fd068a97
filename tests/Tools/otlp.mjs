// Decodes OTLP requests that a test has received (one file each, protobuf as sent over HTTP) with the published message definitions
// of the OpenTelemetry project, which this npm package carries; prints one JSON object per line: { kind, message }.
// Usage: node otlp.mjs traces|metrics FILE...
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";

const require = createRequire(import.meta.url);
const { opentelemetry } = require("@opentelemetry/otlp-transformer/build/src/generated/root.js");
const { collector } = opentelemetry.proto;
const requests = { traces: collector.trace.v1.ExportTraceServiceRequest, metrics: collector.metrics.v1.ExportMetricsServiceRequest };
const [kind, ...files] = process.argv.slice(2);
for (const file of files) {
  const type = requests[kind];
  const message = type.toObject(type.decode(readFileSync(file)), { longs: String, enums: String, bytes: String });
  console.log(JSON.stringify({ kind, message }));
}
