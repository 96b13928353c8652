// usage: node phone.mjs BASE CLIENT
// A client writes sessions down on a phone, comes back to them, sends them and takes
// them off the phone again; with storage that refuses, that is an older plan's, and with
// a clock that is wrong. CLIENT is the address of the shared program below BASE.
import { check, end, open } from "./open.mjs";

const [base, client] = process.argv.slice(2);
const browser = await open();
const HEAD = "date,exercise,set,bands,hold_s,reps,rpe,clean,pain,ahead,note,client\n";

// A phone whose calendar says a day; init is run before every page.
const phone = async (now, init) => {
  const context = await browser.newContext({ viewport: { width: 390, height: 800 }, hasTouch: true, serviceWorkers: "block" });
  if (base.startsWith("http")) await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await context.addInitScript(() => {
    window.moved = 0; // Layout Instability, W3C community group: the shift score
    new PerformanceObserver((list) => list.getEntries().forEach((e) => (window.moved += e.value))).observe({ type: "layout-shift", buffered: true });
  });
  if (init) await context.addInitScript(init);
  const page = await context.newPage();
  page.on("console", (m) => check(m.type() !== "error", "console:", m.text()));
  page.on("pageerror", (e) => check(false, "script:", e.message));
  if (now) await page.clock.install({ time: new Date(now) });
  return page;
};
const go = (page, name) => page.goto(base + client + name);
const item = (page, exercise) => page.locator(`li[data-exercise="${exercise}"]`);
const part = (page, name) => page.locator(`[data-part="${name}"]`);
const tick = (page, exercise, n) => item(page, exercise).locator(".ticks label").nth(n - 1).tap();
const came = (page, exercise, n) => item(page, exercise).locator(".came").nth(n - 1);
const text = (page) => page.locator("textarea.lines").inputValue();
const state = (page) => page.locator(".state").innerText();
const same = (got, want, ...where) => check(got === want, ...where, "is\n" + got + "\nwant\n" + want);

// Monday: the main hold by hand, the rest as printed.
const page = await phone("2027-01-11T18:00:00");
await go(page, "day-2027-01-11.html");
check((await page.locator("[data-part]:disabled").count()) === 0, "a box does not open");
check((await page.locator("textarea.lines").isHidden()) && (await state(page)) === "", "something is to send before anything was done");
await tick(page, "open-tuck", 1);
await tick(page, "open-tuck", 2);
same(await came(page, "open-tuck", 2).inputValue(), "12", "a set as printed");
same(await text(page), HEAD + "2027-01-11,open-tuck,,,12 12,,,,,,,Maren-k7f3\n", "two sets");
await came(page, "open-tuck", 3).fill("9");
check(await item(page, "open-tuck").locator('[type="checkbox"]').nth(2).isChecked(), "a set with seconds is not ticked");
await item(page, "open-tuck").locator('[data-part="rpe"]').fill("7,5");
await item(page, "open-tuck").locator('[data-part="clean"]').selectOption("no");
await part(page, "before-wrists").fill("1");
same(await text(page), HEAD + "2027-01-11,open-tuck,,,12 12 9,,7.5,no,wrists 1,,,Maren-k7f3\n", "the main hold alone");
await page.locator(".rest:visible").last().tap();
await part(page, "note").fill('felt "good", cold hall');
await part(page, "next-elbows").fill("2");
const monday = "2027-01-11,open-tuck,,,12 12 9,,7.5,no,,,,Maren-k7f3\n" +
  "2027-01-11,done,,,,,,,wrists 1,,\"felt 'good', cold hall\",Maren-k7f3\n2027-01-12,morning,,,,,,,elbows 2,,,Maren-k7f3\n";
same(await text(page), HEAD + monday, "the session");
check(await page.locator(".clock").isHidden(), "the day is asked for on the day itself");

