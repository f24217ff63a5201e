// The service worker. The build writes two lines in front of it: `version`, a
// hash over everything that the site is made of, and `files`, every path of the
// site relative to this one. Pages are listed as folders ("bed/").
"use strict";

const prefix = "setbook-";
const cacheName = prefix + version;
const scope = new URL(self.registration.scope);
const listed = new Set(files.map((file) => new URL(file, scope).href));
const missing = new URL("404.html", scope).href;
const hashed = (href) => href.startsWith(new URL("assets/", scope).href);

// The whole site is kept at the first visit, so that one visit is enough. What
// has a hash in its name is taken from an older version's cache where it is there.
self.addEventListener("install", (event) => {
	event.waitUntil((async () => {
		const cache = await caches.open(cacheName);
		await Promise.all([...listed].map(async (href) => {
			const had = hashed(href) && await caches.match(href);
			const response = had || await fetch(href, { cache: hashed(href) ? "default" : "no-cache" });
			// A host may rightly send the page for a missing page with the status 404.
			if (!response.ok && href !== missing) {
				throw new Error(href + ": " + response.status);
			}
			await cache.put(href, response);
		}));
	})());
});

// A first version takes charge of the page that brought it. A later one comes
// here only when the person asked for it, or when no page is open any more.
self.addEventListener("activate", (event) => {
	event.waitUntil((async () => {
		for (const name of await caches.keys()) {
			if (name.startsWith(prefix) && name !== cacheName) {
				await caches.delete(name);
			}
		}
		await self.clients.claim();
	})());
});

// A new version waits until the page says so: never over work that is being typed.
self.addEventListener("message", (event) => {
	if (event.data && event.data.type === "take-over") {
		self.skipWaiting();
	}
});

// A notice that a wait is over leads back to the page that gave it, or to the contents.
self.addEventListener("notificationclick", (event) => {
	event.notification.close();
	event.waitUntil((async () => {
		const [open] = await self.clients.matchAll({ type: "window" });
		await (open ? open.focus() : self.clients.openWindow(scope.href));
	})());
});

self.addEventListener("fetch", (event) => {
	const url = new URL(event.request.url);
	if (event.request.method !== "GET" || url.origin !== scope.origin || !url.pathname.startsWith(scope.pathname)) {
		return;
	}
	url.search = url.hash = "";
	url.pathname = url.pathname.replace(/(^|\/)index\.html$/, "$1");
	if (listed.has(url.href)) {
		event.respondWith(kept(url.href, event.request));
	} else if (listed.has(url.href + "/") && event.request.mode === "navigate") {
		// Without its slash at the end, a page's relative links would lead nowhere.
		event.respondWith(Response.redirect(url.href + "/"));
	} else if (event.request.mode === "navigate") {
		event.respondWith(fetch(event.request).catch(() => kept(missing, event.request)));
	}
});

async function kept(href, request) {
	const cache = await caches.open(cacheName);
	return await cache.match(href) || fetch(request);
}
