// Shows everything that these pages keep on a phone, and takes it away again: results
// day by day, the pages for a hall without signal. Without this file nothing is kept.
(() => {
  "use strict";
  const box = document.querySelector(".phone");
  if (!box || !window.notebook) return;
  const find = (name) => box.querySelector(name), words = box.dataset;
  const list = find(".kept"), row = find("template").content, empty = find(".nothing"), all = find(".forget");
  const lang = document.documentElement.lang.replace(/^en$/, "en-GB");
  const long = new Intl.DateTimeFormat(lang, { weekday: "long", day: "numeric", month: "long", year: "numeric", timeZone: "UTC" });

  const entry = (title, text, state, drop, again) => {
    const li = row.cloneNode(true).firstElementChild;
    li.querySelector("h3").textContent = title;
    li.querySelector("pre").textContent = text;
    li.querySelector(".how").textContent = state;
    li.querySelector(".drop").onclick = drop;
    const button = li.querySelector(".again");
    button.hidden = !again;
    button.onclick = again;
    return li;
  };
  const day = (d) => {
    const { version, entry: e } = d, sent = notebook.isSent(d), has = e.lines.length > 0;
    const state = !has ? words.noline : sent ? words.sent : e.sent ? words.changed : words.unsent;
    const title = /^\d{4}-\d\d-\d\d$/.test(e.on) ? long.format(Date.parse(e.on)) : d.day;
    return entry(title, has ? e.lines.join("\n") : JSON.stringify(e.rest), [state, d.plan].filter(Boolean).join(" · "),
      () => notebook.keep(version, d.day, null), has && sent && (() => notebook.keep(version, d.day, { ...e, sent: "" })));
  };
  const broken = ({ key, text }) => entry(words.spoilt, text, "", () => {
    localStorage.removeItem(key);
    show();
  });
  const show = () => {
    const days = notebook.all(), spoilt = notebook.spoilt();
    list.replaceChildren(...spoilt.map(broken), ...days.map(day));
    empty.hidden = days.length + spoilt.length > 0;
    all.hidden = !days.length;
  };
  all.onclick = () => {
    if (!notebook.unsent().length || confirm(words.sure)) for (const d of notebook.all()) notebook.keep(d.version, d.day, null);
  };
  document.addEventListener("notebook", show);
  show();
  box.classList.add("ready");

  // The pages, and the wish that they be not kept, which is kept in their place.
  const state = find(".pages"), remove = find(".remove"), take = find(".take"), { can, refused, refusal, keep } = window.offline;
  const kind = "pages " + new URL(".", location).pathname + " ";
  const caught = async () => (await caches.keys()).filter((name) => name.startsWith(kind));
  const pages = async () => {
    let count = 0;
    for (const name of can ? await caught() : []) count += (await (await caches.open(name)).keys()).length;
    state.textContent = !can ? words.cannot : refused() ? words.unwanted : count ? words.pages.replace("{count}", count) : words.failed;
    remove.hidden = !count;
    take.hidden = !can || count > 0;
  };
  remove.onclick = async () => {
    try {
      localStorage.setItem(refusal, "1");
    } catch {} // then they are kept again with the next page
    for (const registration of await navigator.serviceWorker.getRegistrations()) {
      if (registration.scope === new URL(".", location).href) await registration.unregister();
    }
    for (const name of await caught()) await caches.delete(name);
    pages();
  };
  take.onclick = async () => {
    try {
      localStorage.removeItem(refusal);
    } catch {}
    state.textContent = words.taking;
    await keep().catch(() => {});
    pages();
  };
  addEventListener("load", async () => {
    try {
      if (can && !refused() && !(await caught()).length) {
        state.textContent = words.taking;
        await keep().catch(() => {});
      }
      await pages();
    } catch {
      state.textContent = words.cannot; // not even to be asked
    }
  });
})();
