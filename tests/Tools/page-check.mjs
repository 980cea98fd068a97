// Looks at pages in one headless Chromium: node page-check.mjs CHROMIUM, then a line of JSON for each look on standard input, { page, what, out }, with
// what one of accessibility, cards, overflow, print, first and picture; the answer is a line of JSON on standard output. It ends with the input.
// accessibility: violations that axe-core finds, and overflow; cards: room left on each side of A5, in CSS pixels, whose side it is, pages of its PDF; overflow: pixels by which the page
// is wider than each of the widths from a telephone of 320 to a desk (WCAG 1.4.10), with what sticks out of no box that scrolls; print:
// pages of its PDF, folded and opened, what is wider than the page, what is cut, how many drawings stand alone; first: where verdict, list of what
// decides and first row of the hours end on a screen of 1280 px, 0 where there is none; picture: a PNG of the first page.
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { pathToFileURL } from 'node:url';

const require = createRequire(import.meta.url);
const { chromium } = require('playwright-core');
const browser = await chromium.launch({
  executablePath: process.argv[2],
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
});

async function overflow(tab) {
  const wide = {};
  for (const width of [320, 390, 400, 768, 1200]) {
    await tab.setViewportSize({ width, height: 900 });
    wide[width] = await tab.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  }
  return wide;
}

async function look(tab, { page, what, out }) {
  const requests = [];
  tab.on('request', request => requests.push(request.url()));
  const complaints = [];
  tab.on('console', message => complaints.push(message.text()));
  await tab.goto(pathToFileURL(page).href);
  const result = { requests: requests.length, complaints };
  if (what === 'accessibility') {
    result.overflow = await overflow(tab);
    await tab.setViewportSize({ width: 1200, height: 1180 });
    await tab.evaluate(readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8'));
    await tab.evaluate(() => document.querySelectorAll('details').forEach(part => part.open = true));
    const found = await tab.evaluate(() => globalThis.axe.run({ resultTypes: ['violations'] }));
    result.violations = found.violations.map(violation => `${violation.id}: ${violation.nodes[0].html}`);
    result.passes = found.passes.length;
  } else if (what === 'cards') {
    result.room = await tab.evaluate(() => [...document.querySelectorAll('.card')].map(card =>
      Math.round(card.querySelector('footer').getBoundingClientRect().top - card.querySelector('.parts').lastElementChild.getBoundingClientRect().bottom)));
    // A side that shows nothing but loads is one of the list of loads.
    result.sides = await tab.evaluate(() => [...document.querySelectorAll('.card')].map(card => ({
      role: card.querySelector('h2').firstChild.textContent.trim(),
      more: [...card.querySelectorAll('section')].some(part => !part.querySelector('.loads')),
    })));
    const print = await tab.pdf({ preferCSSPageSize: true, printBackground: false });
    result.pages = print.toString('latin1').match(/\/Type\s*\/Page\b/g).length;
    result.wide = await tab.evaluate(() => [...document.querySelectorAll('.card table')].filter(table => table.getBoundingClientRect().right > table.closest('.card').getBoundingClientRect().right - 20).length);
  } else if (what === 'overflow') {
    result.overflow = await overflow(tab);
  } else if (what === 'print') {
    // A4 without the page's own margins: 182 mm at 96 to the inch.
    await tab.emulateMedia({ media: 'print' });
    await tab.setViewportSize({ width: 688, height: 1000 });
    // What somebody opened is printed and must fit as well.
    await tab.evaluate(() => document.querySelectorAll('details').forEach(part => part.open = true));
    result.wide = await tab.evaluate(() => [...document.querySelectorAll('body *')].filter(element => element.getBoundingClientRect().right > 689).map(element => `${element.tagName} ${element.className} ${element.textContent.slice(0, 40)}`));
    result.tall = await tab.evaluate(() => [...document.querySelectorAll('.drawn')].filter(plot => plot.getBoundingClientRect().height > 1000).length);
    result.split = await tab.evaluate(() => [...document.querySelectorAll('.drawn, .finding, tr')].filter(part => getComputedStyle(part).breakInside !== 'avoid').length);
    result.hidden = await tab.evaluate(() => [...document.querySelectorAll('details')].filter(part => part.getBoundingClientRect().height < 10).length);
    const pages = async () => (await tab.pdf({ preferCSSPageSize: true, printBackground: false })).toString('latin1').match(/\/Type\s*\/Page\b/g).length;
    result.opened = await pages();
    await tab.evaluate(() => document.querySelectorAll('details').forEach(part => part.open = false));
    result.pages = await pages();
  } else if (what === 'first') {
    await tab.setViewportSize({ width: 1280, height: 900 });
    for (const [name, selector] of [['verdict', '.verdict'], ['deciding', '.deciding'], ['hours', '.hours tbody tr']]) {
      result[name] = await tab.evaluate(selector => Math.round(document.querySelector(selector)?.getBoundingClientRect().bottom ?? 0), selector);
    }
  } else {
    await tab.screenshot({ path: out });
  }
  return result;
}

for await (const line of createInterface({ input: process.stdin })) {
  // A context of its own: what one page left behind is nothing to the next.
  const context = await browser.newContext({ viewport: { width: 1200, height: 1180 } });
  try {
    const tab = await context.newPage();
    tab.setDefaultTimeout(15 * 60 * 1000); // A busy machine decides nothing.
    console.log(JSON.stringify(await look(tab, JSON.parse(line))));
  } catch (problem) {
    console.log(JSON.stringify({ problem: String(problem) }));
  } finally {
    await context.close();
  }
}
await browser.close();
