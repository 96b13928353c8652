// Marks the next session of a program by the reader's calendar. Without this
// file every session is a tap away all the same.
(() => {
  "use strict";
  const days = [...document.querySelectorAll(".block a[data-day]")], door = document.querySelector(".door");
  const now = new Date(), two = (n) => String(n).padStart(2, "0");
  const today = now.getFullYear() + "-" + two(now.getMonth() + 1) + "-" + two(now.getDate());
  const next = days.find((a) => a.dataset.day >= today);
  if (!next || !door) return;
  next.setAttribute("aria-current", "date");
  door.href = next.getAttribute("href");
  door.querySelector(".kicker").textContent = door.dataset[next.dataset.day === today ? "today" : "next"];
  door.querySelector("strong").textContent = next.dataset.title;
})();
