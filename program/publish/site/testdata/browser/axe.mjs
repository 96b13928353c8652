// usage: node axe.mjs BASE PAGE…
// Runs axe-core on every page: light and dark, 320 and 1280 px wide, and with the
// hold timer open and a result written where there is a place for it.
import { axe, check, end, open } from "./open.mjs";

const [base, ...pages] = process.argv.slice(2);
const source = axe();
const browser = await open();
const page = await (await browser.newContext()).newPage();

const run = async (name, state) => {
  const { violations, passes } = await page.evaluate(() => axe.run(document, { resultTypes: ["violations"] }));
  check(passes.length > 5, name, state, "was hardly checked");
  for (const v of violations) {
    for (const n of v.nodes) check(false, name, state, v.id + ":", v.help, n.html.slice(0, 160), n.failureSummary.replace(/\s+/g, " "));
  }
};

// What is printed in less than 9 points, drawings apart.
const tooSmall = () => {
  const found = new Set(), words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (words.nextNode()) {
    const e = words.currentNode.parentElement, size = parseFloat(getComputedStyle(e).fontSize);
    if (words.currentNode.data.trim() && e.getClientRects().length && !e.closest("svg, .unseen") && size < 12) found.add(e.outerHTML.slice(0, 80) + " " + size + " px");
  }
  return [...found];
};

for (const name of pages) {
  await page.goto(base + name);
  await page.evaluate(source);
  for (const colorScheme of ["light", "dark"]) {
    await page.emulateMedia({ colorScheme });
    for (const width of [320, 1280]) {
      await page.setViewportSize({ width, height: 800 });
      await run(name, colorScheme + " " + width);
      check((await page.evaluate(() => document.documentElement.scrollWidth)) <= width, name, "is wider than", width);
    }
  }
  await page.emulateMedia({ media: "print", colorScheme: "light" });
  for (const small of await page.evaluate(tooSmall)) check(false, name, "printed:", small);
  await page.emulateMedia({ media: null });
  const came = page.locator(".came").first();
  if (await came.count()) { // with results, which the page of what is kept then shows as well
    await came.fill("x");
    await run(name, "with a slip");
    await came.fill("9");
  }
  const timer = page.locator("button.go").first();
  if (await timer.count()) {
    await timer.click();
    await run(name, "timer open");
  }
}
await end(browser);
