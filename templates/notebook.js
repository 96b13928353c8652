// The notebook: what a phone keeps of one client's sessions, one entry of its storage
// for each plan, as fields of a page and as lines of a log. Nothing else reads it, and
// nothing of it is sent from here. Where the phone refuses to keep anything, it lasts
// until the page is left, and says so by what keep gives back.
window.notebook = (() => {
  "use strict";
  const prefix = "results " + new URL(".", location).pathname + " "; // a host has many clients
  const loose = new Map(); // what could not be kept

  const parse = (text) => {
    try {
      const book = JSON.parse(text);
      return Object.values(book.days).every((d) => Array.isArray(d.lines)) ? book : null;
    } catch {
      return null;
    }
  };
  const stored = (version) => {
    try {
      return localStorage.getItem(prefix + version);
    } catch {
      return null;
    }
  };
  const read = (version) => loose.get(version) ?? parse(stored(version)) ?? { plan: "", days: {} };

  const write = (version, book) => {
    let kept = true;
    try {
      if (Object.keys(book.days).length) localStorage.setItem(prefix + version, JSON.stringify(book));
      else localStorage.removeItem(prefix + version);
      loose.delete(version);
    } catch {
      loose.set(version, book);
      kept = false;
    }
    document.dispatchEvent(new CustomEvent("notebook", { detail: { kept } }));
    return kept;
  };

  // Takes a day of a plan in, or forgets it. Another page may have written meanwhile,
  // so that the rest is read again each time.
  const keep = (version, day, entry, plan) => {
    const book = read(version);
    if (plan) book.plan = plan;
    if (entry) book.days[day] = entry;
    else delete book.days[day];
    return write(version, book);
  };

  const versions = () => {
    let keys = [];
    try {
      keys = Object.keys(localStorage).filter((k) => k.startsWith(prefix)).map((k) => k.slice(prefix.length));
    } catch {} // it may not even be looked at
    return [...new Set([...keys, ...loose.keys()])].sort();
  };

  // Every day that is kept, of all plans, the oldest first.
  const all = () => versions().flatMap((version) => {
    const { plan, days } = read(version);
    return Object.entries(days).map(([day, entry]) => ({ version, plan, day, entry }));
  }).sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));

  // What somebody else wrote under our name, or half of something: shown, never read.
  const spoilt = () => versions().filter((v) => !loose.has(v) && !parse(stored(v))).map((v) => ({ key: prefix + v, text: stored(v) }));

  const isSent = (d) => d.entry.sent === d.entry.lines.join("\n");
  const unsent = () => all().filter((d) => d.entry.lines.length && !isSent(d));
  const mark = (list) => list.forEach((d) => keep(d.version, d.day, { ...d.entry, sent: d.entry.lines.join("\n") }));

  return { read, keep, all, spoilt, isSent, unsent, mark };
})();
