// The days of a program without any: a reader chooses when it starts. The day is kept
// on this device, is sent nowhere, and can be forgotten; the calendar is written in
// the page. Without this file the weekdays stand as a pattern.
(() => {
  "use strict";
  const find = (selector) => document.querySelector(selector);
  const key = "start " + new URL(".", location).pathname; // a host may have several sites
  const kept = () => {
    try {
      const { page, name, day } = JSON.parse(localStorage.getItem(key));
      return /^level-[a-z0-9-]+\.html$/.test(page) && /^\d{4}-\d\d-\d\d$/.test(day) ? { page, name, day } : null;
    } catch {
      return null; // nothing is kept, or nothing may be
    }
  };
  const keep = (value) => {
    try {
      if (value) localStorage.setItem(key, JSON.stringify(value));
      else localStorage.removeItem(key);
    } catch {} // then it holds until the page is left
  };

  // Elsewhere on the site, the way back.
  const again = find(".again"), now = kept();
  if (again && now) {
    again.href = now.page;
    again.querySelector("strong").textContent = now.name;
    again.hidden = false;
  }

  const box = find(".start");
  if (!box) return;
  const page = location.pathname.split("/").pop(), field = find("#start"), door = find(".door");
  const days = [...document.querySelectorAll(".block a[data-after]")];
  const pattern = days.map((a) => a.textContent), lang = document.documentElement.lang.replace(/^en$/, "en-GB");
  const long = new Intl.DateTimeFormat(lang, { weekday: "long", day: "numeric", month: "long", timeZone: "UTC" });
  const week = new Intl.DateTimeFormat(lang, { weekday: "short", timeZone: "UTC" });
  const iso = (date) => date.toISOString().slice(0, 10);

  // The first session is on the day chosen; the others keep their distance from it.
  const lay = (day) => {
    days.forEach((a, i) => {
      const date = new Date(Date.parse(day) + (a.dataset.after - days[0].dataset.after) * 864e5);
      if (day) {
        a.dataset.day = iso(date);
        a.dataset.title = long.format(date);
        a.textContent = week.format(date) + "\u00a0" + date.getUTCDate();
      } else {
        delete a.dataset.day;
        a.textContent = pattern[i];
      }
    });
    field.value = day;
    door.hidden = find(".kept").hidden = !day;
    document.dispatchEvent(new Event("days"));
  };

  field.onchange = () => {
    keep(field.value && { page, name: box.dataset.name, day: field.value });
    lay(field.value);
  };
  find(".forget").onclick = () => {
    keep(null);
    lay("");
    field.focus();
  };

  // RFC 5545: lines of at most 75 octets end in CRLF; text escapes \ ; and ,
  const fold = (line) => {
    let out = "", room = 75;
    for (const letter of line) {
      const size = new TextEncoder().encode(letter).length;
      if (size > room) {
        out += "\r\n ";
        room = 74;
      }
      out += letter;
      room -= size;
    }
    return out + "\r\n";
  };
  const text = (s) => s.replace(/[\\;,]/g, "\\$&");
  const calendar = () => {
    const stamp = new Date().toISOString().replace(/[-:]|\.\d+/g, ""), plain = (day) => day.replaceAll("-", "");
    const lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Gatepost//Training program//EN", "METHOD:PUBLISH"];
    for (const a of days) {
      lines.push("BEGIN:VEVENT", "UID:" + a.getAttribute("href").replace(".html", "") + "@" + (location.host || "file"),
        "SEQUENCE:" + Math.floor(Date.now() / 1000 - 17e8), "DTSTAMP:" + stamp, "DTSTART;VALUE=DATE:" + plain(a.dataset.day),
        "DTEND;VALUE=DATE:" + plain(iso(new Date(Date.parse(a.dataset.day) + 864e5))), "SUMMARY:" + text(a.dataset.work),
        "DESCRIPTION:" + text(box.dataset.program + ", " + box.dataset.name), "URL:" + a.href, "TRANSP:TRANSPARENT", "END:VEVENT");
    }
    return [...lines, "END:VCALENDAR"].map(fold).join("");
  };
  find(".ics").onclick = () => {
    const a = document.createElement("a");
    a.href = URL.createObjectURL(new Blob([calendar()], { type: "text/calendar" }));
    a.download = box.dataset.calendar;
    a.click();
    setTimeout(() => URL.revokeObjectURL(a.href), 1000);
  };

  box.hidden = false;
  if (now?.page === page) lay(now.day);
})();
