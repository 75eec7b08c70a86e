// Times the page in the real browser: from a typed number to the painted picture, the first usable paint, and the memory after 500 changes.
// node scripts/bench-page.mjs [CHANGES]; the page must be built.
import { pathToFileURL } from 'node:url';
import { openBrowser } from './browser.mjs';
import { PAGE } from './build-page.mjs';

/** Of a screen of 60 Hz, ms. */
const FRAME = 1000 / 60;
/** Its multiples are spread evenly. */
const GOLDEN = 0.618;
const changes = Number(process.argv[2] ?? 500);
const demo = new URL('../fixtures/demo-hand.json', import.meta.url).pathname;
const browser = await openBrowser();

const paints = [];
for (let k = 0; k < 5; k++) {
  const page = await (await browser.newContext({ locale: 'en-GB', viewport: { width: 1280, height: 660 } })).newPage();
  await page.goto(pathToFileURL(PAGE).href);
  await page.locator('#example').waitFor();
  paints.push(
    await page.evaluate(
      () =>
        new Promise((done) => {
          const observer = new PerformanceObserver((list) => {
            const [paint] = list.getEntriesByName('first-contentful-paint');
            if (paint) done(paint.startTime);
          });
          observer.observe({ type: 'paint', buffered: true });
        }),
    ),
  );
  await page.context().close();
}
report('first usable paint', paints);

const context = await browser.newContext({ locale: 'en-GB', viewport: { width: 1280, height: 660 } });
const page = await context.newPage();
await page.goto(pathToFileURL(PAGE).href);
await page.locator('#open-file').setInputFiles(demo);
await page.locator('.result-picture svg.moulded').waitFor();
const session = await context.newCDPSession(page);
const heap = async () => {
  await session.send('HeapProfiler.collectGarbage');
  return (await session.send('Runtime.getHeapUsage')).usedSize / 1e6;
};
/** Processor time of the page's thread so far, ms: what the wall clock would say on a machine that does nothing else. */
const processor = async () => {
  const { metrics } = await session.send('Performance.getMetrics');
  return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN);
};
await session.send('Performance.enable', { timeDomain: 'threadTicks' });
await type(30);
const before = await heap();
const usedBefore = await processor();
const times = await type(changes);
console.log(
  `processor time of a typed number, painting included: mean ${(((await processor()) - usedBefore) / changes).toFixed(1)} ms (${changes})`,
);
report(
  'typed number to everything worked out and drawn into the document',
  times.map((t) => t.drawn),
);
report(
  'typed number to painted picture, from a key at any time of a frame',
  times.map((t) => t.painted),
);
console.log(`memory: ${before.toFixed(1)} MB before, ${(await heap()).toFixed(1)} MB after ${changes} changes`);
await browser.close();

/** Types that many circumferences one after the other, each after the former was painted. */
function type(count) {
  return page.evaluate(
    async ([times, FRAME, GOLDEN]) => {
      const input = document.getElementById('field-digits-ring-circumference');
      const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
      const list = [];
      for (let k = 0; k < times; k++) {
        await new Promise(requestAnimationFrame);
        // A key comes at any time of a frame: each at another part of it, evenly spread. One that came at the very beginning of each would wait a whole
        // frame for the next, whatever the page did.
        const due = performance.now() + FRAME * ((k * GOLDEN) % 1);
        await new Promise((done) => setTimeout(done));
        while (performance.now() < due) {}
        set.call(input, String(52 + (k % 30) / 10));
        const start = performance.now();
        input.dispatchEvent(new InputEvent('input', { bubbles: true }));
        const handled = performance.now() - start;
        let frame = 0;
        const drawn = await new Promise((done) =>
          requestAnimationFrame((time) => {
            frame = performance.now() - Math.max(time, start);
            done(handled + Math.max(0, frame));
          }),
        );
        // A message after the frame comes when the frame was painted.
        await new Promise((done) => {
          const channel = new MessageChannel();
          channel.port1.onmessage = done;
          channel.port2.postMessage(0);
        });
        list.push({ drawn, painted: performance.now() - start });
      }
      return list;
    },
    [count, FRAME, GOLDEN],
  );
}

function report(name, values) {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))].toFixed(1);
  console.log(`${name}: median ${at(0.5)} ms, p95 ${at(0.95)} ms (${sorted.length})`);
}
