// Sends a file at even times, whether or not earlier answers have come: node even-load.mjs SECONDS RATE FILE URL.
// Prints how many answers had which status and how long they took from the time at which each was due. The generators of requests at hand send all of a
// second at once, which measures a queue of their own making.
import { readFileSync } from 'node:fs';
import { Agent, request } from 'node:http';

const [, , seconds, rate, file, url] = process.argv;
const body = readFileSync(file);
const agent = new Agent({ keepAlive: true, maxSockets: 256 });
const times = [];
const statuses = {};
const count = seconds * rate;
const begun = performance.now();

function send(due) {
  return new Promise(resolve => {
    const end = status => {
      times.push(performance.now() - due);
      statuses[status] = (statuses[status] ?? 0) + 1;
      resolve();
    };
    const call = request(url, { agent, method: 'POST', headers: { 'content-type': 'application/yaml', 'content-length': body.length } }, answer => {
      answer.resume();
      answer.on('end', () => end(answer.statusCode));
      answer.on('error', () => end('cut off'));
    });
    call.on('error', () => end('no answer'));
    call.end(body);
  });
}

const open = [];
for (let sent = 0; sent < count; sent++) {
  const due = begun + sent * 1000 / rate;
  const wait = due - performance.now();
  if (wait > 0) {
    await new Promise(resolve => setTimeout(resolve, wait));
  }

  open.push(send(due));
}

await Promise.all(open);
times.sort((a, b) => a - b);
const at = share => Math.round(times[Math.min(times.length - 1, Math.floor(share * times.length))]);
console.log(`answers: ${Object.entries(statuses).map(([status, times]) => `${times} × ${status}`).join(', ')}`);
console.log(`times: median ${at(0.5)} ms, 95 % below ${at(0.95)} ms, 99 % below ${at(0.99)} ms, longest ${at(1)} ms; 99 % is ${(at(0.99) / at(0.5)).toFixed(1)} times the median`);
