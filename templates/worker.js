// Keeps one client's pages, and the files that they share with others, for a hall
// without signal. VERSION and FILES stand above, written with the pages: a new plan is
// a new version. It is taken whole or not at all, so that until then, and wherever that
// fails, the pages before it stay; what went before is removed.
const kind = "pages " + new URL(".", location).pathname + " ", name = kind + VERSION;

// What a host sent on from elsewhere may not answer for an address, a copy may.
const plain = async (answer) => (answer.redirected ? new Response(await answer.blob(), { headers: answer.headers }) : answer);

const take = async () => {
  try {
    const cache = await caches.open(name);
    await Promise.all(FILES.map(async (file) => {
      const answer = await fetch(file, { cache: "no-cache" });
      if (!answer.ok) throw new Error(file + ": " + answer.status);
      await cache.put(file, await plain(answer));
    }));
  } catch (e) {
    await caches.delete(name);
    throw e;
  }
  await self.skipWaiting();
};

const clear = async () => {
  for (const other of await caches.keys()) if (other.startsWith(kind) && other !== name) await caches.delete(other);
  await self.clients.claim();
};

// A host may leave the end of an address away.
const kept = async (address) => {
  const cache = await caches.open(name);
  const url = new URL(address);
  url.search = url.hash = "";
  for (const end of ["", "index.html", ".html"]) {
    const found = await cache.match(url.href + end);
    if (found) return found;
  }
};

const answer = async (request) => {
  const found = await kept(request.url);
  if (found) return found;
  try {
    return await fetch(request);
  } catch (e) {
    const home = request.mode === "navigate" && (await kept(new URL("index.html", location).href)); // the day went with an old plan
    if (home) return home;
    throw e;
  }
};

self.addEventListener("install", (e) => e.waitUntil(take()));
self.addEventListener("activate", (e) => e.waitUntil(clear()));
self.addEventListener("fetch", (e) => {
  if (e.request.method === "GET" && new URL(e.request.url).origin === location.origin) e.respondWith(answer(e.request));
});
