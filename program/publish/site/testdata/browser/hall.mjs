// usage: node hall.mjs FOLDER CLIENT
// A client's pages in a hall without signal: kept at the first visit, opened and written
// on without a network, replaced by a newer plan, and left alone by one that does not
// come whole, by storage that is full and by a browser that keeps nothing. FOLDER is the
// site on disk, which this check serves itself, so that it can take the network away.
import { createServer } from "node:http";
import { existsSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";
import { check, end, open } from "./open.mjs";

const [folder, client] = process.argv.slice(2);
const types = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".svg": "image/svg+xml", ".webmanifest": "application/manifest+json", ".png": "image/png", ".pdf": "application/pdf" };
let down = false, newer = "", missing = "";
const asked = [];
const server = createServer((request, response) => {
  const path = decodeURI(new URL(request.url, "http://x").pathname).replace("/some/where/", "");
  asked.push(path);
  if (down) return request.socket.destroy();
  if (path.endsWith("/index.html")) { // as many hosts do
    response.writeHead(301, { location: "./" });
    return response.end();
  }
  const file = join(folder, path.replace(/\/$/, "/index.html"));
  if (!existsSync(file) || (missing && path.endsWith(missing))) {
    response.writeHead(404);
    return response.end();
  }
  let body = readFileSync(file);
  if (newer && extname(file) === ".html") body = body.toString().replace("<h1>", "<h1>" + newer + " ");
  if (newer && path.endsWith("worker.js")) body = body.toString().replace(/VERSION = "[0-9a-f]+"/, `VERSION = "${newer}"`);
  response.writeHead(200, { "content-type": types[extname(file)] || "application/octet-stream", "cache-control": "no-store" });
  response.end(body);
}).listen(0, "127.0.0.1");
await new Promise((ready) => server.on("listening", ready));
const base = `http://127.0.0.1:${server.address().port}/some/where/`, home = base + client;

const browser = await open();
const phone = { viewport: { width: 390, height: 800 }, hasTouch: true };
const context = await browser.newContext(phone);
const page = await context.newPage();
page.on("pageerror", (e) => check(false, "script:", e.message));
const heading = () => page.locator("h1").innerText();
const caught = () => page.evaluate(async () => (await caches.keys()).sort().join("\n"));
const settled = async (version = "") => { // all of one version is kept, and answers
  const is = (v) => caches.keys().then((all) => all.length === 1 && all[0].endsWith(v) && navigator.serviceWorker.controller?.state === "activated");
  for (let tries = 0; tries < 200 && !(await page.evaluate(is, version)); tries++) await page.waitForTimeout(50);
  check(await page.evaluate(is, version), "the pages", version, "are never kept:", await caught());
};

// The first visit keeps the pages of this client, what they load, and nothing else.
await page.goto(home);
await settled();
const urls = await page.evaluate(async () => (await (await caches.open((await caches.keys())[0])).keys()).map((r) => r.url));
check(urls.length > 40 && urls.includes(home + "exercises.html") && urls.includes(home + "wall-chart.pdf") && urls.every((u) => u.startsWith(base + client) || /^[a-z0-9-]+\.(css|js|svg)$/.test(u.slice(base.length))), "is kept:", urls.join(" "));

// Without a network: every page of the block, with its figure, look and boxes.
down = true;
asked.length = 0;
for (const name of ["", "index.html", "week-2.html", "day-2027-01-11.html", "phone.html"]) {
  await page.goto(home + name);
  check((await page.evaluate(() => getComputedStyle(document.body).marginTop)) === "0px", name, "has lost its look");
  check(await page.evaluate(() => [...document.images].every((i) => i.loading === "lazy" || i.naturalWidth > 0)), name, "has lost its pictures");
}
await page.goto(home + "day-2027-01-11.html");
const exercise = await page.locator(".items .big h2 a").first().getAttribute("href"); // how it is done, a tap away
await page.locator(".items .big h2 a").first().tap();
await page.waitForURL(home + exercise);
const guide = page.locator(".guide:target");
check((await guide.locator("h2").innerText()).length > 2 && (await guide.locator(".cues li").count()) > 0, "nobody says how it is done:", exercise);
await guide.locator("img").first().scrollIntoViewIfNeeded();
await page.waitForFunction(() => document.querySelector(".guide:target img").naturalWidth > 0);
check((await page.goto(home + "wall-chart.pdf")).status() === 200, "the wall chart is not kept");
check(asked.every((path) => path.endsWith("worker.js") || path === "/favicon.ico"), "was asked for without a network:", asked.join(" "));
await page.goto(home + "index.html");
await Promise.all([page.waitForURL(/day-/), page.locator('nav.block a[data-day="2027-01-13"]').tap()]);
await page.locator(".asked label").first().tap();
await page.reload();
check(await page.locator('.asked [type="checkbox"]').first().isChecked(), "what was written without a network is lost");
await page.goto(home + "day-2030-01-01.html"); // a day of some older plan
check(/Maren/.test(await page.title()) && (await page.locator(".door").count()) === 1, "a day that is gone leads to", await page.title());

