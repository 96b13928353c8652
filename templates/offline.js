// Has a client's pages kept on the phone by the worker beside them, and says when a
// newer plan has come. Without this file, from a file manager, and wherever a browser
// keeps nothing, pages come from where they lie, as ever.
(() => {
  "use strict";
  const note = document.querySelector(".newer"), refusal = "no pages " + new URL(".", location).pathname;
  const can = Boolean(navigator.serviceWorker && window.caches) && location.protocol.startsWith("http");
  const refused = () => {
    try {
      return localStorage.getItem(refusal) !== null;
    } catch {
      return false;
    }
  };
  // Gives the worker once it has all pages, or nothing where it could not keep them.
  const keep = async () => {
    const registration = await navigator.serviceWorker.register("worker.js", { updateViaCache: "none" });
    const worker = registration.installing || registration.waiting;
    if (!worker) return registration.active;
    await new Promise((done) => {
      const look = () => (worker.state === "activated" || worker.state === "redundant") && done();
      worker.onstatechange = look;
      look();
    });
    return registration.active;
  };
  window.offline = { can, refused, refusal, keep };
  if (!can || refused()) return;
  if (navigator.serviceWorker.controller) navigator.serviceWorker.addEventListener("controllerchange", () => (note.hidden = false));
  addEventListener("load", () => keep().catch(() => {})); // the page of what is kept says why
})();
