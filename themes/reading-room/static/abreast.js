// A reader chooses two or three contenders, and their columns are shown. Every word and number was written at compile time.
"use strict";
{
  const form = document.querySelector(".chooser");
  const out = document.querySelector(".chosen");
  const laid = document.querySelector("template.laid");
  const status = form.querySelector("[role=status]");
  const choices = [...form.querySelectorAll("select")];
  const order = [...choices[0].options].map((o) => o.value).filter(Boolean);

  // The address keeps the choice, so that it can be shared and the way back works: #one,another,a-third
  function asked() {
    const named = location.hash.slice(1).split(",");
    return order.filter((id) => named.includes(id)).slice(0, choices.length);
  }

  function show(ids) {
    out.textContent = "";
    status.textContent = "";
    if (ids.length < 2) return;
    const made = laid.content.cloneNode(true);
    for (const column of made.querySelectorAll("[data-of]")) {
      if (!ids.includes(column.dataset.of)) column.remove();
    }
    for (const pair of made.querySelectorAll("[data-pair]")) {
      if (!pair.dataset.pair.split(" ").every((id) => ids.includes(id))) pair.remove();
    }
    for (const list of made.querySelectorAll(".note ul")) {
      if (!list.children.length) list.closest("tr").remove();
    }
    for (const row of made.querySelectorAll("tbody tr:not(.note)")) {
      if (!row.querySelector(".one > :not(.quiet), .one:not(:has(*))")) row.remove();
    }
    for (const across of made.querySelectorAll("[colspan]")) across.colSpan = ids.length + 1;
    out.append(made);
    status.textContent = ids.length === 2 ? status.dataset.two : status.dataset.three;
  }

  function follow() {
    const ids = asked();
    choices.forEach((choice, n) => (choice.value = ids[n] ?? ""));
    show(ids);
  }

  form.addEventListener("change", () => {
    const picked = new Set(choices.map((c) => c.value).filter(Boolean));
    const ids = order.filter((id) => picked.has(id));
    history.pushState(null, "", ids.length ? `#${ids.join(",")}` : location.pathname + location.search);
    show(ids);
  });
  form.addEventListener("submit", (event) => event.preventDefault());
  addEventListener("popstate", follow);
  addEventListener("hashchange", follow);
  form.classList.add("ready");
  follow();
}
