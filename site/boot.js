// Runs in the head, without defer; the build sets Go's own wasm_exec.js in front. What JavaScript must do,
// and no more. Attributes of its tag:
//   data-program  the program, relative to the page
//   data-whole    the one with everything, for a device that stands on a counter or keeps a data sheet
//   data-root     the top of the site, relative to the page
//   data-home     the contents page in the language of the page (the program reads it)
//   data-words    the messages of that language, relative to the page; none: English
//   data-failed   what to say where the program cannot run (no words live here)
(() => {
  // As a worker beside a page it runs the program that the page sends it.
  if (typeof document === "undefined") {
    addEventListener("message", async ({ data }) => {
      try {
        globalThis.setbookWords = data.words;
        globalThis.setbookLanguage = data.language;
        const go = new Go();
        go.env = { GOGC: "400" };
        await go.run(await WebAssembly.instantiate(data.module, go.importObject));
        throw new Error("the program ended");
      } catch (error) {
        postMessage(["broken", String(error)]);
      }
    }, { once: true });
    return;
  }

  const { whole, root, failed, words } = document.currentScript.dataset;
  let { program } = document.currentScript.dataset;
  const script = document.currentScript.src;

  // Before the first paint: what was remembered, so that no page is shown in the wrong light.
  try {
    for (const name of ["units", "theme", "clear"]) {
      const value = localStorage.getItem("setbook." + name);
      if (value) document.documentElement.setAttribute("data-" + name, value);
    }
    if (whole && (localStorage.getItem("setbook.clear") || localStorage.getItem("setbook.sheet") || localStorage.getItem("setbook.job"))) program = whole;
  } catch {
    // Storage is forbidden: the page stays as it was served.
  }
  if (whole && new URLSearchParams(location.search).has("job")) program = whole; // a sum that belongs to a job

  // A page in another language than the one that was chosen gives way to its like in that one.
  try {
    const chosen = localStorage.getItem("setbook.language");
    const same = chosen && chosen !== document.documentElement.lang && document.querySelector(`link[rel="alternate"][hreflang="${CSS.escape(chosen)}"]`);
    if (same) location.replace(same.href + location.hash);
  } catch {
    // As above.
  }
  addEventListener("click", (event) => {
    const link = event.target.closest?.("a[data-language]");
    if (!link) return;
    link.hash = location.hash; // the entry goes along
    try {
      localStorage.setItem("setbook.language", link.dataset.language);
    } catch {
      // The other page opens all the same.
    }
  });

  // Fetch and compile at once, off the main thread.
  const compile = async () => {
    const answer = await fetch(program, { priority: "low" });
    if (!answer.ok) throw new Error(program + ": " + answer.status);
    // A host may send another content type, which the streaming compiler refuses.
    if (WebAssembly.compileStreaming && answer.headers.get("Content-Type") === "application/wasm") {
      return WebAssembly.compileStreaming(answer);
    }
    return WebAssembly.compile(await answer.arrayBuffer());
  };

  // Run when the page is idle, or when it is touched.
  const touched = new Promise((ready) => {
    for (const event of ["pointerdown", "keydown", "focusin"]) {
      addEventListener(event, ready, { once: true, capture: true, passive: true });
    }
  });
  const idle = () => new Promise((ready) => {
    if ("requestIdleCallback" in window) requestIdleCallback(ready, { timeout: 1000 });
    else setTimeout(ready, 200);
  });
  const parsed = new Promise((ready) => addEventListener("DOMContentLoaded", ready, { once: true }));

  // The head that stays in sight must not lie over what the focus goes to, however high it is.
  parsed.then(() => {
    const calculator = document.querySelector(".calculator");
    if (!calculator || !window.ResizeObserver) return;
    const room = () => {
      const head = calculator.querySelector(".head");
      const stays = head && getComputedStyle(head).position === "sticky";
      document.documentElement.style.scrollPaddingBlockStart = stays ? head.offsetHeight + 16 + "px" : "";
    };
    new ResizeObserver(room).observe(calculator);
    addEventListener("resize", room);
  });

  const messages = async () => {
    if (!words) return;
    const answer = await fetch(words);
    if (!answer.ok) throw new Error(words + ": " + answer.status);
    globalThis.setbookWords = await answer.text(); // the program reads it once
  };

  const start = async () => {
    const [module] = await Promise.all([compile(), messages(), parsed]);
    await Promise.race([touched, idle()]);
    const go = new Go();
    go.env = { GOGC: "400" }; // fewer collections while keys are typed, for a few megabytes more
    const instance = await WebAssembly.instantiate(module, go.importObject);
    if ("Worker" in window) {
      globalThis.setbookAside = () => { // for work that is too long for the page's own thread
        const worker = new Worker(script);
        worker.postMessage({ module, words: globalThis.setbookWords, language: document.documentElement.lang });
        return worker;
      };
    }
    await new Promise((ready) => setTimeout(ready)); // two short blocks instead of a long one
    await go.run(instance);
    throw new Error("the program ended");
  };

  start().catch(async (error) => {
    console.error(error);
    await parsed;
    const notice = document.createElement("p");
    notice.textContent = failed;
    document.getElementById("notices").append(notice);
  });

  // Buttons pressed too early are pressed again once the program listens.
  const early = [];
  const collect = (event) => {
    const button = event.target.closest("button");
    if (button) early.push(button);
  };
  addEventListener("click", collect, true);
  addEventListener("setbook:live", () => {
    removeEventListener("click", collect, true);
    for (const button of early) button.click();
  }, { once: true });

  if ("serviceWorker" in navigator) {
    addEventListener("load", () => {
      navigator.serviceWorker.register(root + "sw.js").catch((error) => console.warn(error));
    });
  }
})();
