// Takes down what was done, where a session shows it: a tick is a set as printed, a box
// says what it came to, the timer fills in what was held. All of it goes into the
// notebook at once, with its lines of the log. Without this file there is a page to
// read, and ticks that nobody keeps.
(() => {
  "use strict";
  const box = document.querySelector(".results");
  if (!box || !window.notebook) return;
  const { day, version, plan, client } = box.dataset, words = box.dataset;
  const items = [...document.querySelectorAll(".items > li[data-exercise]")];
  const find = (root, part) => root.querySelector(`[data-part="${part}"]`);
  const fields = (root) => [...root.querySelectorAll("[data-part]")];
  const free = fields(document).filter((f) => !f.closest("li[data-exercise]"));
  const ticksOf = (li) => [...li.querySelectorAll('.ticks [type="checkbox"]')];
  const on = find(document, "on"), clock = box.querySelector(".clock");
  const date = () => (/^\d{4}-\d\d-\d\d$/.test(on.value) ? on.value : day);

  const value = (f) => (f.type === "checkbox" ? (f.checked ? "1" : "") : f.value);
  const set = (f, v) => (f.type === "checkbox" ? (f.checked = v === "1") : (f.value = v));
  const filled = (list) => Object.fromEntries(list.map((f) => [f.dataset.part, value(f)]).filter(([, v]) => v));
  const tick = (li) => {
    for (const f of li.querySelectorAll(".came")) f.closest(".set").querySelector('[type="checkbox"]').checked = f.value.trim() !== "";
  };

  const keep = () => {
    items.forEach(tick);
    const answers = items.map((li) => filled(fields(li))), rest = filled(free.filter((f) => f !== on));
    const nothing = ![rest, ...answers].some((a) => Object.keys(a).length);
    const entry = { on: date(), lines: logLines(items, box, client, date()), items: answers, rest, sent: notebook.read(version).days[day]?.sent };
    notebook.keep(version, day, nothing ? null : entry, plan);
    const twice = !nothing && notebook.all().some((d) => d.day !== day && d.entry.on === date());
    box.querySelector(".amiss").textContent = document.querySelector("[data-part][aria-invalid]") ? words.wrong : twice ? words.twice : "";
  };

  // A session may be done on another day than printed, and a phone's clock may be
  // wrong. So it asks, and takes no day from the clock by itself.
  const two = (n) => String(n).padStart(2, "0");
  const ask = () => {
    const now = new Date(), today = now.getFullYear() + "-" + two(now.getMonth() + 1) + "-" + two(now.getDate());
    const lang = document.documentElement.lang.replace(/^en$/, "en-GB");
    clock.hidden = today === date();
    clock.querySelector("span").textContent = words.today.replace("{day}", now.toLocaleDateString(lang, { weekday: "long", day: "numeric", month: "long", year: "numeric" }));
    clock.querySelector("button").onclick = () => {
      on.value = today;
      clock.hidden = true;
      keep();
    };
  };

  const reached = (li) => {
    const field = find(li, "reached");
    if (field) field.value = ticksOf(li).filter((t) => t.checked).length;
  };
  const ticked = (li, t) => {
    const came = t.closest(".set").querySelector(".came"), { amount } = li.dataset;
    if (came && t.checked && amount === "0") came.focus(); // what it came to is the answer
    else if (came) came.value = t.checked ? amount : "";
    reached(li);
  };
  const held = (li, { set: n, seconds }) => {
    const came = find(li, n), best = find(li, "best"), t = ticksOf(li)[n - 1];
    if (came && !("reps" in li.dataset)) came.value = seconds;
    if (best && t) {
      best.value = Math.max(seconds, +best.value || 0);
      t.checked = seconds >= +li.dataset.amount;
      reached(li);
    }
    ask();
    keep();
  };
  for (const li of items) {
    for (const t of ticksOf(li)) t.onchange = () => ticked(li, t);
    li.addEventListener("held", (e) => held(li, e.detail));
    li.addEventListener("change", ask);
  }
  box.querySelector(".rest").onclick = () => {
    for (const li of items.filter((i) => i.dataset.amount !== "0")) {
      for (const f of li.querySelectorAll(".came")) f.value ||= li.dataset.amount;
    }
    ask();
    keep();
  };

  const kept = notebook.read(version).days[day], older = notebook.all().find((d) => d.day === day && d.version !== version);
  if (kept) {
    items.forEach((li, i) => fields(li).forEach((f) => set(f, kept.items[i]?.[f.dataset.part] || "")));
    for (const f of free) set(f, kept.rest[f.dataset.part] || "");
    on.value = kept.on;
    items.forEach(tick);
  } else if (older) {
    const note = box.querySelector(".older");
    note.hidden = false;
    box.querySelector(".rest").hidden = true;
    note.querySelector("span").textContent = words.older.replace("{plan}", older.plan);
    note.querySelector("pre").textContent = older.entry.lines.join("\n");
  }
  for (const f of [...fields(document), ...box.querySelectorAll("button")]) f.disabled = false;
  const changed = ({ type, target: f }) => {
    const early = f.type === "checkbox" && type === "input"; // what a tick does comes with its change
    if (f.matches("[data-part], .ticks *") && !early) keep();
  };
  for (const event of ["input", "change"]) document.addEventListener(event, changed);
})();
