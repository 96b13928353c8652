// usage: node walk.mjs BASE CLIENT
// Walks from the home page to a session, as a reader does, and uses the hold timer
// by keyboard, on a clock that the check turns itself. CLIENT is the address of a
// shared program below BASE.
import { check, end, open } from "./open.mjs";

const [base, client] = process.argv.slice(2);
const browser = await open();
const phone = { viewport: { width: 390, height: 800 }, hasTouch: true };
const context = await browser.newContext(phone);
await context.addInitScript(() => {
  window.beeps = [];
  const node = () => ({ connect: (to) => to, start() {}, stop() {}, frequency: { set value(hertz) { window.beeps.push(hertz); } },
    gain: { setValueAtTime() {}, linearRampToValueAtTime() {} } });
  window.AudioContext = class { currentTime = 0; destination = {}; createOscillator = node; createGain = node; resume() {} };
});
const page = await context.newPage();
page.on("request", (r) => check(r.url().startsWith(base), "asked for", r.url()));
page.on("console", (m) => check(m.type() !== "error", "console:", m.text()));
page.on("pageerror", (e) => check(false, "script:", e.message));

const text = (selector) => page.locator(selector).first().innerText();
const follow = async (selector, pattern) => {
  await page.locator(selector).first().click();
  await page.waitForLoadState();
  check(pattern.test(page.url()), selector, "led to", page.url());
};

