// Asks the local server what changed and shows the page anew, where one was reading. Never part of a site.
(() => {
  const here = document.currentScript;
  const ask = here.src.replace("follow.js", "changes?seen=");
  const place = "shown-at:" + location.pathname;
  const main = document.querySelector("main") || document.body;

  // Each finding beside the words or the thing it is about; what stands nowhere on this page stays in the list.
  const plain = (text) => text.replace(/[\u2018\u2019]/g, "'").replace(/[\u201c\u201d"]/g, "").replace(/\s+/g, " ").toLowerCase();
  const blocks = () => [...main.querySelectorAll("p, li, dd, td, blockquote, figcaption, h1, h2, h3")].reverse();
  const about = (note) => {
    const words = note.dataset.words && plain(note.dataset.words);
    const said = words && blocks().find((block) => !block.closest(".to-mend-one") && plain(block.textContent).includes(words));
    return said || (note.dataset.anchor && document.getElementById(note.dataset.anchor)) || ("here" in note.dataset && main.querySelector("h1"));
  };
  for (const note of document.querySelectorAll(".to-mend li")) {
    let at = about(note);
    if (!at) continue;
    for (const folded of [...document.querySelectorAll("details")].filter((d) => d.contains(at) && d !== at)) folded.open = true;
    at = at.closest("table, dl") && !at.closest("li") ? at.closest("table, dl") : at;
    if (at.matches("section, article")) at = at.querySelector("h2, h3, p") || at;
    const beside = document.createElement("aside");
    beside.className = note.className + " beside-it";
    beside.append(...note.childNodes);
    note.remove();
    at.after(beside);
  }
  for (const list of document.querySelectorAll(".to-mend ol")) {
    if (!list.children.length) list.remove();
  }

  // Where one is reading: the nearest thing with an address at or above the top of the window, and how far below it.
  const anchors = () => [...main.querySelectorAll("[id]")].filter((one) => one.getClientRects().length);
  const reading = () => {
    const above = anchors().filter((one) => one.getBoundingClientRect().top <= 1).pop();
    const focus = document.activeElement;
    return {
      at: above ? above.id : "",
      below: above ? above.getBoundingClientRect().top : -scrollY,
      open: [...main.querySelectorAll("details")].map((one) => [named(one), one.open]),
      focus: focus && focus.id,
    };
  };
  const named = (one) => (one.id || (one.closest("[id]") || {}).id || "") + "/" + (one.querySelector("summary") || one).textContent.trim();
  const resume = (kept) => {
    const open = new Map(kept.open);
    for (const one of main.querySelectorAll("details")) if (open.has(named(one))) one.open = open.get(named(one));
    const above = kept.at && document.getElementById(kept.at);
    if (above) scrollBy(0, above.getBoundingClientRect().top - kept.below);
    else scrollTo(0, -kept.below);
    const focus = kept.focus && document.getElementById(kept.focus);
    if (focus) focus.focus({ preventScroll: true });
  };
  const kept = sessionStorage.getItem(place);
  if (kept) {
    sessionStorage.removeItem(place);
    history.scrollRestoration = "manual";
    resume(JSON.parse(kept));
    addEventListener("load", () => resume(JSON.parse(kept)), { once: true });
  }
  const moved = sessionStorage.getItem("shown-moved");
  if (moved) {
    sessionStorage.removeItem("shown-moved");
    const said = document.createElement("p");
    said.className = "moved";
    said.setAttribute("role", "status");
    said.textContent = here.dataset.moved;
    main.prepend(said);
  }

  const wait = (ms) => new Promise((go) => setTimeout(go, ms));
  const again = async () => {
    sessionStorage.setItem(place, JSON.stringify(reading()));
    const page = await fetch(location.pathname, { cache: "no-store" });
    if (page.ok) return location.reload();
    const way = new DOMParser().parseFromString(await page.text(), "text/html").querySelector(".nearest");
    if (!way) return location.reload();
    sessionStorage.setItem("shown-moved", "1");
    location.assign(way.getAttribute("href"));
  };
  const follow = async () => {
    for (;;) {
      try {
        const now = await (await fetch(ask + here.dataset.seen, { cache: "no-store" })).text();
        if (now !== here.dataset.seen) return await again();
      } catch {
        await wait(1000); // the server is away; it may come back
      }
    }
  };
  follow();
})();
