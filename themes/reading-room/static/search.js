// Searches all pages. The index is loaded when a reader asks; every sentence was written at compile time.
"use strict";
{
  const form = document.querySelector(".search");
  const status = document.querySelector(".fit");
  const hits = document.querySelector(".hits");
  const more = document.querySelector(".more button");
  const instead = document.querySelector(".instead");
  const said = JSON.parse(form.dataset.said);
  const comparisons = JSON.parse(form.dataset.of);
  const AT_ONCE = 10;
  let index; // once asked for, a promise of what can be searched
  let found = [];
  let asked = "";

  function give(up) {
    form.hidden = up;
    instead.hidden = !up;
  }

  // The words around what was found, as text: only the marks are kept.
  function quoted(excerpt) {
    const told = new DOMParser().parseFromString(excerpt, "text/html").body;
    const line = document.createElement("p");
    for (const piece of told.childNodes) {
      const marked = piece.nodeName === "MARK" ? document.createElement("mark") : null;
      if (marked) marked.textContent = piece.textContent;
      line.append(marked ?? piece.textContent);
    }
    return line;
  }

  // What stands before the line already isn't said again; a line from amid the text says so.
  function after(title, line) {
    let left = line.textContent.startsWith(`${title}. `) ? title.length + 2 : 0;
    const amid = !left && title;
    for (const piece of line.childNodes) {
      const cut = Math.min(left, piece.textContent.length);
      piece.textContent = piece.textContent.slice(cut);
      left -= cut;
    }
    if (amid) line.prepend("… ");
    if (!/\p{P}\s*$/u.test(line.textContent)) line.append(" …");
    return line;
  }

  function link(to, text) {
    const way = document.createElement("a");
    way.href = to;
    way.textContent = text;
    return way;
  }

  function hit(page) {
    const here = page.raw_url;
    const item = document.createElement("li");
    const heading = document.createElement("h2");
    heading.append(link(here, page.meta.title ?? here));
    item.append(heading);
    const comparison = comparisons[here.split("/")[0]];
    if (comparison && comparison !== page.meta.title) {
      const of = document.createElement("p");
      of.className = "of";
      of.textContent = comparison;
      item.append(of);
    }
    const within = page.sub_results.some((place) => place.url.includes("#"));
    const best = within ? page.sub_results.slice(0, 3) : [];
    if (!best.length) item.append(quoted(page.excerpt));
    for (const place of best) {
      const line = after(place.title, quoted(place.excerpt));
      const anchor = place.url.split("#")[1];
      if (anchor) line.prepend(link(`${here}#${anchor}`, place.title), " ");
      item.append(line);
    }
    return item;
  }

  async function show(from) {
    const pages = await Promise.all(found.slice(from, from + AT_ONCE).map((one) => one.data()));
    hits.append(...pages.map(hit));
    more.hidden = hits.children.length >= found.length;
  }

  async function search(words) {
    asked = words;
    form.elements.q.value = words;
    if (!words) {
      hits.textContent = status.textContent = "";
      more.hidden = true;
      return;
    }
    try {
      index = index || import(new URL(form.dataset.index, location.href).href);
      const answer = await (await index).search(words);
      if (asked !== words) return; // another was asked for in the meantime
      found = answer.results;
    } catch {
      give(true);
      return;
    }
    hits.textContent = "";
    status.textContent = said[Math.min(found.length, said.length - 1)];
    await show(0);
  }

  const wanted = () => (new URLSearchParams(location.search).get("q") ?? "").trim();

  if (location.protocol === "file:") give(true);
  else {
    give(false);
    form.classList.add("ready");
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      const words = form.elements.q.value.trim();
      const address = words ? `?${new URLSearchParams({ q: words })}` : location.pathname;
      history.pushState(null, "", address);
      search(words);
    });
    more.addEventListener("click", async () => {
      const next = hits.children.length;
      await show(next);
      hits.children[next]?.querySelector("a").focus();
    });
    addEventListener("popstate", () => search(wanted()));
    if (wanted()) search(wanted());
  }
}