// Home, programs, the way in, find your level, level, week, session.
await page.goto(base + "index.html");
await follow('main a[href="programs.html"], nav a[href="programs.html"]', /programs\.html$/);
await follow("main .doors a", /program-[a-z0-9-]+\.html$/);
await follow('main a[href^="find-"]', /find-[a-z0-9-]+\.html$/);
const FIND = page.url().slice(base.length);
await follow("main table td a", /level-[a-z0-9-]+-\d+\.html$/);
await follow('main a[href*="-week-1.html"]', /week-1\.html(#.*)?$/);
await follow(".sessions h2 a", /week-1-day-1\.html$/);
check(await page.locator(".items .big h2").first().isVisible(), "no main work to be seen");
check(await page.locator(".prepare .items").isHidden(), "the preparation is not folded");
await page.locator(".big .ticks label").first().tap();
check(await page.locator(".big .ticks input").first().isChecked(), "a set can't be ticked off");

// A shared program, its next session, the timer.
await page.clock.install({ time: new Date("2027-01-12T09:00:00") });
await page.goto(base + client + "index.html");
check(/2027|1[2-9]|[2-9]\d/.test(await text(".door")), "no next session");
check((await page.locator('.block [aria-current="date"]').count()) === 1, "one session is the next one");
await Promise.all([page.waitForURL(/day-/), page.locator(".door").tap()]);
check(/day-2027-01-1[2-9]\.html$/.test(page.url()), "the next session is", page.url());

const panel = page.locator(".timer"), button = page.locator("button.go:visible:not([data-up])").first();
const { sets, hold, rest } = await button.evaluate((b) => b.dataset);
check(+sets > 0 && +hold > 0, "the timer has nothing to count");
check(await panel.isHidden(), "the timer is open before it was asked for");
await button.focus();
await page.keyboard.press("Enter");
check(await panel.isVisible(), "Enter does not open the timer");
const now = () => panel.getAttribute("data-now");
const digits = async () => (await text(".digits")).split(":").reduce((sum, n) => 60 * sum + +n, 0);
const pass = (seconds) => page.clock.runFor(seconds * 1000 + 150);
const beeps = () => page.evaluate(() => window.beeps.splice(0).join(" "));
check((await now()) === "ready" && (await digits()) === 8, "starts with", await now(), await digits());
await pass(8);
check((await now()) === "hold" && (await beeps()) === "587 587 587 880", "after getting ready:", await now());
check((await text(".round")).includes(sets), "the set is", await text(".round"));
await page.keyboard.press("Space");
const left = await digits();
await pass(30);
check((await digits()) === left && (await now()) === "hold", "Space does not pause");
await page.keyboard.press("Space");
await pass(+hold);
check((await beeps()) === "440", "the hold's end is not told");
check((await now()) === (+sets > 1 ? "rest" : "done"), "after the hold:", await now());
await pass(Math.max(+rest, 8));
check(+sets === 1 || ((await now()) === "hold" && (await beeps()) === "587 587 587 880"), "after the rest:", await now());
for (let set = 2; set <= +sets; set++) await pass(+hold + Math.max(+rest, 8));
check((await now()) === "done", "at the end:", await now());
const marks = button.locator("xpath=ancestor::li").locator('.ticks [type="checkbox"]');
check((await marks.count()) === +sets && (await marks.last().isChecked()), "the sets are not ticked off");
await page.keyboard.press("Escape");
check(await panel.isHidden(), "Escape does not close the timer");
check(await button.evaluate((b) => b === document.activeElement), "the way back is lost");
await button.tap();
await page.locator(".timer .further").tap();
check((await now()) === "hold", "a tap does not skip");
await page.locator(".timer .further").tap();
check(+sets === 1 || +rest < 60 || /^\d:\d\d$/.test(await text(".digits")), "a rest of", rest, "s is shown as", await text(".digits"));

// Wherever it is read, all of it can be reached: a phone on its side, a page at 400 %.
for (const [width, height] of [[390, 800], [844, 390], [320, 200]]) {
  await page.setViewportSize({ width, height });
  const spilt = await panel.evaluate((d) => d.scrollWidth > d.clientWidth || [...d.querySelectorAll(".digits, button")].some((e) => {
    const box = e.getBoundingClientRect(), range = document.createRange();
    range.selectNodeContents(e);
    const ink = range.getBoundingClientRect();
    if (e.className === "digits" && (box.top < 0 || box.bottom > innerHeight)) return true; // seen without scrolling
    return ink.left < 0 || ink.right > innerWidth || box.top + d.scrollTop < 0 || box.bottom + d.scrollTop > d.scrollHeight;
  }));
  check(!spilt, "the timer is cut off at", width, "by", height);
}
await page.setViewportSize(phone.viewport);
await page.keyboard.press("Escape");

// A test counts up, here to what is enough.
await page.goto(base + FIND);
await page.locator("button.go").first().tap();
const enough = +(await page.locator("button.go").first().getAttribute("data-hold"));
await pass(8);
await pass(3);
check((await now()) === "hold" && (await digits()) === 3, "after three seconds of a test:", await digits());
await pass(enough);
check((await now()) === "done" && (await text(".round")).includes(enough), "after the test:", await text(".round"));
await page.keyboard.press("Escape");
await page.locator("button.go").first().tap();
await pass(8);
await pass(6);
await page.locator(".timer .hold").tap();
check((await now()) === "done" && /\b6\b/.test(await text(".round")), "a tap ends a test with", await text(".round"));
await page.keyboard.press("Escape");
await page.goto(base + client + "index.html");
await Promise.all([page.waitForURL(/day-/), page.locator(".door").tap()]);
await page.locator("button.go:visible").first().tap();
check((await panel.locator('[aria-live="polite"]').count()) === 1, "nobody hears the timer");
await page.emulateMedia({ reducedMotion: "reduce" });
check((await panel.locator("progress").evaluate((p) => getComputedStyle(p).visibility)) === "hidden", "it moves all the same");

// Without scripts nothing is missing, and nothing is there that does not work.
const bare = await (await browser.newContext({ ...phone, javaScriptEnabled: false })).newPage();
await bare.goto(base + client + "index.html");
check((await bare.locator(".door").getAttribute("href")).startsWith("day-"), "no first session without scripts");
await Promise.all([bare.waitForURL(/day-/), bare.locator(".door").tap()]);
check((await bare.locator("button:visible").count()) === 0, "a button that does nothing");
await end(browser);
