// Loads the page again when the preview says that something has changed, and
// when a preview that was ended is there again.
(() => {
  "use strict";
  const events = new EventSource("/.preview/events");
  let lost = false;
  events.addEventListener("change", () => location.reload());
  events.onerror = () => { lost = true; };
  events.onopen = () => { if (lost) location.reload(); };
})();