// What is no number is said and left out.
await came(page, "open-tuck", 3).fill("1o");
check((await came(page, "open-tuck", 3).getAttribute("aria-invalid")) === "true" && (await page.locator(".amiss").innerText()) !== "", "a slip is not said");
check((await text(page)).includes("open-tuck,,,12 12,,7.5"), "a slip is sent:", await text(page));
await part(page, "before-wrists").fill("11");
check(!(await text(page)).includes("wrists"), "a pain of eleven is sent");
await part(page, "before-wrists").fill("1");
await came(page, "open-tuck", 3).fill("9");

// It is all there after the page was left, and the mail has the same lines.
await go(page, "index.html");
same(await page.locator(".waits .count").innerText(), "Not sent yet: 1", "the program's page");
await go(page, "day-2027-01-11.html");
same(await text(page), HEAD + monday, "the session, later");
same(await part(page, "note").inputValue(), 'felt "good", cold hall', "the note");
check(await item(page, "pull-up").locator('[type="checkbox"]').last().isChecked(), "a tick was lost");
await part(page, "next-elbows").fill("");
for (const name of ["index.html", "day-2027-01-11.html", "phone.html"]) {
  await page.clock.setSystemTime(new Date("2027-01-12T08:00:00"));
  await go(page, name);
  await page.waitForTimeout(300);
  check((await page.evaluate(() => window.moved)) === 0, name, "moves by", await page.evaluate(() => window.moved));
}
await go(page, "index.html");
await Promise.all([page.waitForURL(/day-2027-01-11\.html#morning$/), page.locator(".morning").tap()]);
await part(page, "next-elbows").fill("2");
await go(page, "index.html");
check(await page.locator(".morning").isHidden(), "a morning is asked for twice");
await go(page, "day-2027-01-11.html");
const mail = new URL(await page.locator(".mail").getAttribute("href"));
same(mail.searchParams.get("body").replaceAll("\r\n", "\n"), HEAD + monday, "the mail");
check(mail.protocol === "mailto:" && mail.pathname.includes("@"), "the mail goes to", mail.pathname);

// Copied, it is sent; changed since, it says so; sent again, it is the same lines.
if (base.startsWith("http")) {
  await page.locator(".copy").tap();
  await page.waitForFunction(() => document.querySelector(".state").textContent.startsWith("Copied"));
  same((await page.evaluate(() => navigator.clipboard.readText())).replaceAll("\r\n", "\n"), HEAD + monday, "the clipboard");
  check(await page.locator("textarea.lines").isHidden(), "what was sent is to be sent");
  await go(page, "phone.html");
  check(/^sent/.test(await page.locator(".how").innerText()), "the list says", await page.locator(".how").innerText());
  await page.locator(".again").tap();
  same(await text(page), HEAD + monday, "once more");
  await page.locator(".copy").tap();
  await page.waitForFunction(() => document.querySelector(".state").textContent.startsWith("Copied"));
  await go(page, "day-2027-01-11.html");
  await came(page, "open-tuck", 3).fill("8");
  same(await text(page), HEAD + monday.replace("12 12 9", "12 12 8"), "a day that was changed");
  await go(page, "phone.html");
  check(/^changed/.test(await page.locator(".how").innerText()), "the list says", await page.locator(".how").innerText());
  await go(page, "day-2027-01-11.html");
  await came(page, "open-tuck", 3).fill("9");
  check((await state(page)).startsWith("All is sent"), "changed back:", await state(page));
}

// Wednesday, on a phone whose clock is years ahead, with the timer: one hold ended early.
await page.clock.setSystemTime(new Date("2031-05-01T18:00:00"));
await go(page, "day-2027-01-15.html");
const pass = (seconds) => page.clock.runFor(seconds * 1000 + 150);
await item(page, "open-tuck").locator(".go").tap();
await pass(8);
await pass(5);
await page.locator(".timer .further").tap();
await page.locator(".timer .further").tap();
await pass(12);
await page.keyboard.press("Escape");
same(await came(page, "open-tuck", 1).inputValue(), "5", "the hold that ended early");
same(await came(page, "open-tuck", 2).inputValue(), "12", "the hold that did not");
same(await page.locator("textarea.lines").inputValue().then((t) => t.split("\n").find((l) => l.includes("5 12"))), "2027-01-15,open-tuck,,,5 12,,,,,,,Maren-k7f3", "by the timer");
check((await page.locator(".clock").innerText()).includes("2031"), "a day that is not printed is not asked about");
await page.locator(".clock button").tap();
check((await text(page)).includes("\n2031-05-01,open-tuck"), "the day that was chosen is not taken");
await part(page, "on").fill("2027-01-11");
check((await page.locator(".amiss").innerText()) !== "", "two sessions on a day are not said");
await part(page, "on").fill("2027-01-16");
check((await text(page)).includes("\n2027-01-16,open-tuck"), "the day that was written is not taken");

// A lean that went further, and joints without any work.
await go(page, "day-2027-01-13.html");
const lean = page.locator("li[data-lean]").first();
await lean.locator(".ticks label").first().tap();
await lean.locator('[data-part="lean"]').fill("18");
check(/,18 cm,,Maren-k7f3\n/.test(await text(page)), "the lean is", await text(page));
await go(page, "day-2027-01-20.html");
await part(page, "before-elbows").fill("5");
check((await text(page)).includes("2027-01-20,morning,,,,,,,elbows 5,,,Maren-k7f3\n"), "joints that kept somebody from training are lost");

// All of it can be taken off the phone again.
await go(page, "phone.html");
check((await page.locator(".kept li").count()) === 4, await page.locator(".kept li").count(), "days are shown of four");
page.on("dialog", (d) => d.accept());
await page.locator(".drop").first().tap();
check((await page.locator(".kept li").count()) === 3, "a day stays");
await page.locator(".forget").tap();
check((await page.locator(".kept li").count()) === 0 && (await page.locator(".nothing").isVisible()), "days stay");
check((await page.evaluate(() => localStorage.length)) === 0, "something is kept still");

// Where nothing may be kept, it says so, and what stands there can be sent.
for (const refuse of ["setItem", "getItem"]) {
  const full = await phone("2027-01-11T18:00:00", `Storage.prototype.${refuse} = () => { throw new DOMException("no", "QuotaExceededError"); };
    ${refuse === "getItem" ? "Storage.prototype.setItem = Storage.prototype.getItem; Object.defineProperty(window, 'localStorage', { get: Storage.prototype.getItem });" : ""}
    navigator.share = async (what) => { window.shared = what.text; };`);
  await go(full, "day-2027-01-11.html");
  await tick(full, "open-tuck", 1);
  check((await state(full)).startsWith("This phone keeps nothing"), refuse, "says", await state(full));
  await full.locator(".share").tap();
  await full.waitForFunction(() => window.shared);
  same(await full.evaluate(() => window.shared), HEAD + "2027-01-11,open-tuck,1,,12,,,,,,,Maren-k7f3\n", "what is shared");
  await go(full, "phone.html");
  check(await full.locator(".nothing").isVisible(), "something was kept");
  await full.context().close();
}

// Results of an older plan, and something that these pages did not write.
const old = await phone("2027-01-18T18:00:00");
await go(old, "index.html");
await old.evaluate(() => {
  const folder = "results " + new URL(".", location).pathname + " ";
  const day = { on: "2027-01-18", lines: ["2027-01-18,done,,,,,,,,,,Maren-k7f3"], items: [], rest: {} };
  localStorage.setItem(folder + "0ld1234", JSON.stringify({ plan: "Version 0ld1234", days: { "2027-01-18": day } }));
  localStorage.setItem(folder + "bad", "{{{");
});
await go(old, "day-2027-01-18.html");
check((await old.locator(".older").innerText()).includes("0ld1234") && (await old.locator(".older pre").innerText()).includes("2027-01-18,done"), "older results are not shown");
same(await text(old), HEAD + "2027-01-18,done,,,,,,,,,,Maren-k7f3\n", "what an older plan has to send");
await go(old, "phone.html");
check((await old.locator(".kept li").count()) === 2 && (await old.locator(".kept").innerText()).includes("{{{"), "something is kept and not shown");
await old.locator(".drop").first().tap();
await old.locator(".drop").first().tap();
check((await old.evaluate(() => localStorage.length)) === 0, "it can't be deleted");
await end(browser);
