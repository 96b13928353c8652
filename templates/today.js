// Marks the next session of a program by the reader's calendar; after the last one
// it says what comes then. Without this file every session is a tap away all the same.
(() => {
  "use strict";
  const door = document.querySelector(".door[data-next]");
  if (!door) return;
  const two = (n) => String(n).padStart(2, "0");
  const mark = () => {
    const days = [...document.querySelectorAll(".block a[data-day]")], now = new Date();
    const today = now.getFullYear() + "-" + two(now.getMonth() + 1) + "-" + two(now.getDate());
    const next = days.find((a) => a.dataset.day >= today), words = door.dataset;
    for (const a of days) a.removeAttribute("aria-current");
    if (!days.length) return;
    next?.setAttribute("aria-current", "date");
    door.href = next ? next.getAttribute("href") : words.further;
    door.querySelector(".kicker").textContent = next ? words[next.dataset.day === today ? "today" : "next"] : words.over;
    door.querySelector("strong").textContent = next ? next.dataset.title : words.find;
  };
  mark();
  document.addEventListener("days", mark);
})();
