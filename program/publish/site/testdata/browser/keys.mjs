// usage: node keys.mjs BASE CLIENT
// By keyboard alone, on a desktop and at 400 % of it: a stranger finds a level and says
// when it starts, a client ticks a set off, writes one down and reads how it is done. What
// has the focus is seen (WCAG 2.2, 2.4.7), and no bar lies over it (2.4.11).
import { check, end, open } from "./open.mjs";

const [base, client] = process.argv.slice(2);
const browser = await open();

for (const viewport of [{ width: 1280, height: 800 }, { width: 320, height: 200 }]) {
  const page = await (await browser.newContext({ viewport })).newPage();
  page.on("pageerror", (e) => check(false, "script:", e.message));
  await page.clock.setFixedTime(new Date("2027-01-11T09:00:00"));
  const size = viewport.width + " px";

  // Tab by tab to an element; each on the way is looked at.
  const to = async (selector) => {
    for (let tabs = 0; tabs < 150; tabs++) {
      await page.keyboard.press("Tab");
      const { found, what, seen, clear } = await page.evaluate((selector) => {
        const e = document.activeElement, shown = e.matches('.ticks [type="checkbox"]') ? e.nextElementSibling : e;
        const box = shown.getBoundingClientRect(), style = getComputedStyle(shown);
        const parts = [.05, .25, .5, .75, .95], there = parts.some((x) => parts.some((y) => { // some of it
          const over = document.elementFromPoint(box.left + x * box.width, box.top + y * box.height);
          return over && (shown.contains(over) || over.contains(e));
        }));
        return { found: e.matches(selector), what: e.outerHTML.slice(0, 90), seen: e === document.body || style.outlineStyle !== "none",
          clear: e === document.body || there };
      }, selector);
      check(seen, size, page.url(), "shows no focus on", what);
      check(clear, size, page.url(), "something lies over", what);
      if (found) return;
    }
    check(false, size, page.url(), "no key leads to", selector);
  };
  const follow = async (selector, pattern) => {
    await to(selector);
    await Promise.all([page.waitForURL(pattern), page.keyboard.press("Enter")]);
  };

  await page.goto(base + "index.html");
  await page.keyboard.press("Tab");
  check(await page.evaluate(() => document.activeElement.matches(".skip")), size, "the first key does not skip");
  await page.keyboard.press("Enter");
  await follow('.doors a[href="programs.html"]', /programs\.html/);
  await follow('main a[href^="program-"]', /program-/);
  await follow('main a[href^="find-"]', /find-/);
  await follow('main a[href^="level-"]', /level-/);
  await to("#start");
  await page.keyboard.type("01122027"); // as an English date field takes it
  await follow(".door", /day-1\.html/);
  check(/-week-1-day-1\.html$/.test(page.url()), size, "the first session is", page.url());

  await page.goto(base + client + "index.html");
  await follow(".door", /day-2027-01-/);
  await to(".prepare summary");
  await page.keyboard.press("Enter");
  check(await page.locator(".prepare .items").isVisible(), size, "the preparation stays folded");
  await to('.big .ticks [type="checkbox"]');
  await page.keyboard.press("Space");
  await page.keyboard.press("Tab");
  check((await page.evaluate(() => document.activeElement.value)) !== "", size, "a set that was ticked off has no seconds");
  await to(".big button.go");
  await page.keyboard.press("Enter");
  for (let i = 0; i < 4; i++) await page.keyboard.press("Tab"); // a dialog keeps the focus
  check(await page.evaluate(() => document.querySelector(".timer").contains(document.activeElement) || document.activeElement === document.body), size, "the focus left the timer");
  await page.keyboard.press("Escape");
  await page.reload();
  await follow(".big h2 a", /exercises\.html#/);
  await page.context().close();
}
await end(browser);
