// Says on a program's page what waits on this phone: results that nobody has sent, and
// the joints of this morning. Without this file both are a tap further.
(() => {
  "use strict";
  const box = document.querySelector(".waits");
  if (!box || !window.notebook) return;
  const count = notebook.unsent().length, now = new Date();
  const noon = Date.UTC(now.getFullYear(), now.getMonth(), now.getDate(), 12), yesterday = new Date(noon - 864e5).toISOString().slice(0, 10);
  const last = notebook.all().find((d) => d.entry.on === yesterday && !Object.keys(d.entry.rest || {}).some((part) => part.startsWith("next-")));
  const link = box.querySelector(".morning");
  if (last) { // one of the two, in the room for one
    link.hidden = false;
    link.href = "day-" + last.day + ".html#morning";
  } else if (count) box.querySelector(".count").textContent = box.dataset.waiting.replace("{count}", count);
})();