// A plan that does not come whole leaves the one before.
const before = await caught();
down = false;
newer = "aaaaaaaaaaaa";
missing = "week-12.html";
await page.goto(home + "index.html");
await page.evaluate(async () => {
  const registration = await navigator.serviceWorker.getRegistration();
  await registration.update().catch(() => {});
  const worker = registration.installing;
  if (worker) await new Promise((done) => (worker.onstatechange = () => worker.state === "redundant" && done()));
});
check((await caught()) === before, "half a plan is kept:", await caught());
await page.goto(home + "week-1.html");
check(!(await heading()).includes(newer), "half a plan is shown");

// A newer plan that does is said, takes the old one's place, and is shown from then on.
missing = "";
newer = "bbbbbbbbbbbb";
await page.goto(home + "index.html");
await page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
await page.locator(".newer").waitFor({ state: "visible" });
await settled(newer);
check(!(await heading()).includes(newer), "a page changed under the reader's hands");
await Promise.all([page.waitForEvent("load"), page.locator(".newer a").click()]);
check((await heading()).includes(newer), "the newer plan is not shown");
down = true;
await page.goto(home + "week-3.html");
check((await heading()).includes(newer), "the newer plan is not kept");

// The pages can be taken off the phone, stay off, and come back when asked.
down = false;
await page.goto(home + "phone.html");
await page.locator(".remove").click();
await page.locator(".take").waitFor({ state: "visible" });
await page.goto(home + "week-3.html");
await page.waitForTimeout(300);
check((await caught()) === "" && (await page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length)) === 0, "pages are kept against the reader's wish");
await page.goto(home + "phone.html");
await page.locator(".take").click();
await settled();
check((await page.locator(".pages").innerText()).includes(String(urls.length)), "the pages are said to be", await page.locator(".pages").innerText());

// On the home screen it begins at this client's program, and ends with this folder.
const manifest = JSON.parse(readFileSync(join(folder, client, "manifest.webmanifest"), "utf8"));
const at = new URL(await page.locator('link[rel="manifest"]').getAttribute("href"), page.url());
check(new URL(manifest.start_url, at).href === home + "index.html" && new URL(manifest.scope, at).href === home, "it would begin at", manifest.start_url, manifest.scope);
check(manifest.icons.every((i) => existsSync(join(folder, client, i.src))), "it has no icon");

// No room, and a browser without all this: words, and pages as ever.
for (const [name, init] of [
  ["no room", () => Object.defineProperty(navigator.serviceWorker, "register", { value: () => Promise.reject(new DOMException("full", "QuotaExceededError")) })],
  ["a private window", () => Object.defineProperty(Navigator.prototype, "serviceWorker", { get: () => undefined })],
  ["no worker at all", () => delete Navigator.prototype.serviceWorker],
]) {
  const other = await (await browser.newContext(phone)).newPage();
  other.on("pageerror", (e) => check(false, name, "script:", e.message));
  await other.addInitScript(init);
  await other.goto(home + "day-2027-01-11.html");
  await other.locator(".asked label").first().tap();
  check((await other.locator(".state").innerText()).includes("1"), name, "keeps no results");
  await other.goto(home + "phone.html");
  await other.waitForFunction(() => /signal/.test(document.querySelector(".pages").textContent));
  await other.context().close();
}
server.close();
server.closeAllConnections();
await end(browser);
