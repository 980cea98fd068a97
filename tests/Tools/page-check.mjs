// Looks at a page in headless Chromium: node page-check.mjs CHROMIUM PAGE accessibility|cards|overflow|picture [OUT]
// accessibility: violations that axe-core finds; cards: room left on each side of A5, in CSS pixels; overflow: pixels by which the page
// is wider than a telephone; picture: a PNG of the first page.
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

const require = createRequire(import.meta.url);
const { chromium } = require('playwright-core');
const [, , executablePath, page, what, out] = process.argv;
const browser = await chromium.launch({
  executablePath,
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
});
const width = what === 'overflow' ? 400 : 1200;
const tab = await browser.newPage({ viewport: { width, height: 1180 } });
const requests = [];
tab.on('request', request => requests.push(request.url()));
const complaints = [];
tab.on('console', message => complaints.push(message.text()));
await tab.goto(pathToFileURL(page).href);
const result = { requests: requests.length, complaints };
if (what === 'accessibility') {
  await tab.evaluate(readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8'));
  const found = await tab.evaluate(() => globalThis.axe.run());
  result.violations = found.violations.map(violation => `${violation.id}: ${violation.nodes[0].html}`);
  result.passes = found.passes.length;
} else if (what === 'cards') {
  result.room = await tab.evaluate(() => [...document.querySelectorAll('.card')].map(card =>
    Math.round(card.querySelector('footer').getBoundingClientRect().top - card.querySelector('.parts').lastElementChild.getBoundingClientRect().bottom)));
  result.wide = await tab.evaluate(() => [...document.querySelectorAll('.card table')].filter(table => table.getBoundingClientRect().right > table.closest('.card').getBoundingClientRect().right - 20).length);
} else if (what === 'overflow') {
  result.overflow = await tab.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
} else {
  await tab.screenshot({ path: out });
}
console.log(JSON.stringify(result));
await browser.close();
