// usage: node start.mjs BASE LEVEL
// A reader of a public program says when it starts: the next session is marked, the
// calendar is one that ical.js reads, and all of it is forgotten again. LEVEL is the
// address of a level below BASE.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { check, end, open } from "./open.mjs";

const [base, level] = process.argv.slice(2);
const library = join(process.env.GATEPOST_NODE_MODULES, "ical.js", "dist", "ical.js");
const { default: ICAL } = await import(pathToFileURL(library));
const browser = await open();
const context = await browser.newContext({ viewport: { width: 390, height: 800 }, acceptDownloads: true });
const page = await context.newPage();
page.on("request", (r) => check(r.url().startsWith(base) || r.url().startsWith("blob:"), "asked for", r.url()));
page.on("console", (m) => check(m.type() !== "error", "console:", m.text()));
page.on("pageerror", (e) => check(false, "script:", e.message));
await page.clock.install({ time: new Date("2027-01-12T09:00:00") });

await page.goto(base + level);
check(await page.locator(".door").isHidden(), "a session is the next one before there is a day");
// Whoever starts on a Tuesday trains on Tuesdays, Thursdays and Saturdays; a week
// later is the first day of the second week.
await page.fill("#start", "2027-01-05");
check((await page.locator(".door").innerText()).includes("12 January"), "the door says", await page.locator(".door").innerText());
check(/-week-2-day-1\.html$/.test(await page.locator(".door").getAttribute("href")), "the door leads elsewhere");
check((await page.locator('.block [aria-current="date"]').innerText()) === "Tue\u00a012", "the session is not marked");

const [download] = await Promise.all([page.waitForEvent("download"), page.locator(".ics").click()]);
const file = readFileSync(await download.path(), "utf8");
check(file.split("\r\n").every((line) => Buffer.byteLength(line) <= 75), "a line of the calendar is too long");
const events = new ICAL.Component(ICAL.parse(file)).getAllSubcomponents("vevent").map((e) => new ICAL.Event(e));
const sessions = await page.locator(".block a[data-after]").count();
check(events.length === sessions && sessions > 10, events.length, "events of", sessions, "sessions");
check(events[0].startDate.toString() === "2027-01-05" && events[1].startDate.toString() === "2027-01-07", "the first day is", events[0].startDate);
check(/^\d+\s×\s\d+/.test(events[0].summary), "an event is called", events[0].summary);
check(new Set(events.map((e) => e.uid)).size === sessions, "two events are one");

await page.goto(base + "index.html");
await page.locator(".again").click();
await page.waitForLoadState();
check(page.url() === base + level, "the way back leads to", page.url());
check((await page.locator("#start").inputValue()) === "2027-01-05", "the day was not kept");
await page.locator(".forget").click();
check((await page.evaluate(() => localStorage.length)) === 0, "something is kept still");
check(await page.locator(".door").isHidden(), "the door is there still");
await page.goto(base + "index.html");
check(await page.locator(".again").isHidden(), "there is a way back to nothing");
await end(browser);
