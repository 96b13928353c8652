// Opens a browser for the checks beside this file. Where playwright-core and
// axe-core are installed is said by GATEPOST_NODE_MODULES.
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import { join } from "node:path";

const installed = process.env.GATEPOST_NODE_MODULES;
const require = createRequire(join(installed, "x.js"));
const { chromium } = require("playwright-core");

export const axe = () => readFileSync(join(installed, "axe-core", "axe.min.js"), "utf8");

export const open = () =>
  chromium.launch({ executablePath: process.env.GATEPOST_CHROMIUM, args: ["--no-sandbox", "--disable-gpu"] });

// Every failure is a line; the process ends with 1 when there was one.
export const failures = [];
export const check = (ok, ...words) => {
  if (!ok) failures.push(words.join(" "));
};
export const end = async (browser) => {
  await browser.close();
  for (const line of failures) console.log(line);
  process.exit(failures.length ? 1 : 0);
};
