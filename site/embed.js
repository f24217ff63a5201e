// The one script of a page that shows a calculator of this book. It knows no sum: it sets a frame, keeps it as high as what is
// in it, and hands on what the frame says. The page "Put a calculator on your own page" tells its attributes and events.
(() => {
  const script = document.currentScript;
  const book = new URL(script.dataset.book || "../", script.src);
  const heard = new WeakMap();

  customElements.define("setbook-calculator", class extends HTMLElement {
    static observedAttributes = ["theme"];

    connectedCallback() {
      const query = new URLSearchParams();
      for (const name of ["calculator", "fixed", "start", "hide", "units", "theme", "site-sheet", "clear"]) {
        if (this.hasAttribute(name)) query.set(name, this.getAttribute(name));
      }
      for (const name of ["paper", "ink", "line"]) {
        const colour = getComputedStyle(this).getPropertyValue("--setbook-" + name).trim();
        if (colour) query.set(name, colour);
      }
      const frame = document.createElement("iframe");
      frame.title = this.getAttribute("label") || this.getAttribute("calculator");
      frame.setAttribute("sandbox", "allow-scripts allow-same-origin allow-modals allow-popups allow-popups-to-escape-sandbox");
      frame.style.cssText = "display: block; width: 100%; height: 45rem; border: 0";
      const listen = (event) => {
        if (event.source !== frame.contentWindow || event.origin !== book.origin || event.data?.setbook !== 1) return;
        const { kind, height } = event.data;
        if (kind === "height") frame.style.height = height + "px";
        if (kind === "ready") this.#ready();
        this.dispatchEvent(new CustomEvent("setbook-" + kind, { detail: event.data, bubbles: true }));
      };
      addEventListener("message", listen);
      heard.set(this, { frame, listen, waiting: [] });
      frame.src = new URL(`embed/frame/${this.getAttribute("lang") || "en"}/?${query}`, book).href;
      this.replaceChildren(frame);
    }

    disconnectedCallback() {
      removeEventListener("message", heard.get(this).listen);
      heard.delete(this);
      this.replaceChildren();
    }

    attributeChangedCallback(name, before, theme) {
      if (before !== null) this.#send({ kind: "theme", theme: theme || "auto" });
    }

    // fill puts texts into fields, each with its unit: fill({ width: "3/8 in" }).
    fill(fields) {
      this.#send({ kind: "fields", fields });
    }

    // What is said before the calculator listens is kept for it.
    #send(message) {
      const { frame, waiting } = heard.get(this) ?? {};
      if (waiting) waiting.push(message);
      else frame?.contentWindow.postMessage({ setbook: 1, ...message }, book.origin);
    }

    async #ready() {
      const one = heard.get(this);
      const waiting = one.waiting ?? [];
      delete one.waiting;
      waiting.forEach((message) => this.#send(message));
      const name = this.getAttribute("sheet");
      if (!name) return;
      const answer = await fetch(name);
      if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
      this.#send({ kind: "sheet", text: await answer.text() });
    }
  });
})();
