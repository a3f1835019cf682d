// Shows only those comparisons that a reader asks for. Every sentence was written at compile time.
"use strict";
{
  const form = document.querySelector(".choosing");
  const status = document.querySelector(".fit");
  const said = JSON.parse(form.dataset.said);
  const entries = [...document.querySelectorAll("[data-found]")].map((entry) => [entry, JSON.parse(entry.dataset.found)]);
  const controls = [...form.elements].filter((control) => control.name);

  const inPrice = (price, currency, from, to) =>
    price[0] === currency && Number(price[2]) >= from && Number(price[1]) <= to;

  function fits(found, asked) {
    for (const name of ["kind", "year", "method", "measured"]) {
      if (asked.has(name) && !found[name].includes(asked.get(name))) return false;
    }
    const priced = asked.has("from") || asked.has("to");
    if (!priced && !asked.has("maker")) return true;
    const from = asked.has("from") ? Number(asked.get("from")) : 0;
    const to = asked.has("to") ? Number(asked.get("to")) : Infinity;
    return found.products.some(
      (product) =>
        (!asked.has("maker") || product.maker === asked.get("maker")) &&
        (!priced || product.prices.some((price) => inPrice(price, asked.get("currency"), from, to))),
    );
  }

  function show(asked) {
    let n = 0;
    for (const [entry, found] of entries) {
      entry.hidden = !fits(found, asked);
      n += entry.hidden ? 0 : 1;
    }
    if (status.textContent !== said[n]) status.textContent = said[n];
  }

  // What is asked for, by name; a currency alone asks for nothing.
  function asked() {
    const given = new URLSearchParams();
    for (const control of controls) if (control.value) given.set(control.name, control.value);
    if (!given.has("from") && !given.has("to")) given.delete("currency");
    return given;
  }

  // The address keeps the choice, so that it can be shared and the way back works: #kind=…&maker=…
  function follow() {
    const hash = location.hash.slice(1);
    if (hash && !hash.includes("=")) return; // a place on the page
    const given = new URLSearchParams(hash);
    form.reset();
    for (const control of controls) {
      if (!given.has(control.name)) continue;
      control.value = given.get(control.name);
      if (control.selectedIndex === -1) control.selectedIndex = 0;
    }
    const now = asked();
    if (String(now)) form.querySelector("details").open = true;
    show(now);
  }

  function choose(remember) {
    const now = asked();
    const address = String(now) ? `#${now}` : location.pathname + location.search;
    history[remember](null, "", address);
    show(now);
  }

  form.addEventListener("change", () => choose("pushState"));
  form.addEventListener("input", (event) => event.target.type === "number" && choose("replaceState"));
  form.addEventListener("reset", () => setTimeout(() => choose("pushState")));
  form.addEventListener("submit", (event) => event.preventDefault());
  addEventListener("popstate", follow);
  addEventListener("hashchange", follow);
  form.classList.add("ready");
  follow();
}
